"""A figure speaks only for the foods that its publication speaks of."""

from __future__ import annotations

import pytest

from pantry_tui.core import scope
from pantry_tui.core.keeping.rules import Rule, guessed, speaking
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import Told


def said(method: Method, food: FoodFacts, state: State, climate: Climate) -> list[Rule]:
    """The rules with a figure."""
    found = speaking(load_tables().book.of(method), food, method, state, climate)
    return [rule for rule in found if rule.use is not None]


def known(name: str) -> FoodFacts:
    facts = load_tables().facts(name)
    assert facts is not None, name
    return facts


#: What no publication behind the method's general figure speaks of.
ELSEWHERE = [
    ("pressure canned", "eggs", "sealed", "pantry"),
    ("pressure canned", "milk", "sealed", "pantry"),
    ("pressure canned", "pesto", "sealed", "pantry"),
    ("pressure canned", "bread", "sealed", "room"),
    ("boiling-water canned", "pickled eggs", "sealed", "pantry"),
    ("boiling-water canned", "pickled fish", "sealed", "pantry"),
    ("jam", "lemon curd", "sealed", "pantry"),
    ("jam", "onions", "sealed", "pantry"),
    ("jam", "pork", "open", "fridge"),
    ("freezer jam", "lemon curd", "sealed", "fridge"),
    ("fridge pickle", "beef", "sealed", "fridge"),
    ("fridge pickle", "cheese", "open", "fridge"),
    ("vinegar pickle", "pork", "sealed", "pantry"),
    ("vinegar pickle", "pesto", "sealed", "room"),
    ("dried", "stew", "sealed", "pantry"),
    ("dried", "milk", "sealed", "pantry"),
    ("in oil", "tuna", "sealed", "fridge"),
    ("in oil", "beef", "open", "fridge"),
    ("in oil", "cheese", "sealed", "fridge"),
    ("flavoured vinegar", "beef", "sealed", "pantry"),
    ("rendered fat", "carrots", "sealed", "freezer"),
    ("salted", "sausages", "sealed", "pantry"),
    # Tables of dried fruit and vegetables, of jerky, of pickles and uncooked fruit jam.
    *(("dried", food, "sealed", place) for place in ("room", "pantry", "fridge") for food in (
        "cakes", "bread", "pasta", "oats", "baking mixes", "bacon", "liver", "sausages",
        "anchovies", "cod", "alfalfa sprouts", "bean sprouts", "quiche", "milk")),
    ("dried", "bacon", "sealed", "freezer"),
    *((method, food, state, "fridge") for state in ("sealed", "open") for food in (
        "mayonnaise", "salad dressing", "alfalfa sprouts", "radish sprouts")
      for method in ("fridge pickle", "vinegar pickle", "freezer jam", "jam")),
    ("freezer jam", "avocados", "sealed", "fridge"),
    ("freezer jam", "bananas", "thawed", "fridge"),
    ("dried", "pesto", "sealed", "room"),
    ("vinegar pickle", "sambal", "sealed", "pantry"),
    ("fresh", "carrot juice", "sealed", "fridge"),
    ("sugar preserve", "coconut water", "sealed", "room"),
    ("sugar preserve", "cold brew", "sealed", "pantry"),
]  # fmt: skip


@pytest.mark.parametrize(("method", "food", "state", "climate"), ELSEWHERE)
def test_a_general_figure_is_not_lent_to_other_kinds(
    method: str, food: str, state: str, climate: str
) -> None:
    assert said(Method(method), known(food), State(state), Climate(climate)) == []


@pytest.mark.parametrize(
    ("method", "food", "state", "climate"),
    [
        ("jam", "strawberry jam", "sealed", "pantry"),
        ("jam", "rhubarb", "sealed", "pantry"),
        ("vinegar pickle", "piccalilli", "sealed", "pantry"),
        ("vinegar pickle", "runner beans", "open", "fridge"),
        ("fridge pickle", "eggs", "sealed", "fridge"),
        ("in oil", "mushrooms", "sealed", "fridge"),
        ("dried", "basil", "sealed", "room"),
        ("dried", "venison", "sealed", "room"),
        ("dried", "lentils", "sealed", "room"),
        ("freezer jam", "strawberries", "sealed", "fridge"),
        ("sugar preserve", "molasses", "sealed", "room"),
        ("flavoured vinegar", "raspberry vinegar", "sealed", "room"),
        ("rendered fat", "lard", "sealed", "fridge"),
        ("salted", "hard sausages", "sealed", "pantry"),
    ],
)
def test_it_still_speaks_for_its_own(method: str, food: str, state: str, climate: str) -> None:
    assert said(Method(method), known(food), State(state), Climate(climate))


@pytest.mark.parametrize("group", list(Group))
@pytest.mark.parametrize("acidity", list(Acidity))
def test_what_is_never_published_for_a_kind_is_still_limited_once_opened(
    group: Group, acidity: Acidity
) -> None:
    """A limit for any food stays one for any food: an opened jar has three days at most."""
    odd = FoodFacts("medley", group, acidity, frozenset(), known=False)
    found = said(Method.PRESSURE, odd, State.OPEN, Climate.FRIDGE)
    assert min(rule.days for rule in found if rule.kind is Kind.SAFETY) <= 3


@pytest.mark.parametrize(
    ("method", "group", "climate"),
    [
        (Method.CELLAR, Group.VEGETABLE, Climate.CELLAR),
        (Method.DRIED, Group.FRUIT, Climate.FREEZER),
        (Method.DRIED, Group.RELISH, Climate.PANTRY),
        (Method.FRESH, Group.DRINK, Climate.FRIDGE),
        (Method.COLD_SMOKED, Group.MEAT, Climate.FREEZER),
    ],
)
def test_a_guessed_class_brings_no_date_by_itself(
    method: Method, group: Group, climate: Climate
) -> None:
    """Root crops keep three months in a cellar; a vegetable nobody knows may be a lettuce. A limit
    of what it might be stands: a drink nobody knows may be juice, which has a week."""
    odd = FoodFacts("oca", group, Acidity.LOW_ACID, frozenset(), known=False)
    found = said(method, odd, State.SEALED, climate)
    assert [rule for rule in found if rule.kind is not Kind.SAFETY] == []
    assert all(guessed(rule, odd) for rule in found), "and covers nothing"


def test_a_guessed_class_still_shortens() -> None:
    odd = FoodFacts("oca", Group.FRUIT, Acidity.ACID, frozenset(), known=False)
    figures = said(Method.FROZEN, odd, State.SEALED, Climate.FREEZER)
    assert min(rule.days for rule in figures) < 5 * 30.5  # citrus, four months


def test_what_a_key_excepts_it_does_not_speak_of() -> None:
    crops = "group:vegetable not class:sprout not beets"
    assert scope.near(crops, known("carrots")) == scope.GROUP
    assert scope.near(crops, known("bean sprouts")) == scope.OTHER
    assert scope.near(crops, known("beets")) == scope.OTHER
    assert scope.near(crops, known("apples")) == scope.OTHER


@pytest.mark.parametrize("food", ["biltong", "meatballs", "bacon", "cod", "bean sprouts", "quiche"])
def test_dried_food_of_animals_that_no_table_names_is_not_offered(food: str) -> None:
    """Wyoming's jerky table is of lean meat: no cured, minced or cooked dish, organ or fish."""
    for place in ("kitchen", "larder", "fridge"):
        judged = Told(food, Method.DRIED, place).judged(1)
        assert not judged.usable, (food, place)
