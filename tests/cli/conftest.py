"""A small store, built once, and a way to run commands on a copy of it."""

from __future__ import annotations

import contextlib
import io
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.cli import main

TODAY = "2026-11-25"

_PLACES = (("shelf 2", "pantry"), ("fridge", "fridge"), ("big freezer", "freezer"))
_BATCHES = {
    "peaches": "8 pint jars peaches, boiling-water canned, shelf 2, 2026-08-10",
    "beans": "6 pint jars runner beans, pressure canned minutes=20 psi=11, shelf 2, 2026-09-01",
    "beef": "4 bags ground beef, frozen, big freezer, 2026-10-01",
    "kraut": "1 crock sauerkraut, lactic ferment, fridge, 2026-11-01",
    "rings": "1 bag apples, dried, shelf 2, 2026-10-01",
    "pears": "3 pint jars pears, boiling-water canned, shelf 2, today",
}

#: A household's own list.
LIST = "Item,Qty,Kept,Where\nplum jam,7 pint jars,jam,shelf 2\npeas,4 bags,frozen,big freezer\n"


@dataclass(frozen=True)
class Kitchen:
    """A store of its own for one test; `codes` names its batches."""

    folder: Path
    codes: Mapping[str, str]
    capsys: pytest.CaptureFixture[str]

    def run(self, *words: str) -> tuple[int, str, str]:
        """Exit code, stdout and stderr of one command; a store named in `words` counts."""
        told = [word.format(folder=self.folder, **self.codes) for word in words]
        where = () if "--store" in told else ("--store", str(self.folder / "store.db"))
        self.capsys.readouterr()
        day = () if "--today" in told else ("--today", TODAY)
        code = main([*told, *where, *day])
        said = self.capsys.readouterr()
        return code, said.out, said.err

    def answer(self, *words: str) -> Any:
        code, out, err = self.run(*words, "--json")
        assert (code, err) == (0, ""), (code, err)
        return json.loads(out)

    def booked(self) -> Any:
        """All that a command could have changed."""
        return [
            self.answer(*words)
            for words in (("log",), ("due",), ("household", "appetite"), ("household",))
        ]


@pytest.fixture(scope="session")
def small_store(tmp_path_factory: pytest.TempPathFactory) -> tuple[bytes, dict[str, str]]:
    """The file of the small store, and the lid code of each batch."""
    path = tmp_path_factory.mktemp("small") / "store.db"

    def run(*words: str) -> Any:
        with contextlib.redirect_stdout(io.StringIO()) as out:
            assert main(["--store", str(path), "--today", TODAY, "--json", *words]) == 0, words
        return json.loads(out.getvalue())

    run("init", "--altitude", "900ft", "--people", "4")
    for name, climate in _PLACES:
        run("place", "add", name, "--climate", climate)
    codes = {name: str(run("putup", line)["code"]) for name, line in _BATCHES.items()}
    run("discard", codes["rings"], "--why", "seal failed")
    run("open", codes["peaches"] + "/1")
    return path.read_bytes(), codes


@pytest.fixture
def kitchen(
    tmp_path: Path,
    small_store: tuple[bytes, dict[str, str]],
    capsys: pytest.CaptureFixture[str],
) -> Kitchen:
    content, codes = small_store
    (tmp_path / "store.db").write_bytes(content)
    (tmp_path / "list.csv").write_text(LIST, encoding="utf-8")
    return Kitchen(tmp_path, codes, capsys)
