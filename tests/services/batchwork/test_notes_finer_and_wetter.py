"""Dry food that its note makes wet, and meat, ham and cheese that it says are cut finer than the
record has them: the stricter of the two figures counts. What is meant for it changes nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

FLOUR = "3 lb flour, bought in, larder"
OATS = "2 lb oats, bought in, larder"
BEANS = "2 lb dry beans, dried, larder"
WALNUTS = "1 lb walnuts, bought in, larder"
MILK_POWDER = "1 lb milk powder, bought in, larder"
MIX = "1 box pancake mix, bought in, larder"
RICE = "2 lb rice, bought in, larder"
APPLES = "2 jars dried apples, larder"
MUSHROOMS = "2 jars dried mushrooms, larder"
ROAST = "2 packs beef roasts, fresh, fridge"
BOUGHT_ROAST = "2 packs beef roasts, bought in, fridge"
FROZEN_ROAST = "4 packs beef roasts, frozen, freezer"
CHOPS = "4 pork chops, fresh, fridge"
CHICKEN = "1 whole chicken, fresh, fridge"
HAM = "1 lb ham, bought in, fridge"
CORNED = "2 lb corned beef, bought in, fridge"
CHEDDAR = "1 lb cheddar, bought in, fridge"

WET = {
    FLOUR: (
        "pancake batter", "mixed with water", "mixed with milk", "mixed with eggs", "dough",
        "made into dough", "bread dough", "stirred into milk", "wetted", "starter", "kneaded",
        "beaten with eggs", "with water added", "made up with water", "mixed to a paste",
        "eggs and milk in it", "milk stirred in", "with eggs and milk", "made up as batter",
        "a dough of it", "half of it is bread dough already",
    ),
    OATS: (
        "overnight oats", "soaked overnight", "mixed with milk", "in milk", "bircher muesli",
        "soaked in apple juice", "stirred into yogurt", "covered with buttermilk",
    ),
    BEANS: (
        "soaked overnight", "rehydrated", "in water", "covered with water", "covered in water",
        "put to soak", "sprouted", "left overnight in water",
    ),
    WALNUTS: (
        "walnuts covered with oil", "covered with oil", "in oil", "soaked overnight", "nut milk",
        "blended with water", "in water", "rehydrated", "topped up with olive oil",
    ),
    MILK_POWDER: (
        "mixed with water", "rehydrated", "reconstituted", "stirred into water",
        "made up with water",
    ),
    MIX: ("mixed with milk", "batter", "mixed with eggs"),
    RICE: ("covered with water", "in water", "soaked"),
    APPLES: ("rehydrated", "covered with water", "in water"),
    MUSHROOMS: ("rehydrated", "covered with water"),
}  # fmt: skip
DRY = {
    FLOUR: (
        "for pancakes with eggs", "for bread dough", "good for batter", "makes good dough",
        "mix with water", "for sourdough", "just add water", "use with milk", "mixed with rye",
        "from the water mill", "stone milled, no added water", "bought with the milk",
        "dough needs less water", "strong flour, takes more water", "mixed with milk powder",
        "for feeding the starter",
    ),
    OATS: (
        "good for overnight oats", "for overnight oats", "soak before cooking",
        "makes nice overnight oats", "with raisins", "mixed with nuts", "no milk",
    ),
    BEANS: (
        "soak before cooking", "soak overnight before cooking", "needs soaking", "never soaked",
        "grown without water", "hard water",
    ),
    WALNUTS: (
        "for walnut oil", "oily", "soak before use", "roasted in oil", "tossed in oil and roasted",
        "coated in honey and roasted", "not oiled", "soaked in brine and dried",
    ),
    MILK_POWDER: ("for custard", "mix with water", "add water to use", "makes 4 litres"),
    MIX: ("add milk and eggs", "just add water"),
    RICE: ("cook in twice the water",),
    APPLES: ("lemon juice added", "soaked in lemon juice", "dipped in water and lemon",
        "soaked in rum"),
}  # fmt: skip
#: What is as strict as another record of it.
FINER = {
    ROAST: (
        "minced", "ground", "ground up", "cut into mince", "put through the mincer", "diced",
        "minced it myself", "ground at home", "through the grinder", "made into burgers",
        "made into meatballs", "half minced", "stuffed", "stuffed with spinach", "cubed",
        "filled with cheese", "hamburger now", "chopped up small", "made sausage meat of it",
        "minced by the butcher", "boned and stuffed with herbs",
    ),
    BOUGHT_ROAST: ("minced", "ground", "stuffed", "diced"),
    FROZEN_ROAST: ("minced", "ground"),
    CHOPS: ("minced", "stuffed", "stuffed with apples", "filled with cheese"),
    HAM: (
        "sliced at the counter", "sliced", "spiral cut", "deli sliced", "cut at the counter",
        "sliced by the butcher", "cut into slices", "in slices",
    ),
    CORNED: ("sliced at the counter", "cut at the deli", "diced"),
    CHEDDAR: ("grated", "shredded", "sliced", "grated myself", "cut into slices", "crumbled"),
}  # fmt: skip
AS_IT_IS = {
    ROAST: (
        "to be minced", "for mince", "mince half of it", "ground pepper on it", "not minced",
        "grass ground", "with ground spices", "for grinding", "stuffed in the freezer drawer",
        "rubbed with ground cumin", "rubbed with minced garlic", "mince before use", "to stuff",
        "from the ground up", "fed on ground corn", "for burgers", "dice it for stew",
    ),
    FROZEN_ROAST: ("diced", "for mince"),
    CHOPS: ("for stuffing", "to be stuffed", "not stuffed"),
    CHICKEN: ("for stuffing", "not stuffed", "unstuffed", "stuff before roasting"),
    HAM: ("to be sliced", "for slicing", "whole", "not sliced", "spiral noodles with it",
        "sliced one, pink"),
    CHEDDAR: ("for grating", "to be grated", "grate over pasta", "not grated", "slices well",
        "sliced one"),
}  # fmt: skip


@pytest.mark.parametrize("line", WET)
def test_what_is_wet_has_no_figure(chilled: Pantry, line: str) -> None:
    assert tried(chilled, line).verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    found = tried_each(chilled, line, WET[line])
    assert quoted(found) == set(found)
    assert {one.verdict for one in found.values()} <= {Verdict.UNKNOWN, Verdict.DISCARD}


@pytest.mark.parametrize("line", FINER)
def test_what_is_cut_finer_has_the_shorter_life(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, FINER[line])
    assert quoted(found) == set(found)
    for note, one in found.items():
        sooner = one.verdict is not Verdict.UNKNOWN and (
            (one.best_by, one.discard_after) < (bare.best_by, bare.discard_after)
        )
        assert sooner or one.verdict is Verdict.UNKNOWN, note


@pytest.mark.parametrize("line", [*DRY, *AS_IT_IS])
def test_what_is_meant_for_it_leaves_it_as_it_is(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, DRY.get(line, AS_IT_IS.get(line, ())))
    assert quoted(found) == set()
    same = bare.verdict, bare.best_by, bare.discard_after
    assert {
        note for note, one in found.items() if (one.verdict, one.best_by, one.discard_after) != same
    } == set()


def test_minced_by_its_note_is_as_strict_as_mince(chilled: Pantry) -> None:
    mince = tried(chilled, "2 lb ground beef, fresh, fridge")
    for note in ("minced", "stuffed", "diced"):
        assert tried(chilled, ROAST, note).discard_after == mince.discard_after
    assert tried(chilled, HAM, "sliced").discard_after == (
        tried(chilled, "1 lb sliced ham, bought in, fridge").discard_after
    )
    assert tried(chilled, CHEDDAR, "sliced").discard_after == (
        tried(chilled, f"{CHEDDAR}, open").discard_after
    )


@pytest.mark.parametrize("note", ["stuffed", "stuffed with bread", "filled with stuffing"])
def test_a_stuffed_raw_bird_is_cooked_at_once(chilled: Pantry, note: str) -> None:
    assert tried(chilled, CHICKEN, note).verdict is Verdict.UNKNOWN
