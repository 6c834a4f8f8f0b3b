"""Notes of tomatoes and figs whose acid was not measured into each jar, or was."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "tom": "6 pint jars crushed tomatoes, boiling-water canned, larder, minutes=40 acid=lemon",
    "wholetom": "6 quart jars tomatoes, boiling-water canned, larder, minutes=85 acid=lemon",
    "figs": "4 pint jars figs, boiling-water canned, larder, 20 sep, minutes=45 acid=lemon",
    "salsa": "4 pint jars salsa, boiling-water canned, larder, 20 sep, minutes=15 acid=lemon",
    "peach": "6 pint jars peaches, boiling-water canned, larder, 20 sep, minutes=25",
    "apple": "6 pint jars applesauce, boiling-water canned, larder, 20 nov, minutes=20",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
}
GOOD = {
    "tom": """
lemon juice in each jar
bottled lemon juice in every jar, first thing
1 tbsp lemon a jar
lemon into each jar, sauce from the pot on top
tablespoon of bottled lemon per jar
lemon juice in the jars before the tomatoes
lemon put in before filling
citric acid 1/4 tsp a pint
lemon in all the jars
lemon in all six jars
lemon in every one
half a lemon per pot on top of the bottled
a lemon in the pot as well as the bottled in each jar
lemon per jar, and a bit more in the pot
pot of tomatoes from the lemon house
lemons next to it in the pan of the scale
in the big pot, lemon basil next to it
vinegar in the canner water
lemon thyme in the pot
pan wiped with vinegar
rims wiped with vinegar
pot cleaned with vinegar
for the lemon chicken pot
good on pasta with a squirt of lemon
bottled lemon from the shop
""",
    "wholetom": """
2 tbsp lemon juice in each quart
bottled lemon, 2 tbsp per quart, added to the jars first
""",
    "figs": """
lemon in each jar
1 tbsp lemon juice a pint
""",
    "salsa": """
vinegar in the pot
lime juice stirred into the pot
""",
    "peach": """
lemon juice in the bowl against browning
""",
    "apple": """
lemon in the pot
juice of a lemon
bit of lemon, no sugar
""",
    "jam": """
juice of two lemons in the pot
""",
    "bean": """
juice of a lemon? no
""",
}
BAD = {
    "tom": """
juice of a lemon between the lot
a spoon of vinegar in the pot
lemon juice stirred into the pot
2 tbsp lemon juice for the whole batch
one lemon per batch
lemon divided among the jars
acid in the pan, not per jar
lemon juice went in with the tomatoes while they cooked
citric acid to taste
vinegar by eye
a glug of lemon juice
juice of two lemons
lemon added to the sauce
cooked with lemon
lemon juice, shared between six jars
one spoon of lemon for all six jars
quarter teaspoon citric acid in the whole kettle
squirt of lemon
lemon slice in each jar
acid went in the pot, not the jars
a pinch of citric over everything
a tablespoon of lemon split over the lot
""",
    "wholetom": """
juice of half a lemon in each jar
lemon juice in the big pot before filling
""",
    "figs": """
lemon in the syrup pot, all together
lemon juice between the jars
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
