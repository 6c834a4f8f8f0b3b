"""A container's way through its turns: which spans the facts allow, and which they do not."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from pantry_tui.core.keeping.exposure import drawn_from, exposures, imagined
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.weather import FOREVER, weather
from pantry_tui.core.model import DAY_MIN, Turn
from pantry_tui.core.words import Climate, Method, State
from tests.core.keeping.told import MADE, Told, when

START = MADE.toordinal() * DAY_MIN


def spans(life: Told, day: int = 9, hour: float = 12) -> tuple[Span, ...]:
    return exposures(life.batch, life.box, life.places, when(day, hour))


def hours(minute: int) -> float | None:
    return None if minute >= FOREVER else (minute - START) / 60


def stays(life: Told, day: int = 9, hour: float = 12) -> list[tuple[object, ...]]:
    """(hours after the midnight of the day made from, until, place), oldest first."""
    return [(hours(one.start), hours(one.end), one.place) for one in spans(life, day, hour)]


def beef(place: str = "freezer", **more: object) -> Told:
    return Told("ground beef", Method.FROZEN, place, **more)  # type: ignore[arg-type]


# -- a place that is only thought of ---------------------------------------------------------------


def test_a_place_that_is_thought_of_holds_what_is_asked() -> None:
    plain = imagined(Climate.FRIDGE)
    assert (plain.climate, plain.target_f) == (Climate.FRIDGE, 38.0)
    assert [(w.temperature_f, w.measured) for w in weather("?", {"?": plain}, when(1, 8))] == [
        (38.0, False)
    ]
    warm = imagined(Climate.CELLAR, 52.0)
    assert (warm.target_f, warm.temperature_f) == (52.0, 52.0)
    read = imagined(Climate.FRIDGE, 34.0, measured=True)
    last = weather("?", {"?": read}, when(1, 8))[-1]
    assert (last.temperature_f, last.measured, last.steady) == (34.0, True, True)
    assert last.end >= FOREVER


# -- how it came -----------------------------------------------------------------------------------


def test_what_stands_nowhere_counts_as_in_a_room() -> None:
    life = beef()
    life.box = replace(life.box, turns=(Turn(when(0, 10), "e0", None, State.SEALED),))
    (only,) = spans(life)
    assert (only.place, only.climate, only.frozen) == ("", Climate.ROOM, False)


@pytest.mark.parametrize(
    ("method", "place", "state", "frozen"),
    [
        (Method.FROZEN, "freezer", State.SEALED, True),
        (Method.FROZEN, "fridge", State.SEALED, False),
        (Method.FROZEN, "freezer", State.THAWED, False),
        # Any other food is put in unfrozen.
        (Method.FRESH, "freezer", State.SEALED, False),
        (Method.MEAL, "freezer", State.THAWED, False),
    ],
)
def test_what_is_kept_frozen_was_put_into_a_freezer_frozen(
    method: Method, place: str, state: State, frozen: bool
) -> None:
    """Seen by what a freezer that fails makes of it: what came unfrozen may never have frozen."""
    warm = Told("ground beef", method, place, state).at(0, 10).read(place, 45, 60)
    unfrozen = any(one.thawed is None for one in spans(warm) if one.temperature_f == 45.0)
    assert unfrozen is not (frozen or state is State.THAWED)


@pytest.mark.parametrize(
    ("hour", "ways"),
    [
        # It was a refrigerator and became a freezer: before it came, on the minute, after.
        (9, {True}), (10, {True, False}), (11, {False}), (None, {True, False}),
    ],
)  # fmt: skip
def test_whether_it_came_frozen_where_its_place_became_a_freezer_on_that_day(
    hour: float | None, ways: set[bool]
) -> None:
    """What came frozen thaws at once where a freezer fails; what did not may be raw all along."""
    life = beef("second fridge").at(0, hour).hold("second fridge", Climate.FREEZER)
    life.at(0, 12).read("second fridge", 45, 180)
    met = [one for one in spans(life) if one.temperature_f == 45.0]
    assert {one.thawed is not None for one in met} >= ways
    assert any(one.thawed is None for one in met) is (False in ways)


def test_what_was_put_into_a_refrigerator_came_unfrozen_whatever_that_became() -> None:
    life = beef("fridge").at(3, 8).hold("fridge", Climate.FREEZER)
    before = [one for one in spans(life) if one.climate is Climate.FRIDGE]
    assert [one.thawed for one in before] == [None]


def test_a_part_that_was_drawn_opens_a_closed_vessel_and_no_other() -> None:
    jar = Told("runner beans", Method.PRESSURE, "larder").holding("1 l", "0.5 l")
    assert drawn_from(jar.batch, jar.box)
    whole = Told("runner beans", Method.PRESSURE, "larder").holding("1 l")
    assert not drawn_from(whole.batch, whole.box)
    crock = Told("sauerkraut", Method.LACTIC, "vault", size="crock").holding("20 l", "9 l")
    assert not drawn_from(crock.batch, crock.box)
    assert not any(one.opened for one in spans(crock))


def test_what_was_drawn_when_it_was_opened_was_closed_before() -> None:
    jar = Told("runner beans", Method.PRESSURE, "larder").holding("1 l", "0.5 l")
    assert all(one.opened for one in spans(jar)), "nobody said when, so it may have been at once"
    said = jar.at(5, 12).open("fridge")
    assert [(one.place, one.opened) for one in spans(said)] == [("larder", False), ("fridge", True)]


def test_food_that_was_put_up_thawed_is_thawed_since() -> None:
    (only,) = spans(Told("ground beef", Method.FRESH, "fridge", State.THAWED))
    assert (only.thawed, only.relieved, only.fast) == (MADE, True, False)
    (sealed,) = spans(Told("ground beef", Method.FRESH, "fridge"))
    assert (sealed.thawed, sealed.relieved) == (None, False)


# -- the order of its turns ------------------------------------------------------------------------


def test_nothing_happened_to_it_before_it_was_put_up() -> None:
    life = Told("stew", Method.MEAL, "fridge", hour=10).at(-2, 8).move("second fridge")
    assert stays(life) == [(10, 10, "fridge"), (10, None, "second fridge")]
    assert {one.day for one in spans(life)} == {MADE}
    thawed = beef("fridge").at(-2, 8).thaw("fridge", "done")
    assert {one.thawed for one in spans(thawed)} >= {MADE}
    assert all((one.thawed or MADE) >= MADE for one in spans(thawed))
    same_day = Told("stew", Method.MEAL, "fridge", hour=10).at(0, None).move("second fridge")
    assert stays(same_day) == [(10, 24 - 1 / 60, "fridge"), (10, None, "second fridge")]


def test_what_is_still_to_come_counts_as_now() -> None:
    life = Told("stew", Method.MEAL, "fridge", hour=10).at(700, 8).move("second fridge")
    assert stays(life, 2, 8) == [(10, 56, "fridge"), (56, None, "second fridge")]
    ahead = Told("stew", Method.MEAL, "fridge", hour=20)
    assert stays(ahead, 0, 18) == [(18, None, "fridge")]


def test_turns_are_followed_in_the_order_of_their_moments() -> None:
    told = [(3, 8, "second fridge"), (1, 8, "freezer"), (2, 8, "chest")]
    life = Told("stew", Method.MEAL, "fridge", hour=10)
    turns = [Turn(when(day, hour), f"e{9 - n}", place) for n, (day, hour, place) in enumerate(told)]
    life.box = replace(life.box, turns=(life.box.turns[0], *turns))
    assert [place for _, _, place in stays(life)] == [
        "fridge", "freezer", "chest", "second fridge",
    ]  # fmt: skip


def test_two_turns_of_one_minute_may_have_come_in_either_order() -> None:
    life = Told("stew", Method.MEAL, "fridge", hour=10).at(1, 8).move("freezer").move("kitchen")
    assert set(stays(life)) == {
        (10, 32, "fridge"), (32, 32, "freezer"), (32, 32, "kitchen"), (32, None, "freezer"),
        (32, None, "kitchen"),
    }  # fmt: skip


def test_days_are_those_of_the_turns() -> None:
    life = Told("stew", Method.MEAL, "fridge").at(1, 8).open().at(2, 8).move("chest")
    assert [one.day for one in spans(life)] == [MADE, date(2026, 3, 2), date(2026, 3, 3)]
