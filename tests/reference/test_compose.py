"""Known foods with words beside them: what they mean, and that no milder rule comes of it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.reference.beside import load_beside
from pantry_tui.reference.compose import Meant, composer
from pantry_tui.reference.tables import load_tables

TABLES = load_tables()
COMPOSER = composer(TABLES)


def meant(text: str) -> Meant:
    return COMPOSER.meant(text.lower().split())


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("red onions", "onions"), ("minced lamb", "ground lamb"), ("peach halves", "peaches"),
        ("chicken thighs", "chicken pieces"), ("onion powder", "onion powder"),
        ("bear roast", "bear"), ("king edward potatoes", "potatoes"), ("mango cheeks", "mangoes"),
        ("beetroot leaves", "beet greens"), ("tayberry jam", "mixed fruit jam"),
        ("garlic confit", "garlic in oil"),
        ("white peach halves", "white peaches"), ("wild garlic pesto", "pesto"),
        ("apple and blackberry crumble", "crumble"), ("walnuts in shell", "walnuts"),
        ("boneless pork loin", "pork loin"), ("roast chicken", "rotisserie chicken"),
    ],
)  # fmt: skip
def test_a_word_beside_a_food_leaves_it_or_makes_a_known_one(said: str, name: str) -> None:
    found = meant(said)
    assert found.facts is not None
    assert (found.facts.name, found.strange, found.methods) == (name, (), ())


@pytest.mark.parametrize("name", ["pumpkin leather", "carrot leather", "swede leather"])
def test_what_no_table_names_is_the_same_with_its_method_in_front(name: str) -> None:
    bare, dried = meant(name), meant(f"dried {name}")
    assert dried.facts == bare.facts
    assert dried.methods == (Method.DRIED,)


@pytest.mark.parametrize(
    "said",
    [
        "strawberry rhubarb jam", "apple and blackberry jam", "raspberry redcurrant jelly",
        "sour cherry and plum jam", "plum apple and blackberry jam", "orange and lemon marmalade",
    ],
)  # fmt: skip
def test_a_jam_of_acid_fruits_is_a_mixed_one(said: str) -> None:
    found = meant(said)
    assert found.facts is not None
    assert (found.facts.name, found.strange) == ("mixed fruit jam", ())


@pytest.mark.parametrize(
    "said",
    [
        # figs, melons, bananas, vegetables and meat make no jam that is acid by itself
        "fig and raspberry jam", "melon strawberry jam", "pear and banana jam",
        "onion and apple jam", "pumpkin apple jam", "strawberry bacon jam", "hot pepper peach jam",
        "elderflower gooseberry jam", "white peach raspberry jam", "asian pear plum jam",
        "zorble plum jam",
    ],
)  # fmt: skip
def test_a_jam_of_something_else_too_is_no_mixed_one(said: str) -> None:
    found = meant(said)
    assert found.facts is None or found.strange or found.facts.name != "mixed fruit jam"


@pytest.mark.parametrize(
    ("said", "group", "acidity"),
    [
        ("parsnip tops", Group.VEGETABLE, Acidity.LOW_ACID),
        ("pickled leeks", Group.VEGETABLE, Acidity.LOW_ACID),
        ("kangaroo mince", Group.MEAT, Acidity.LOW_ACID),
        ("parsnip puree", Group.MEAL, Acidity.LOW_ACID),
        ("melon juice", Group.DRINK, Acidity.LOW_ACID),
        ("boiled beetroot", Group.MEAL, Acidity.LOW_ACID),
        ("carrot and coriander soup", Group.MEAL, Acidity.LOW_ACID),
        ("fig puree", Group.FRUIT, Acidity.ACIDIFIED),
    ],
)
def test_a_word_that_makes_another_food_makes_one_in_no_table(
    said: str, group: Group, acidity: Acidity
) -> None:
    """Judged by the strictest figures of its group, and not by those of what it was made of."""
    facts = meant(said).facts
    assert facts is not None
    assert (facts.name, facts.group, facts.acidity, facts.known) == (said, group, acidity, False)


@pytest.mark.parametrize(
    "said",
    ["tomato gazpacho", "rosella jam", "melon jam", "dog biscuits", "leeks and carrots",
     "wine grapes", "quandong", "rice and beans", "pears in syrup"],
)  # fmt: skip
def test_what_could_be_another_food_is_no_food_that_is_known(said: str) -> None:
    assert meant(said).facts is None


def test_two_soups_in_one_are_asked_about() -> None:
    assert set(meant("chicken and leek soup").either) == {"chicken soup", "potato soup"}


@pytest.mark.parametrize(
    ("said", "methods"),
    [
        ("smoked trout", {Method.HOT_SMOKED, Method.COLD_SMOKED}),
        ("dried apples", {Method.DRIED}),
        ("canned peaches", {Method.BOILING_WATER, Method.PRESSURE, Method.BOUGHT}),
        ("frozen dried mango", {Method.FROZEN, Method.DRIED}),
        ("walnuts in vodka", {Method.INFUSION}),
        ("tuna in olive oil", {Method.IN_OIL}),
    ],
)
def test_words_that_say_how_it_is_kept(said: str, methods: set[Method]) -> None:
    assert set(meant(said).methods) == methods


def test_a_word_in_front_that_nobody_knows_is_given_back() -> None:
    found = meant("glasgow carrots")
    assert found.facts is not None
    assert (found.facts.name, found.strange) == ("carrots", ("glasgow",))


FOODS = [food.name for food in TABLES.foods]
WORDS = sorted({*load_beside().words, *load_beside().heads, "and", "in", "zorble", "of"})


@given(st.lists(st.sampled_from([*WORDS, *FOODS[::7]]), max_size=4))
def test_no_words_break_it(words: list[str]) -> None:
    assert isinstance(meant(" ".join(words)), Meant)


@given(st.sampled_from(FOODS), st.sampled_from(WORDS), st.booleans())
def test_what_a_word_makes_of_low_acid_food_is_not_acid_but_by_vinegar_or_a_ferment(
    name: str, word: str, behind: bool
) -> None:
    """No word by itself makes low-acid food fit for boiling water."""
    of = TABLES.named(name)
    assert of is not None
    facts = meant(f"{name} {word}" if behind else f"{word} {name}").facts
    if of.acidity is not Acidity.LOW_ACID or facts is None or facts.name == of.name:
        return
    if facts.acidity is not Acidity.LOW_ACID:
        assert facts.group in (Group.RELISH, Group.DRINK, Group.EGG, Group.FISH) or (
            facts.name in FOODS or word in ("kimchi", "kraut")
        ), facts
