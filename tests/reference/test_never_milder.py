"""What words beside a food make of it is never read as a milder food (house law 7: never more
lenient). Compositions typed by hand, many of them of foods that nobody puts up so."""

from __future__ import annotations

import pytest

from pantry_tui.core import scope
from pantry_tui.core.log.own import told_food
from pantry_tui.core.words import Acidity, Group
from pantry_tui.errors import BadInput
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.process import process

CANNERS = ("boiling-water", "dial", "weighted")

#: What a household might type, and no publication has a process for.
WITHOUT_PROCESS = [
    "green tomatoes in juice", "green tomato juice", "green tomato sauce", "green tomato ketchup",
    "runner beans in tomato sauce", "cherries in tomato sauce", "spinach soup", "pumpkin soup",
    "leek and potato soup", "cream of asparagus soup", "carrot and coriander soup", "beet puree",
    "fig puree", "tomato and garlic puree", "cherry pie", "duck pate", "smoked trout pate",
    "salmon in sauce", "chicken in cream", "lamb with barley", "eggs in gravy", "garlic butter",
    "peppers in garlic oil", "mushrooms stuffed with garlic", "stuffed zucchini", "corn on the cob",
    "chicken and rice soup", "chicken noodle soup", "clam chowder", "marinated peppers",
    "pickled sweet potatoes", "pickled mushrooms in oil", "okra curry", "beef pesto", "goat curry",
    "chestnut stuffing", "venison pie", "elk burgers", "turkey sausage", "plum butter",
    "banana jam", "zucchini marmalade", "kale crisps", "beef and bean stew", "chicken with meat",
    "summer squash", "pattypan squash", "crookneck squash", "courgettes", "marrows",
    "green bananas", "elephant garlic", "goat milk", "duck eggs", "mozzarella", "garlic chutney",
    "stewed apples with cream", "onion soup", "potato salad", "parsnip crisps", "tomato relish",
]  # fmt: skip


@pytest.mark.parametrize("food", WITHOUT_PROCESS)
@pytest.mark.parametrize("canner", CANNERS)
def test_a_composition_borrows_no_process(food: str, canner: str) -> None:
    """A published process speaks of the food that its publication names and of no other."""
    for jar in ("pint", "quart"):
        try:
            said = process(load_tables(), food, jar, canner)
        except BadInput:
            continue
        assert said["answer"] in ("refused", "not published")
        assert said["minutes"] is None
        assert said["options"] == []


#: Words that must not become the second food: it keeps longer, or is sourer.
NEVER = [
    ("tomatoes in juice", "tomato juice"), ("apples in juice", "apple juice"),
    ("bananas with vinegar", "vinegar"), ("garlic with vinegar", "herb vinegar"),
    ("apples with cheese", "fruit cheeses"), ("beef in sauce", "meat sauce"),
    ("chicken in fat", "goose fat"), ("onion greens", "onions"), ("wine grapes", "wine"),
    ("pork salt", "salt pork"), ("beef salt", "celery salt"), ("garlic honey", "infused honey"),
    ("raw bananas", "plantains"), ("pie cherries", "pies"), ("basil in jelly", "mint jelly"),
]  # fmt: skip


@pytest.mark.parametrize(("words", "milder"), NEVER)
def test_a_joined_or_turned_name_is_not_the_milder_food(words: str, milder: str) -> None:
    found = load_tables().facts(words)
    assert found is None or found.name != milder


#: How much acid and which group the dangerous part leaves.
STILL = [
    ("pickled garlic", Group.VEGETABLE, Acidity.LOW_ACID),
    ("pickled leeks", Group.VEGETABLE, Acidity.LOW_ACID),
    ("pickled kohlrabi", Group.VEGETABLE, Acidity.LOW_ACID),
    ("parsnip chutney", Group.VEGETABLE, Acidity.LOW_ACID),
    ("turnip relish", Group.VEGETABLE, Acidity.LOW_ACID),
    ("candied bananas", Group.FRUIT, Acidity.LOW_ACID),
    ("basil jelly", Group.RELISH, Acidity.LOW_ACID),
    ("mashed swede", Group.MEAL, Acidity.LOW_ACID),
    ("cooked quinoa", Group.MEAL, Acidity.LOW_ACID),
    ("boiled peanuts", Group.MEAL, Acidity.LOW_ACID),
    ("milk jam", Group.DAIRY, Acidity.LOW_ACID),
]  # fmt: skip


@pytest.mark.parametrize(("words", "group", "acidity"), STILL)
def test_what_is_made_of_low_acid_food_is_low_acid(
    words: str, group: Group, acidity: Acidity
) -> None:
    found = load_tables().facts(words)
    assert found is not None
    assert (found.group, found.acidity) == (group, acidity)


@pytest.mark.parametrize(
    "words",
    ["rice soup", "rice curry", "fried rice", "cooked rice", "pilau", "mushroom risotto",
     "chicken and rice soup", "turkey and wild rice soup", "chicken rice soup"],
)  # fmt: skip
def test_what_is_made_of_rice_keeps_no_longer_than_cooked_rice(words: str) -> None:
    """NHS: cooked rice keeps a day in the fridge."""
    found = load_tables().composed(words)
    assert found is not None
    assert scope.near("class:rice", found) == scope.CLASS


def test_a_dish_of_a_household_named_after_rice_is_one_of_rice() -> None:
    """Also one that no table has; noodles, paper and vinegar of rice are none."""
    for name in ("lentils and rice", "congee", "Pilaf with lamb"):
        assert (
            scope.near("class:rice", told_food(name, Group.MEAL, Acidity.LOW_ACID)) == scope.CLASS
        )
    for name in ("rice noodles with beef", "beef with liquorice"):
        told = told_food(name, Group.MEAL, Acidity.LOW_ACID)
        assert scope.near("class:rice", told, guess=False) == scope.OTHER
