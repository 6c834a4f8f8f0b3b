"""The outlook against examples reckoned by hand, and its laws."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.outlook import ahead, to_put_up
from pantry_tui.core.pace import Portion

TODAY = date(2026, 11, 25)


def by(weeks: int) -> date:
    return TODAY + timedelta(days=7 * weeks - 1)


def test_a_steady_week_lasts_to_the_harvest() -> None:
    found = ahead([Portion(10, None)], TODAY + timedelta(weeks=10), TODAY)
    assert found.rate == pytest.approx(1, rel=0.02)
    assert found.lost == 0 and found.runs_out is None


def test_what_is_eaten_too_slowly_is_lost_and_too_fast_runs_out() -> None:
    slow = ahead([Portion(10, by(4))], by(20), TODAY, eaten=1)
    assert slow.lost == pytest.approx(6)
    fast = ahead([Portion(10, None)], by(20), TODAY, eaten=2)
    assert fast.runs_out == TODAY + timedelta(days=4 * 7 + 6)
    assert fast.left == 0


def test_how_much_to_put_up_is_whole_containers() -> None:
    # 3 servings a week for 30 weeks and 4 people, 8 to a quart, 20 left over: 340 / 8 = 42.5.
    assert to_put_up(3, 30, 4, 8, 20) == 43
    assert to_put_up(1, 52, 1, 4, 100) == 0


stock = st.lists(
    st.builds(
        Portion,
        st.floats(0.5, 40),
        st.one_of(st.none(), st.integers(0, 400).map(lambda n: TODAY + timedelta(days=n))),
    ),
    min_size=1,
    max_size=10,
)


@given(stock, st.floats(0, 20))
def test_nothing_appears_and_nothing_vanishes(parts: list[Portion], eaten: float) -> None:
    found = ahead(parts, TODAY + timedelta(weeks=52), TODAY, eaten=eaten)
    whole = sum(one.servings for one in parts)
    consumed = whole - found.lost - found.left
    assert -1e-6 <= consumed <= eaten * len(found.supply) + 1e-6
    assert all(a >= b - 1e-9 for a, b in zip(found.supply, found.supply[1:], strict=False))


@given(stock, st.floats(0, 10), st.floats(0, 10))
def test_eating_faster_never_loses_more(parts: list[Portion], one: float, more: float) -> None:
    end = TODAY + timedelta(weeks=52)
    slow = ahead(parts, end, TODAY, eaten=one)
    fast = ahead(parts, end, TODAY, eaten=one + more)
    assert fast.lost <= slow.lost + 1e-6
