"""The long runs are there to be made, and their table says what came of them."""

from __future__ import annotations

import subprocess
import sys
from importlib import import_module
from pathlib import Path

from tests.long import RUNS, Outcome
from tests.long.__main__ import table

ROOT = Path(__file__).resolve().parent.parent


def test_every_run_that_is_listed_can_be_made() -> None:
    assert RUNS
    assert all(callable(import_module(module).run) for module in RUNS.values())


def test_the_table_has_a_line_for_each_run() -> None:
    lines = [(Outcome("flips", 12345, 0, "bits"), 90.0), (Outcome("kills", 7, 2, ""), 6.0)]
    assert table(lines).splitlines() == [
        "run     tried  failed  minutes",
        "flips  12,345       0      1.5  bits",
        "kills       7       2      0.1",
    ]


def test_a_run_that_is_not_there_is_refused_in_a_sentence() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.long", "no-such-run"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert "there is no run 'no-such-run'" in done.stderr
    assert "Traceback" not in done.stderr
