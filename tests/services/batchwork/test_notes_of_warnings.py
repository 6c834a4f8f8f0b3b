"""What notes say of warnings and closed waters, and of animals that nobody killed to be eaten."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "chicken": "2 packs chicken breast, frozen, chest, 2026-11-20",
    "soup": "2 boxes pea soup, cooked meal, fridge, 2026-11-28",
    "tuna": "2 tins tuna, bought, larder, use by 2028-11-20",
    "cheese": "1 pack cheddar, bought, fridge, use by 2026-12-20",
    "oysters": "12 oysters, fresh, fridge, 2026-11-28",
    "raw chicken": "1 chicken, fresh, fridge, 2026-11-28",
    "canned venison": "4 pint jars venison, pressure canned, larder, 2026-11-20, minutes=75 psi=11",
    "venison": "4 packs venison, frozen, chest, 2026-11-20",
    "lasagne": "2 boxes lasagne, cooked meal, fridge, 2026-11-28",
    "flour": "1 bag flour, bought, larder, use by 2027-05-01",
}
GOOD = {
    "tuna": """
not on the recall list
checked the recall list, not on it
another brand was recalled, not this
""",
    "cheese": """
checked the recall list, not on it
no recall
brand from the market
FDA approved
from the shop by the station, good brand
maker's list of ingredients on the back
aged a year
""",
    "flour": """
on the shopping list
""",
    "raw chicken": """
killed at home on saturday
the old hen, killed by Ben
home slaughtered, chilled at once
from the coop
shot a fox that week
looked tame and fat
""",
    "venison": """
shot by Ben
hung in the cold room at 36F for five days
hung five days in the fridge
aged a week at 38F
hung in the walk-in cooler
gutted at once
one shot
hit in the lung
from the road to the north
hung overnight in the frost
hung two days in november, 35F
""",
    "oysters": """
from open waters
tagged, from the bay
area open, checked
closed shells
tide was low
all closed tight
""",
    "lasagne": """
made while salmonella was in the news? no
""",
    "chicken": """
no warning on the pack
hung the bag on the hook
""",
    "soup": """
with alphabet noodles, do not eat hot
""",
    "canned venison": """
shot by Ben
hung five days at 36F
""",
}
BAD = {
    "tuna": """
salmonella warning in the paper for this brand
on the FDA list
recalled
recall notice in the shop
listeria warning on the radio
the maker called it back
warning about this lot number
shop rang, do not eat
botulism scare for this brand
""",
    "cheese": """
salmonella warning in the paper for this brand
on the FDA list
recalled
recall notice in the shop
listeria warning on the radio
on the recall list
warning about this lot number
shop wants it back
the health department warned of it
food safety alert for this batch
withdrawn from sale
brand was in the news for listeria
""",
    "flour": """
on the FDA list
E. coli in this flour, says the news
""",
    "oysters": """
red tide closure
harvest area closed
the bay was closed that week
from closed waters
red tide warning
algae bloom at the time
shellfish warning was up
norovirus in the bay
""",
    "raw chicken": """
died in the coop, cause unknown
found dead in the morning
was sick before we killed it
hen died by itself
killed by the fox
dog got it
found it dead in the run
""",
    "venison": """
roadkill found in the morning
hit by a car, picked up in the morning
road kill
found dead in the woods
hung in the warm barn for five days
hung a week in warm weather
hung five days at 60F
hung in the shed, warm week
gut shot, hung over night warm
not gutted until next day
found the next day
deer acted strange
""",
    "canned venison": """
roadkill
found dead in the woods
hung a week in the warm shed
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_what_nobody_warned_of_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_a_warning_or_a_dead_animal_is_heard(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
