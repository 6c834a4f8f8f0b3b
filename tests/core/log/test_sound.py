"""A log of somebody else is held to what a person may type here."""

from __future__ import annotations

import json
from datetime import date
from fractions import Fraction
from typing import Any

import pytest

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.document import document, read_document
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.sound import wrong_with
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method, State
from pantry_tui.errors import BadInput

FOOD = FoodFacts("plum jam", Group.SWEET, Acidity.ACID, frozenset())
PUT_UP = said.PutUp("b", "2A", ("b.1",), FOOD, Method.JAM, "p", State.SEALED)
HOME = said.Household()
READ = said.Reading("p", 60.0)
CUT = said.Outage("p", "2026-11-25T18:00", "2026-11-25T20:00")
PLACE = said.PlaceAdded("p", "larder", Climate.PANTRY)


@pytest.mark.parametrize("payload", [PUT_UP, HOME, READ, CUT, PLACE, said.Planned()])
def test_what_is_said_here_is_sound(payload: said.Payload) -> None:
    assert wrong_with(payload) == ""


@pytest.mark.parametrize(
    "payload",
    [
        *(PUT_UP._replace(code=code) for code in ("=1+1\x1b[31m", "", "A" * 10_000, "2a", "AA")),
        PUT_UP._replace(made=date(1, 1, 1)),
        PUT_UP._replace(made=date(9999, 12, 31)),
        PUT_UP._replace(amount=Amount(Fraction(-1), "lb")),
        PUT_UP._replace(amount=Amount(Fraction(10**150), "lb")),
        PUT_UP._replace(note="x" * 1_000_001),
        HOME._replace(people=-4),
        HOME._replace(altitude_ft=10**30),
        HOME._replace(units="furlong"),
        HOME._replace(half="east"),
        READ._replace(temp_f=-1e9),
        READ._replace(temp_f=float("inf")),
        READ._replace(humidity=101.0),
        CUT._replace(end="zz"),
        CUT._replace(start="0001-01-01T00:00"),
        CUT._replace(max_temp_f=1e9),
        PLACE._replace(name="\u200b"),
        PLACE._replace(name=""),
        said.Dish("\u200b", (said.Taken("plum jam", 1.0),)),
        said.Dish("cake", (said.Taken("plum jam", float("nan")),)),
    ],
)
def test_what_nobody_could_type_is_named(payload: said.Payload) -> None:
    assert 0 < len(wrong_with(payload)) < 100


def test_a_document_that_says_it_is_refused_by_its_event() -> None:
    event = Event("0" * 26, "2026-11-25T08:00:00+00:00", date(2026, 11, 25), HOME, None, "")
    rows: dict[str, Any] = json.loads(document([event]))
    assert read_document(json.dumps(rows)) == [event]
    rows["events"][0]["says"] = {"people": -4}
    with pytest.raises(BadInput, match=r"Event 1 makes no sense .*people"):
        read_document(json.dumps(rows))
