"""A date of a food that a table lists rests on no row that is plainly about another thing."""

from __future__ import annotations

import pytest

from pantry_tui.core.keeping.limits import Judgement, judge_fresh
from pantry_tui.core.log.own import told_food
from pantry_tui.core.model import Batch, FoodFacts, Place
from pantry_tui.core.words import Acidity, Climate, Group, Method, State
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE, facts_of

TABLES = load_tables()
LISTED = [one.facts for one in TABLES.foods if one.group is Group.FRUIT and not one.named]


def judged(food: FoodFacts, method: Method) -> Judgement:
    place = Place("larder", "larder", Climate.PANTRY)
    batch = Batch("b", "2A", food, method, MADE)
    return judge_fresh(batch, State.SEALED, place, MADE, TABLES.book)


def test_a_pear_is_no_juice() -> None:
    said = judged(facts_of("asian pears"), Method.BOILING_WATER)
    assert said.best_by is not None
    assert not any("juice" in one.lower() for one in said.reasons)


@pytest.mark.parametrize("method", [Method.BOILING_WATER, Method.DRIED, Method.FROZEN])
def test_no_listed_fruit_rests_on_juice_leather_or_nuts(method: Method) -> None:
    assert len(LISTED) > 20
    for food in LISTED:
        named = {"juice", "leather", "nut"} - food.classes
        rests_on = {rule.food for rule in judged(food, method).rules if hasattr(rule, "food")}
        assert not rests_on & {f"class:{one}" for one in named}, food.name


def test_what_only_a_household_names_might_be_any_of_them_and_it_is_said() -> None:
    """Nobody knows what it is: the strictest of its group, with a word that it is a guess."""
    said = judged(told_food("tonka pulp", Group.FRUIT, Acidity.LOW_ACID), Method.DRIED)
    assert said.best_by is not None
    assert said.best_by <= judged(facts_of("asian pears"), Method.DRIED).best_by  # type: ignore[operator]
    assert any("No row names tonka pulp" in one for one in said.reasons)
