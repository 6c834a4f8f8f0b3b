"""Notes of jars that stood hot, and of heat that is of something else."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "tom": "6 pint jars crushed tomatoes, boiling-water canned, larder, minutes=40 acid=lemon",
    "peach": "6 pint jars peaches, boiling-water canned, larder, 20 sep, minutes=25",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "pick": "6 pint jars dill pickles, boiling-water canned, larder, 20 sep, minutes=10",
    "stew": "4 pint jars beef, pressure canned, larder, 20 nov, minutes=75 psi=11",
}
GOOD = {
    "bean": """
ripened in the full sun
picked in the hot sun
canned on a hot day
kitchen was 95 F while canning
jars came from the attic, washed
cooled beside the stove
stood by the stove to cool
canner on the stove
row by the greenhouse
hot summer, good crop
stored in the cool cellar, away from the furnace
not in the sun
kept out of the sun
kept dark and cool
kept away from the stove
wood stove, kept at 11
grown against the south wall
attic window is broken
in the attic in winter
sits next to the peaches
shelf by the window, blind down
larder at 60 F
carried home in the car
""",
    "tom": """
sun-ripened
dried in the sun a day first? no
from the greenhouse
""",
    "peach": """
a week of sun before picking
""",
    "jam": """
picked in the sun
stirred by the stove for an hour
""",
    "pick": """
jars warmed by the stove before filling
""",
}
BAD = {
    "bean": """
stood in the attic all summer
kept in the loft through July
on the windowsill in full sun
shelf gets the sun all afternoon
stored beside the stove
cupboard above the cooker
kept next to the boiler
in the garage, 100 F in August
larder reached 98 F in the heat wave
in the hot car for a week
pantry was over 100 degrees for weeks
the shelf is right behind the furnace
""",
    "tom": """
jars stood in the sun for days
stored over the wood stove
shed got above 95 F
""",
    "peach": """
stood by the radiator all winter
on the shelf over the water heater
""",
    "jam": """
in the greenhouse all summer
""",
    "pick": """
in the caravan during the heat wave
""",
    "stew": """
forgotten in the boot of the car in July
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
