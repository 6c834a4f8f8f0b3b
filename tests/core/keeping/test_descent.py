"""What was made of something else is never trusted longer than what it was made from."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.amounts import amount_of
from pantry_tui.core.keeping.descent import (
    as_taken,
    begun,
    carried_on,
    carries_state,
    goes_on,
    known_then,
)
from pantry_tui.core.model import EVER, Batch, Container, Cut, Held, Place, Read, Turn
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Climate, Method, State
from tests.core.keeping.told import MADE, facts_of, when

SEALED, OPEN, THAWED, WORKING = State.SEALED, State.OPEN, State.THAWED, State.IN_PROGRESS


def batch(method: Method, food: str = "beef") -> Batch:
    return Batch("b", "2A", facts_of(food), method, MADE)


def box(*turns: Turn, state: State = SEALED, vessel: Vessel = Vessel.CLOSED) -> Container:
    first = Turn(when(0, 10), "e0", "larder", state)
    return Container("b.1", "b", 1, state, "larder", (first, *turns), vessel=vessel)


# -- what goes on as it was ------------------------------------------------------------------------

OPENED, THAWED_OUT = Turn(when(1, 9), "e1", None, OPEN), Turn(when(1, 9), "e1", None, THAWED)
MOVED = Turn(when(1, 9), "e1", "fridge")


@pytest.mark.parametrize(
    ("new", "old", "happened", "same"),
    [
        (batch(Method.DRIED, "onions"), batch(Method.DRIED, "onions"), (), True),
        (batch(Method.LACTIC, "cabbages"), batch(Method.LACTIC, "cabbages"), (), True),
        (batch(Method.DRIED, "onions"), batch(Method.CELLAR, "onions"), (), False),
        (batch(Method.MEAL, "stew"), batch(Method.FROZEN), (OPENED,), False),
        # Refreezing gives no day back; what is opened and frozen in time is frozen food.
        (batch(Method.FROZEN), batch(Method.PRESSURE), (OPENED,), False),
        (batch(Method.FROZEN), batch(Method.PRESSURE), (OPENED, THAWED_OUT), True),
        (batch(Method.FROZEN), batch(Method.PRESSURE), (THAWED_OUT,), True),
        (batch(Method.FROZEN), batch(Method.PRESSURE), (), False),
        (batch(Method.FROZEN), batch(Method.PRESSURE), (MOVED,), False),
        (batch(Method.FROZEN, "stew"), batch(Method.PRESSURE), (OPENED,), False),
        (batch(Method.DRIED), batch(Method.PRESSURE), (OPENED,), False),
    ],
)
def test_the_same_food_kept_in_the_same_way_goes_on(
    new: Batch, old: Batch, happened: tuple[Turn, ...], same: bool
) -> None:
    assert goes_on(new, old, begun(box(*happened))) is same


@pytest.mark.parametrize(
    ("method", "state", "vessel", "on"),
    [
        (Method.PRESSURE, SEALED, Vessel.CLOSED, OPEN),
        (Method.FRIDGE_PICKLE, SEALED, Vessel.CLOSED, OPEN),
        # Nothing gets in that was not there.
        (Method.FROZEN, SEALED, Vessel.CLOSED, SEALED),
        (Method.DRIED, SEALED, Vessel.CLOSED, SEALED),
        (Method.FREEZE_DRIED, SEALED, Vessel.CLOSED, SEALED),
        (Method.SUGAR, SEALED, Vessel.CLOSED, SEALED),
        (Method.INFUSION, SEALED, Vessel.CLOSED, SEALED),
        # A crock is drawn from and never opened.
        (Method.LACTIC, SEALED, Vessel.OPEN, SEALED),
        (Method.CELLAR, SEALED, Vessel.PIECES, SEALED),
        (Method.LACTIC, WORKING, Vessel.OPEN, WORKING),
        (Method.PRESSURE, OPEN, Vessel.CLOSED, OPEN),
        (Method.FROZEN, THAWED, Vessel.CLOSED, THAWED),
    ],
)
def test_out_of_a_closed_jar_it_is_open_food(
    method: Method, state: State, vessel: Vessel, on: State
) -> None:
    assert carries_state(batch(method), box(state=state, vessel=vessel)) is on


# -- the part as if it had never left, and as it was taken -----------------------------------------

TAKEN = when(5, 12)
PART = replace(
    box(
        Turn(when(2, 8), "e1", "fridge"),
        Turn(when(5, 12), "e2", None, OPEN),
        Turn(TAKEN, "e3", None, OPEN),  # the taking itself
        Turn(when(6, 8), "e4", "kitchen"),
    ),
    first=amount_of("4 lb"),
    left=amount_of("1 lb"),
    fate="used",
    looked=MADE + timedelta(days=3),
)
NEW = Container(
    "c.1", "c", 1, SEALED, "chest",
    (Turn(TAKEN, "e3", "freezer", SEALED), Turn(when(7, 9), "e7", "chest")),
    first=amount_of("3 lb"), left=amount_of("2 lb"),
)  # fmt: skip


def test_the_part_goes_on_in_what_holds_it_now() -> None:
    on = carried_on(NEW, batch(Method.DRIED), PART)
    assert [(turn.event, turn.place, turn.state) for turn in on.turns] == [
        ("e0", "larder", SEALED), ("e1", "fridge", None), ("e2", None, OPEN),
        ("e3", "freezer", None), ("e7", "chest", None),
    ]  # fmt: skip
    assert (on.state, on.place, on.fate) == (OPEN, "chest", "")
    assert (on.first, on.left) == (amount_of("3 lb"), amount_of("3 lb"))
    assert on.turns[3].when == TAKEN


@pytest.mark.parametrize(
    ("method", "vessel", "born", "opened"),
    [
        (Method.PRESSURE, Vessel.CLOSED, SEALED, OPEN),
        (Method.PRESSURE, Vessel.OPEN, SEALED, None),
        (Method.DRIED, Vessel.CLOSED, SEALED, None),
        (Method.DRIED, Vessel.CLOSED, OPEN, OPEN),
        (Method.DRIED, Vessel.CLOSED, THAWED, None),
    ],
)
def test_taking_it_out_of_a_closed_jar_opens_it(
    method: Method, vessel: Vessel, born: State, opened: State | None
) -> None:
    new = replace(NEW, turns=(Turn(TAKEN, "e3", "freezer", born),))
    on = carried_on(new, batch(method), replace(PART, vessel=vessel, turns=PART.turns[:1]))
    assert [turn.state for turn in on.turns] == [SEALED, opened]
    assert on.state is (opened or SEALED)


def test_what_was_used_up_since_is_gone_there_too() -> None:
    on = carried_on(replace(NEW, fate="used"), batch(Method.DRIED), PART)
    assert (on.state, on.fate) == (State.GONE, "used")


def test_a_part_is_judged_as_it_was_on_the_moment_it_was_taken() -> None:
    then = as_taken(NEW, batch(Method.DRIED), PART)
    assert [turn.event for turn in then.turns] == ["e0", "e1", "e2"]
    assert (then.state, then.fate, then.place) == (OPEN, "", "larder")
    assert then.left == then.first == amount_of("4 lb"), "the taking is no draw that opens it"
    later = replace(NEW, turns=(Turn(when(6, 8), "e9", "x", SEALED),))
    same_minute = as_taken(later, batch(Method.DRIED), PART)
    assert same_minute.turns[-1].event == "e4", "what happened in that minute may have come before"


def test_a_look_at_it_stands_and_one_at_what_was_made_unless_it_was_suspected_after() -> None:
    dried, seen = batch(Method.DRIED), MADE + timedelta(days=6)
    mine = replace(PART, looked=MADE + timedelta(days=3))
    newer = replace(NEW, looked=seen, looked_at=700)
    for look in (carried_on(newer, dried, mine), as_taken(newer, dried, mine)):
        assert look.looked == MADE + timedelta(days=3)
    never = replace(PART, looked=None)
    for suspected_at, looked in ((0, seen), (700, seen), (701, None)):
        of = replace(dried, suspect_from=suspected_at)
        for look in (carried_on(newer, of, never), as_taken(newer, of, never)):
            assert (look.looked, look.looked_at) == (looked, 700 if looked else 0)


# -- the places as they were at a moment -----------------------------------------------------------

COLD = Held(EVER, Climate.FRIDGE, 38.0)


def known(*facts: Held | Read | Cut, first: Held = COLD) -> list[object]:
    """What of the facts after the `first` was so on day 5 at 12."""
    now = next(one.climate for one in reversed((first, *facts)) if isinstance(one, Held))
    places = {"p": Place("p", "p", now, facts=(first, *facts))}
    return list(known_then(places, TAKEN)["p"].facts[1:])


def warm(day: int, hour: float, since: int | None = None) -> Read:
    return Read(when(day, hour), 45.0, None, since)


def cold(day: int, hour: float) -> Read:
    return Read(when(day, hour), 38.0)


def test_what_had_happened_by_a_moment_counts_and_what_came_later_does_not() -> None:
    before = (cold(4, 8), Cut(when(5, 8), when(5, 20)), cold(5, 12))
    after = (Cut(when(5, 12.1), when(5, 20)), cold(5, 12.1), Held(when(6, 1), Climate.ROOM, 70.0))
    assert known(*before, *after) == list(before)


@pytest.mark.parametrize(
    ("later", "shown"),
    [
        # Read at 13 and so for 90 minutes: at 12 it had been so for 30.
        ((warm(5, 13, 90),), [Read(TAKEN, 45.0, None, 30)]),
        ((warm(5, 13, 60),), []),
        ((warm(5, 13, 61),), [Read(TAKEN, 45.0, None, 1)]),
        # Since nobody knows when: since it was last read cold.
        ((warm(6, 13),), [Read(TAKEN, 45.0)]),
        ((cold(6, 8), warm(6, 13)), []),
        ((warm(6, 8), cold(6, 9), warm(6, 13)), [Read(TAKEN, 45.0)]),
        ((cold(6, 8), warm(6, 13, 60 * 48)), [Read(TAKEN, 45.0, None, 60 * 23)]),
        ((cold(6, 8),), []),
        ((Cut(when(6, 1), when(6, 3)), warm(6, 13)), [Read(TAKEN, 45.0)]),
    ],
)
def test_a_later_reading_shows_what_was_so_before_it(
    later: tuple[Read | Cut, ...], shown: list[Read]
) -> None:
    assert known(*later) == shown


def test_a_later_reading_of_a_room_shows_nothing() -> None:
    assert known(Read(when(6, 8), 90.0), first=Held(EVER, Climate.ROOM, 70.0)) == []


def test_what_a_place_was_made_since_takes_back_no_reading_of_what_it_was() -> None:
    """A refrigerator that was too warm all along and is a room now spoiled what was in it."""
    room = Held(when(8, 9), Climate.ROOM, 70.0)
    assert known(warm(6, 13), room) == [Read(TAKEN, 45.0)]
    cellar = (Held(when(1, 9), Climate.CELLAR, 50.0), Held(when(6, 9), Climate.FRIDGE, 38.0))
    assert known(*cellar, warm(6, 13)) == [cellar[0]], "as a cellar it was not too warm"
    froze = (Held(when(1, 9), Climate.FREEZER, 0.0), Held(when(6, 9), Climate.FRIDGE, 38.0))
    assert known(*froze, cold(6, 13)) == [froze[0], Read(TAKEN, 38.0)]
    on_the_day = Held(when(5, None), Climate.FREEZER, 0.0)
    found = known(on_the_day, cold(6, 13))
    assert found == [on_the_day, Read(TAKEN, 38.0)], "it may have been a freezer by then"


def test_readings_before_the_moment_do_not_reach_back_to_it() -> None:
    assert known(cold(5, 8), warm(6, 13)) == [cold(5, 8), Read(TAKEN, 45.0)]
    assert known(warm(5, 12, 60)) == [warm(5, 12, 60)], "on the minute itself it is known"
