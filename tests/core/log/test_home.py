"""What a household says of itself: the last word stands, and can be taken back."""

from __future__ import annotations

from datetime import date

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.home import Home, fold_household
from pantry_tui.core.log.own import food_of, rule_of
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from tests.core.log.book import Book

EVE = date(2026, 12, 24)
RULE = said.RuleAdded(
    Method.LACTIC, "kimchi", State.OPEN, Climate.FRIDGE, Kind.QUALITY, 3, "months", "Grandmother."
)


def home(*payloads: said.Payload) -> Home:
    book = Book()
    for one in payloads:
        book.says(one)
    return fold_household(book.events)


def test_of_a_household_that_never_spoke_nothing_is_known() -> None:
    assert home() == Home()
    assert home(said.Reading("fridge", 38.0)) == Home()


def test_a_setting_stands_until_another_is_said() -> None:
    found = home(
        said.Household(altitude_ft=1800, people=4, units="us", jars="strict"),
        said.Household(people=2, meals=1, advice="strictest"),
    )
    assert (found.altitude_ft, found.people, found.meals) == (1800, 2, 1)
    assert (found.units, found.jars, found.advice) == ("us", "strict", "strictest")
    assert home(said.Household(altitude_ft=0)).altitude_ft == 0, "by the sea is said, too"


def test_a_ceiling_is_the_last_one_said_or_as_usual_again() -> None:
    found = home(
        said.Ceiling("fish", 1.0), said.Ceiling("jam", 2.0), said.Ceiling("fish", 3.0),
        said.Ceiling("jam"),
    )  # fmt: skip
    assert found.ceilings == {"fish": 3.0}
    assert home(said.Ceiling("liver", 0.0)).ceilings == {"liver": 0.0}


def test_nobody_at_the_table_is_not_as_usual() -> None:
    found = home(said.Table((EVE, date(2026, 12, 25)), 0), said.Table((EVE,)))
    assert found.table == {date(2026, 12, 25): 0}


def test_foods_and_rules_of_its_own_and_what_added_them() -> None:
    food = said.FoodAdded("oca", Group.VEGETABLE, Acidity.LOW_ACID, ("yam",))
    found = home(food, RULE)
    assert list(found.foods) == [food]
    assert [one for _, one in found.rules] == [RULE]
    assert found.rules[0][0] == f"{2:026}"


def test_dishes_and_substitutes_are_dropped_by_an_empty_word() -> None:
    taken = (said.Taken("beans", 2.0),)
    found = home(
        said.Dish("stew", taken), said.Dish("soup", taken), said.Dish("soup"),
        said.Substitutes("leeks", ("onions",)), said.Substitutes("peas", ("beans",)),
        said.Substitutes("peas"),
    )  # fmt: skip
    assert found.dishes == {"stew": taken}
    assert found.substitutes == {"leeks": ("onions",)}


def test_a_week_is_whole_or_begun_anew() -> None:
    first, second = said.Planned(EVE, out=(EVE,)), said.Planned(EVE)
    assert home(first).week == first
    assert home(first, second).week == second
    assert home(first, said.Planned()).week is None


def test_a_rule_of_its_own_is_a_current_one_of_the_household_s() -> None:
    rule = rule_of(RULE, "e7")
    assert (rule.id, rule.trust) == ("own-e7", Trust.HOUSEHOLD)
    assert rule.wording == "Your own rule. Grandmother."
    assert (rule.method, rule.food, rule.state) == (Method.LACTIC, "kimchi", State.OPEN)
    assert (rule.climates, rule.kind) == (frozenset({Climate.FRIDGE}), Kind.QUALITY)
    assert (rule.least, rule.use, rule.most, rule.unit) == (3, 3, 3, "months")
    assert rule_of(RULE._replace(why="")).wording == "Your own rule."


def test_a_food_of_its_own_is_found_by_all_its_names_and_may_be_any_of_its_group() -> None:
    facts, names = food_of(said.FoodAdded("oca", Group.VEGETABLE, Acidity.LOW_ACID, ("yam",)))
    assert names == ("oca", "yam")
    assert (facts.name, facts.group, facts.acidity) == ("oca", Group.VEGETABLE, Acidity.LOW_ACID)
    assert not facts.known
    assert facts.classes == frozenset()
