"""How a shop keeps what was bought, and for what its printed date is taken."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.printed import date_stands_alone, furthest, is_last_safe
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.keeping.sold import Sold, not_believed, sold
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
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
        # A carton round eggs or raw fish is no carton that stands on a shelf.
        ("eggs", "carton of 12", {"sold": "shelf"}, Sold.COLD), ("salmon", "carton", {}, Sold.COLD),
        ("chicken stock", "carton", {}, Sold.EITHER), ("salmon", "pouch", {}, Sold.EITHER),
        # Said in capitals it is the same, and no more is believed.
        ("chickens", "pack", {"sold": "Shelf"}, Sold.COLD),
        ("ground beef", "", {"sold": "SHELF"}, Sold.COLD),
        ("pesto", "jar", {"sold": "Chilled"}, Sold.COLD),
        ("carrot juice", "bottle", {"sold": "Shelf"}, Sold.SHELF),
        # Cut, or in a jar without air, it may be raw.
        ("apples", "bag", {"prepared": "sliced"}, Sold.COLD), ("apples", "bag", {}, Sold.SHELF),
        ("carrots", "jar", {"prepared": "sliced"}, Sold.EITHER),
        ("beets", "jar", {"vacuum": "yes"}, Sold.EITHER),
        ("beets", "jar", {"vacuum": "No"}, Sold.SHELF), ("beets", "bottles", {}, Sold.SHELF),
        # Drinks come in boxes that stand.
        ("carrot juice", "box", {}, Sold.EITHER), ("carrot juice", "bag", {}, Sold.COLD),
        ("cream", "1 l box", {}, Sold.EITHER), ("yogurt", "box", {}, Sold.COLD),
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
        (Group.NUT, "bag", (), "yes", "x", False),
        (Group.FRUIT, "bag", ("nut",), "yes", "x", False),
    ],
)  # fmt: skip
def test_what_no_table_knows_is_judged_by_its_pack(
    group: Group, size: str, classes: tuple[str, ...], vacuum: str, name: str, cold: bool
) -> None:
    one = batch(group, LOW, *classes, size=size, vacuum=vacuum)
    one = replace(one, food=replace(one.food, name=name))
    assert (sold(one, Rulebook({})) is Sold.COLD) is cold


def test_a_shelf_is_not_believed_of_raw_meat_fish_and_eggs() -> None:
    for food in ("chickens", "trout", "eggs"):
        for word in ("shelf", "Shelf"):
            assert not_believed(bought(food, sold=word), Sold.COLD)
            assert not not_believed(bought(food, sold=word), Sold.SHELF)
        assert not not_believed(bought(food), Sold.COLD)
        assert not not_believed(bought(food, sold="chilled"), Sold.COLD)
    assert not not_believed(bought("pesto", sold="shelf"), Sold.COLD)


def figure(
    days: float | None,
    climate: Climate,
    method: Method = Method.BOUGHT,
    state: State = State.SEALED,
) -> Rule:
    return Rule(
        "own", method, "something", state, frozenset({climate}), Kind.QUALITY, days, days, days,
        "days", None, Status.CURRENT, "As published.", "typed", Trust.READ,
    )  # fmt: skip


PANTRY, FRIDGE = Climate.PANTRY, Climate.FRIDGE


@pytest.mark.parametrize(
    ("group", "acidity", "classes", "size", "figures", "where"),
    [
        # Three weeks in a pantry mean a shelf; less is a way home, or a counter.
        (Group.RELISH, LOW, (), "tub", [figure(21, PANTRY)], Sold.SHELF),
        (Group.RELISH, LOW, (), "tub", [figure(20, PANTRY)], Sold.COLD),
        (Group.RELISH, LOW, (), "tub", [figure(3, PANTRY), figure(90, PANTRY)], Sold.SHELF),
        # With a time in the cold too it depends on the pack.
        (Group.RELISH, LOW, (), "tub", [figure(90, PANTRY), figure(7, FRIDGE)], Sold.COLD),
        (Group.RELISH, LOW, (), "jar", [figure(90, PANTRY), figure(7, FRIDGE)], Sold.SHELF),
        (Group.RELISH, LOW, (), "jar", [figure(7, FRIDGE)], Sold.EITHER),
        # Figures for opened packs, for other ways of keeping, and none at all say nothing.
        (Group.RELISH, LOW, (), "tub", [figure(90, PANTRY, state=State.OPEN)], Sold.COLD),
        (Group.RELISH, LOW, (), "tub", [figure(90, PANTRY, Method.FRESH)], Sold.COLD),
        (Group.RELISH, LOW, (), "tub", [figure(None, PANTRY)], Sold.COLD),
        # What cannot hurt stands, but for a sauce or drink that the cold keeps for a short time.
        (Group.RELISH, ACID, (), "tub", [], Sold.SHELF),
        (Group.RELISH, ACID, (), "tub", [figure(21, FRIDGE)], Sold.COLD),
        (Group.RELISH, ACID, (), "tub", [figure(22, FRIDGE)], Sold.SHELF),
        (Group.RELISH, ACID, (), "jar", [figure(7, FRIDGE)], Sold.SHELF),
        (Group.DRINK, ACID, (), "", [figure(30, FRIDGE), figure(7, FRIDGE)], Sold.COLD),
        (Group.FAT, LOW, (), "", [figure(7, FRIDGE)], Sold.SHELF),
        # What is said of a crop is said of a whole one, that of cooked crops aside.
        (Group.VEGETABLE, LOW, ("cooked",), "bag", [figure(90, PANTRY)], Sold.SHELF),
        (Group.VEGETABLE, LOW, ("cooked",), "bag", [], Sold.COLD),
        (Group.VEGETABLE, LOW, ("juice",), "bag", [figure(90, PANTRY)], Sold.COLD),
        # Sugar keeps it in any pack, but not what is in it of stock, meat, oil or beans.
        (Group.SWEET, LOW, (), "tub", [], Sold.SHELF),
        *((Group.SWEET, LOW, (one,), "tub", [], Sold.COLD)
          for one in ("stock", "animal", "cooked", "in-oil", "bean")),
    ],
)  # fmt: skip
def test_what_a_table_says_of_its_shut_pack(
    group: Group, acidity: Acidity, classes: tuple[str, ...], size: str, figures: list[Rule],
    where: Sold,
) -> None:  # fmt: skip
    book = Rulebook({}, wide=lambda name: figures if name == "something" else [])
    assert sold(batch(group, acidity, *classes, size=size), book) is where


@pytest.mark.parametrize(
    ("food", "where"),
    [
        # Dry, salted or in spirit as they are sold (common practice, no source).
        *((food, Sold.SHELF) for food in (
            "soy sauce", "mustard", "miso", "gochujang", "hoisin sauce", "oyster sauce",
            "bouillon", "sauce mixes", "salted vegetables", "salted herbs", "mushroom ketchup",
            "coffee", "tea", "water", "cream liqueur")),
        # USDA FSIS, Shelf-Stable Food Safety, as a reprint.
        ("jerky", Sold.SHELF), ("country hams", Sold.SHELF),
        # Dried or hard-cured: some of it hangs on a shelf, some lies in the cold.
        *((food, Sold.EITHER) for food in (
            "hard sausages", "biltong", "charqui", "kilishi", "dried beef", "pemmican",
            "dried fish", "dried salted fish", "salt cod", "prosciutto", "basturma", "sujuk",
            "salt pork")),
        ("sausages", Sold.COLD), ("bacon", Sold.COLD), ("hot-smoked fish", Sold.COLD),
    ],
)  # fmt: skip
def test_what_stands_by_itself_needs_no_table_that_says_so(food: str, where: Sold) -> None:
    for size in ("", "tub", "pack"):
        assert sold(bought(food, size, vacuum="yes"), Rulebook({})) is where


@pytest.mark.parametrize(("name", "stands"), [("canned hash", True), ("hash", False)])
def test_the_name_of_a_tin_says_that_it_is_one(name: str, stands: bool) -> None:
    one = batch(Group.MEAT)
    one = replace(one, food=replace(one.food, name=name))
    assert (sold(one, Rulebook({})) is Sold.SHELF) is stands


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


@pytest.mark.parametrize("word", ["use-by", "Use-by", "USE-BY"])
def test_a_use_by_is_one_in_capitals_too(word: str) -> None:
    on_shelf = bought("mushrooms", "jar", dated=word)
    assert is_last_safe(on_shelf, Sold.SHELF)
    assert not is_last_safe(replace(on_shelf, process=(("dated", "best-before"),)), Sold.SHELF)
    chilled = replace(bought("milk", dated=word), printed=MADE + timedelta(9))
    assert date_stands_alone(chilled, Sold.COLD)
    assert not date_stands_alone(replace(chilled, process=(("dated", "sell-by"),)), Sold.COLD)


@pytest.mark.parametrize("word", ["no", "No", "n", "false", "none"])
def test_meat_that_is_not_under_vacuum_is_believed_as_loose_meat(word: str) -> None:
    assert furthest(bought("beef steaks", vacuum=word)) == 21
    assert furthest(bought("beef steaks", vacuum="Yes")) == 60


def test_meat_that_no_table_knows_is_believed_as_little_as_raw_meat() -> None:
    one = batch(Group.MEAT, dated="use-by", vacuum="yes")
    assert furthest(replace(one, food=replace(one.food, known=False))) == 21
