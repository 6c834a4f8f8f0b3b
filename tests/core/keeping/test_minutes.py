"""What falls on one minute, or on one day of unknown hours: what freezes and thaws in no time, what
may never have frozen, and acts in more orders than can be followed one by one.

Spans of no length count, and of facts of one minute either may be the later one; but in no time at
all nothing freezes, thaws or spoils that would not at once.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from itertools import permutations

import pytest

from pantry_tui.core.keeping.exposure import exposures
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, EVER, Held, Place, Read, Turn, When
from pantry_tui.core.words import Climate, Method, State
from tests.core.keeping.told import MADE, Told, when


def spans(life: Told, day: int = 20) -> tuple[Span, ...]:
    return exposures(life.batch, life.box, life.places, when(day, 12))


def at_last(life: Told, day: int = 20) -> list[Span]:
    return [one for one in spans(life, day) if one.end >= FOREVER]


def days(some: list[Span]) -> set[int | None]:
    """Day 0 of what is thawed, counted from the day made."""
    return {None if one.thawed is None else (one.thawed - MADE).days for one in some}


def beef(size: str = "12 lb") -> Told:
    return Told("ground beef", Method.FROZEN, "freezer", size=size)


def trout(place: str = "fridge") -> Told:
    return Told("trout", Method.HOT_SMOKED, place)


def onto_a_shelf(life: Told, place: str = "fridge") -> Told:
    """At noon of day 9 its place becomes a room, and in that minute it is taken to a refrigerator:
    it may have stood on a shelf, in no time."""
    return life.at(9, 12).hold(place, Climate.ROOM).move("second fridge")


def on_a_shelf(life: Told) -> bool:
    return any(one.climate is Climate.ROOM for one in spans(life))


# -- in no time at all -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    "life",
    [
        trout(),
        trout().at(5).thaw(None),
        Told("trout", Method.FRESH, "fridge", State.THAWED),
        trout().at(2).move("freezer").at(5).move("fridge"),
        Told("trout", Method.FROZEN, "freezer").at(5).move("fridge"),
        Told("trout", Method.FROZEN, "freezer").at(5).thaw("fridge"),
    ],
    ids=["never froze", "called thawed", "came thawed", "froze once", "came frozen", "thaws"],
)
def test_what_is_not_frozen_stood_on_the_shelf_also_in_no_time(life: Told) -> None:
    assert on_a_shelf(onto_a_shelf(life))


@pytest.mark.parametrize("method", [Method.HOT_SMOKED, Method.FROZEN])
def test_what_was_frozen_again_after_it_thawed_stood_on_the_shelf_too(method: Method) -> None:
    """The cold does not bring back what has thawed."""
    again = Told("trout", method, "freezer").at(3).move("fridge").at(6).move("chest")
    assert on_a_shelf(onto_a_shelf(again, "chest"))
    frozen = Told("trout", method, "freezer").at(6).move("chest")
    assert not on_a_shelf(onto_a_shelf(frozen, "chest"))


def test_smoked_fish_on_a_shelf_is_refused_at_once_also_in_no_time() -> None:
    assert onto_a_shelf(trout()).last(12) == 8
    assert onto_a_shelf(trout("chest"), "chest").last(12) == 10, "frozen, and then thawed for a day"


def test_a_frozen_pack_that_passes_through_a_freezer_was_there() -> None:
    through = beef().at(3, 12).move("chest").move("fridge")
    noon = when(3, 12).first
    assert [one.place for one in spans(through) if one.start == one.end == noon] == ["chest"]


def test_what_changed_on_the_minute_on_which_it_came_still_met_it() -> None:
    shelf = Told("salmon", Method.COLD_SMOKED, "larder").at(0, 10).hold("larder", Climate.FRIDGE)
    first, *_ = spans(shelf)
    assert (first.climate, first.end - first.start) == (Climate.PANTRY, 0)
    assert shelf.last(1) == -1, "smoked fish on a shelf"


def test_what_thaws_takes_its_days_though_it_passes_a_shelf_in_no_time() -> None:
    """USDA FSIS, the big thaw: 12 lb take three days in the refrigerator, and none out of it."""
    thaws = beef().at(7).thaw("fridge")
    assert days(at_last(thaws)) == {10}
    assert days(at_last(onto_a_shelf(beef().at(7).thaw("fridge")))) == {10}
    longer = beef().at(7).thaw("fridge").at(9, 11.9).hold("fridge", Climate.ROOM)
    assert days(at_last(longer.at(9, 12).move("second fridge"))) == {9}


def test_what_left_its_freezer_on_the_minute_that_made_it_none_was_frozen_until_then() -> None:
    left = beef().at(5).hold("freezer", Climate.FRIDGE).thaw("fridge")
    assert days(at_last(left)) == {8}
    before = beef().at(5, 11).hold("freezer", Climate.FRIDGE).at(5, 12).thaw("fridge")
    assert days(at_last(before)) == {5}


# -- what thaws, where -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("life", "day"),
    [
        # A freezer at 31 F still freezes (USDA Handbook 66); one at 32 F is no refrigerator either.
        (beef().at(4).hold("freezer", Climate.FREEZER, 28).at(5).thaw(None), 8),
        (beef().at(4).hold("freezer", Climate.FREEZER, 32).at(5).thaw(None), 4),
        # A cellar is no refrigerator, however cold.
        (beef().at(4).hold("vault", Climate.CELLAR, 38).at(5).thaw("vault"), 5),
        # What has thawed is thawed since then, wherever it goes, and whatever is said of it later.
        (beef().at(5).thaw("fridge", "done").at(9).move("kitchen"), 5),
        (beef().at(5).thaw("fridge").at(9).move("kitchen"), 8),
        (beef().at(5).thaw("fridge").at(9).move("chest").at(12).thaw("fridge"), 8),
        (beef().at(5).thaw("fridge").at(6).move("chest").at(12).thaw("fridge"), 8),
        (beef().at(5).move("fridge").at(9).move("chest").at(12).thaw("fridge"), 5),
        # A second word for it says that it is thawed by now, also of what thaws in its freezer.
        (beef().at(5).thaw(None).at(6).thaw("fridge"), 6),
        (Told("ground beef", Method.FROZEN, "freezer", State.THAWED).at(5).move("fridge"), 0),
        # Of what a count found to be more than it ever held nobody knows how much thaws.
        (beef("").holding("4 lb", "12 lb").at(5).thaw("fridge"), 6),
    ],
)  # fmt: skip
def test_day_nought_of_what_is_thawed(life: Told, day: int) -> None:
    assert days(at_last(life)) == {day}


@pytest.mark.parametrize("target", [32, 45])
def test_what_is_put_up_frozen_in_a_freezer_that_is_set_too_warm_thaws_there(target: float) -> None:
    """It was frozen when it came, and what counts from the day made goes on."""
    warm = beef().at(-1).hold("freezer", Climate.FREEZER, target)
    assert {(one.thawed, one.relieved) for one in spans(warm)} == {(MADE, False)}
    worse = warm.at(3).hold("freezer", Climate.FREEZER, target + 1).at(5).move("fridge")
    assert {(one.thawed, one.relieved) for one in spans(worse)} == {(MADE, False)}
    assert not worse.judged(5).usable


def test_what_came_frozen_on_the_minute_on_which_its_freezer_was_set_cold_is_frozen() -> None:
    cold = beef().at(-1).hold("freezer", Climate.FREEZER, 45).at(0, 10)
    cold.hold("freezer", Climate.FREEZER, 0)
    assert days(at_last(cold)) == {None}


# -- what may never have frozen --------------------------------------------------------------------


def test_what_came_unfrozen_into_a_warm_freezer_may_be_raw_all_along_or_thawed() -> None:
    life = Told("stew", Method.MEAL, "fridge").at(1, 8).move("freezer")
    life.at(1, 12).read("freezer", 45, 600)
    warm = [one for one in spans(life, 2) if one.temperature_f == 45]
    assert {(one.thawed, one.relieved) for one in warm} == {
        (None, False), (MADE + timedelta(1), True),
    }  # fmt: skip


def test_what_was_called_thawed_is_never_raw_again() -> None:
    life = Told("stew", Method.MEAL, "fridge").at(1, 8).thaw(None).at(2, 8).move("freezer")
    life.at(2, 12).read("freezer", 45, 600).at(2, 13).move("fridge")
    after = [one for one in spans(life, 4) if one.start >= when(1, 8).first and one.place != ""]
    assert days([one for one in after if one.day > MADE + timedelta(1)]) == {1}


# -- in more orders than can be followed -----------------------------------------------------------


def busy(moves: int) -> Told:
    """So many acts of unknown hours on day 2: the last one opens it, the others move it."""
    life = Told("stew", Method.MEAL, "fridge").at(2, None)
    for n in range(moves - 1):
        life.move(("second fridge", "chest")[n % 2])
    return life.open()


def test_of_six_acts_of_one_day_all_have_happened_when_it_is_over() -> None:
    assert {one.opened for one in at_last(busy(6))} == {True}
    assert True in {one.opened for one in at_last(busy(7))}, "more count as all that may have been"


def test_whatever_many_acts_of_one_day_could_lead_to_is_followed() -> None:
    """Whoever clears seventy shelves may have opened and thawed it before the last of them."""
    life = Told("stew", Method.MEAL, "fridge").at(2, None).open().thaw(None, "done")
    for n in range(70):
        life.places[f"shelf {n}"] = replace(life.places["vault"], id=f"shelf {n}")
        life.move(f"shelf {n}")
    ends = {(one.place, one.opened, one.thawed is not None) for one in at_last(life)}
    assert ends >= {(f"shelf {n}", True, True) for n in range(70)}


@pytest.mark.parametrize(
    "acts",
    [
        (Told.open, lambda life: life.thaw("fridge", "done"), lambda life: life.move("chest")),
        (
            lambda life: life.thaw("fridge", "cold water"),
            lambda life: life.thaw("fridge", "done"),
            lambda life: life.move("kitchen"),
        ),
        (lambda life: life.thaw("fridge"), Told.open, lambda life: life.move("freezer")),
        (lambda life: life.thaw("fridge"), lambda life: life.thaw("fridge", "done")),
        (Told.open, lambda life: life.thaw(None)),
        (Told.open, lambda life: life.thaw(None), lambda life: life.move("chest")),
        (Told.open, lambda life: life.move("kitchen"), lambda life: life.move("chest")),
    ],
)
def test_however_acts_of_one_day_were_booked_its_spans_are_the_same(
    acts: tuple[Callable[[Told], Told], ...],
) -> None:
    found = set()
    for order in permutations(acts):
        life = beef("").at(5, None)
        for act in order:
            act(life)
        found.add(
            spans(life.at(6, 8).read("fridge", 34).at(7, 8).hold("fridge", Climate.FRIDGE, 33))
        )
    (only,) = found
    assert [one.start for one in only] == sorted(one.start for one in only)


# -- clocks of two zones ---------------------------------------------------------------------------


def abroad(day: int, hour: float, ahead: int) -> When:
    """A minute by a clock that is `ahead` minutes before the household's own."""
    minute = when(day, hour).first
    return When(minute, minute, date.fromordinal((minute + ahead) // DAY_MIN), ahead)


def test_of_two_words_for_one_move_the_earlier_day_counts() -> None:
    """Booked at home for some hour of day 2, and from another zone for some hour of day 3."""
    life = Told("stew", Method.MEAL, "fridge")
    home, away = when(2, None), when(3, None)
    away = When(away.first - 540, away.last - 540, away.day, 540)
    for told in permutations((Turn(home, "a", "chest"), Turn(away, "b", "chest"))):
        life.box = replace(life.box, turns=(life.box.turns[0], *told))
        assert {one.day for one in at_last(life)} == {MADE + timedelta(2)}


def test_a_day_begins_for_what_stands_there_by_its_own_clock() -> None:
    """The place was read warm on the minute on which the food came, by a clock that is ahead."""
    life = Told("stew", Method.MEAL, "fridge", hour=20)
    life.places["fridge"] = Place(
        "fridge", "fridge", Climate.FRIDGE,
        facts=(Held(EVER, Climate.FRIDGE, 38.0), Read(abroad(0, 20, 540), 39.0)),
    )  # fmt: skip
    assert {one.day for one in spans(life)} == {MADE}
