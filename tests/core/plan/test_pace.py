"""The pace against examples reckoned by hand, and its laws."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.plan.pace import Portion, next_harvest, pace, weeks_until

TODAY = date(2026, 11, 25)


def by(weeks: float) -> date:
    """The last day of the last of so many weeks from today."""
    return TODAY + timedelta(days=round(weeks * 7) - 1)


def lost_at(parts: list[Portion], rate: float) -> float:
    """What passes its date at so many servings a week, the nearest date first."""
    eaten = lost = 0.0
    for one in sorted(parts, key=lambda o: o.by or date.max):
        if one.by is not None:
            taken = min(one.servings, max(0.0, rate * weeks_until(one.by, TODAY) - eaten))
            eaten, lost = eaten + taken, lost + one.servings - taken
    return lost


def test_two_jars_a_week_or_five_pass_their_date() -> None:
    # 20 servings due in 5 weeks and 10 more in 20: the first date sets the need, 4 a week.
    found = pace([Portion(20, by(5)), Portion(10, by(20))], by(30), TODAY)
    assert found.needs == pytest.approx(4)
    assert found.tight == by(5)
    assert found.can == pytest.approx(1)
    assert lost_at([Portion(20, by(5)), Portion(10, by(20))], 3) == pytest.approx(5)


def test_the_crowded_later_date_may_be_the_tight_one() -> None:
    found = pace([Portion(2, by(4)), Portion(30, by(8))], by(40), TODAY)
    assert found.needs == pytest.approx(4)
    assert found.tight == by(8)


def test_what_nothing_hurries_needs_no_pace_and_lasts_to_the_harvest() -> None:
    found = pace([Portion(26, None)], by(26), TODAY)
    assert (found.needs, found.tight) == (0, None)
    assert found.can == pytest.approx(1)


def test_what_is_past_its_date_is_for_this_week() -> None:
    assert pace([Portion(3, TODAY - timedelta(days=90))], by(10), TODAY).needs == 3


portions = st.lists(
    st.builds(
        Portion,
        st.floats(0.5, 50),
        st.one_of(st.none(), st.integers(-30, 400).map(lambda n: TODAY + timedelta(days=n))),
    ),
    max_size=12,
)


@given(portions)
def test_at_the_needed_pace_nothing_is_lost_and_slower_something_is(parts: list[Portion]) -> None:
    found = pace(parts, by(52), TODAY)
    assert lost_at(parts, found.needs * (1 + 1e-9)) == pytest.approx(0, abs=1e-6)
    if found.needs:
        assert lost_at(parts, found.needs * 0.9) > 0


@given(portions, portions)
def test_more_to_eat_never_needs_less(one: list[Portion], two: list[Portion]) -> None:
    assert pace([*one, *two], by(52), TODAY).needs >= pace(one, by(52), TODAY).needs - 1e-9


def test_the_next_harvest_lies_ahead() -> None:
    assert next_harvest(7, TODAY) == date(2027, 7, 1)
    assert next_harvest(12, TODAY) == date(2026, 12, 1)
    assert next_harvest(11, TODAY) == date(2027, 11, 1)
    assert next_harvest(None, date(2028, 2, 29)) == date(2029, 2, 28)


def test_what_is_planned_in_any_case_is_eaten_first_and_counts_with_what_falls_due() -> None:
    # The first week has its 10 in any case: the 20 that fall due in 5 weeks have the other four.
    assert pace([Portion(20, by(5))], by(10), TODAY, Portion(10, None)).needs == pytest.approx(5)
    found = pace([Portion(30, by(5))], by(10), TODAY, Portion(5, None))
    assert found.needs == pytest.approx(7)
    assert found.servings == 35
    assert found.can == pytest.approx(3.5)
