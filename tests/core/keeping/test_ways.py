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


# -- thawing ---------------------------------------------------------------------------------------


def thawed_on(life: Told, day: int = 30) -> set[int | None]:
    """Day 0 of what is thawed, counted from the day made, as it stands at last."""
    last = [one for one in spans(life, day) if one.end >= FOREVER]
    return {None if one.thawed is None else (one.thawed - MADE).days for one in last}


@pytest.mark.parametrize(
    ("life", "day"),
    [
        (beef("freezer"), None), (beef("freezer").at(5).thaw("fridge"), 6),
        (beef("freezer", size="12 lb").at(5).thaw("fridge"), 8),
        # What was drawn may have been drawn before; nobody knows less of a bucket.
        (beef("freezer").holding("12 lb", "4 lb").at(3).open().at(5).thaw("fridge"), 6),
        (beef("freezer", size="bucket").holding("12 lb", "4 lb").at(5).thaw("fridge"), 6),
        (beef("freezer").holding("12 lb").at(5).thaw("fridge"), 8),
        # In its freezer, and out of it on the next day: it is thawed at the latest when it leaves.
        (beef("freezer", size="12 lb").at(5).thaw(None).at(6).move("fridge"), 6),
        (beef("freezer", size="12 lb").at(5).thaw(None), 8),
        (beef("freezer", size="12 lb").at(5).thaw(None).at(6).move("chest"), 8),
        # A second word says that it is thawed by now, and takes nothing back.
        (beef("freezer", size="12 lb").at(5).thaw("fridge").at(6).thaw(None), 6),
        (beef("freezer", size="12 lb").at(5).thaw("fridge").at(9).thaw(None), 8),
        (beef("freezer", size="12 lb").at(5).thaw("fridge", "done"), 5),
        (beef("freezer", size="12 lb").at(5).thaw("fridge", "cold water"), 5),
        # Out of the cold it does not take days.
        (beef("freezer", size="12 lb").at(5).thaw("kitchen"), 5),
        (beef("freezer", size="12 lb").at(5).thaw("fridge").at(6).move("kitchen"), 6),
        (beef("freezer", size="12 lb").at(5, 11).hold("fridge", Climate.FRIDGE, 40)
         .at(5).thaw("fridge"), 8),
        (Told("ground beef", Method.FRESH, "fridge", size="12 lb").at(0, 10)
         .hold("fridge", Climate.FRIDGE, 30).at(5).thaw(None), 5),
        (beef("freezer", size="12 lb").at(5, 11).hold("fridge", Climate.FRIDGE, 41)
         .at(5).thaw("fridge"), 5),
        # Said where it surely froze, or where that is not sure.
        (beef("freezer", size="12 lb").at(6).hold("freezer", Climate.FRIDGE).at(5).thaw(None), 6),
        (beef("freezer", size="12 lb").at(5, 12).hold("freezer", Climate.FRIDGE).thaw(None), 5),
        (beef("freezer", size="12 lb").at(5, 11).hold("freezer", Climate.FRIDGE)
         .at(5, 12).thaw(None), 5),
        # What never froze is thawed on the day on which somebody says so.
        (Told("ground beef", Method.FRESH, "fridge", size="12 lb").at(5).thaw(None), 5),
    ],
)  # fmt: skip
def test_day_nought_of_what_is_thawed(life: Told, day: int | None) -> None:
    """USDA FSIS, the big thaw: a day for each 5 lb begun, in the refrigerator."""
    assert thawed_on(life) == {day}


@pytest.mark.parametrize(
    ("ways", "fast"),
    [
        ((), False), (("",), False), (("cold water",), True), (("microwave",), True),
        (("done",), False), (("", "microwave"), True), (("microwave", ""), True),
        (("cold water", "done"), True),
    ],
)  # fmt: skip
def test_once_thawed_fast_it_was_thawed_fast(ways: tuple[str, ...], fast: bool) -> None:
    life = beef("freezer")
    for n, how in enumerate(ways):
        life.at(5 + n).thaw("fridge", how)
    assert {one.fast for one in spans(life, 30) if one.end >= FOREVER} == {fast}


@pytest.mark.parametrize(
    ("life", "relieved"),
    [
        (beef("freezer").at(5).thaw("fridge"), {True}),
        (beef("freezer").at(5).move("fridge"), {True}),
        (beef("freezer").at(5).thaw("fridge").at(6).thaw(None), {True}),
        (Told("ground beef", Method.FROZEN, "freezer", State.THAWED).at(5).move("fridge"), {True}),
        (Told("stew", Method.MEAL, "fridge").at(1).move("freezer").at(5).move("fridge"), {True}),
        (Told("stew", Method.MEAL, "fridge").at(5).thaw(None), {False}),
        (Told("stew", Method.MEAL, "fridge").at(5).move("second fridge"), {False}),
    ],
)
def test_what_counts_from_the_day_made_goes_on_unless_it_was_frozen(
    life: Told, relieved: set[bool]
) -> None:
    assert {one.relieved for one in spans(life, 30) if one.end >= FOREVER} == relieved


