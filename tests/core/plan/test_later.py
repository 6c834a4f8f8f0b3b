"""What nothing hurries waits for an evening of its own: no second main is opened for its pace."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.balance import left_for_later
from pantry_tui.core.plan.days import Chosen, Table, spread
from pantry_tui.core.plan.menu import Candidate, Why
from pantry_tui.core.words import Group, Role

TODAY = date(2026, 11, 25)
TWO = Table(Appetite(2), TODAY, frozenset())


def main(name: str, servings: float = 2.0) -> Candidate:
    return Candidate(name, f"stew {name}", Group.MEAL, servings, None, role=Role.MAIN)


def later(*chosen: Chosen) -> list[str]:
    places = left_for_later(chosen, spread(chosen, TWO), TWO)
    return [chosen[at].candidate.container for at in places]


def test_the_second_of_an_evening_that_only_its_pace_wants_waits() -> None:
    assert later(Chosen(main("a"), Why.PACE, TODAY)) == []
    both = Chosen(main("a"), Why.DUE, TODAY), Chosen(main("b"), Why.PACE, TODAY)
    assert later(*both) == ["b"]
    assert len(later(*(Chosen(main(n), Why.PACE, TODAY) for n in "abc"))) == 2, "one stays"


@pytest.mark.parametrize("why", [why for why in Why if why is not Why.PACE])
def test_what_is_there_for_another_reason_stays(why: Why) -> None:
    assert later(Chosen(main("a"), why, TODAY), Chosen(main("b"), why, TODAY)) == []


def test_it_stays_where_one_of_its_days_has_nothing_else_or_too_little() -> None:
    first = Chosen(main("a"), Why.DUE, TODAY)
    assert later(first, Chosen(main("b", 4), Why.PACE, TODAY)) == []
    small = Chosen(main("a", 1), Why.DUE, TODAY)
    assert later(small, Chosen(main("b"), Why.PACE, TODAY)) == []
    rest = Chosen(main("c"), Why.DUE, TODAY + timedelta(days=1))
    assert later(first, rest, Chosen(main("b", 4), Why.PACE, TODAY)) == ["b"]


def test_what_a_dish_takes_stays() -> None:
    other = Chosen(main("b"), Why.PACE, TODAY, "pot")
    assert later(Chosen(main("a"), Why.DUE, TODAY), other) == []
