"""Lines of logs from before payloads had types, read as what a person meant by them then."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import Any

import pytest

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.older import of_settings, of_week, read_event, reason_of, settle
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import (
    Acidity,
    Climate,
    Group,
    Kind,
    Method,
    Rating,
    State,
    Verdict,
)
from pantry_tui.errors import BadInput

DAY = date(2026, 3, 1)
WROTE = "2026-03-01T12:00:00+00:00"
JARS = ("b.1", "b.2")


def event(did: str, data: dict[str, Any], id_: str = "1") -> Event:
    return read_event(id_, WROTE, DAY, did, "b", list(JARS), data)


def payload(did: str, **data: Any) -> said.Payload:
    return event(did, data).payload


FOOD = {"name": "beans", "group": "vegetable", "acidity": "low-acid"}
BEANS = FoodFacts("beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset(), True)
PUT_UP = {
    "code": "2A", "food": FOOD, "method": "pressure canned", "place": "larder", "state": "sealed",
}  # fmt: skip

#: What an older log says, and what it meant.
LINES: list[tuple[str, dict[str, Any], said.Payload]] = [
    ("put_up", PUT_UP,
     said.PutUp("b", "2A", JARS, BEANS, Method.PRESSURE, "larder", State.SEALED)),
    ("put_up",
     {**PUT_UP, "food": {**FOOD, "classes": ["bean"], "known": False}, "made": "2026-02-01",
      "size": "crate", "amount": "40 lb", "process": [["minutes", 20]], "note": "n",
      "printed": "2027-01-01", "doubt": ["short"], "possible": "redo", "state": "working"},
     said.PutUp(
         "b", "2A", JARS,
         FoodFacts("beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"bean"}), False),
         Method.PRESSURE, "larder", State.IN_PROGRESS, date(2026, 2, 1), "crate",
         Amount(Fraction(40), "lb"), (("minutes", "20"),), "n", date(2027, 1, 1), ("short",),
         "redo")),
    ("finish", {}, said.Ready("b", JARS)),
    ("move", {"place": "fridge"}, said.Move("b", JARS, "fridge")),
    ("move", {"place": "fridge", "state": "thawed"},
     said.Move("b", JARS, "fridge", State.THAWED)),
    ("open", {}, said.Open("b", JARS)),
    ("open", {"place": None}, said.Open("b", JARS)),
    ("open", {"place": "fridge"}, said.Open("b", JARS, "fridge")),
    ("thaw", {"place": None}, said.Thaw("b", JARS)),
    ("thaw", {"place": "fridge", "how": "microwave"}, said.Thaw("b", JARS, "fridge", "microwave")),
    ("use", {}, said.Use("b", JARS)),
    ("use", {"amount": "2 lb", "left": "38 lb"},
     said.Use("b", JARS, amount_of("2 lb"), "2 lb")),
    ("use", {"amount": "38 lb", "left": ""}, said.Use("b", JARS, None, "38 lb")),
    ("discard", {"why": "Mould "}, said.Discard("b", JARS, None, said.Reason.MOULD, "Mould ")),
    ("discard", {"why": "the cat"}, said.Discard("b", JARS, None, said.Reason.OTHER, "the cat")),
    ("discard", {}, said.Discard("b", JARS)),
    ("give", {"to": "Ines"}, said.Give("b", JARS, None, "Ines")),
    ("give", {}, said.Give("b", JARS)),
    ("lose", {}, said.Missing("b", JARS)),
    ("sign", {"sign": "s1", "words": "bulges", "verdict": "do not taste", "suspect": "b.1 bulges"},
     said.Sign("b", JARS, "s1", "bulges", Verdict.DO_NOT_TASTE, "b.1 bulges")),
    ("sign", {"sign": "s2", "words": "yeast", "verdict": "tend"},
     said.Sign("b", JARS, "s2", "yeast", Verdict.NEEDS_CARE)),
    ("count",
     {"place": "p", "gone": {"b.1": "lost", "b.2": "used"}, "back": {"b.3": "q"},
      "new": [{"batch": "b", "place": "p", "state": "open", "containers": ["b.4"]}]},
     said.Count(
         "p", (said.Gone("b.1", said.Fate.MISSING), said.Gone("b.2", said.Fate.USED)),
         (said.Back("b.3", "q"),), (said.Found("b", "p", State.OPEN, ("b.4",)),))),
    ("count", {"place": "p"}, said.Count("p")),
    ("tasted", {"taste": "not again", "note": "salty"},
     said.Rated("b", Rating.NOT_AGAIN, "salty")),
    ("tasted", {"taste": "again"}, said.Rated("b", Rating.AGAIN)),
    ("reading", {"place": "p", "temp_f": 41, "humidity": 80.0}, said.Reading("p", 41.0, 80.0)),
    ("reading", {"place": "p", "temp_f": 41}, said.Reading("p", 41.0)),
    ("outage",
     {"place": "p", "hours": 9, "full": True, "max_temp_f": 45.0, "ice": False,
      "marks": {"b.1": ["discard", "warm for 9 h"]}},
     said.Outage("p", "", "", 9.0, True, 45.0, False,
                 (said.Mark("b.1", Verdict.DISCARD, "warm for 9 h"),))),
    ("outage", {"place": "p"}, said.Outage("p")),
    ("place_added", {"id": "p", "name": "shelf", "climate": "pantry"},
     said.PlaceAdded("p", "shelf", Climate.PANTRY)),
    ("place_added",
     {"id": "p", "name": "shelf", "climate": "pantry", "parent": "q", "target_f": 55.0,
      "capacity": 9},
     said.PlaceAdded("p", "shelf", Climate.PANTRY, "q", 55.0, 9)),
    # A change was once written as the whole place: what it does not say is not so any more.
    ("place_changed", {"id": "p", "name": "shelf", "climate": "room"},
     said.PlaceChanged("p", "shelf", Climate.ROOM, "", None, True)),
    ("place_changed",
     {"id": "p", "name": "shelf", "climate": "room", "parent": "q", "target_f": 55.0,
      "capacity": 3},
     said.PlaceChanged("p", "shelf", Climate.ROOM, "q", 55.0, False, 3)),
    ("correct", {}, said.Correct("b")),
    ("correct", {"made": None}, said.Correct("b", unknown_day=True)),
    ("correct",
     {"made": "2026-02-01", "size": "quart", "note": "", "process": [["psi", 10]],
      "doubt": ["short"], "possible": ""},
     said.Correct("b", date(2026, 2, 1), False, "quart", "", (("psi", "10"),), ("short",), "")),
    ("food_added", {"name": "oca", "group": "vegetable", "acidity": "low-acid", "also": ["yam"]},
     said.FoodAdded("oca", Group.VEGETABLE, Acidity.LOW_ACID, ("yam",))),
    ("food_added", {"name": "oca", "group": "vegetable", "acidity": "low-acid"},
     said.FoodAdded("oca", Group.VEGETABLE, Acidity.LOW_ACID)),
    ("rule_added",
     {"method": "dried", "food": "oca", "state": "sealed", "climate": "room", "kind": "quality",
      "number": 6, "unit": "months", "why": "tried"},
     said.RuleAdded(Method.DRIED, "oca", State.SEALED, Climate.ROOM, Kind.QUALITY, 6, "months",
                    "tried")),
    ("rule_added",
     {"method": "dried", "food": "oca", "state": "sealed", "climate": "room", "kind": "quality",
      "number": 6, "unit": "months"},
     said.RuleAdded(Method.DRIED, "oca", State.SEALED, Climate.ROOM, Kind.QUALITY, 6, "months")),
    ("reserved", {"for": "Ines"}, said.Reserved("b", JARS, "Ines")),
    ("substitutes", {"food": "leeks", "others": ["onions"]},
     said.Substitutes("leeks", ("onions",))),
    ("dish", {"name": "stew", "takes": [["beans", 2]]},
     said.Dish("stew", (said.Taken("beans", 2.0),))),
    ("undo", {"event": "7"}, said.Undo(("7",))),
]  # fmt: skip


@pytest.mark.parametrize(
    ("did", "data", "meant"), LINES, ids=[f"{one[0]} {n}" for n, one in enumerate(LINES)]
)
def test_an_older_line_means_what_it_meant(
    did: str, data: dict[str, Any], meant: said.Payload
) -> None:
    found = event(did, data)
    assert found.payload == meant
    assert (found.id, found.recorded, found.day, found.at) == ("1", WROTE, DAY, None)


def test_what_was_booked_together_still_is() -> None:
    assert event("use", {"group": "g7"}).together == "g7"
    assert event("use", {}).together == ""


def test_a_food_s_group_is_not_what_it_was_booked_together_with() -> None:
    """One word meant both, and one undo took back every own food of a group."""
    oca = {"name": "oca", "group": "vegetable", "acidity": "low-acid"}
    assert event("food_added", oca).together == ""
    assert event("move", {"place": "fridge", "group": "vegetable"}).together == "vegetable"


@pytest.mark.parametrize(
    ("did", "data"),
    [
        ("drunk", {}),
        ("move", {}),
        ("put_up", {**PUT_UP, "method": "boiled"}),
        ("put_up", {**PUT_UP, "made": "yesterday"}),
        ("use", {"amount": "some", "left": "2 lb"}),
        ("count", {"place": "p", "gone": {"b.1": "eaten by mice"}}),
        ("outage", {"place": "p", "hours": "nine"}),
    ],
)
def test_a_hurt_line_is_noticed(did: str, data: dict[str, Any]) -> None:
    with pytest.raises((ValueError, KeyError, TypeError, BadInput)):
        event(did, data)


def test_the_reason_that_a_person_s_words_name() -> None:
    assert reason_of("  Seal   FAILED ") is said.Reason.SEAL_FAILED
    assert reason_of("the cat") is said.Reason.OTHER


# -- amounts that were drawn in another unit -----------------------------------------------------


def drawn(*lines: tuple[str, dict[str, Any]]) -> list[said.Payload]:
    events = [event(did, data, str(n)) for n, (did, data) in enumerate(lines)]
    settled = settle(events)
    assert [one.id for one in settled] == [one.id for one in events]
    assert all(one.recorded == WROTE and one.day == DAY for one in settled)
    return [one.payload for one in settled]


def uses(*lines: tuple[str, dict[str, Any]]) -> list[Amount | None]:
    return [one.amount for one in drawn(*lines) if isinstance(one, said.Use)]


CRATE = ("put_up", {**PUT_UP, "amount": "10 lb"})


def test_a_draw_in_another_unit_is_what_was_there_less_what_was_left() -> None:
    found = uses(
        CRATE,
        ("use", {"amount": "2 lb", "left": "8 lb"}),
        ("use", {"amount": "500 g", "left": "6.9 lb"}),
        ("use", {"amount": "1 kg", "left": "4.7 lb"}),
        ("use", {"amount": "1 lb", "left": "3.7 lb"}),
    )
    assert found == [amount_of(text) for text in ("2 lb", "1.1 lb", "2.2 lb", "1 lb")]


def test_what_was_drawn_in_its_own_unit_stays_as_it_was_said_also_together() -> None:
    both = ("use", {"amount": "2 lb", "left": "8 lb", "group": "g"})
    assert drawn(CRATE, both)[1] == said.Use("b", JARS, amount_of("2 lb"), "2 lb")
    assert settle([event("use", both[1])])[0].together == "g"


def test_a_use_without_an_amount_and_every_other_act_stay_as_they_are() -> None:
    lines: tuple[tuple[str, dict[str, Any]], ...]
    lines = (CRATE, ("use", {}), ("move", {"place": "fridge"}), ("open", {}))
    assert drawn(*lines) == [event(did, data).payload for did, data in lines]


# -- what stood beside the log ---------------------------------------------------------------------


def test_settings_become_what_the_household_says_of_itself() -> None:
    found = of_settings({
        "altitude_ft": "1800", "people": "4", "units": "us", "meals": "2",
        "appetite:fish": "1.5", "table:2026-12-24": "8", "table:2026-12-25": "8",
        "table:2026-12-31": "0", "theme": "dark",
    })  # fmt: skip
    assert found == [
        said.Household(1800, 4, "us", 2),
        said.Ceiling("fish", 1.5),
        said.Table((date(2026, 12, 24), date(2026, 12, 25)), 8),
        said.Table((date(2026, 12, 31),), 0),
    ]


def test_no_settings_say_nothing() -> None:
    assert of_settings({}) == []
    assert of_settings({"people": "3"}) == [said.Household(people=3)]


WEEK: dict[str, Any] = {
    "from": "2026-11-23", "pins": [["b.1", "2026-11-24"], ["b.2", None]], "left_out": ["c.1"],
    "out": ["2026-11-25"], "dishes": {"stew": "2026-11-26"}, "plan": None,
}  # fmt: skip
ENTRY: dict[str, Any] = {
    "days": ["2026-11-24", "2026-11-25"], "containers": ["b.1"], "why": "first", "thaw": None,
    "dish": "stew", "amount": "2 lb", "servings": 3, "spare": 1, "later": 2,
    "until": "2026-11-28", "booked": [["2026-11-24", "e1"]],
}  # fmt: skip


def test_a_week_that_was_wished_for() -> None:
    assert of_week(WEEK) == said.Planned(
        date(2026, 11, 23),
        (said.Pin("b.1", date(2026, 11, 24)), said.Pin("b.2")),
        ("c.1",),
        (date(2026, 11, 25),),
        (said.DishDay("stew", date(2026, 11, 26)),),
        None,
    )


def test_a_week_that_was_accepted_and_partly_eaten() -> None:
    days = (date(2026, 11, 24), date(2026, 11, 25))
    eaten = (said.Eaten(date(2026, 11, 24), "e1"),)
    found = of_week({**WEEK, "plan": [ENTRY]})
    assert found is not None
    assert found.entries == (
        said.Entry(
            days, ("b.1",), "first", None, "stew", "2 lb", 3.0, 1.0, 2.0, date(2026, 11, 28), eaten
        ),
    )
    short = {k: v for k, v in ENTRY.items() if k not in ("later", "until")}
    thawed = of_week({**WEEK, "plan": [{**short, "thaw": "2026-11-23"}]})
    assert thawed is not None
    assert thawed.entries is not None
    (one,) = thawed.entries
    assert (one.later, one.until, one.thaw_by) == (0.0, None, date(2026, 11, 23))
    empty = of_week({**WEEK, "plan": []})
    assert empty is not None
    assert empty.entries == ()


@pytest.mark.parametrize(
    "hurt",
    [{}, {"from": "2026-11-23"}, {**WEEK, "from": "soon"}, {**WEEK, "pins": 3},
     {**WEEK, "plan": [{}]}],
)  # fmt: skip
def test_a_week_that_cannot_be_read_is_no_week_since_it_is_only_a_wish(
    hurt: dict[str, Any],
) -> None:
    assert of_week(hurt) is None
