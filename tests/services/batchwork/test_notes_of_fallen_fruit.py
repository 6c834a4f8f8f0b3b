"""Notes of fruit from the ground, of its juice, and of what was picked from the tree."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "cider": "4 bottles apple cider, fresh, fridge, 27 nov",
    "applejuice": "3 bottles apple juice, fresh, fridge, 28 nov",
    "fjuice": "3 bottles apple juice, frozen, chest, 20 nov",
    "juice": "4 quart jars apple juice, boiling-water canned, larder, 20 oct, minutes=10",
    "apple": "6 pint jars applesauce, boiling-water canned, larder, 20 nov, minutes=20",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "apples": "1 crate apples, stored raw, cellar, 20 oct",
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "kraut": "3 quart jars sauerkraut, fermented, fridge, 20 oct",
    "tom": "6 pint jars crushed tomatoes, boiling-water canned, larder, minutes=40 acid=lemon",
}
GOOD = {
    "cider": """
tree-picked, no windfalls
picked from the tree
""",
    "applejuice": """
no drops, only from the ladder
never off the ground
a few drops of lemon
drops of juice on the label
sheep in the next field, apples off the tree
sweet drops, a treat
price drops in october
""",
    "fjuice": """
heated to 170 F first
""",
    "juice": """
off the tree, none from the ground
from the orchard with the sheep
""",
    "apple": """
picked from the tree, not off the ground
ground cinnamon in it
grated from the ground up
""",
    "jam": """
windfalls from the garden
berries off the ground cover
""",
    "apples": """
no windfalls among them
""",
    "bean": """
picked off the ground, low bushes
""",
    "kraut": """
cabbage off the ground
""",
    "tom": """
vines off the ground on strings
""",
}
BAD = {
    "cider": """
windfalls, sheep graze under the trees
drops from the orchard floor
apples picked up off the ground
made of windfalls, not pasteurised
""",
    "applejuice": """
from fallen apples
windfalls from the cow pasture
ground fruit, washed
raked up under the trees
gathered from the grass where the horses are
the geese live in the orchard, picked up what lay there
""",
    "fjuice": """
windfalls under the sheep
drops, pressed the same day
""",
    "juice": """
fallen apples
apples picked up off the ground
""",
    "apple": """
from fallen apples
gathered from the grass
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
