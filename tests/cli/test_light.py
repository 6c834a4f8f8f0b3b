"""One verb's module is loaded and no other's, and no library that day-to-day verbs do not use."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from pantry_tui.cli import registry
from tests.cli.conftest import TODAY

ROOT = Path(__file__).resolve().parents[2]

PROBE = """
import json, os, sys
before = set(sys.modules)
import pantry_tui.cli
code = pantry_tui.cli.main(sys.argv[1:])
sys.stdout.flush()
print(json.dumps([code, sorted(set(sys.modules) - before)]), file=sys.stderr)
"""

DAY_TO_DAY = {
    "due": ("due", "--json"),
    "shelves": ("shelves",),
    "use": ("use", "{peaches}"),
    "open": ("open", "{peaches}"),
    "discard": ("discard", "{peaches}/2", "--why", "seal failed"),
    "log": ("log",),
    "undo": ("undo",),
}

#: What none of them may load.
HEAVY = (
    "textual",
    "rich",
    "pint",
    "sqlite_utils",
    "click",
    "numpy",
    "dateutil.parser",
    "csv",
    "importlib.metadata",
    "tomllib",
    "tempfile",
    "shutil",
    "argparse",
    "difflib",
    "dataclasses",
    "inspect",
)


@pytest.fixture(scope="session")
def loaded(
    tmp_path_factory: pytest.TempPathFactory, small_store: tuple[bytes, dict[str, str]]
) -> dict[str, set[str]]:
    """The modules that each verb loads, in a process of its own."""
    content, codes = small_store
    found = {}
    for name, words in DAY_TO_DAY.items():
        store = tmp_path_factory.mktemp("light") / "store.db"
        store.write_bytes(content)
        told = [word.format(**codes) for word in words]
        done = subprocess.run(
            [sys.executable, "-c", PROBE, *told, "--store", str(store), "--today", TODAY],
            cwd=ROOT,
            capture_output=True,
            text=True,
            check=False,
        )
        code, modules = json.loads(done.stderr.splitlines()[-1])
        assert code == 0, done.stderr
        found[name] = set(modules)
    return found


@pytest.mark.xdist_group("light")
@pytest.mark.parametrize("name", DAY_TO_DAY)
def test_one_verbs_module_is_loaded_and_no_other(loaded: dict[str, set[str]], name: str) -> None:
    modules = {entry.where.partition(":")[0] for entry in registry.every()}
    entry, _ = registry.find([name])
    assert entry is not None
    mine = {one for one in modules if f"pantry_tui.cli.{one}" in loaded[name]}
    assert mine == {entry.where.partition(":")[0]}
    assert not {one for one in loaded[name] if one.startswith("pantry_tui.app")}


@pytest.mark.xdist_group("light")
@pytest.mark.parametrize("library", HEAVY)
def test_no_day_to_day_verb_loads(loaded: dict[str, set[str]], library: str) -> None:
    assert [name for name, modules in loaded.items() if library in modules] == []


@pytest.mark.xdist_group("light")
@pytest.mark.parametrize("module", ["dataclasses", "pantry_tui.core.model"])
def test_what_is_due_is_read_off_the_tables_without_the_model(
    loaded: dict[str, set[str]], module: str
) -> None:
    assert module not in loaded["due"]


@pytest.mark.xdist_group("light")
@pytest.mark.parametrize("words", [("--help",), ("--version",), ("frob",)])
def test_without_a_verb_nothing_below_is_loaded(words: tuple[str, ...]) -> None:
    done = subprocess.run(
        [sys.executable, "-c", PROBE, *words], cwd=ROOT, capture_output=True, text=True, check=False
    )
    _, modules = json.loads(done.stderr.splitlines()[-1])
    below = ("services", "store", "reference", "measures", "app")
    assert not [m for m in modules if m.startswith(tuple(f"pantry_tui.{one}" for one in below))]
