"""How a published quality life is spent, place by place: reckoned by hand, and laws."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.quality import Spent, Stretch, end_of, spending
from pantry_tui.core.keeping.rules import Rule, Status
from pantry_tui.core.keeping.warmth import Life
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN
from pantry_tui.core.words import Climate, Kind, Method, State, Trust

MADE = date(2026, 3, 1)
START = MADE.toordinal() * DAY_MIN


def rule(days: float, name: str = "") -> Rule:
    return Rule(
        name or f"r{days:g}", Method.DRIED, "*", State.SEALED, frozenset({Climate.PANTRY}),
        Kind.QUALITY, days, days, days, "days", None, Status.CURRENT, "", "", Trust.READ,
    )  # fmt: skip


def stretch(begin: float, end: float | None, days: float, share: float = 1.0) -> Stretch:
    """From one day after `MADE` to another (None: from then on), under a life of so many days."""
    first = START + round(begin * DAY_MIN)
    last = FOREVER if end is None else START + round(end * DAY_MIN)
    return Stretch(first, last, MADE + timedelta(days=int(begin // 1)), Life(rule(days), share))


def last(*stretches: Stretch) -> int | None:
    """The last good day, counted from `MADE`."""
    found = end_of(stretches)
    return None if found is None else (found.day - MADE).days


def test_in_one_place_it_is_the_published_life() -> None:
    assert last(stretch(0, None, 100)) == 100
    assert last(stretch(0.4, None, 100)) == 100, "from the day, whatever the hour"
    assert last() is None


def test_half_a_life_in_one_place_leaves_half_in_the_next() -> None:
    assert last(stretch(0, 50, 100), stretch(50, None, 40)) == 70
    assert last(stretch(50, None, 40), stretch(0, 50, 100)) == 70
    found = list(spending([stretch(0, 50, 100), stretch(50, None, 40)]))
    assert [one.before for one in found] == [0.0, pytest.approx(0.5)]
    assert [(one.day - MADE).days for one in found] == [100, 70]


def test_a_share_of_a_life_is_spent_so_much_faster() -> None:
    assert last(stretch(0, None, 100, 0.25)) == 25
    assert last(stretch(0, 10, 100, 0.25), stretch(10, None, 100)) == 70
    assert last(stretch(0.5, 10.5, 100), stretch(10.5, None, 100, 0.5)) == 55


def test_what_is_spent_does_not_come_back() -> None:
    assert last(stretch(0, 100, 50), stretch(100, None, 1000)) == 50
    assert last(stretch(0, 50, 50), stretch(50, None, 1000)) == 50
    assert last(stretch(0, 100, 50), stretch(100, 200, 10), stretch(200, None, 1000)) == 50


def test_a_life_of_no_days_is_spent_at_once() -> None:
    assert last(stretch(0, 3, 0), stretch(3, None, 100)) == 0


def test_a_move_that_changes_nothing_changes_no_date() -> None:
    assert last(stretch(0, 33.3, 100), stretch(33.3, None, 100)) == 100
    assert len(list(spending([stretch(0, 33.3, 100), stretch(33.3, None, 100)]))) == 1
    apart = [stretch(0, 30, 100), stretch(40, None, 100)]
    assert len(list(spending(apart))) == 2


def test_where_several_may_have_been_the_shortest_counts_for_as_long() -> None:
    """At an unknown hour of days 10 to 20 it went from one place to a worse one."""
    assert last(stretch(0, 20, 100), stretch(10, None, 50)) == 55
    assert last(stretch(0, None, 100), stretch(10, 20, 50)) == 90
    same = [stretch(0, 20, 100), stretch(10, None, 100)]
    assert last(*same) == 100


def test_what_is_left_counts_from_the_hour_of_its_move() -> None:
    # 10.75 of 100 days are spent, 0.8925 of 41 are left: 36.6 days from 18:00 of the tenth on.
    assert last(stretch(0, 10.75, 100), stretch(10.75, None, 41)) == 47
    assert last(stretch(0.75, None, 100, 0.36)) == 36, "whole days from the day it was made"


def test_what_is_left_ends_at_its_minute_and_not_a_minute_later() -> None:
    # Of 100 days ten are spent, and from midnight on 36.9 are left; then all but a minute of 37.
    assert last(stretch(0, 10, 100), stretch(10, None, 41)) == 46
    assert last(stretch(0, 10, 100), stretch(10, None, 100, 0.411105)) == 46
    assert last(stretch(0, 95, 100), stretch(95, None, 100, 0.5)) == 97, "a twentieth of 50 days"


def test_of_its_day_no_more_is_lived_than_its_own_clock_says() -> None:
    early = START + 50 * DAY_MIN - 90  # by a clock in the east it is the fiftieth day already
    east = stretch(50, None, 40, 0.998766)._replace(start=early)
    assert last(stretch(0, 50, 100)._replace(end=early), east) == 70, "20.0003 days are left"
    west = stretch(10, None, 100, 0.500011)._replace(day=MADE + timedelta(days=9))
    assert last(stretch(0, 10, 100), west) == 55, "45.001 days from the last minute of the ninth"


def test_the_last_day_is_the_one_within_which_it_ends() -> None:
    assert last(stretch(0, None, 91, 0.9)) == 81, "81.9 days"
    assert last(stretch(0, None, 100, 0.29)) == 29
    assert last(stretch(0, 0.25, 1, 0.5), stretch(0.25, None, 100)) == 50


def test_what_ended_a_life_is_named_and_not_what_came_after() -> None:
    spent = end_of([stretch(0, 50, 50), stretch(50, None, 1000)])
    assert spent is not None
    assert (spent.rule.id, spent.before) == ("r50", 0.0)
    assert last(stretch(0, 75, 50), stretch(75, None, 1000)) == 50


def test_what_may_have_been_warm_is_held_to_the_warm_life_and_not_to_its_figure() -> None:
    both = [stretch(0, None, 100, 0.25), stretch(0, None, 50)]
    assert last(*both) == last(*both[::-1]) == 25
    short = [stretch(0, 10, 100), stretch(0, 10, 50), stretch(10, None, 50)]
    assert last(*short) == 50


def test_its_day_is_that_of_its_own_clock() -> None:
    """Put up at half past midnight two hours east of the minutes: on the next day there."""
    east = stretch(0, None, 10)._replace(start=START - 90)
    found = end_of([east])
    assert found is not None
    assert found.day == MADE + timedelta(days=10)
    west = stretch(0, 10, 100)._replace(end=START + 10 * DAY_MIN)
    later = stretch(10, None, 100, 0.5)._replace(day=MADE + timedelta(days=9))
    moved = end_of([west, later])
    assert moved is not None
    assert (moved.day - MADE).days == 54, "late on the ninth, with 45 days left"


lives = st.lists(
    st.tuples(st.integers(1, 30), st.integers(5, 200), st.sampled_from([1.0, 0.5, 0.25])),
    min_size=1,
    max_size=5,
)


def chained(parts: list[tuple[int, int, float]]) -> list[Stretch]:
    found, at = [], 0
    for n, (length, days, share) in enumerate(parts):
        end = None if n == len(parts) - 1 else at + length
        found.append(stretch(at, end, days, share))
        at += length
    return found


def final(stretches: list[Stretch]) -> Spent:
    found = end_of(stretches)
    assert found is not None
    return found


@given(lives)
def test_no_place_gives_more_than_the_best_or_less_than_the_worst(
    parts: list[tuple[int, int, float]],
) -> None:
    wholes = [days * share for _, days, share in parts]
    found = (final(chained(parts)).day - MADE).days
    assert min(wholes) - 1 <= found <= max(wholes) + 1


@given(lives, st.integers(0, 4), st.floats(0.1, 0.9))
def test_splitting_a_stay_changes_nothing(
    parts: list[tuple[int, int, float]], which: int, where: float
) -> None:
    whole = chained(parts)
    one = whole[which % len(whole)]
    end = one.end if one.end < FOREVER else one.start + 40 * DAY_MIN
    cut = one.start + round((end - one.start) * where)
    day = MADE + timedelta(days=(cut - START) // DAY_MIN)
    split = [
        *whole[: which % len(whole)],
        one._replace(end=cut),
        one._replace(start=cut, day=day),
        *whole[which % len(whole) + 1 :],
    ]
    assert final(split).day == final(whole).day


@given(lives, st.integers(5, 200))
def test_a_worse_last_place_never_lengthens(parts: list[tuple[int, int, float]], days: int) -> None:
    better = chained(parts)
    length, other, share = parts[-1]
    worse = chained([*parts[:-1], (length, min(days, other), share)])
    assert final(worse).day <= final(better).day
