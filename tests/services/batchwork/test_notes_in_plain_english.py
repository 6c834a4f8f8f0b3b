"""Notes on canned food with no word of the trade in them: what is a danger, and what is none."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried_each

BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
TOMATOES = "3 pint jars tomatoes, boiling-water canned, larder, minutes=85 acid=1 tbsp lemon juice"
JAM = "3 jars strawberry jam, larder, minutes=10"
PICKLES = "3 pint jars dill pickles, vinegar pickle, larder, vinegar=5% minutes=15"
KRAUT = "3 pint jars sauerkraut, boiling-water canned, larder, minutes=20"

SAID = {
    BEANS: (
        "took them out as soon as it boiled", "started counting before it was up to pressure",
        "had to top up water in the middle", "weight rattled only now and then",
        "lowered under cold running water", "shorter, as they were small",
        "reprocessed after a week", "home made canner from a keg", "sealed by the sun",
        "lid went down only after two days", "black crud under lid", "pops when lifted",
        "top of the jar is raised", "lids held only by the ring", "the kitchen is at 1.9 km",
        "lost half the juice in the pot",
        "done up in the Alps", "bought at a church fair", "gift from neighbour, no idea how",
    ),
    TOMATOES: (
        "a spoonful of basil pesto in each", "eggplant chunks too", "the odd mushroom",
        "anchovy in each", "a few olives in", "the lemon was an afterthought, two jars have none",
        "forgot the sour stuff", "fermented a little",
    ),
    JAM: ("fermented a little", "turned to cider", "gone to vinegar"),
    PICKLES: ("brine covered three quarters", "skin on the brine"),
}  # fmt: skip
QUIET = {
    BEANS: (
        "weight rattled steadily", "cooled by itself",
        "started counting at full pressure", "reprocessed after 20 hours",
        "does not pop when pressed", "rings off, lids hold", "shop is 1.9 km away",
        "won a ribbon at the county fair", "beans from the neighbour", "gift for neighbour",
        "recipe from a friend", "beans cooled in cold water after blanching", "did carrots too",
        "lost a third of the juice in the pot", "small beans", "in the shorter jars",
        "beans bought at a church fair",
        "gift from neighbour's garden", "view of the mountains on the label",
    ),
    TOMATOES: (
        "did eggplants too", "next to the olives", "lemon in all of them", "for pizza with olives",
        "to serve with anchovy", "the sour kind", "no mushrooms in it", "basil leaf in each",
    ),
    JAM: ("not fermented", "for the cider party"),
    PICKLES: ("brine covered all", "no skin on the brine", "thick skins"),
    KRAUT: ("fermented three weeks, then canned", "fermented in the crock"),
}  # fmt: skip


@pytest.mark.parametrize("line", SAID)
def test_plain_words_of_a_danger_are_held_against_it(larder: Pantry, line: str) -> None:
    found = tried_each(larder, line, SAID[line])
    assert set(SAID[line]) - quoted(found) == set()


@pytest.mark.parametrize("line", QUIET)
def test_other_plain_words_are_not(larder: Pantry, line: str) -> None:
    assert quoted(tried_each(larder, line, QUIET[line])) == set()
