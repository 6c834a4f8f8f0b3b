"""Notes of beans that never boiled, and of plants that nobody knows for certain."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "chili": "3 boxes chili con carne, cooked meal, chest, 20 nov",
    "dryb": "4 pint jars kidney beans, pressure canned, larder, 20 nov, minutes=75 psi=11",
    "cordial": "4 half-pint jars elderberry jelly, jelly, larder, 20 sep",
    "herbs": "2 jars mint, dried, larder, 20 aug",
    "lettuce": "2 bags lettuce, stored raw, fridge, 27 nov",
    "dmush": "1 jar mushrooms, dried, larder, 20 oct",
    "fmush": "4 bags mushrooms, frozen, chest, 20 oct",
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "potato": "1 crate potatoes, stored raw, cellar, 20 oct",
    "tom": "6 pint jars crushed tomatoes, boiling-water canned, larder, minutes=40 acid=lemon",
    "apple": "6 pint jars applesauce, boiling-water canned, larder, 20 nov, minutes=20",
}
GOOD = {
    "chili": """
beans soaked overnight, boiled an hour
tinned beans
beans boiled ten minutes, then slow cooked
beans boiled hard first, then the slow cooker
cooked all day in the slow cooker
canned kidney beans in the slow cooker
green beans raw into the slow cooker
no beans
not boiled over this time
soaked beans, boiled and rinsed
""",
    "dryb": """
soaked overnight
soaked 12 hours, boiled 30 minutes
quick soak
soaked, not salted
no soak water used
soaking water poured off
dry beans from the shop, soaked
boiled and soaked an hour instead of overnight
""",
    "cordial": """
stems off, all ripe
all ripe
ripe
ripe berries only
no leaves or stems
black elder, sure of it
fully ripe ones
elder from the hedge, kind certain
""",
    "herbs": """
mint, sure
kind unsure, spearmint or peppermint
not sure which mint
variety unknown
not sure if it keeps
not sure it is dry enough for a jar? it is
hope it is enough
""",
    "lettuce": """
not sure which kinds, seed mix
not sure it is any good for salad
""",
    "dmush": """
checked by the club
""",
    "fmush": """
oyster mushrooms from the kit
not sure how many we will eat
""",
    "bean": """
not soaked
""",
    "potato": """
not sure it is Desiree
""",
    "tom": """
not sure it is Roma
""",
    "apple": """
hope it is sweet enough
""",
}
BAD = {
    "chili": """
beans not boiled
beans not boiled, slow cooker only
raw kidney beans in the slow cooker
beans soaked then slow cooked on low, never boiled
dry beans straight into the slow cooker
kidney beans soaked, not boiled first
beans went in the slow cooker uncooked
beans still hard, slow cooker all day
beans raw in the crock pot
did not boil the beans before
unsoaked red beans on low for eight hours
""",
    "dryb": """
not soaked
not soaked, dry beans straight into the jar
dry beans straight into the jar
no soak
skipped the soaking
packed dry, water on top
unsoaked
raw dry beans in the jar
soaking forgotten
did not have time to soak them
""",
    "cordial": """
kind unsure
leaves and stems in
some green berries
not all ripe
half of them unripe
maybe dwarf elder
could be dwarf elder
stalks left on
with the stems
not sure it is elder
""",
    "herbs": """
not sure if it is mint at all
not sure it is mint
comfrey leaves or maybe foxglove
might be something else than mint
hope it is mint
could be hemlock
looks like mint, not sure
is it mint? no idea
picked in the wild, nobody knows what it is
""",
    "lettuce": """
foraged greens, not certain which
wild leaves, kind not known
foraged, not sure they are safe
""",
    "dmush": """
picked by the kids, not checked
nobody checked them
""",
    "fmush": """
nobody looked at them
not sure they are chanterelles
could be false chanterelles
some I did not know
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
