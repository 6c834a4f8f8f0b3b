"""Weather where hours, climates and places are not plain."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.weather import (
    FOREVER,
    Fact,
    OfFacts,
    Weather,
    _Change,
    _ends,
    weather,
)
from pantry_tui.core.model import EVER, Held, Place, When
from pantry_tui.core.words import Climate
from tests.core.keeping.test_weather import (
    COLD,
    FREEZER,
    FRIDGE,
    NOW,
    ROOM,
    held,
    place,
    read,
    told,
)
from tests.core.keeping.told import MADE, when


def pieces(*facts: Fact, warm: float) -> set[Climate]:
    """The climates for which so much was said."""
    found = weather("p", {"p": place(*facts)}, NOW)
    return {one.climate for one in found if one.temperature_f == warm}


def test_the_order_in_which_facts_are_kept_does_not_matter() -> None:
    facts: list[Fact] = [
        COLD,
        read(1, None, 36.0),
        read(1, 8, 37.0),
        read(2, 8, 45.0),
        read(2, None, 39.0),
    ]
    plain = weather("p", {"p": place(*facts)}, NOW)
    for seed in range(12):
        mixed = Random(seed).sample(facts, len(facts))
        assert weather("p", {"p": Place("p", "p", FRIDGE, facts=tuple(mixed))}, NOW) == plain


def test_what_the_place_around_it_is_set_to_says_nothing_of_it() -> None:
    places = {
        "p": place(COLD, parent="q"),
        "q": place(Held(EVER, FRIDGE, 45.0), name="q"),
    }
    assert [one.temperature_f for one in weather("p", places, NOW)] == [38.0]


def test_a_reading_speaks_for_the_climate_that_the_place_had_then() -> None:
    was, became = Held(EVER, ROOM, 70.0), held(2, 8, FRIDGE, 38.0)
    assert pieces(was, became, read(1, 8, 45.0, 0), warm=45.0) == {ROOM}
    assert pieces(was, became, read(3, 8, 45.0, 0), warm=45.0) == {FRIDGE}
    assert pieces(was, became, read(2, 8, 45.0, 0), warm=45.0) == {ROOM, FRIDGE}, "in that minute"
    assert pieces(was, became, read(2, None, 45.0, 0), warm=45.0) == {ROOM, FRIDGE}, "on that day"


def test_a_cold_reading_of_a_freezer_promises_no_more_than_it_says() -> None:
    assert told(Held(EVER, FREEZER, 0.0), read(2, 8, 10.0)) == [
        (None, 56.0, 0.0),
        (56.0, None, 10.0),
    ]


def test_the_same_read_again_is_one_piece() -> None:
    assert told(COLD, read(1, 8, 36.0), read(2, 8, 36.0)) == [
        (None, 32.0, 38.0),
        (32.0, None, 36.0),
    ]


def test_a_cold_reading_of_the_same_minute_ends_no_warmth() -> None:
    found = told(COLD, read(1, 8, 38.0), read(2, 8, 38.0), read(2, 8, 45.0))
    assert min(since or 0.0 for since, _, warm in found if warm == 45.0) == 32.0


def test_cold_is_what_was_cold_for_the_climate_of_its_day() -> None:
    was, became = Held(EVER, FREEZER, 0.0), held(2, 8, FRIDGE, 38.0)
    late = read(4, 8, 45.0)

    def since(*facts: Fact) -> float | None:
        return next(begun for begun, _, warm in told(was, became, *facts, late) if warm == 45.0)

    assert since(read(1, 8, 35.0)) is None, "no cold for a freezer"
    assert since(read(3, 8, 35.0)) == 80.0
    assert since(read(2, 8, 35.0)) is None, "in the minute of the change it may have been one"


def test_what_a_place_became_later_makes_no_cold_reading_warm() -> None:
    facts = (COLD, held(3, 8, FREEZER, 0.0), read(1, 8, 35.0), read(2, 8, 45.0))
    assert (32.0, 80.0, 45.0) in told(*facts)


def test_what_is_known_of_the_same_facts_is_worked_out_once() -> None:
    asked: list[Sequence[Sequence[Fact]]] = []

    def make(facts: Sequence[Sequence[Fact]], _now: When) -> int:
        asked.append(facts)
        return len(asked)

    known = OfFacts(make)
    last = read(2, 8, 36.0)
    one, other = place(COLD, last), place(COLD, read(1, 8, 36.0))
    assert [known.of([one], last.when), known.of([one], NOW), known.of([other], NOW)] == [1, 1, 2]
    assert known.of([one], read(1, 8, 36.0).when) == 3, "some of it is still to come"
    assert known.of([one], NOW) == 1
    assert known.of([Place("p", "p", FRIDGE)], NOW) == 4, "nothing was said of it"


def test_no_more_is_kept_than_there_is_room_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(OfFacts, "_MOST", 3)
    known = OfFacts(lambda facts, _now: id(facts))
    places = [place(COLD, read(1, hour, 36.0)) for hour in range(8)]
    for count, one in enumerate(places, 1):
        known.of([one], NOW)
        assert len(known._known) == (count - 1) % 3 + 1


def test_a_piece_begins_on_the_day_of_what_came_before() -> None:
    facts = (Held(EVER, ROOM, 70.0), held(1, 8, FREEZER, 0.0), read(2, 8, 40.0))
    found = weather("p", {"p": place(*facts)}, NOW)
    begun = [one for one in found if one.temperature_f == 40.0 and one.start == when(1, 8).first]
    assert [one.day for one in begun] == [MADE + timedelta(days=1)]


windows = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 12)), min_size=1, max_size=8)


@given(windows)
def test_each_may_hold_until_one_that_is_surely_later_surely_was(
    told: list[tuple[int, int]],
) -> None:
    changes = sorted(
        (
            _Change(first, first + vague, When(first, first + vague, MADE), COLD)
            for first, vague in told
        ),
        key=lambda one: (one.first, one.last),
    )
    assert _ends(changes) == [
        min((later.last for later in changes if later.first > one.last), default=FOREVER)
        for one in changes
    ]


def test_what_nobody_read_was_neither_measured_nor_held_steady() -> None:
    plain = Weather(0, 1, MADE, FRIDGE, 38.0)
    assert not plain.measured
    assert not plain.steady
