"""A day without a main beside a day with two."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.balance import balanced, settle
from pantry_tui.core.plan.days import Chosen, Table, spread
from pantry_tui.core.plan.menu import Candidate, Why
from pantry_tui.core.words import Group, Role

TODAY = date(2026, 11, 25)
FRIDAY = TODAY + timedelta(days=2)
BARE = TODAY + timedelta(days=4)


def main(name: str, servings: float = 4.0) -> Candidate:
    return Candidate(name, f"stew {name}", Group.MEAL, servings, None, role=Role.MAIN)


def days_of(*chosen: Chosen, people: int = 4) -> dict[str, date]:
    """Where they lie once the bare day has had its turn."""
    table = Table(Appetite(people), TODAY, frozenset())
    menu = spread(chosen, table)
    settle(chosen, menu)
    balanced(chosen, table, menu, [BARE])
    return {pick.candidate.container: pick.day for pick in spread(chosen, table).picks}


def test_one_of_two_mains_goes_to_the_day_that_has_none() -> None:
    big, small = Chosen(main("a"), Why.PACE, FRIDAY), Chosen(main("b", 3), Why.PACE, FRIDAY)
    assert days_of(big, small) == {"a": FRIDAY, "b": BARE}


@pytest.mark.parametrize(
    "held",
    [
        Chosen(main("b", 3), Why.KEPT, FRIDAY),
        Chosen(main("b", 3)._replace(safe_until=FRIDAY), Why.DUE, FRIDAY),
        Chosen(main("b", 3)._replace(last=FRIDAY), Why.DUE, FRIDAY),
        Chosen(main("b", 3), Why.DISH, FRIDAY, "pot"),
    ],
)
def test_what_was_asked_for_or_falls_due_stays(held: Chosen) -> None:
    pressing = Chosen(main("a")._replace(safe_until=FRIDAY), Why.DUE, FRIDAY)
    assert days_of(pressing, held)["b"] == FRIDAY


def test_a_day_on_which_many_sit_keeps_what_they_need() -> None:
    both = Chosen(main("a"), Why.PACE, FRIDAY), Chosen(main("b"), Why.PACE, FRIDAY)
    assert set(days_of(*(replace(one) for one in both), people=6).values()) == {FRIDAY}
    assert set(days_of(*both, people=5).values()) == {FRIDAY, BARE}


def test_a_dish_keeps_what_it_took_of_the_same_bulk() -> None:
    """Of a crate one meal lies in a dish and another beside it: only the other one may move."""
    crate = main("a")._replace(bulk=True)
    pot = Chosen(crate, Why.DISH, FRIDAY, "pot")
    pressing = Chosen(main("b")._replace(safe_until=FRIDAY), Why.DUE, FRIDAY)
    days_of(pot, Chosen(crate, Why.PACE, FRIDAY), pressing)
    assert pot.day == FRIDAY
