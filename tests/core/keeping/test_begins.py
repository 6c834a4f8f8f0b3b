"""Which process begins anew with food, and which only keeps on what was kept before."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core.keeping.begins import begins_with
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Group, Method
from tests.core.keeping.told import MADE, facts_of


def batch(method: Method, food: str, size: str = "") -> Batch:
    return Batch("b", "2A", facts_of(food), method, MADE, size)


@pytest.mark.parametrize(
    ("new", "old", "food"),
    [
        # raw food, fresh or thawed, within its days
        (Method.MEAL, Method.FRESH, "beef"),
        (Method.MEAL, Method.FROZEN, "ground beef"),
        (Method.MEAL, Method.BOUGHT, "chickens"),
        (Method.MEAL, Method.FRESH, "eggs"),
        (Method.MEAL, Method.FROZEN, "runner beans"),
        (Method.MEAL, Method.SALTED, "bacon"),
        (Method.PRESSURE, Method.FROZEN, "salmon"),
        (Method.PRESSURE, Method.FRESH, "runner beans"),
        (Method.PRESSURE, Method.MEAL, "chicken stock"),
        (Method.JAM, Method.FROZEN, "strawberries"),
        (Method.BOILING_WATER, Method.FROZEN, "tomatoes"),
        (Method.DRIED, Method.FRESH, "beef"),
        (Method.DRIED, Method.FROZEN, "runner beans"),
        (Method.HOT_SMOKED, Method.SALTED, "salmon"),
        (Method.COLD_SMOKED, Method.FRESH, "salmon"),
        (Method.SALTED, Method.FRESH, "pork"),
        (Method.LACTIC, Method.FRESH, "milk"),
        (Method.FRIDGE_PICKLE, Method.FRESH, "eggs"),
    ],
)
def test_a_published_process_begins_with_raw_food(new: Method, old: Method, food: str) -> None:
    assert begins_with(new, batch(old, food))


@pytest.mark.parametrize(
    ("new", "old", "food"),
    [
        (Method.DRIED, Method.IN_OIL, "garlic"),
        (Method.VINEGAR_PICKLE, Method.IN_OIL, "garlic"),
        (Method.DRIED, Method.PRESSURE, "runner beans"),
        (Method.PRESSURE, Method.PRESSURE, "runner beans"),
        (Method.MEAL, Method.PRESSURE, "runner beans"),
        (Method.SALTED, Method.MEAL, "stew"),
        (Method.DRIED, Method.MEAL, "stew"),
        (Method.PRESSURE, Method.MEAL, "stew"),
        (Method.FREEZE_DRIED, Method.FRESH, "beef"),
        (Method.COLD_SMOKED, Method.FRESH, "pork"),
        (Method.COLD_SMOKED, Method.SALTED, "pork"),
        (Method.MEAL, Method.FRESH, "milk"),
        (Method.MEAL, Method.FRESH, "hard-cooked eggs"),
        (Method.MEAL, Method.BOUGHT, "cooked meat"),
        (Method.MEAL, Method.BOUGHT, "hot dogs"),
        (Method.MEAL, Method.HOT_SMOKED, "salmon"),
        (Method.DRIED, Method.SALTED, "stew"),
        (Method.LACTIC, Method.FRESH, "beef"),
        (Method.FRIDGE_PICKLE, Method.FRESH, "hard-cooked eggs"),
        # no tested jar begins with a low-acid vegetable that was frozen
        (Method.PRESSURE, Method.FROZEN, "runner beans"),
        (Method.FRIDGE_PICKLE, Method.FROZEN, "runner beans"),
        (Method.IN_OIL, Method.FRESH, "garlic"),
        (Method.FRESH, Method.FRESH, "beef"),
    ],
)
def test_none_begins_with_what_was_cooked_canned_or_put_in_oil(
    new: Method, old: Method, food: str
) -> None:
    assert not begins_with(new, batch(old, food))


def test_a_pack_in_which_food_is_sold_cooked_is_not_raw() -> None:
    assert begins_with(Method.MEAL, batch(Method.BOUGHT, "asparagus", "1 lb bag"))
    for size in ("1 pint jar", "14 oz tin", "pouch"):
        assert not begins_with(Method.MEAL, batch(Method.BOUGHT, "asparagus", size)), size


def test_of_meat_that_no_table_names_nobody_knows_whether_it_is_raw() -> None:
    known = batch(Method.FRESH, "beef")
    other = replace(known, food=replace(known.food, name="emu", known=False))
    assert begins_with(Method.MEAL, known)
    assert not begins_with(Method.MEAL, other)
    crop = replace(known, food=replace(facts_of("onions"), name="oca", known=False))
    assert crop.food.group is Group.VEGETABLE
    assert begins_with(Method.MEAL, crop), "a raw crop is one by its group"
