"""For how long a place had no power, and what of that met a container: by hand, and laws."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.power import Blackout, Off, Struck, struck
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, EVER, Cut, Held, Place, Read, When
from pantry_tui.core.words import Climate
from tests.core.keeping.told import MADE, when

START = MADE.toordinal() * DAY_MIN
NOW = when(30, 12)
COLD = Held(EVER, Climate.FRIDGE, 38.0)


def cut(day: int, hour: float | None, hours: float) -> Cut:
    start = when(day, hour)
    longer = round(hours * 60)
    return Cut(start, When(start.first + longer, start.last + longer, start.day))


def read(day: int, hour: float, warm: float) -> Read:
    return Read(when(day, hour), warm)


def at(day: int, hour: float) -> int:
    return START + day * DAY_MIN + round(hour * 60)


def stood(begin: int, end: int | None = None, climate: Climate = Climate.FRIDGE) -> Span:
    last = FOREVER if end is None else end
    day = date.fromordinal(begin // DAY_MIN)
    return Span(begin, last, day, "p", climate, 38.0, False, False, False, None, False,
                False, False)  # fmt: skip


ALWAYS = stood(at(0, 10))


def met(*facts: Cut | Read | Held, spans: tuple[Span, ...] = (ALWAYS,)) -> list[Struck]:
    def order(one: Cut | Read | Held) -> tuple[int, int]:
        then = one.start if isinstance(one, Cut) else one.when
        return then.first, then.last

    place = Place("p", "p", Climate.FRIDGE, facts=tuple(sorted((COLD, *facts), key=order)))
    return list(struck(spans, {"p": place}, NOW))


def minutes(*facts: Cut | Read | Held, spans: tuple[Span, ...] = (ALWAYS,)) -> list[int]:
    return [one.minutes for one in met(*facts, spans=spans)]


# -- which cuts are one ----------------------------------------------------------------------------


def test_a_place_without_a_cut_was_never_without_power() -> None:
    assert met() == []
    assert met(read(2, 8, 38.0)) == []


@pytest.mark.parametrize(
    ("facts", "found"),
    [
        ((cut(1, 8, 3.5),), [210]),
        # Within a day of each other they add up, since nobody knows how soon it is cold again.
        ((cut(1, 8, 3.5), cut(1, 12, 3.5)), [420]),
        ((cut(1, 8, 3), cut(2, 11, 3)), [360]),
        ((cut(1, 8, 3), cut(2, 11.1, 3)), [180, 180]),
        # Read cold in between, when the food has had time to follow, they do not.
        ((cut(1, 8, 3.5), read(1, 12.25, 38.0), cut(1, 13, 3.5)), [210, 210]),
        ((cut(1, 8, 3.5), read(1, 12.25, 45.0), cut(1, 13, 3.5)), [420]),
        ((cut(1, 8, 3.5), read(1, 12, 38.0), cut(1, 13, 3.5)), [420]),
        ((cut(1, 8, 3.5), read(1, 11.5, 38.0), cut(1, 13, 3.5)), [420]),
        ((cut(1, 8, 3.5), read(1, 13, 38.0), cut(1, 13, 3.5)), [420]),
        ((cut(1, 8, 3.5), read(1, 11, 38.0), cut(1, 12, 3.5)), [420]),
        # What overlaps counts once.
        ((cut(1, 8, 3), cut(1, 9, 3)), [240]),
        ((cut(1, 8, 6), cut(1, 9, 1)), [360]),
        ((cut(1, 8, 6), cut(1, 9, 1), cut(1, 14, 1)), [420]),
    ],
)
def test_cuts_that_follow_one_another_add_up(
    facts: tuple[Cut | Read, ...], found: list[int]
) -> None:
    assert minutes(*facts) == found
    assert minutes(*reversed(facts)) == found


def test_a_cut_since_nobody_knows_when_began_after_it_was_last_read_cold() -> None:
    since = Cut(EVER, when(2, 12))
    (known,) = met(read(1, 8, 38.0), read(1, 20, 38.0), read(2, 13, 38.0), since)
    assert (known.blackout.start, known.blackout.end) == (at(1, 20), at(2, 12))
    (never,) = met(since)
    assert never.blackout.start == 0
    assert never.minutes == at(2, 12), "as long as anybody can think of"
    (warm,) = met(read(1, 20, 45.0), since)
    assert warm.blackout.start == 0
    (set_cold,) = met(Held(when(1, 20), Climate.FRIDGE, 36.0), since)
    assert set_cold.blackout.start == 0, "that it was set to be cold shows nothing"


def test_a_cut_still_to_come_counts_as_now() -> None:
    assert minutes(cut(40, 8, 3)) == [180], "it ended just now, and was as long"
    (running,) = met(cut(30, 10, 9))
    assert running.minutes == 120


# -- what of it met the container ------------------------------------------------------------------


def test_what_was_not_there_was_not_met() -> None:
    assert minutes(cut(1, 8, 3), spans=(stood(at(2, 8)),)) == []
    assert minutes(cut(1, 8, 3), spans=(stood(at(0, 8), at(1, 8)),)) == []
    assert minutes(cut(1, 8, 3), spans=(stood(at(0, 8), None, Climate.ROOM),)) == []


def test_what_left_before_the_end_was_met_until_it_left() -> None:
    (found,) = met(cut(1, 8, 9), spans=(stood(at(0, 8), at(1, 10)),))
    assert (found.minutes, found.late) == (120, False)


def test_what_came_while_it_was_off_is_told_how_long_it_was_there() -> None:
    (found,) = met(cut(1, 8, 9), spans=(stood(at(1, 16)),))
    assert (found.minutes, found.late, found.stayed) == (540, True, 60)
    assert found.times == [(at(1, 16), at(1, 17))]
    (twice,) = met(cut(1, 8, 9), spans=(stood(at(1, 14), at(1, 15)), stood(at(1, 16))))
    assert twice.stayed == 120
    (beside,) = met(cut(1, 8, 9), spans=(stood(at(1, 14), at(1, 16)), stood(at(1, 15))))
    assert beside.stayed == 180, "each minute once"


def test_the_day_is_the_first_on_which_both_were_there() -> None:
    (found,) = met(cut(0, 20, 40), spans=(stood(at(1, 16)),))
    assert found.day == when(1, 0).day
    (before,) = met(cut(1, 20, 4))
    assert before.day == when(1, 0).day


# -- one blackout ----------------------------------------------------------------------------------


def off(start: int, end: int) -> Off:
    return Off(start, end, end - start, MADE, cut(1, 8, 1))


def blackout(*pieces: Off) -> Blackout:
    return Blackout(pieces, min(p.start for p in pieces), max(p.end for p in pieces), MADE)


def test_how_long_it_may_have_been_off_at_most() -> None:
    one = blackout(off(0, 100), off(50, 150))
    assert one.minutes(0, 150) == 150
    assert one.minutes(80, 120) == 40
    assert one.minutes(150, 200) == 0


pieces = st.lists(st.tuples(st.integers(0, 300), st.integers(1, 90)), min_size=1, max_size=5)


@given(pieces, st.integers(0, 400), st.integers(0, 200))
def test_a_blackout_counts_as_one_would_on_a_clock(
    begun: list[tuple[int, int]], start: int, length: int
) -> None:
    one = blackout(*(off(first, first + long) for first, long in begun))
    dark = {minute for first, long in begun for minute in range(first, first + long)}
    assert one.minutes(start, start + length) == len(dark & set(range(start, start + length)))


@given(pieces, pieces)
def test_more_cuts_are_never_less_dark(
    some: list[tuple[int, int]], more: list[tuple[int, int]]
) -> None:
    few = blackout(*(off(first, first + long) for first, long in some))
    many = blackout(*(off(first, first + long) for first, long in [*some, *more]))
    assert many.minutes(0, 500) >= few.minutes(0, 500)


# -- how long a shut door holds --------------------------------------------------------------------


@pytest.mark.parametrize(
    ("off", "minutes", "until"),
    [
        ([(0, 300)], 240, 240), ([(0, 100)], 240, 100),
        # Power that came on in between brings none of them back.
        ([(0, 100), (200, 300)], 150, 250), ([(0, 100), (200, 300), (400, 500)], 250, 450),
        # What overlaps, or lies within another, counts once.
        ([(0, 100), (50, 150)], 120, 120), ([(0, 100), (20, 50), (120, 200)], 150, 170),
        ([(0, 100), (20, 50), (60, 90), (120, 200)], 101, 121),
    ],
)  # fmt: skip
def test_the_hours_of_a_shut_door_are_counted_over_all_cuts(
    off: list[tuple[int, int]], minutes: int, until: int
) -> None:
    start = when(1, 8).first
    pieces = tuple(
        Off(start + a, start + b, b - a, when(1, 8).day, Cut(when(1, 8), when(1, 9)))
        for a, b in off
    )
    end = max(b for _, b in off)
    whole = Blackout(pieces, start, start + end, when(1, 8).day)
    assert whole.held_until(minutes) == start + until
