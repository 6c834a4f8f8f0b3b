"""Foods and methods are found by the words people use."""

from __future__ import annotations

from collections import Counter
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.words import Method
from pantry_tui.reference.names import Food, find_method, near_methods, normal
from pantry_tui.reference.tables import load_tables

FOODS = load_tables().foods
_OWNERS = [{normal(name) for name in (food.name, *food.aliases)} for food in FOODS]
_COUNTED = Counter(key for owned in _OWNERS for key in owned)
#: Words that are the name of two foods, in two orders, or of one that says a word twice.
SHARED = {key for key, count in _COUNTED.items() if count > 1} | {normal("half and half")}


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("crushed tomatoes", "crushed tomatoes"),
        ("tomatoes, crushed", "crushed tomatoes"),
        ("Tomato (crushed)", "crushed tomatoes"),
        ("beetroot", "beets"),
        ("beets", "beets"),
        ("beet", "beets"),
        ("French beans", "snap beans"),
        ("snap beans", "snap beans"),
        ("green bean", "snap beans"),
        ("beans, French", "snap beans"),
        ("courgettes", "zucchini"),
        ("aubergine", "eggplants"),
        ("swedes", "rutabagas"),
        ("mangetout", "snow peas"),
        ("mince", "ground beef"),
        ("minced beef", "ground beef"),
        ("beef, ground", "ground beef"),
        ("prawns", "shrimp"),
        ("coriander", "cilantro"),
        ("RUNNER BEANS", "runner beans"),
        ("strawberry", "strawberries"),
        ("peach", "peaches"),
        ("sweetcorn", "sweet corn"),
        ("spring onions", "green onions"),
        ("jam, strawberry", "strawberry jam"),
    ],
)
def test_a_food_is_found_by_its_usual_names(said: str, name: str) -> None:
    found = load_tables().facts(said)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize(
    ("said", "near"), [("runer beans", "runner beans"), ("strawbery", "strawberries"),
                       ("carots", "carrots"), ("zuchini", "zucchini")]
)  # fmt: skip
def test_near_misses_are_offered_and_not_taken(said: str, near: str) -> None:
    assert load_tables().facts(said) is None
    assert near in load_tables().index.near(said)


@given(st.sampled_from(FOODS), st.randoms(use_true_random=False))
def test_word_order_and_case_do_not_matter(food: Food, random: Random) -> None:
    """Unless other names have the same words: then only the order they are written in counts."""
    for name in (food.name, *food.aliases):
        words = name.split()
        if normal(name) not in SHARED:
            random.shuffle(words)
        found = load_tables().facts((" " if normal(name) in SHARED else ", ").join(words).upper())
        assert found is not None
        assert found.name == food.name


@given(st.text(max_size=60))
def test_no_text_breaks_the_search(text: str) -> None:
    load_tables().facts(text)
    assert isinstance(load_tables().index.near(text), tuple)
    find_method(text)
    near_methods(text)


@pytest.mark.parametrize(
    ("said", "method"),
    [
        ("pressure canned", Method.PRESSURE),
        ("pressure-canned", Method.PRESSURE),
        ("Pressure Canning", Method.PRESSURE),
        ("frozen", Method.FROZEN),
        ("freezing", Method.FROZEN),
        ("water bath canned", Method.BOILING_WATER),
        ("boiling water canned", Method.BOILING_WATER),
        ("dried", Method.DRIED),
        ("dehydrated", Method.DRIED),
        ("in oil", Method.IN_OIL),
        ("lactic ferment", Method.LACTIC),
        ("fermented", Method.LACTIC),
        ("refrigerator pickle", Method.FRIDGE_PICKLE),
        ("hot-smoked", Method.HOT_SMOKED),
        ("cellar stored", Method.CELLAR),
        *[(method.value, method) for method in Method],
    ],
)
def test_a_method_is_found_by_its_usual_spellings(said: str, method: Method) -> None:
    assert find_method(said) is method


@pytest.mark.parametrize("said", ["canned", "pickled", "smoked"])
def test_a_word_that_means_two_methods_is_asked_about(said: str) -> None:
    assert find_method(said) is None
    assert len(near_methods(said)) >= 2


@pytest.mark.parametrize(
    ("said", "name"),
    [("beef stew", "stew"), ("stew beef", "beef"), ("pumpkin pie", "pumpkin pie"),
     ("pie pumpkins", "pumpkins"), ("wine grapes", None), ("grape wine", "wine"),
     ("fruit in syrup", "fruit in syrup"), ("fruit syrup", "fruit syrups")],
)  # fmt: skip
def test_the_main_word_stands_last(said: str, name: str | None) -> None:
    found = load_tables().facts(said)
    assert (found.name if found else None) == name


def test_what_shares_nothing_is_near_to_nothing() -> None:
    index = load_tables().index
    assert "trout" not in index.near("tofoo")
    assert index.near("quandong") == ()
    assert index.near("x" * 40_000) == ()
