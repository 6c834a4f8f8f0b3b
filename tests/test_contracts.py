"""The rooms keep their walls, and the command line stays light."""

from __future__ import annotations

import ast
import json
import subprocess
import sys
from datetime import date
from pathlib import Path

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.stock import places

ROOT = Path(__file__).resolve().parent.parent
TODAY = date(2026, 11, 20)

PROBE = """
import json, sys
import pantry_tui.cli

sys.argv = ["pantry-tui", *sys.argv[1:]]
try:
    code = pantry_tui.cli.main()
except SystemExit as leaving:
    code = leaving.code
loaded = sorted({"textual", "pint", "rich"} & {name.partition(".")[0] for name in sys.modules})
print(json.dumps({"code": code or 0, "loaded": loaded}), file=sys.stderr)
"""


def test_import_contracts_hold() -> None:
    linter = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run(
        [str(linter), "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_no_module_gives_a_name_twice() -> None:
    """A second constant of one name takes the place of the first also where that one is meant."""
    twice = []
    for path in (ROOT / "pantry_tui").rglob("*.py"):
        named: set[str] = set()
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            targets = node.targets if isinstance(node, ast.Assign) else []
            targets += [node.target] if isinstance(node, ast.AnnAssign) else []
            names = {one.id for one in targets if isinstance(one, ast.Name)}
            twice += [f"{path.name}: {name}" for name in names & named]
            named |= names
    assert twice == []


def test_due_loads_neither_screen_nor_units(tmp_path: Path) -> None:
    store = tmp_path / "small.db"
    create(store)
    with open_pantry(store, TODAY) as p:
        places.add(p, "larder", "pantry", temp_f=60)
        reading = putup.from_flags(
            p,
            food="peaches",
            method="boiling-water canned",
            count=3,
            size="pint",
            container="jars",
            place="larder",
        )
        code = putup.put_up(p, reading).code

    done = subprocess.run(
        [
            *(sys.executable, "-c", PROBE),
            *("--store", str(store), "--today", TODAY.isoformat(), "due", "--json"),
        ],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 0, done.stderr
    assert json.loads(done.stderr.splitlines()[-1]) == {"code": 0, "loaded": []}
    assert [row["code"] for row in json.loads(done.stdout)] == [code]
