"""Power cuts of which not all is known, and of places that stand in one another."""

from __future__ import annotations

import pytest

from pantry_tui.core.keeping.power import Off, Struck, struck, united
from pantry_tui.core.keeping.weather import above
from pantry_tui.core.model import EVER, Cut, Held, Place, Read, When
from pantry_tui.core.words import Climate
from tests.core.keeping.test_power import (
    ALWAYS,
    NOW,
    at,
    blackout,
    cut,
    met,
    minutes,
    off,
    read,
    stood,
)
from tests.core.keeping.told import MADE, when

# -- several places, unknown hours, and what nobody can compare ------------------------------------


def some_hours(day: int, hours: float) -> Cut:
    """Only the day and the hours were recorded: at any time of it."""
    start = when(day, None)
    return Cut(start, When(start.first, start.last + round(hours * 60), start.day))


def test_some_hours_of_a_day_are_so_many_whenever_they_were() -> None:
    (found,) = met(some_hours(1, 3))
    assert (found.minutes, found.stayed) == (180, 180)
    assert (found.blackout.start, found.blackout.end) == (at(1, 0), at(2, 3) - 1)
    (left,) = met(some_hours(1, 3), spans=(stood(at(0, 8), at(1, 1)),))
    assert left.minutes == 60, "it may have begun at midnight"
    twice = (stood(at(0, 8), at(1, 12)), stood(at(1, 12)))
    assert [one.stayed for one in met(some_hours(1, 3), spans=twice)] == [180], "a stay in two"
    (now,) = met(some_hours(30, 20))
    assert now.minutes == 12 * 60, "no more than there was until now"


def test_a_cut_from_a_known_minute_to_nobody_knows_which_counts_to_the_last() -> None:
    end = Cut(when(1, 8), when(1, None))
    assert minutes(end) == [16 * 60 - 1]


def test_what_was_off_for_some_hours_was_off_at_any_time_of_them() -> None:
    vague = Off(0, 1440, 90, MADE, cut(1, 8, 1))
    known = off(2000, 2100)
    one = blackout(vague, known)
    assert one.off() == [(0, 2100)]
    assert one.minutes(0, 3000) == 190
    assert one.minutes(0, 60) == 60
    assert one.minutes(1400, 1440) == 40
    assert one.minutes(1500, 1600) == 0
    assert one.minutes(1500, 2050) == 50
    assert blackout(known).off() == [(2000, 2100)]


def test_each_minute_counts_once() -> None:
    assert united([(0, 200), (50, 100), (150, 300), (400, 390)]) == 300
    assert united([(5, 5), (5, 6)]) == 1
    assert united([(0, 1), (0, 2)]) == 2
    assert united([]) == 0


@pytest.mark.parametrize(
    ("facts", "found"),
    [
        # The longest of them says when they ended, not the last that began.
        ((cut(1, 8, 6), cut(1, 9, 1), cut(2, 13, 1)), [420]),
        # Only what was read between two keeps them apart.
        ((cut(1, 8, 3.5), cut(1, 12, 3.5), read(1, 16, 38.0)), [420]),
        ((read(1, 7, 38.0), cut(1, 8, 3.5), cut(1, 12, 3.5)), [420]),
        # Cold for what the place ever was.
        ((cut(1, 8, 3.5), read(1, 12.1, 38.0), cut(1, 12.5, 3.5),
          Held(when(5, 8), Climate.FREEZER, 0.0)), [420]),
        ((cut(1, 8, 3.5), read(1, 12.1, 28.0), cut(1, 12.5, 3.5),
          Held(when(5, 8), Climate.FREEZER, 0.0)), [210, 210]),
    ],
)  # fmt: skip
def test_what_keeps_two_cuts_apart(facts: tuple[Cut | Read | Held, ...], found: list[int]) -> None:
    assert minutes(*facts) == found


def test_two_cuts_of_the_same_minutes_of_which_one_knows_more_are_one() -> None:
    plain = cut(1, 8, 3)
    for more in (
        plain._replace(full=True),
        plain._replace(max_temp_f=45.0),
        plain._replace(ice=True),
    ):
        assert minutes(plain, more) == minutes(more, plain) == [180]
        (one,) = met(plain, more)
        (other,) = met(more, plain)
        assert one.blackout.pieces == other.blackout.pieces, "whichever was booked first"


