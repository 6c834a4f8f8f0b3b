"""The faults are made as said, and the trial tells a fault that is noticed from one that is not."""

from __future__ import annotations

import ast
import os
from pathlib import Path

import pytest

from tests.mutants import trial
from tests.mutants.faults import faults
from tests.mutants.reach import Reach
from tests.mutants.table import ROOT, TESTS, core_files, named_for


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
    assert all(named_for(file) for file in core_files())
    missing = [test for tests in TESTS.values() for test in tests if not (ROOT / test).exists()]
    assert missing == []


def test_who_comes_by_a_line_is_asked_quick_ones_first() -> None:
    reach = Reach({1}, {"slow": ({5, 6}, 2.0), "quick": ({6}, 1.0), "other": ({9}, 0.5)})
    assert reach.tests_at(range(6, 7)) == ["quick", "slow"]
    assert reach.tests_at(range(1, 2)) == ["other", "quick", "slow"]
    assert reach.tests_at(range(20, 21)) == []


HALVES = "def half(n):\n    if n > 10:\n        return n // 2\n    return n\n"
TESTS_OF_HALVES = """
from halves import half

def test_much():
    assert half(12) == 6

def test_little():
    assert half(4) == 4
"""


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no process is forked on this system")
def test_a_fault_is_noticed_when_a_test_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(trial, "ROOT", tmp_path)
    (tmp_path / "halves.py").write_text(HALVES, encoding="utf-8")
    (tmp_path / "pyproject.toml").write_text(
        '[tool.pytest.ini_options]\npythonpath = ["."]\n', encoding="utf-8"
    )
    (tmp_path / "test_halves.py").write_text(TESTS_OF_HALVES, encoding="utf-8")
    reach = trial.watch("halves.py", ["test_halves.py"])
    assert [len(own) for own, _ in reach.by_test.values()] == [3, 3]
    tree = ast.parse(HALVES)
    unnoticed = set()
    for fault in faults(tree):
        tests = reach.tests_at(fault.lines())
        one = trial.start("halves.py", tree, fault, tests, reach.seconds(tests))
        if trial.survived(os.waitpid(one.process, 0)[1]):
            unnoticed.add(fault.change())
    # No test has a number at the edge, and none that is odd.
    assert unnoticed == {
        ("if n > 10:", "if n >= 10:"),
        ("if n > 10:", "if n > 11:"),
        ("if n > 10:", "if n > 9:"),
    }
    (tmp_path / "test_halves.py").write_text("def test_it():\n    assert 0\n", encoding="utf-8")
    with pytest.raises(trial.CannotTry, match="must pass before"):
        trial.watch("halves.py", ["test_halves.py"])
