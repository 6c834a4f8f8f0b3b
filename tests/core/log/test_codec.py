"""The log as text: what was booked is read back as it was, for ever, and nothing else is."""

from __future__ import annotations

import json
from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.codec import read, write
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method, Rating, State, Verdict
from tests.core.log.payloads_at_random import record
from tests.examples import many


@pytest.mark.parametrize("name", list(said.BY_NAME))
def test_what_is_written_is_read_as_it_was(name: str) -> None:
    @settings(max_examples=many(40))
    @given(record(said.BY_NAME[name]))
    def law(payload: said.Payload) -> None:
        line = write(payload)
        assert read(name, line) == payload
        assert "\n" not in line
        assert list(json.loads(line)) == sorted(json.loads(line))

    law()


PUT_UP = said.PutUp(
    "b",
    "2A",
    ("b.1", "b.2"),
    FoodFacts("crème brûlée", Group.DAIRY, Acidity.LOW_ACID, frozenset({"soup", "bean"})),
    Method.MEAL,
    "fridge",
    State.SEALED,
    date(2026, 3, 1),
    amount=Amount(Fraction(113, 3), "lb"),
    process=(("minutes", "20"), ("canner", "dial")),
    parts=(said.Part("a.1"), said.Part("a.2", Amount(Fraction(2), "lb"))),
)
#: Lines of logs that households have: they must be read as long as there are such logs.
LINES: list[tuple[said.Payload, str]] = [
    (
        PUT_UP,
        '{"amount": "113/3 lb", "batch": "b", "code": "2A", "containers": ["b.1", "b.2"], '
        '"food": {"acidity": "low-acid", "classes": ["bean", "soup"], "group": "dairy", '
        '"known": true, "name": "crème brûlée"}, "made": "2026-03-01", "method": "cooked meal", '
        '"parts": [{"container": "a.1"}, {"amount": "2 lb", "container": "a.2"}], '
        '"place": "fridge", "process": [["minutes", "20"], ["canner", "dial"]], '
        '"state": "sealed"}',
    ),
    (said.Use("b", ("b.1",)), '{"batch": "b", "containers": ["b.1"]}'),
    (
        said.Use("b", ("b.1",), Amount(Fraction(3, 2), "lb"), "1½ lb"),
        '{"amount": "3/2 lb", "batch": "b", "containers": ["b.1"], "said": "1½ lb"}',
    ),
    (
        said.Discard("b", ("b.1",), None, said.Reason.MOULD, "grey fur"),
        '{"batch": "b", "containers": ["b.1"], "reason": "mould", "why": "grey fur"}',
    ),
    (said.Reading("fridge", 41.0), '{"place": "fridge", "temp_f": 41.0}'),
    (
        said.Reading("fridge", 45.5, since=90),
        '{"place": "fridge", "since": 90, "temp_f": 45.5}',
    ),
    (
        said.PlaceAdded("p", "shelf 2", Climate.PANTRY, "cellar", 55.0),
        '{"climate": "pantry", "name": "shelf 2", "parent": "cellar", "place": "p", '
        '"target_f": 55.0}',
    ),
    (
        said.Count("p", (said.Gone("b.1", said.Fate.MISSING),), (said.Back("b.2", "p"),)),
        '{"back": [{"container": "b.2", "place": "p"}], '
        '"gone": [{"container": "b.1", "fate": "missing"}], "place": "p"}',
    ),
    (
        said.Outage("p", "2026-11-25T18:00", "2026-11-25T23:00", full=False),
        '{"end": "2026-11-25T23:00", "full": false, "place": "p", "start": "2026-11-25T18:00"}',
    ),
    (
        said.Sign("b", ("b.1",), "bulging", "the lid bulges", Verdict.DO_NOT_TASTE),
        '{"batch": "b", "containers": ["b.1"], "sign": "bulging", "verdict": "do not taste", '
        '"words": "the lid bulges"}',
    ),
    (said.Rated("b", Rating.NOT_AGAIN), '{"batch": "b", "rating": "not again"}'),
    (said.Table((date(2026, 12, 24),), 0), '{"days": ["2026-12-24"], "people": 0}'),
    (said.Undo(("1", "2")), '{"events": ["1", "2"]}'),
]  # fmt: skip


@pytest.mark.parametrize(("payload", "line"), LINES, ids=[type(one).__name__ for one, _ in LINES])
def test_a_line_of_a_log_means_what_it_meant(payload: said.Payload, line: str) -> None:
    assert write(payload) == line
    assert read(said.NAME_OF[type(payload)], line) == payload


@pytest.mark.parametrize(
    ("name", "line"),
    [
        ("use", '{"batch": 7, "containers": []}'),
        ("use", '{"batch": true, "containers": []}'),
        ("use", '{"batch": null, "containers": []}'),
        ("use", '{"batch": "b", "containers": [1]}'),
        ("use", '{"batch": "b", "containers": [], "amount": "2 stone"}'),
        ("use", '{"batch": "b", "containers": [], "amount": "some"}'),
        ("use", '{"batch": "b"}'),
        ("use", '{"batch": "b", "containers": [], "jar": "1"}'),
        ("use", '["b"]'),
        ("use", '{"batch": "b", "containers": []'),
        ("reading", '{"place": "p", "temp_f": "41"}'),
        ("reading", '{"place": "p", "temp_f": true}'),
        ("reading", '{"place": "p", "temp_f": 41, "since": 1.5}'),
        ("reading", '{"place": "p", "temp_f": 41, "since": false}'),
        ("place_changed", '{"place": "p", "forget_target": 1}'),
        ("place_added", '{"place": "p", "name": "n", "climate": "attic"}'),
        ("table", '{"days": ["2026-02-30"]}'),
        ("drunk", '{"batch": "b", "containers": []}'),
    ],
)
def test_a_line_that_is_hurt_is_noticed_and_never_guessed_at(name: str, line: str) -> None:
    with pytest.raises((ValueError, KeyError, TypeError, AttributeError)):
        read(name, line)


def test_a_whole_number_of_degrees_is_a_temperature() -> None:
    """Other programs write 41.0 as 41."""
    assert read("reading", '{"place": "p", "temp_f": 41}') == said.Reading("p", 41.0)


def test_what_was_taken_away_is_written_and_what_was_never_said_is_not() -> None:
    """No capacity said, and a parent taken away: only one of them is a change."""
    assert json.loads(write(said.PlaceChanged("p", parent=""))) == {"parent": "", "place": "p"}
    assert json.loads(write(said.Correct("b", process=(), note=""))) == {
        "batch": "b", "note": "", "process": [],
    }  # fmt: skip
    assert json.loads(write(said.Planned(date(2026, 3, 2), entries=()))) == {
        "entries": [], "start": "2026-03-02",
    }  # fmt: skip


@given(st.fractions(Fraction(1, 10_000), 10_000))
def test_an_amount_is_kept_to_the_last_fraction(number: Fraction) -> None:
    used = said.Use("b", ("b.1",), Amount(number, "lb"))
    assert read("use", write(used)) == used


def test_what_is_hurt_is_said_with_the_value() -> None:
    with pytest.raises(TypeError, match="'41' is no float"):
        read("reading", '{"place": "p", "temp_f": "41"}')
