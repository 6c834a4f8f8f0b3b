"""The faults are made as said, and the trial tells a fault that is noticed from one that is not."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.mutants import forked, trial
from tests.mutants.faults import faults
from tests.mutants.reach import Reach
from tests.mutants.readers import readers
from tests.mutants.table import ROOT, TESTS, core_files, room_of

REPOSITORY = Path(__file__).resolve().parents[1]


def changes(source: str) -> set[tuple[str, str]]:
    return {one.change() for one in faults(ast.parse(source))}


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("x = a < b", {"x = a <= b", "x = a >= b"}),
        ("x = a is None", {"x = a is not None"}),
        ("x = a and b", {"x = a or b", "x = a", "x = b"}),
        ("x = not a", {"x = a"}),
        ("x = 3", {"x = 4", "x = 2"}),
        ("x = -1", {"x = 1"}),
        ("x = min(a)", {"x = max(a)"}),
        ("x = any(a)", {"x = all(a)"}),
        ("x = a - b", {"x = a + b"}),
        ("x = key(a, by=b)", {"x = key(a)"}),
        ("x = (a, b)", {"x = (a,)", "x = (b,)"}),
        ("x[a] = b", {"pass"}),
        ("a.append(b)", {"pass"}),
        ("x = [a for a in b if c]", {"x = [a for a in b if True]", "x = [a for a in b if not c]"}),
        ("raise a", {"pass"}),
        ("'what it is'", set()),
        ("x: tuple[int, str]", set()),
        ("assert a is not None", set()),
        ("a, b = c, d", set()),
        ("x = 'words'", set()),
        ("x = zip(a, b, strict=True)", set()),
    ],
)
def test_a_statement_has_these_faults(before: str, after: set[str]) -> None:
    assert changes(before) == {(before, one) for one in after}


def test_a_function_may_give_nothing_back_and_an_if_may_be_turned_round() -> None:
    found = changes("def f(x):\n    if x:\n        return x\n    return None\n")
    assert found == {("if x:", "if not x:"), ("return x", "return None")}


def test_a_fault_is_taken_back_when_it_was_looked_at() -> None:
    tree = ast.parse((ROOT / "pantry_tui/core/dates.py").read_text(encoding="utf-8"))
    before = ast.dump(tree)
    found = faults(tree)
    assert found
    assert all(old != new for old, new in (one.change() for one in found))
    assert ast.dump(tree) == before


def test_the_tests_of_every_file_of_the_core_are_named_and_there() -> None:
    assert core_files()
    asked = {TESTS[room_of(file)] for file in core_files()}
    named = {test.partition("::")[0] for one in asked for test in (*one.near, *one.far)}
    assert [test for test in named if not (ROOT / test).exists()] == []


def test_who_comes_by_a_line_is_asked_quick_ones_first_and_who_noticed_much_before() -> None:
    by_test = {
        "slow": ({("a", 5), ("a", 6)}, 2.0),
        "quick": ({("a", 6)}, 1.0),
        "other": ({("a", 9), ("b", 6)}, 0.5),
    }
    reach = Reach({("a", 1)}, by_test)
    assert reach.tests_at([("a", 6)], {}) == ["quick", "slow"]
    assert reach.tests_at([("a", 6)], {"slow": 3}) == ["slow", "quick"]
    assert reach.tests_at([("a", 1)], {}) == ["other", "quick", "slow"]
    assert reach.tests_at([("a", 20)], {}) == []


def test_who_reads_what_a_module_assigns_is_found_also_by_way_of_others(tmp_path: Path) -> None:
    one, two = tmp_path / "one.py", tmp_path / "two.py"
    one.write_text("A = 1\n_B = A + 1\n\ndef f():\n    return _B\n", encoding="utf-8")
    two.write_text(
        "import one\n_B = 3\n\ndef g():\n    return one.A\n\ndef h():\n    return _B\n",
        encoding="utf-8",
    )
    paths = (str(one), str(two))
    first, second, *_ = ast.parse(one.read_text(encoding="utf-8")).body
    assert readers(str(one), first, paths) == {(str(one), 5), (str(two), 5)}
    assert readers(str(one), second, paths) == {(str(one), 5)}
    (function,) = ast.parse("def f():\n    return 1\n").body
    assert readers(str(one), function, paths) == frozenset()


HALVES = """
TOP = 20
LIMIT = TOP // 2