def test_a_cut_read_cold_on_the_minute_of_its_end_was_none() -> None:
    (found,) = met(read(2, 12, 38.0), Cut(EVER, when(2, 12)))
    assert (found.blackout.start, found.minutes) == (at(2, 12), 0)
    (later,) = met(read(2, 12.1, 38.0), Cut(EVER, when(2, 12)))
    assert later.blackout.start == 0


def test_the_minute_on_which_it_comes_or_goes() -> None:
    dark = cut(1, 8, 9)
    assert met(dark, spans=(stood(at(1, 17)),)) == []
    assert [one.late for one in met(dark, spans=(stood(at(1, 8)),))] == [False]
    before = (stood(at(0, 8), at(1, 10)), stood(at(1, 10)))
    assert [one.late for one in met(dark, spans=before)] == [False]
    within = (stood(at(1, 14)), stood(at(1, 15), at(1, 16)))
    assert [one.stayed for one in met(dark, spans=within)] == [180]


def test_the_day_is_that_of_the_first_cut_and_of_the_first_stay() -> None:
    (found,) = met(cut(1, 20, 3), cut(2, 8, 3))
    assert found.day == when(1, 0).day
    stays = (stood(at(0, 8), at(2, 10)), stood(at(3, 8)))
    (twice,) = met(cut(1, 20, 60), spans=stays)
    assert twice.day == when(1, 0).day


def place(name: str, *facts: Cut | Read | Held, climate: Climate = Climate.FRIDGE,
          parent: str | None = None) -> Place:  # fmt: skip
    warm = 0.0 if climate is Climate.FREEZER else 38.0
    return Place(name, name, climate, parent, facts=(Held(EVER, climate, warm), *facts))


def test_a_cut_meets_what_stands_in_that_place_and_in_none_other() -> None:
    places = {"p": place("p", cut(1, 9, 3)), "q": place("q")}
    moved = (stood(at(0, 8), at(1, 8)), stood(at(1, 8))._replace(place="q"))
    assert list(struck(moved, places, NOW)) == []
    (found,) = struck(moved[::-1], {**places, "q": place("q", cut(2, 9, 3))}, NOW)
    assert found.blackout.start == at(2, 9)


ICE_BOX = stood(at(0, 10), None, Climate.FREEZER)


def box_met(box: Place, *outer: Cut | Read | Held) -> list[Struck]:
    """What an ice box in a refrigerator met."""
    places = {"p": box, "outer": place("outer", *outer)}
    return list(struck((ICE_BOX,), places, NOW))


def test_what_was_seen_in_a_refrigerator_says_nothing_of_its_ice_box() -> None:
    seen = Cut(when(1, 8), when(1, 20), True, 38.0, True)
    (found,) = box_met(place("p", climate=Climate.FREEZER, parent="outer"), seen)
    (piece,) = found.blackout.pieces
    assert (piece.cut.full, piece.cut.max_temp_f, piece.cut.ice) == (None, None, None)
    assert found.minutes == 12 * 60
    (own,) = box_met(place("p", seen, climate=Climate.FREEZER, parent="outer"))
    assert own.blackout.pieces[0].cut == seen
    shelf = {"p": place("p", parent="outer"), "outer": place("outer", seen)}
    (of_shelf,) = struck((ALWAYS,), shelf, NOW)
    assert of_shelf.blackout.pieces[0].cut == seen, "a shelf is as its refrigerator"


def test_only_what_was_read_in_the_place_itself_keeps_cuts_apart() -> None:
    two = (cut(1, 8, 3.5), cut(1, 12.5, 3.5))
    for warm, found in ((38.0, [420]), (0.0, [210, 210])):
        own = place("p", read(1, 12.1, warm), climate=Climate.FREEZER, parent="outer")
        assert [one.minutes for one in box_met(own, *two)] == found
    around = place("p", climate=Climate.FREEZER, parent="outer")
    assert [one.minutes for one in box_met(around, *two, read(1, 12.1, 0.0))] == [420]


def test_places_that_stand_in_each_other_are_gone_round_once() -> None:
    places = {"p": place("p", cut(1, 8, 3), parent="q"), "q": place("q", parent="p")}
    assert [one.id for one in above("p", places)] == ["p", "q"]
    assert [one.minutes for one in struck((ALWAYS,), places, NOW)] == [180]