def test_what_passes_through_a_warm_place_in_no_time_does_not_thaw() -> None:
    life = beef("freezer").at(5).hold("freezer", Climate.ROOM).move("chest")
    assert None in {one.thawed for one in spans(life, 30) if one.end >= FOREVER}
    longer = beef("freezer").at(5).hold("freezer", Climate.ROOM).at(5, 13).move("chest")
    assert thawed_on(longer) == {5}


def test_what_may_never_have_frozen_in_a_freezer_that_failed_is_followed_as_both() -> None:
    """Put in warm, while the freezer may have been as warm as it was read at noon."""
    life = Told("stew", Method.MEAL, "fridge").at(1, 8).move("freezer")
    life.at(1, 12).read("freezer", 45, 600).at(1, 12.1).move("fridge")
    out = {(one.thawed is None, one.relieved) for one in spans(life, 2) if one.end >= FOREVER}
    assert out == {(True, False), (False, True)}


# -- unknown hours ---------------------------------------------------------------------------------


def states(life: Told, day: int = 9) -> set[tuple[str, bool]]:
    return {(one.place, one.opened) for one in spans(life, day) if one.end > one.start}


def test_acts_of_an_unknown_hour_may_have_come_in_any_order() -> None:
    life = Told("stew", Method.MEAL, "fridge").at(2, None).open().move("second fridge")
    assert states(life) == {
        ("fridge", False), ("fridge", True), ("second fridge", False), ("second fridge", True),
    }  # fmt: skip
    assert {one.place for one in spans(life) if one.end >= FOREVER} == {"second fridge"}
    known = Told("stew", Method.MEAL, "fridge").at(2, 9).open().at(2, 12).move("second fridge")
    assert states(known) == {("fridge", False), ("fridge", True), ("second fridge", True)}
    mixed = Told("stew", Method.MEAL, "fridge").at(2, None).open().at(3, 8).move("second fridge")
    assert states(mixed) == {("fridge", False), ("fridge", True), ("second fridge", True)}


def test_an_act_of_a_known_hour_comes_before_or_after_one_of_an_unknown_hour() -> None:
    life = Told("stew", Method.MEAL, "fridge").at(2, 12).move("second fridge")
    life.at(2, None).open()
    found = {(one.start, one.end) for one in spans(life) if one.place == "fridge" and one.opened}
    noon = START + 2 * DAY_MIN + 720
    assert found == {(START + 2 * DAY_MIN, noon)}, "opened at midnight at the earliest"
    closed = {one.end for one in spans(life) if one.place == "second fridge" and not one.opened}
    assert closed == {START + 3 * DAY_MIN - 1}, "at the latest a minute before the next"


def test_an_open_thing_is_never_closed_again_and_a_ready_one_never_works_again() -> None:
    life = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS)
    life.at(2).ready().at(3).open().at(4).move("fridge")
    assert [(one.in_progress, one.opened) for one in spans(life)] == [
        (True, False), (False, False), (False, True), (False, True),
    ]  # fmt: skip


def test_any_number_of_acts_at_known_moments_is_followed_one_by_one() -> None:
    life = Told("stew", Method.MEAL, "fridge")
    places = ["freezer", "chest", "vault", "larder", "kitchen", "second fridge", "fridge", "chest"]
    for n, place in enumerate(places):
        life.at(n + 1, 8).move(place)
    assert [place for _, _, place in stays(life, 20)] == ["fridge", *places]


def test_too_many_acts_of_unknown_hours_count_until_the_last_of_them() -> None:
    life = Told("ground beef", Method.FROZEN, "freezer").at(2, 12).move("chest")
    for place in ("freezer", "kitchen", "chest", "freezer", "chest", "freezer"):
        life.at(2, None).move(place)
    there = [one for one in spans(life) if one.place == "kitchen"]
    assert {one.start for one in there} == {START + 2 * DAY_MIN}
    assert max(one.end for one in there if one.end < FOREVER) == START + 3 * DAY_MIN - 1


def test_a_refrigerator_below_freezing_is_no_freezer() -> None:
    cold = Told("stew", Method.MEAL, "fridge").at(0, 10).hold("fridge", Climate.FRIDGE, 30)
    found = spans(cold.at(2).move("second fridge"))
    assert {(one.thawed, one.relieved) for one in found} == {(None, False)}


def test_once_thawed_it_is_thawed_since_the_first_day_whatever_froze_it_again() -> None:
    again = beef("freezer").at(5).move("fridge").at(7).move("chest").at(9).move("fridge")
    assert thawed_on(again) == {5}
