"""What notes say of jars and tins that were in a fire or stood hot, and of the fires that cook."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "chicken": "2 packs chicken breast, frozen, chest, 2026-11-20",
    "beans": "7 pint jars runner beans, pressure canned, larder, 2026-11-20, minutes=20 psi=11",
    "tomatoes": "6 pint jars tomatoes, boiling-water canned, larder, 20 nov, minutes=85 acid=lemon",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 2026-11-20, minutes=10",
    "tuna": "2 tins tuna, bought, larder, use by 2028-11-20",
    "flour": "1 bag flour, bought, larder, use by 2027-05-01",
    "apples": "1 crate apples, cellar-stored, cellar, 2026-10-20",
}
GOOD = {
    "beans": """
cooked over the fire
canned over an open fire at 11 lb
jars hot from the canner
hot jars, hot lids
fire wood stove
fire roasted peppers next time
fire alarm went off from the steam
fireplace shelf is cold now
peeled over a flame
blistered skins, peeled
carried home in the car
drove them to Ann in the trunk
picked all july
july crop
grown in the greenhouse all july
beans from the greenhouse
burned my finger
scorched a towel
summer beans
attic is cool
fire door at the cellar
kept by the fireplace in winter
old shelf burned as firewood
house smells of smoke from the stove
burned my hand on the lid
fireproof shelf
""",
    "tomatoes": """
fire alarm went off from the steam
skins blistered under the grill
fire roasted
charred skins peeled off
roasted over the fire
""",
    "jam": """
burnt a bit at the bottom of the pot, poured off
butter melted in
""",
    "chicken": """
smoked over the fire
""",
    "apples": """
picked before the fire station fete
""",
}
BAD = {
    "beans": """
went through the shed fire, jars were hot
lids blistered
was in the trunk of the car all july
survived the house fire
the shelf burned, these were left
from the burnt cellar
smoke damaged in the fire
labels charred
rings melted
lids bubbled and scorched
in the car boot through the heat wave
stored in the caravan all summer
stood in the attic all summer
on the dashboard for a week
left in the van in july
in the greenhouse since june
lids warped in the heat
firemen hosed them down
the garage burned down around them
was in the fire
too hot to touch after the fire
saved from the house fire
we had a kitchen fire, these stood beside it
the barn they stood in burned down
the plastic on the lids melted
""",
    "tomatoes": """
went through the shed fire, jars were hot
lids blistered
was in the trunk of the car all july
smoke damaged in the fire
""",
    "jam": """
went through the shed fire, jars were hot
lids blistered
was in the trunk of the car all july
""",
    "tuna": """
was in the fire
tins from a shop that burned
trunk of the car all july
""",
    "chicken": """
came through the barn fire
""",
    "apples": """
came through the barn fire
""",
    "flour": """
smoke damaged in the kitchen fire
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_what_only_speaks_of_fire_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_what_was_burnt_or_hot_is_heard(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
