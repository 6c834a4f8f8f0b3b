"""What a note says of jars that were boiled where their record says pressure, and of a tested
recipe that was changed. Cooking on the way into the jars, empty jars that were boiled, stock that
simmered and less of what is low in acid are well."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, quoted, tried, tried_each

GREEN_BEANS = "6 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
BARE_BEANS = "6 pint jars green beans, pressure canned, larder"
BEETS = "4 pint jars beets, pressure canned, larder, minutes=30 psi=11 canner=dial"
BEEF = "4 quart jars beef chunks, pressure canned, larder, minutes=90 psi=11 canner=dial"
STOCK = "4 quart jars chicken stock, pressure canned, larder, minutes=25 psi=11 canner=dial"
SALSA = "6 pint jars salsa, boiling-water canned, larder, minutes=15 acid=lemon"
JELLY = "6 half-pint jars hot pepper jelly, jam, larder, minutes=10"
SAUCE = "4 pint jars spaghetti sauce without meat, pressure canned, larder, minutes=20 psi=11"
WATER_PACK = (
    "6 pint jars tomatoes, boiling-water canned, larder, minutes=40 acid=lemon pack=hot form=water"
)
JUICE_PACK = "6 pint jars tomatoes, boiling-water canned, larder, minutes=85 acid=lemon"
PEACHES = "4 pint jars peaches, boiling-water canned, larder, minutes=25 pack=hot"

_BOILED = (
    "boiled 3 hours", "cooked in a big pot", "in the stock pot for 3 hours", "steamed 2 hours",
    "Weck pot", "in grandma's kettle", "boiled for 3 hours", "boiled in the preserving pan 3 h",
    "3 hours in the boiler", "Einkochtopf", "in a Weck kettle", "in the big kettle",
    "in the lobster pot", "in the soup pot", "in a stockpot", "boiled in the pot",
    "rolling boil 180 minutes", "simmered 3 hours in a pan", "cooked on the stove three hours",
    "cooked 3 hours in the jars", "boiled the jars 3 hours", "3 hrs on the boil",
    "kept on the boil for two hours", "on the wood stove in grandma's big pot",
    "boiled like grandma did", "grandma's way", "the old way", "hot water bath 3 hours",
    "boiled it like gran", "hot water canned",
    "did them in the jam pan", "boiled the filled jars", "open kettle",
)  # fmt: skip
_MORE = (
    "doubled the peppers", "twice the onions", "more peppers than the recipe", "extra onions",
    "double onions", "twice as many peppers", "more onion", "twice the chillies", "triple garlic",
    "2x onions", "heavy on the peppers", "lots more peppers", "onions doubled", "peppers: double",
    "upped the peppers", "increased the onions", "1.5 times the peppers", "too many peppers",
    "more veg than the recipe",
)  # fmt: skip

BAD = {
    GREEN_BEANS: _BOILED,
    BARE_BEANS: _BOILED[:6],
    BEETS: ("boiled 3 hours", "in the stock pot for 3 hours", "cooked in a big pot"),
    BEEF: _BOILED[:6],
    STOCK: (
        "boiled the jars 3 hours", "in the stock pot for 3 hours in the jars",
        "jars in the stock pot 3 hours", "processed in the stock pot", "left the meat in",
        "meat left in", "bits of meat in it", "with chunks of chicken", "shreds of meat",
        "chicken pieces in", "some meat still in it",
    ),
    SALSA: (*_MORE, "less tomato", "fewer tomatoes", "half the tomatoes",
        "cut the tomatoes by half", "onions: 6 cups instead of 3",
    ),
    JELLY: ("doubled the peppers", "twice the peppers", "more peppers than the recipe"),
    SAUCE: (
        "doubled the peppers", "twice the onions", "more peppers", "left the meat in", "with meat",
        "meat in it", "extra mushrooms",
    ),
    WATER_PACK: (
        "in juice", "packed in juice", "actually packed in tomato juice", "in their own juice",
        "not hot packed",
    ),
}  # fmt: skip
FINE = {
    GREEN_BEANS: (
        "hot pack, boiled 5 minutes", "boiled the beans 5 min before packing", "boiled the jars",
        "jars boiled first", "boiled the jars first", "jars boiled 10 minutes first",
        "boiled jars to sterilise", "boiled the lids", "cut the beans in the big bowl",
        "beans cooked 5 minutes", "packed hot from the pot", "blanched in the big pot",
        "hot from the kettle", "boil 10 minutes before tasting", "grown in pots",
        "topped up with boiling water from the kettle", "from the pot on the terrace",
        "grandma's recipe", "water boiled in the kettle", "steamed for supper",
        "kept the jars hot in the stock pot", "canner is a big pot", "for the stew pot",
        "steam vented 10 minutes", "jars from grandma", "Weck jars",
        "boiled 5 min in the big pot", "boiling water to 1 inch",
        "stood the jars in the big pot to warm", "kettle on for tea",
    ),
    BEETS: ("boiled 40 minutes", "boiled until the skins slipped"),
    BEEF: ("browned in the big pan", "meat boiled 10 minutes", "bones went to the stock pot"),
    STOCK: (
        "bones boiled in the stock pot for 3 hours", "simmered 8 hours", "cooked in the big pot",
        "bones cooked all night", "boiled bones 3 hours", "simmered in the stock pot overnight",
        "boiled down by half", "boiled 3 hours", "in the stock pot for 3 hours", "no meat",
        "picked off the meat", "meat taken out", "meat removed first", "strained",
        "meat off the bones went to soup", "made with chicken thighs",
    ),
    SALSA: (
        "doubled the batch", "doubled the recipe", "doubled the salt", "peppers from the garden",
        "fewer peppers", "half the onions", "less onion", "more lime juice", "more vinegar",
        "doubled the lemon juice", "hot peppers", "no extra peppers", "onions chopped fine",
        "same peppers as the recipe", "next time more peppers", "more peppers would be nice",
        "needs more onion", "wish I had put more onions", "twice cooked", "more tomatoes",
        "two kinds of peppers", "roasted the peppers", "mild peppers", "more cumin",
        "twice the jars of last year", "extra hot",
    ),
    SAUCE: ("meatless", "left the meat out", "no meat", "for meat balls"),
    WATER_PACK: ("in water", "packed in water"),
    JUICE_PACK: ("in water", "in juice", "in tomato juice"),
    PEACHES: ("actually packed in juice", "in syrup", "in water", "in light syrup"),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_another_process_and_another_recipe_are_doubted(chilled: Pantry, line: str) -> None:
    assert tried(chilled, line).verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    assert {one.verdict for one in found.values()} == {Verdict.UNKNOWN}


@pytest.mark.parametrize("line", FINE)
def test_what_was_cooked_on_its_way_is_well(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, FINE[line])
    assert quoted(found) == set()
    assert judged_otherwise(chilled, line, found) == set()
