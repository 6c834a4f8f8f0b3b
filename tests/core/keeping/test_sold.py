"""How a shop keeps what was bought, and for what its printed date is taken."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.printed import date_stands_alone, furthest, is_last_safe
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.keeping.sold import Sold, sold
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import facts_of

MADE = date(2026, 3, 1)
LOW, ACID = Acidity.LOW_ACID, Acidity.ACID
BOOK = load_tables().book


def batch(
    group: Group, acidity: Acidity = LOW, *classes: str, size: str = "", **process: str
) -> Batch:
    food = FoodFacts("something", group, acidity, frozenset(classes))
    return Batch("b", "2A", food, Method.BOUGHT, MADE, size, tuple(process.items()))


def bought(food: str, size: str = "", **process: str) -> Batch:
    return Batch("b", "2A", facts_of(food), Method.BOUGHT, MADE, size, tuple(process.items()))


@pytest.mark.parametrize(
    ("food", "size", "process", "where"),
    [
        # No pack that stands on a shelf, and no publication that puts it there.
        ("hummus", "tub", {}, Sold.COLD), ("guacamole", "tub", {}, Sold.COLD),
        ("carrot juice", "", {}, Sold.COLD), ("apple cider", "", {}, Sold.COLD),
        ("salsa", "tub", {}, Sold.COLD), ("fresh salsa", "tub", {}, Sold.COLD),
        ("milk", "", {}, Sold.COLD), ("chickens", "pack", {}, Sold.COLD),
        ("bean sprouts", "bag", {}, Sold.COLD), ("butter", "pack", {}, Sold.COLD),
        # Some of these packs stand on a shelf, and some in the cold.
        ("carrot juice", "bottle", {}, Sold.EITHER), ("apple juice", "bottles", {}, Sold.EITHER),
        ("milk", "box", {}, Sold.EITHER), ("milk", "carton", {}, Sold.EITHER),
        ("hummus", "jar", {}, Sold.EITHER), ("pesto", "jar", {}, Sold.EITHER),
        ("hard sausages", "", {}, Sold.EITHER),
        ("carrots", "pouch", {"vacuum": "yes"}, Sold.EITHER), ("beets", "jar", {}, Sold.SHELF),
        # A tin; sugar, salt or dryness; a published time in a pantry.
        ("tuna", "tin", {}, Sold.SHELF), ("canned tuna", "", {}, Sold.SHELF),
        ("honey", "jar", {}, Sold.SHELF), ("soy sauce", "", {}, Sold.SHELF),
        ("jerky", "bag", {}, Sold.SHELF), ("country hams", "", {}, Sold.SHELF),
        ("shelf-stable milk", "", {}, Sold.SHELF), ("salsa", "jar", {}, Sold.SHELF),
        ("peanut butter", "jar", {}, Sold.SHELF), ("carrots", "bag", {}, Sold.SHELF),
        ("rice", "bag", {"vacuum": "yes"}, Sold.SHELF), ("dry beans", "bag", {}, Sold.SHELF),
        # Whole crops have months in a pantry; what was packed without air is none.
        ("sweet potatoes", "bag", {"vacuum": "yes"}, Sold.COLD),
        ("melons", "", {"prepared": "cut"}, Sold.COLD),
        # What a person saw, but for raw meat, fish and eggs.
        ("carrot juice", "bottle", {"sold": "shelf"}, Sold.SHELF),
        ("pesto", "jar", {"sold": "shelf"}, Sold.SHELF),
        ("pesto", "jar", {"sold": "chilled"}, Sold.COLD),
        ("shelf-stable milk", "box", {"sold": "chilled"}, Sold.COLD),
        ("chickens", "pack", {"sold": "shelf"}, Sold.COLD),
        ("eggs", "box", {"sold": "shelf"}, Sold.COLD),
        ("tuna", "tin", {"sold": "chilled"}, Sold.SHELF),
    ],
)  # fmt: skip
def test_where_a_shop_keeps_it(food: str, size: str, process: dict[str, str], where: Sold) -> None:
    one = bought(food, size, **process)
    assert sold(one, BOOK) is where
    assert sold(replace(one, method=Method.FRESH), BOOK) is Sold.OWN


@pytest.mark.parametrize(
    ("group", "size", "classes", "vacuum", "name", "cold"),
    [
        (Group.RELISH, "tub", (), "no", "x", True), (Group.RELISH, "jar", (), "no", "x", False),
        (Group.RELISH, "pouches", (), "no", "x", False),
        (Group.DRINK, "Bottle", (), "no", "x", False), (Group.MEAT, "pack", (), "no", "x", True),
        (Group.VEGETABLE, "bag", (), "no", "x", False),
        (Group.VEGETABLE, "bag", (), "yes", "x", True),
        (Group.VEGETABLE, "bag", (), "yes", "dry beans", False),
        # Dry or fat, also where it is packed without air.
        (Group.GRAIN, "bag", (), "yes", "x", False), (Group.FAT, "pack", (), "yes", "x", False),
        (Group.FRUIT, "bag", ("nut",), "yes", "x", False),
    ],
)  # fmt: skip
def test_what_no_table_knows_is_judged_by_its_pack(
    group: Group, size: str, classes: tuple[str, ...], vacuum: str, name: str, cold: bool
) -> None:
    one = batch(group, LOW, *classes, size=size, vacuum=vacuum)
    one = replace(one, food=replace(one.food, name=name))
    assert (sold(one, Rulebook({})) is Sold.COLD) is cold


@pytest.mark.parametrize(
    ("group", "acidity", "size", "vacuum", "last"),
    [
        (Group.MEAT, LOW, "pack", "no", True), (Group.MEAT, LOW, "tin", "no", False),
        (Group.VEGETABLE, LOW, "bag", "no", False), (Group.VEGETABLE, LOW, "bag", "yes", True),
        (Group.VEGETABLE, ACID, "bag", "yes", False), (Group.DAIRY, ACID, "tub", "no", True),
        (Group.VEGETABLE, LOW, "tin", "yes", False), (Group.GRAIN, LOW, "bag", "yes", True),
        # What stands on a shop's shelf: milk in bottles can hurt, beets without air too.
        (Group.DAIRY, LOW, "bottle", "no", True), (Group.VEGETABLE, LOW, "pouch", "yes", True),
        (Group.RELISH, LOW, "tub", "no", True), (Group.RELISH, LOW, "jar", "no", True),
        (Group.RELISH, ACID, "jar", "no", False),
    ],
)  # fmt: skip
def test_a_printed_date_is_the_last_safe_day_on_what_can_hurt_and_never_on_a_tin(
    group: Group, acidity: Acidity, size: str, vacuum: str, last: bool
) -> None:
    one = batch(group, acidity, size=size, vacuum=vacuum)
    assert is_last_safe(one, sold(one, Rulebook({}))) is last
    own = replace(one, method=Method.MEAL)
    assert not is_last_safe(own, sold(own, Rulebook({}))), "one's own has figures of its own"


@pytest.mark.parametrize(
    ("food", "process", "days"),
    [
        ("ground beef", {}, 14), ("cod", {}, 14), ("oysters", {}, 14), ("bean sprouts", {}, 14),
        ("melons", {"prepared": "cut"}, 14), ("rice balls", {}, 14),
        ("ground chicken", {"vacuum": "yes"}, 14), ("salmon", {"vacuum": "yes"}, 14),
        ("chickens", {}, 21), ("chicken pieces", {"vacuum": "yes"}, 21),
        ("beef steaks", {}, 21), ("beef steaks", {"vacuum": "yes"}, 60),
        ("pork loin", {"vacuum": "yes"}, 60), ("liver", {}, 14), ("meatballs", {}, 14),
        ("beef", {}, 21), ("sausages", {}, 21),
        ("ducks", {"vacuum": "yes"}, 21), ("rotisserie chicken", {}, 30), ("cooked fish", {}, 30),
        ("bacon", {}, 90), ("hot-smoked fish", {"vacuum": "yes"}, 90), ("pickled herring", {}, 90),
        ("lasagne", {}, 30), ("tofu", {}, 90), ("milk", {}, 90), ("hot dogs", {}, 90),
    ],
)  # fmt: skip
def test_no_use_by_of_its_kind_is_believed_further(
    food: str, process: dict[str, str], days: int
) -> None:
    """This program's choices, common practice without a source: each is pinned here."""
    one = bought(food, **process, dated="use-by")
    assert furthest(one) == days
    at = replace(one, printed=MADE + timedelta(days))
    assert date_stands_alone(at, Sold.COLD)
    assert not date_stands_alone(replace(at, printed=MADE + timedelta(days + 1)), Sold.COLD)
    assert date_stands_alone(replace(at, made=None), Sold.COLD)
    assert not date_stands_alone(replace(at, process=()), Sold.EITHER)


def test_meat_that_no_table_knows_is_believed_as_little_as_raw_meat() -> None:
    one = batch(Group.MEAT, dated="use-by", vacuum="yes")
    assert furthest(replace(one, food=replace(one.food, known=False))) == 21
