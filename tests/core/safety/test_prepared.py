"""What was done to a crop before it was put by, as its record says it.

Cut or peeled produce is chilled within two hours; melons, tomatoes and leafy greens that are cut
let germs grow (US FDA, selecting and serving produce safely; from memory, the stricter choice).
"""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import (
    NOT_TESTED,
    dried_in_part,
    hurts_cut,
    is_cut,
    is_half_dried,
    is_large,
    not_tested,
)
from pantry_tui.core.safety.prepared_words import CUT
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.reference.tables import load_tables

LOW = Acidity.LOW_ACID
CARROTS = FoodFacts("carrots", Group.VEGETABLE, LOW)
APPLES = FoodFacts("apples", Group.FRUIT, Acidity.ACID)
PORK = FoodFacts("pork", Group.MEAT, LOW)
RAW = (Method.CELLAR, Method.FRESH, Method.BOUGHT)


def batch(food: FoodFacts = CARROTS, method: Method = Method.CELLAR, **record: str) -> Batch:
    return Batch("b", "2A", food, method, date(2026, 3, 1), "", tuple(record.items()))


@pytest.mark.parametrize("word", sorted(CUT))
def test_a_crop_that_was_cut_is_cut_by_whatever_word(word: str) -> None:
    for food in (CARROTS, APPLES):
        assert is_cut(batch(food, prepared=word))
    assert not is_cut(batch(PORK, prepared=word)), "meat that is cut is meat"


@pytest.mark.parametrize(
    "said", ["sliced, washed", "washed,sliced", "Peeled.", "washed/diced", "pre-cut", "cut-up"]
)
def test_words_are_words_beside_a_comma_or_a_hyphen_too(said: str) -> None:
    assert is_cut(batch(prepared=said))


def test_a_whole_crop_is_none() -> None:
    assert not is_cut(batch())
    assert not is_cut(batch(prepared="washed, whole"))
    assert not is_cut(batch(note="sliced"))


@pytest.mark.parametrize("method", list(Method))
def test_raw_it_is_cut_by_its_form_too(method: Method) -> None:
    """`cut=diced` is kept under the form, which of a canned food names its process."""
    assert is_cut(batch(method=method, form="diced")) is (method in RAW)


@pytest.mark.parametrize(
    "said",
    ["half dried", "half-dried", "Half Dried", "semi-dried", "semidried", "part dried",
     "partly dried", "partially-dried", "sliced, half dry"],
)  # fmt: skip
@pytest.mark.parametrize("key", ["prepared", "form"])
def test_what_was_dried_in_part_is_still_moist(said: str, key: str) -> None:
    for food in (APPLES, PORK):
        assert is_half_dried(batch(food, Method.DRIED, **{key: said}))
    assert not is_half_dried(batch(APPLES, Method.FROZEN, **{key: said}))


@pytest.mark.parametrize("said", ["", "dried", "halves", "sun dried", "halved, dried", "dry"])
def test_what_was_dried_is_dry(said: str) -> None:
    assert not is_half_dried(batch(APPLES, Method.DRIED, prepared=said))
    assert not dried_in_part(said)


@pytest.mark.parametrize(
    ("name", "classes", "hurts"),
    [
        ("melons", (), True), ("watermelons", (), True), ("cantaloupes", (), True),
        ("lettuces", (), True), ("salad greens", (), True), ("kale", ("leafy",), True),
        ("cherry tomatoes", ("tomato",), True), ("carrots", (), False),
        ("apples", ("large",), False),
    ],
)  # fmt: skip
def test_which_crops_can_hurt_once_they_are_cut(
    name: str, classes: tuple[str, ...], hurts: bool
) -> None:
    assert hurts_cut(FoodFacts(name, Group.VEGETABLE, LOW, frozenset(classes))) is hurts


@pytest.mark.parametrize(
    "name",
    ["sprout tops", "nettles", "purslane", "sorrel", "malabar spinach", "moringa", "pea shoots",
     "fenugreek leaves", "grape leaves", "ramps", "watercress", "chard"],
)  # fmt: skip
def test_leafy_greens_of_the_tables_can_hurt_once_they_are_cut(name: str) -> None:
    facts = load_tables().facts(name)
    assert facts is not None
    assert hurts_cut(facts)


def test_a_large_crop_is_cut_for_several_meals() -> None:
    assert is_large(FoodFacts("pumpkins", Group.VEGETABLE, LOW, frozenset({"large"})))
    assert not is_large(CARROTS)
    assert not is_large(None)


# -- canned ----------------------------------------------------------------------------------------

DRY = ["Packed without liquid: no process is tested for that."]


@pytest.mark.parametrize(
    "said", ["dry pack", "dry packed", "Dry-packed", "packed dry", "dry canned", "dry canning"]
)
def test_no_process_is_tested_without_liquid(said: str) -> None:
    """USDA AIB 539 for sweet potatoes; University of Wisconsin Extension for all vegetables."""
    for method in (Method.PRESSURE, Method.BOILING_WATER):
        for food in (CARROTS, APPLES, PORK):
            assert not_tested(method, food, {"prepared": said}) == DRY


@pytest.mark.parametrize("word", sorted(NOT_TESTED))
def test_no_process_is_tested_of_a_form_that_packs_more_tightly(word: str) -> None:
    said = [f"No process is tested for carrots that are {word}."]
    assert not_tested(Method.PRESSURE, CARROTS, {"prepared": f"washed, {word}, shredded"}) == said
    assert not_tested(Method.BOILING_WATER, CARROTS, {"prepared": word}) == []
    assert not_tested(Method.PRESSURE, APPLES, {"prepared": word}) == []


def test_what_makes_no_difference_to_a_process_is_passed_over() -> None:
    for said in ({}, {"prepared": "sliced"}, {"prepared": "peeled"}, {"form": "shredded"}):
        assert not_tested(Method.PRESSURE, CARROTS, said) == []