def half(n):
    if n > LIMIT:
        return n // 2
    return n

def countdown(n):
    while n > 0:
        n -= 1
    return n

def unheard_of():
    return 1
"""
TESTS_OF_HALVES = """
from halves import countdown, half

def test_much():
    assert half(14) == 7

def test_little():
    assert half(4) == 4

def test_down():
    assert countdown(3) == 0
"""


@pytest.fixture
def halves(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A program of one file, with its tests."""
    for module in (trial, forked):
        monkeypatch.setattr(module, "ROOT", tmp_path)
    monkeypatch.setattr(trial, "_core", lambda: (str(tmp_path / "halves.py"),))
    monkeypatch.setattr(trial, "WORK_S", 2.0)  # a big process takes a while to load a module
    (tmp_path / "halves.py").write_text(HALVES, encoding="utf-8")
    (tmp_path / "pyproject.toml").write_text(
        '[tool.pytest.ini_options]\npythonpath = ["."]\n', encoding="utf-8"
    )
    (tmp_path / "test_halves.py").write_text(TESTS_OF_HALVES, encoding="utf-8")
    return tmp_path


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no process is forked on this system")
@pytest.mark.parametrize("jobs", [1, 3])
def test_a_fault_is_noticed_when_a_test_fails_or_never_ends(halves: Path, jobs: int) -> None:
    if "PYTEST_XDIST_WORKER" in os.environ:
        # A worker that has loaded everything is no process to fork: ask in one of its own.
        one = (
            f"{Path(__file__)}::{test_a_fault_is_noticed_when_a_test_fails_or_never_ends.__name__}"
        )
        env = {k: v for k, v in os.environ.items() if not k.startswith("PYTEST_")}
        asked = [sys.executable, "-m", "pytest", "-q", "-n", "0", one]
        told = subprocess.run(
            asked, check=False, env=env, cwd=REPOSITORY, capture_output=True, text=True
        )
        assert told.returncode == 0, told.stdout
        return
    target = trial.Target.of("halves.py")
    tried = trial.hold([target], ["test_halves.py"], jobs)
    assert len(tried.reach.by_test) == 3
    ends = zip(target.found, tried.ends["halves.py"], strict=True)
    left = {(*fault.change(), end.value) for fault, end in ends if end is not trial.End.NOTICED}
    # No test has a number at the edge, and none asks for the last function. A loop that never
    # ends is noticed, and so is a limit that is another one when the module is loaded.
    assert left == {
        ("if n > LIMIT:", "if n >= LIMIT:", "unnoticed"),
        ("TOP = 20", "TOP = 21", "unnoticed"),
        ("TOP = 20", "TOP = 19", "unnoticed"),
        ("LIMIT = TOP // 2", "LIMIT = TOP // 3", "unnoticed"),
        ("return 1", "return None", "no test comes by"),
        ("return 1", "return 2", "no test comes by"),
        ("return 1", "return 0", "no test comes by"),
    }
    assert (halves / "halves.py").read_text(encoding="utf-8") == HALVES


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no process is forked on this system")
def test_nothing_is_tried_against_tests_that_fail(halves: Path) -> None:
    (halves / "test_halves.py").write_text("def test_it():\n    assert 0\n", encoding="utf-8")
    with pytest.raises(trial.CannotTry, match="must pass before"):
        trial.hold([trial.Target.of("halves.py")], ["test_halves.py"], 1)
