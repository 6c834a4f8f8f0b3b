"""How warm a place may have been, minute by minute, from what was said and read of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.weather import (
    FOREVER,
    Fact,
    around,
    too_warm,
    warmth_f,
    weather,
)
from pantry_tui.core.model import DAY_MIN, EVER, Cut, Held, Place, Read, When, no_later
from pantry_tui.core.words import Climate
from tests.core.keeping.told import MADE, when

FRIDGE, FREEZER, ROOM = Climate.FRIDGE, Climate.FREEZER, Climate.ROOM
START = MADE.toordinal() * DAY_MIN
NOW = when(30, 12)
COLD = Held(EVER, FRIDGE, 38.0)


def read(day: int, hour: float | None, warm: float, since: int | None = None) -> Read:
    return Read(when(day, hour), warm, None, since)


def held(day: int, hour: float | None, climate: Climate, warm: float) -> Held:
    return Held(when(day, hour), climate, warm)


def place(*facts: Fact, name: str = "p", parent: str | None = None) -> Place:
    def order(one: Fact) -> tuple[int, int, bool]:
        then = one.start if isinstance(one, Cut) else one.when
        return then.first, then.last, not isinstance(one, Held)

    climate = next(one.climate for one in facts if isinstance(one, Held))
    return Place(name, name, climate, parent, facts=tuple(sorted(facts, key=order)))


Told = tuple[float | None, float | None, float]


def told(*facts: Fact, now: When = NOW) -> list[Told]:
    """(hours after the first midnight from, until, °F); None: ever, for ever."""
    return [
        (
            None if one.start < START - 10 * DAY_MIN else (one.start - START) / 60,
            None if one.end >= FOREVER else (one.end - START) / 60,
            one.temperature_f,
        )
        for one in weather("p", {"p": place(*facts)}, now)
    ]


def test_a_place_that_nobody_knows_or_said_anything_of_counts_as_a_room() -> None:
    (nowhere,) = weather("p", {}, NOW)
    assert (nowhere.climate, nowhere.temperature_f) == (ROOM, 70.0)
    (bare,) = weather("p", {"p": Place("p", "p", FRIDGE)}, NOW)
    assert bare.climate is ROOM
    inner = {"p": Place("p", "p", FRIDGE, "outer"), "outer": replace(place(COLD), id="outer")}
    assert [one.climate for one in weather("p", inner, NOW)] == [ROOM]


def test_what_a_place_was_set_to_holds_until_it_is_set_anew() -> None:
    assert told(COLD) == [(None, None, 38.0)]
    assert told(COLD, held(2, 8, FRIDGE, 34.0)) == [(None, 56.0, 38.0), (56.0, None, 34.0)]


def test_a_cold_reading_counts_from_its_minute_on() -> None:
    assert told(COLD, read(2, 8, 36.0)) == [(None, 56.0, 38.0), (56.0, None, 36.0)]


def test_a_warm_one_counts_from_as_long_before_as_it_had_been_so() -> None:
    found = told(COLD, read(2, 8, 45.0, 90))
    assert (54.5, None, 45.0) in found
    assert (None, 56.0, 38.0) in found


def test_since_nobody_knows_when_is_since_the_last_cold_reading_not_the_thermostat() -> None:
    warm = [one for one in told(COLD, read(1, 8, 38.0), read(2, 8, 45.0)) if one[2] == 45.0]
    assert warm == [(32.0, None, 45.0)]
    never = [one for one in told(COLD, read(2, 8, 45.0)) if one[2] == 45.0]
    assert never == [(None, None, 45.0)]
    twice = told(COLD, read(1, 8, 45.0), read(2, 8, 50.0))
    assert (None, None, 50.0) in twice, "the first of them was not cold"
    set_since = told(COLD, held(1, 8, FRIDGE, 36.0), read(2, 8, 45.0))
    assert (None, None, 45.0) in set_since


def test_what_was_too_warm_since_nobody_knows_when_may_have_frozen_before() -> None:
    """So what it froze may have thawed: the warmth begins anew behind the cold."""
    found = told(Held(EVER, ROOM, 70.0), held(1, 8, FREEZER, 0.0), read(2, 8, 40.0))
    cold = found.index((32.0, 56.0, 0.0))
    assert (32.0, None, 40.0) in found[cold:]


def test_what_was_asked_of_a_later_day_is_not_said_of_an_earlier_one() -> None:
    """A reading of a wrong clock counts as now until its day comes, whichever is asked first."""
    there = place(COLD, read(900, 8, 45.0, 60))
    now = read(3, 8, 0.0).when

    def then(when: When) -> list[tuple[int, float]]:
        return [(one.start, one.temperature_f) for one in weather("p", {"p": there}, when)]

    later = then(read(901, 8, 0.0).when)
    assert then(now) != later
    assert then(now) == [
        (one.start, one.temperature_f)
        for one in weather("p", {"p": place(COLD, read(900, 8, 45.0, 60))}, now)
    ]
    assert then(read(901, 8, 0.0).when) == later


def test_a_warm_reading_ends_with_the_next_cold_one() -> None:
    found = told(COLD, read(1, 8, 38.0), read(2, 8, 45.0), read(3, 8, 38.0))
    assert [one for one in found if one[2] == 45.0] == [(32.0, 80.0, 45.0)]


def test_a_warm_reading_does_not_end_with_the_thermostat() -> None:
    """It is as warm as it was read until it is read again, or is another place."""

    def warm(*facts: Fact) -> list[Told]:
        return [one for one in told(COLD, read(1, 8, 45.0, 0), *facts) if one[2] == 45.0]

    assert warm(held(1, 9, FRIDGE, 34.0)) == [(32.0, None, 45.0)]
    assert warm(held(1, 9, FRIDGE, 34.0), read(2, 8, 38.0)) == [(32.0, 56.0, 45.0)]
    assert warm(held(1, 9, FRIDGE, 34.0), read(2, None, 38.0)) == [(32.0, 72 - 1 / 60, 45.0)]
    assert warm(held(1, 9, Climate.PANTRY, 60.0)) == [(32.0, 33.0, 45.0)]
    assert set(warm(held(1, 8, Climate.PANTRY, 60.0))) == {(32.0, None, 45.0)}, "in one minute"
    assert (33.0, None, 34.0) in told(COLD, read(1, 8, 45.0, 0), held(1, 9, FRIDGE, 34.0))
    freezer = told(Held(EVER, FREEZER, 0.0), read(1, 8, 45.0, 0), held(1, 9, FREEZER, -5.0))
    assert (32.0, None, 45.0) in freezer


def test_a_warm_refrigerator_that_is_called_a_freezer_is_as_warm_until_it_is_read() -> None:
    def warm(*facts: Fact) -> list[Told]:
        return [one for one in told(COLD, read(1, 8, 45.0, 0), *facts) if one[2] == 45.0]

    became = held(1, 9, FREEZER, 0.0)
    assert warm(became) == [(32.0, 33.0, 45.0), (33.0, None, 45.0)]
    assert warm(became, read(2, 8, 0.0)) == [(32.0, 33.0, 45.0), (33.0, 56.0, 45.0)]
    assert warm(became, held(2, 8, FREEZER, -5.0))[-1] == (56.0, None, 45.0)
    assert warm(became, held(2, 8, ROOM, 70.0)) == [(32.0, 33.0, 45.0), (33.0, 56.0, 45.0)]
    # What is too warm for a freezer may be no more than cold in a refrigerator.
    thawed = told(Held(EVER, FREEZER, 0.0), read(1, 8, 36.0, 0), held(1, 9, FRIDGE, 38.0))
    assert (32.0, 33.0, 36.0) in thawed
    assert not [one for one in thawed if one[0] == 33.0 and one[2] == 36.0]


@pytest.mark.parametrize(
    ("climate", "warm", "too"),
    [(FRIDGE, 40.0, False), (FRIDGE, 40.1, True), (FREEZER, 28.0, False), (FREEZER, 28.1, True),
     (ROOM, 99.0, False), (Climate.CELLAR, 60.0, False)],
)  # fmt: skip
def test_when_a_place_does_not_hold_the_cold(climate: Climate, warm: float, too: bool) -> None:
    assert too_warm(climate, warm) is too


def test_a_freezer_that_was_read_too_warm_may_have_frozen_again() -> None:
    found = told(Held(EVER, FREEZER, 0.0), read(1, 8, 0.0), read(2, 8, 40.0, 60))
    assert (56.0, None, 0.0) in found
    assert (55.0, None, 40.0) in found
    warm_set = told(Held(EVER, FREEZER, 33.0), read(2, 8, 40.0, 60))
    assert (56.0, None, 33.0) not in warm_set, "set too warm, it never froze"
    assert (None, None, 33.0) in warm_set


def test_a_fridge_that_is_set_too_warm_is_not_cold_for_having_been_read_cold_once() -> None:
    found = told(Held(EVER, FRIDGE, 45.0), read(2, 8, 38.0))
    assert (None, None, 45.0) in found
    assert (56.0, None, 38.0) in found


def test_of_two_readings_in_one_minute_either_may_be_the_later() -> None:
    found = told(COLD, read(2, 8, 36.0), read(2, 8, 34.0))
    assert {one for one in found if one[2] != 38.0} == {(56.0, None, 36.0), (56.0, None, 34.0)}


def test_a_reading_of_an_unknown_hour_and_what_was_before_both_stand_for_its_day() -> None:
    found = told(COLD, read(2, None, 36.0))
    assert found == [(None, 72.0 - 1 / 60, 38.0), (48.0, None, 36.0)]


def test_a_moment_still_to_come_counts_as_now() -> None:
    now = when(2, 8)
    assert told(COLD, read(700, 8, 36.0), now=now) == [(None, 56.0, 38.0), (56.0, None, 36.0)]
    assert no_later(when(1, 8), now) == when(1, 8)
    ahead = no_later(when(2, None), now)
    assert (ahead.first, ahead.last, ahead.day) == (START + 2 * DAY_MIN, now.last, now.day)


def test_a_reading_that_changes_nothing_is_no_news() -> None:
    same = weather("p", {"p": place(COLD, read(1, 8, 36.0), read(2, 8, 36.0))}, NOW)
    assert [(one.temperature_f, one.measured) for one in same] == [(38.0, False), (36.0, True)]


def test_set_cold_and_read_cold_it_is_kept_steadily_so() -> None:
    def steady(target: float) -> bool:
        facts = place(Held(EVER, FRIDGE, target), read(1, 8, 34.0))
        return weather("p", {"p": facts}, NOW)[-1].steady

    assert steady(37.0)
    assert not steady(38.0)


# -- shelves ---------------------------------------------------------------------------------------


def shelf(*facts: Fact) -> Place:
    return place(*(facts or (COLD,)), name="shelf", parent="p")


def of_shelf(inner: Place, outer: Place) -> set[float]:
    return {one.temperature_f for one in weather("shelf", {"shelf": inner, "p": outer}, NOW)}


def test_what_was_read_in_a_refrigerator_holds_for_its_shelves() -> None:
    assert of_shelf(shelf(), place(COLD, read(2, 8, 45.0, 60))) == {38.0, 45.0}
    assert of_shelf(shelf(), place(COLD, read(2, 8, 34.0))) == {38.0, 34.0}


def test_a_shelf_with_readings_of_its_own_hears_of_the_warm_ones_only() -> None:
    own = shelf(COLD, read(1, 8, 36.0))
    assert of_shelf(own, place(COLD, read(2, 8, 34.0))) == {38.0, 36.0}
    assert of_shelf(own, place(COLD, read(2, 8, 45.0, 60))) == {38.0, 36.0, 45.0}


def test_a_place_of_another_climate_around_it_says_nothing_of_it() -> None:
    room = place(Held(EVER, ROOM, 70.0), read(2, 8, 90.0))
    assert of_shelf(shelf(), room) == {38.0}
    places = {"shelf": shelf(), "p": room}
    assert [one.id for one in around("shelf", places)] == ["shelf"]


def test_places_that_stand_in_each_other_are_gone_round_once() -> None:
    a, b = replace(shelf(), id="a", parent="b"), replace(shelf(), id="b", parent="a")
    assert [one.id for one in around("a", {"a": a, "b": b})] == ["a", "b"]
    assert around("nowhere", {}) == []


# -- laws ------------------------------------------------------------------------------------------

moments = st.tuples(st.integers(0, 4), st.sampled_from([8.0, 8.0, 12.0, None]))
facts = st.lists(
    st.one_of(
        st.builds(
            lambda at, warm, since: read(at[0], at[1], warm, since),
            moments,
            st.sampled_from([0.0, 36.0, 38.0, 45.0]),
            st.sampled_from([None, 60]),
        ),
        st.builds(
            lambda at, climate, warm: held(at[0], at[1], climate, warm),
            moments,
            st.sampled_from([FRIDGE, FREEZER]),
            st.sampled_from([0.0, 36.0, 45.0]),
        ),
    ),
    max_size=4,
)


@given(facts, st.randoms(use_true_random=False))
def test_the_order_in_which_facts_are_told_says_nothing(some: list[Fact], random: object) -> None:
    other = some[:]
    random.shuffle(other)  # type: ignore[attr-defined]
    assert sorted(told(COLD, *some), key=str) == sorted(told(COLD, *other), key=str)


@given(facts)
def test_at_every_minute_something_is_known(some: list[Fact]) -> None:
    spells = weather("p", {"p": place(COLD, *some)}, NOW)
    for minute in range(0, 6 * 24 * 60, 97):
        assert any(one.start <= START + minute <= one.end for one in spells)


@given(facts, st.integers(0, 4), st.sampled_from([8.0, 10.0, 12.0]))
def test_a_warm_reading_stands_whatever_else_was_said(
    some: list[Fact], day: int, hour: float
) -> None:
    after = weather("p", {"p": place(COLD, *some, read(day, hour, 50.0, 30))}, NOW)
    minute = when(day, hour).first
    assert max(one.temperature_f for one in after if one.start <= minute <= one.end) >= 50.0


def test_days_are_those_of_the_facts() -> None:
    found = weather("p", {"p": place(COLD, read(1, 8, 38.0), read(2, 8, 45.0, 60))}, NOW)
    warm = next(one for one in found if one.temperature_f == 45.0)
    assert warm.day == MADE + timedelta(days=2)
    late = weather("p", {"p": place(COLD, read(1, 8, 38.0), read(2, 0.5, 45.0, 60))}, NOW)
    assert next(one for one in late if one.temperature_f == 45.0).day == MADE + timedelta(days=1)
    assert found[0].day == date.min


def test_so_warm_for_so_long_reaches_back_before_it_was_changed_into_a_warm_place() -> None:
    """Read 50 °F for two hours in what was a refrigerator until an hour ago."""
    facts = (COLD, held(0, 9, Climate.PANTRY, 60.0), read(0, 10, 50.0, 120))
    assert (8.0, 9.0, 50.0) in told(*facts)
    assert (8.0, 9.0, 50.0) not in told(COLD, facts[1], read(0, 10, 50.0, 30))


def test_a_pantry_s_reading_of_no_told_time_says_nothing_of_the_freezer_it_was() -> None:
    """Nobody is asked since when a pantry holds 50 °F: our choice, as what moved out of a freezer
    that was given up would else be discarded for the first reading of it as a pantry."""
    made = held(0, 9, Climate.PANTRY, 60.0)
    found = told(Held(EVER, FREEZER, 0.0), made, read(0, 10, 50.0))
    assert found[:2] == [(None, 9.0, 0.0), (9.0, 10.0, 60.0)]
    assert (None, None, 50.0) not in found
    # Of an unknown hour it may have been read while it still was one, so it counts.
    vague = told(Held(EVER, FREEZER, 0.0), made, read(0, None, 50.0))
    assert any(warm == 50.0 and start is None for start, _, warm in vague)


def test_a_shelf_with_no_reading_of_its_own_is_as_warm_as_its_room_was_read() -> None:
    def place(id_: str, parent: str | None, *temps: float) -> Place:
        held = Held(EVER, Climate.PANTRY, 60.0)
        read = [Read(when(day, 12), temp_f) for day, temp_f in enumerate(temps, 1)]
        return Place(id_, id_, Climate.PANTRY, parent, facts=(held, *read))

    room, shelf = place("room", None, 50, 88), place("shelf", "room")
    places = {one.id: one for one in (room, shelf)}
    assert warmth_f("shelf", places) == 88
    own = places | {"shelf": place("shelf", "room", 71)}
    assert warmth_f("shelf", own) == 71
    cold = places | {"room": replace(room, climate=Climate.CELLAR)}
    assert warmth_f("shelf", cold) == warmth_f("nowhere", places) == 60
