"""What is kept as it is needs no way said; and no other way would be judged more strictly."""

from __future__ import annotations

from datetime import date
from itertools import product

import pytest

from pantry_tui.core.line.held import Held
from pantry_tui.core.words import Climate, Method
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.line_as_is import as_it_is
from pantry_tui.services.batchwork.understood import read
from pantry_tui.services.lookup.shelf_life import keeps
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places

MADE = date(2026, 11, 25)
#: How what stands there may be said: nothing of it, counted, in a sack, in a jar.
HELD = [Held(), Held(count=6, pieces=True), Held(count=1, vessel="sack"),
        Held(count=2, vessel="jars")]  # fmt: skip


def _days(method: str, food: str, climate: Climate) -> tuple[str, str]:
    found = keeps(load_tables(), method, food, climate=climate.value, made=MADE)
    return (found["best_by"] or "9999", found["discard_after"] or "9999")


def test_no_other_way_to_keep_it_as_it_is_has_an_earlier_day() -> None:
    tables, seen = load_tables(), 0
    for food, climate, held in product(tables.foods, Climate, HELD):
        method = as_it_is(food.facts, food.usual, climate, held)
        if method is None:
            continue
        seen += 1
        ours = _days(method, food.name, climate)
        for other in (Method.FRESH, Method.BOUGHT):
            theirs = _days(other, food.name, climate)
            assert ours[1] <= theirs[1], (food.name, other)
            # A crop is best for as long as it was stored to be; shop food has figures of its own.
            assert method is Method.CELLAR or ours[0] <= theirs[0], (food.name, other)
    assert seen > 100


@pytest.mark.parametrize(
    ("line", "method"),
    [
        ("2 gallons milk, fridge", Method.FRESH), ("butter, 500 g, fridge", Method.FRESH),
        ("5 lb sugar, larder", Method.BOUGHT), ("50 lb flour, larder", Method.BOUGHT),
        ("honey, 3 jars, larder", Method.BOUGHT), ("sack of onions, larder", Method.CELLAR),
        ("3 strings of onions, larder", Method.CELLAR), ("10 winter squash, larder", Method.CELLAR),
        ("10 kg bag potatoes, larder", Method.CELLAR),
    ],
)  # fmt: skip
def test_a_staple_or_a_crop_is_kept_as_it_is(larder: Pantry, line: str, method: Method) -> None:
    found = read(larder, line)
    assert found.method is method
    assert found.problems == ()


@pytest.mark.parametrize(
    "line",
    ["6 jars apples, larder", "2 bags carrots, larder", "6 jars lentils, larder",
     "1 christmas cake, larder", "2 jars butter, larder", "3 jars garlic, larder",
     "maple syrup, 2 pints, larder", "12 jars plums, larder"],
)  # fmt: skip
def test_what_may_have_been_worked_on_is_asked(larder: Pantry, line: str) -> None:
    found = read(larder, line)
    assert found.method is None
    assert "method" in {one.about for one in found.asks}


@pytest.mark.parametrize(
    ("line", "method"),
    [
        ("turkey 14 lb, chest, bought yesterday", Method.FROZEN),
        ("2 lb ground beef, bought in, chest", Method.FROZEN),
        ("2 bags peas, bought in, chest", Method.FROZEN),
        ("2 lb ground beef, bought in, fridge", Method.BOUGHT),
        ("500 g shrimp, bought in, chest, best before june 2027", Method.BOUGHT),
        ("1 tin tomatoes, bought in, chest", Method.BOUGHT),
        ("2 lb ground beef, bought in, chest, state=thawed", Method.BOUGHT),
    ],
)
def test_what_is_bought_and_goes_straight_into_a_freezer_is_frozen_food(
    larder: Pantry, line: str, method: Method
) -> None:
    """USDA FSIS, Freezing and Food Safety: what is frozen in time stays safe. A printed date speaks
    for itself, and what is no more frozen is none."""
    places.add(larder, "chest", "freezer")
    found = read(larder, line)
    assert found.method is method
    assert found.problems == ()
