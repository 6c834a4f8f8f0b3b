"""A stay of which no figure speaks gives no time back, and a record that was put right later lets
nothing miss what its place held."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Climate, Method, State
from tests.core.keeping.told import MADE, Told

SHELVED = [
    ("snap beans", Method.PRESSURE),
    ("peaches", Method.BOILING_WATER),
    ("strawberry jam", Method.JAM),
    ("dill pickles", Method.VINEGAR_PICKLE),
    ("apples", Method.DRIED),
]


def best(told: Told, day: int) -> int:
    found = told.assessed(day).best_by
    assert found is not None
    return (found - MADE).days


@pytest.mark.parametrize(("food", "method"), SHELVED)
def test_a_sealed_jar_that_was_frozen_keeps_no_longer_than_one_that_was_not(
    food: str, method: Method
) -> None:
    stayed = Told(food, method, "larder")
    went = Told(food, method, "larder").at(30).move("freezer").at(200).move("larder")
    began = Told(food, method, "freezer").at(170).move("larder")
    for day in (201, 250):
        assert best(went, day) <= best(stayed, day)
        assert best(began, day) <= best(stayed, day)


@pytest.mark.parametrize(("food", "method"), SHELVED)
def test_what_stands_in_the_freezer_ends_on_the_day_on_which_it_would_have(
    food: str, method: Method
) -> None:
    stays = Told(food, method, "larder").at(30).move("freezer")
    assert best(stays, 40) <= best(Told(food, method, "larder"), 40)


def test_what_was_moved_before_the_day_on_which_it_was_made_still_met_where_it_was_made() -> None:
    """Its day was put right later, and nobody knows the hour: the warm fridge counts."""
    moved = Told("chicken stock", Method.MEAL, "fridge", hour=None)
    moved.at(-1, None).move("chest").at(0, None).hold("fridge", Climate.FRIDGE, 41)
    stayed = Told("chicken stock", Method.MEAL, "fridge", hour=None)
    stayed.at(0, None).hold("fridge", Climate.FRIDGE, 41)
    assert moved.last(0, 21) == stayed.last(0, 21) == 2
    assert moved.box.state is State.SEALED
