"""The day that is promised for a ferment is one on which calling it ready is accepted."""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.ripens import Ripe, ripe_from
from pantry_tui.core.words import Climate, Method, State
from tests.core.keeping.told import MADE, Told
from tests.examples import many

FOODS = ("sauerkraut", "cabbages", "dill pickles", "kimchi", "carrots", "mushrooms")


def ripe(told: Told, day: int = 0) -> Ripe:
    spans = told.assessed(day, 23.9).spans
    found = ripe_from(told.batch, spans, 0, told.book, MADE + timedelta(days=day))
    assert found is not None
    return found


def promised(told: Told, day: int = 0) -> int | None:
    found = ripe(told, day).day
    return None if found is None else (found - MADE).days


def accepted(told: Told, day: int, hour: float) -> bool:
    """Whether it is ready for the judge if it is called so then; it goes to the cold after that."""
    turns = told.box
    told.at(day, hour).ready().at(day, hour + 0.1).move("second fridge")
    found = told.judged(day + 1)
    told.box = turns
    return not any("ready after" in one or "working time" in one for one in found.reasons)


@given(
    food=st.sampled_from(FOODS),
    climate=st.sampled_from([Climate.ROOM, Climate.PANTRY, Climate.CELLAR, Climate.FRIDGE]),
    warm=st.floats(30, 90),
    made=st.one_of(st.none(), st.floats(0, 23.5)),
    moved=st.one_of(st.none(), st.integers(1, 20)),
    hour=st.floats(0, 23.5),
)
@settings(max_examples=many(60))
def test_the_promised_day_is_accepted_at_any_hour_and_the_one_before_not_at_all_of_them(
    food: str,
    climate: Climate,
    warm: float,
    made: float | None,
    moved: int | None,
    hour: float,
) -> None:
    told = Told(food, Method.LACTIC, "larder", State.IN_PROGRESS, made)
    told.at(-1).hold("larder", climate, warm)
    if moved is not None:
        told.at(moved).move("kitchen")
    day = promised(told, moved or 0)
    if day is None:
        assert not accepted(told, 300, hour)
        return
    # What is past when it is asked cannot be called ready before it was moved.
    if day > (moved or 0):
        assert accepted(told, day, hour)
        assert not accepted(told, day - 1, 0)


@pytest.mark.parametrize(
    ("food", "place", "hour", "day"),
    [
        ("sauerkraut", "kitchen", 10, 21), ("sauerkraut", "larder", 10, 35),
        ("carrots", "kitchen", 10, 14), ("kimchi", "vault", 10, 3),
        # From night to morning is no day: in the morning of the 21st it would still be refused.
        ("sauerkraut", "kitchen", 22, 22),
        ("sauerkraut", "kitchen", None, 21),
        ("sauerkraut", "vault", 10, None), ("sauerkraut", "fridge", 10, None),
        ("sauerkraut", "freezer", 10, None), ("mushrooms", "kitchen", 10, None),
    ],
)  # fmt: skip
def test_the_published_times_are_promised(
    food: str, place: str, hour: float | None, day: int | None
) -> None:
    told = Told(food, Method.LACTIC, place, State.IN_PROGRESS, hour)
    assert promised(told) == day


def test_where_no_day_counts_the_promise_says_what_calling_it_ready_would_say() -> None:
    told = Told("sauerkraut", Method.LACTIC, "vault", State.IN_PROGRESS, 10)
    why = ripe(told).why
    told.at(40, 10).ready()
    said = told.judged(40).reasons[0]
    assert why.split(": ", 1)[1] in said
    assert "no day counts" in why


def test_what_has_worked_for_days_needs_only_the_rest() -> None:
    told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS, 10)
    told.at(14).move("fridge")
    assert promised(told, 20) is None
    told.at(20).move("kitchen")
    assert promised(told, 20) == 28


@pytest.mark.parametrize(
    ("ph", "measured", "today", "day"),
    [("3.9", 9, 9, 9), ("3.9", 9, 11, 9), ("3.9", 9, 12, 21), ("4.7", 9, 9, None)],
)
def test_a_ph_says_more_than_days_while_it_speaks(
    ph: str, measured: int, today: int, day: int | None
) -> None:
    told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS, 10, ph=ph)
    told.batch = replace(told.batch, ph_day=MADE + timedelta(days=measured))
    assert promised(told, today) == day
    if day is None:
        assert "above 4.6" in ripe(told, today).why


@pytest.mark.parametrize("method", [Method.INFUSION, Method.VINEGAR_FERMENT])
def test_what_only_its_maker_calls_ready_has_no_such_day(method: Method) -> None:
    told = Told("herb vinegar", method, "kitchen", State.IN_PROGRESS, 10)
    spans = told.assessed(0).spans
    assert ripe_from(told.batch, spans, 0, told.book, MADE) is None
