"""Every method × state × climate × class of food × warmth has an answer (house law 7.4)."""

from __future__ import annotations

import pytest

from tests.judging import papers
from tests.judging.bound import Answer, Program
from tests.judging.evaluator import judge
from tests.judging.table import METHODS, STATES, WARMTHS, Cell, cells, foods, size, unanswered
from tests.judging.world import History

#: A prime, so that no food, place or state is left out; the whole table takes a quarter of an hour
#: (`python -m tests.judging --table`).
EVERY = 5


@pytest.mark.parametrize("method", METHODS)
def test_every_cell_has_an_answer(method: str, program: Program) -> None:
    found = list(unanswered(program, method, EVERY))
    print(f"{method}: {size() // len(METHODS) // EVERY} of {size()} cells")
    assert not found, f"{len(found)} cells, such as\n" + "\n".join(found[:20])


def test_the_table_is_whole() -> None:
    """All methods and climates, and every group of food, known and unknown."""
    print(f"{size()} cells")
    assert len(METHODS) == 26
    assert len(STATES) == 5
    assert len(WARMTHS) == 6
    groups = {papers.food(n).group for n in papers.food_names()}
    assert {f.group for f in foods() if f.known} == groups
    assert {f.group for f in foods() if not f.known} == groups
    assert len(list(cells("frozen"))) * len(METHODS) == size()


def test_a_program_that_calls_everything_sound_is_found_out() -> None:
    """The table can fail: it refuses something of every dangerous method."""

    def sound(history: History, container: str) -> Answer:
        return Answer("sound", None, True)

    for method in ("frozen", "in oil", "cooked meal", "hot smoked", "lime-kept"):
        assert next(unanswered(sound, method), None), method


def test_the_judge_refuses_not_everything() -> None:
    """Nor does it forbid what the papers allow: a year of sealed jars, dry food, frozen meat."""
    for method, climate, warmth, name in (
        ("pressure canned", "pantry", 50.0, "runner beans"),
        ("frozen", "freezer", 0.0, "ground beef"),
        ("dried", "pantry", 50.0, "apples"),
        ("sugar preserve", "room", 50.0, "honey"),
        ("fresh", "cellar", 40.0, "carrots"),
    ):
        cell = Cell(method, "sealed", climate, warmth, papers.food(name))
        assert judge(cell.history(400 * 1440), "A/1").usable, str(cell)
