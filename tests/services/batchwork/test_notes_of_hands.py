"""What notes say of food that is off, of glass in it, of sick hands, and what sounds like it."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "peas": "6 bags peas, frozen, chest, 2026-11-20",
    "chicken": "2 packs chicken breast, frozen, chest, 2026-11-20",
    "soup": "2 boxes pea soup, cooked meal, fridge, 2026-11-28",
    "beans": "7 pint jars runner beans, pressure canned, larder, 2026-11-20, minutes=20 psi=11",
    "tomatoes": "6 pint jars tomatoes, boiling-water canned, larder, 20 nov, minutes=85 acid=lemon",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 2026-11-20, minutes=10",
    "cheese": "1 pack cheddar, bought, fridge, use by 2026-12-20",
    "oysters": "12 oysters, fresh, fridge, 2026-11-28",
    "milk": "2 bottles milk, fresh, fridge, 2026-11-27",
    "lasagne": "2 boxes lasagne, cooked meal, fridge, 2026-11-28",
    "eggs": "12 eggs, fresh, fridge, 2026-11-22",
    "pickles": "6 pint jars dill pickles, vinegar pickle, larder, 20 nov, minutes=15 vinegar=5%",
}
GOOD = {
    "milk": """
day off on Monday
2% off the shelf
10% off
off the farm
skimmed off the cream
price off
half off at the shop
cream taken off
off cuts
off the doorstep by seven
""",
    "beans": """
heat off
lid off, still sealed below
off to Ann
20 off
rings off
off season
first off
glass jars
new glass jars
one jar broke in the canner
no glass found
""",
    "jam": """
in the small glasses
glass lids
clear as glass
window glass broke in the storm that week
glass lid in place of a ring
almond slivers
""",
    "lasagne": """
dog begged for it
dog food in the other box
cat sat by
Ann had the flu last month
good for a sick day
for Ann who had the stomach flu
freeze for when we are ill
stomach friendly
licked the spoon, lovely
made with Ann, by hand
""",
    "soup": """
mild, for stomach flu
vomited? no
""",
    "pickles": """
slivers of garlic in each
""",
}
BAD = {
    "milk": """
off
gone off
is off
slightly off
bit off
going off
was off
off by now
off?
seems off
off a bit
""",
    "chicken": """
off
""",
    "lasagne": """
off
glass splinter in it
a glass broke over the pot
made by Ann while she had the stomach flu
the dog licked the pot
made while I had a stomach bug
cook had diarrhea
Ben was throwing up when he made it
I had norovirus that day
made by someone with vomiting
kids all had the stomach bug that day, I cooked
she had been sick all night before cooking
cook was ill with diarrhoea
the cat ate from it
dog got at it
cat licked the top
dog had his nose in it
mouse ran over it
flies all over it
cut my finger, blood in it
open sore on her hand
cooked while I had diarrhoea
""",
    "soup": """
off
glass splinter in it
made by Ann while she had the stomach flu
the dog licked the pot
dog got at it
""",
    "beans": """
off
a glass splinter found in one
glass splinter in one
found a bit of glass in a jar
bit on glass
chipped rim, chip not found
""",
    "tomatoes": """
off
a glass splinter found in one
""",
    "jam": """
off
a glass splinter found in one
glass splinter in one
a shard in one
sliver of glass in the first jar
glass chip in one jar
bit on a glass splinter
""",
    "pickles": """
off
a piece of glass at the bottom
""",
    "peas": """
lamp broke over the bags
""",
    "oysters": """
off
""",
    "cheese": """
a bit off
""",
    "eggs": """
off
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_what_only_sounds_so_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_off_glass_and_sick_hands_are_heard(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
