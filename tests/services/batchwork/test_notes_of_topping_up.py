"""Notes of older pots that were topped up, of brine that was watered, and of filling jars."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "kraut": "3 quart jars sauerkraut, fermented, fridge, 20 oct",
    "fpick": "3 pint jars cucumbers, refrigerator pickle, fridge, 20 nov",
    "fonion": "3 pint jars red onions, refrigerator pickle, fridge, 20 nov",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "fjam": "3 jars strawberry jam, freezer jam, fridge, 20 nov",
    "fridgestew": "2 boxes beef stew, cooked meal, fridge, 28 nov",
    "soup": "3 boxes pea soup, cooked meal, chest, 20 nov",
    "stock": "4 pint jars chicken stock, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "oil": "1 jar garlic in oil, in oil, fridge, 28 nov",
}
GOOD = {
    "kraut": """
topped up with brine
topped up with 3% brine
topped up with brine, 1.5 tbsp salt to a quart
topped up with 2.5% brine to cover
added brine to cover
water weight on top
a bag of water as weight
water bag on top
salt water to cover, 3%
boiled and cooled brine on top
brine bag on top
old crock, new cabbage
no water added
water in the airlock topped up
topped up the moat with water
water seal topped up
its own water covers it
rinsed with water before eating
washed the crock with water
boiled water brine, 2.5%
""",
    "fpick": """
topped up with more brine the same day
topped up with vinegar
old pot, new pickles
new brine
""",
    "fonion": """
fresh onions, fresh brine
topped up with brine while filling
""",
    "jam": """
topped up with one more spoon before the lid
topped up to a quarter inch
old pot from my aunt
filled up the last jar from the pot
""",
    "fjam": """
topped up with sugar
""",
    "fridgestew": """
topped up with stock while it simmered
topped up with a glass of water
""",
    "soup": """
topped up with milk
""",
    "stock": """
topped up with boiling stock
""",
    "oil": """
topped up with fresh oil to cover
""",
}
BAD = {
    "kraut": """
topped up with plain water
filled up with tap water
old pot topped up
new cabbage on old kraut
added water to cover
water on top to keep it under
brine was low, poured in water
a cup of water to cover the cabbage
diluted the brine
thinned the brine with water
crock topped up with fresh cabbage
added this week's cabbage to the crock from August
""",
    "fpick": """
topped up the pot
always the same pot, topped up
same jar since spring, topped up
new cucumbers in the old brine
never emptied, just refilled
""",
    "fonion": """
topped up with new onions, brine is from August
refilled the jar with fresh onions
reused the brine from last time
added fresh onions to what was left
""",
    "jam": """
old pot topped up
topped up an old jar
old jar topped up with the new jam
topped up last year's pot
""",
    "fjam": """
topped up the jar from May
added to the opened jar
""",
    "fridgestew": """
the pot has been going since Monday last week
topped up with what was left of last week
same pot kept going
""",
    "soup": """
made with last month's thawed soup
stretched with the rest of last week's soup
""",
    "stock": """
topped up with the old stock from Sunday week
""",
    "oil": """
new garlic in the old oil
jar topped up again and again
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(
    "note", ["topped up on 27 nov", "topped up on friday", "more added friday"]
)
def test_a_pot_is_as_old_as_what_was_in_it(kitchen: Pantry, note: str) -> None:
    line = "2 boxes beef stew, cooked meal, fridge"
    assert not speaks_against(kitchen, f"{line}, 26 nov", note)
    assert speaks_against(kitchen, f"{line}, 27 nov", note)
    assert speaks_against(kitchen, f"{line}, 28 nov", note)
