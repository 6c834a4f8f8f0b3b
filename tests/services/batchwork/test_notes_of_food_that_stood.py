"""Notes of cooked food that stood until somebody came, and of food that was kept."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "lasagne": "2 boxes lasagne, cooked meal, chest, 20 nov",
    "fridgestew": "2 boxes beef stew, cooked meal, fridge, 28 nov",
    "chili": "3 boxes chili con carne, cooked meal, chest, 20 nov",
    "soup": "3 boxes pea soup, cooked meal, chest, 20 nov",
    "rice": "2 tubs rice, cooked meal, fridge, 29 nov",
    "trout": "2 bags trout, hot smoked, fridge, 27 nov",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "dapple": "1 bag apples, dried, larder, 20 oct",
}
GOOD = {
    "lasagne": """
for when guests come
guests came, ate half, rest in the fridge at once
stood on the table for half an hour
kept in the fridge till guests came
made before the guests came
left in the fridge after the party
in the oven till guests came, 350 F
baked till the cheese was brown
left over from the party, straight into the fridge
the buffet was cancelled
for the buffet on Sunday
table set till guests came
kept hot in the oven till they came
left in the oven ten minutes to set after baking
""",
    "fridgestew": """
simmered on the stove till we got back
in the slow cooker while we were at church
cooled on the porch for twenty minutes
on the stove till the meat was soft
in the oven all afternoon at 250 F
cooked while we were at church
eaten on the patio, rest boxed at once
we ate when everyone had come
left on low till we came home
garden table herbs
""",
    "chili": """
in the freezer till the party
""",
    "soup": """
on the hob until the peas were soft
left on the simmer till the ham fell apart
""",
    "rice": """
cooled on a tray ten minutes
""",
    "trout": """
smoked till guests came
""",
    "jam": """
stood on the garden table till guests came
""",
    "bean": """
jars stood on the table till guests came
""",
    "dapple": """
on the garden table till guests came
""",
}
BAD = {
    "lasagne": """
stood on the garden table till guests came
left in the oven after the party
was on the buffet all evening
oven switched off, left inside till morning
stood from noon to six on the buffet
brought back from the church supper
sat on the table through the speeches
left over from the garden party, dish stood out
on the table outside for the wedding
in the warm oven, off, till the guests came late
""",
    "fridgestew": """
sat on the stove till we got back
on the counter while we were at church
forgot it in the oven, found it after work
in the pot on the hob until the kids were in bed
went into the fridge when we came home from the fair
in the back of the car till we got home from the lake
cooled on the porch till we remembered it
still in the oven when I came home
stood on the windowsill until somebody noticed
""",
    "chili": """
stood out at the barbecue, boxed when everyone had left
out on the patio table through dinner and the games
served from the table for the whole match
""",
    "soup": """
left in the pot on the stove till the film was over
pot stood uncovered after the party
""",
    "rice": """
stayed in the cooker, switched off, till the evening
left on the side after lunch, put away at night
""",
    "trout": """
lay on the garden table till guests came
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
