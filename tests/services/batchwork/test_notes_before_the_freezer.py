"""Notes of food that was over in the refrigerator before it was frozen, or was not."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "fchick": "4 bags chicken, frozen, chest, 20 oct",
    "fbreast": "2 packs chicken breast, frozen, chest, 20 nov",
    "fbeef": "6 bags ground beef, frozen, chest, 20 oct",
    "fsteak": "3 packs steak, frozen, chest, 20 nov",
    "fsalmon": "3 packs salmon, frozen, chest, 20 nov",
    "fcod": "3 packs cod fillets, frozen, chest, 20 nov",
    "fstew": "2 boxes beef stew, frozen, chest, 20 nov",
    "lasagne": "2 boxes lasagne, cooked meal, chest, 20 nov",
    "fmilk": "2 bottles milk, frozen, chest, 20 nov",
    "soup": "3 boxes pea soup, cooked meal, chest, 20 nov",
    "fbean": "6 bags green beans, frozen, chest, 20 sep",
    "fberry": "6 bags raspberries, frozen, chest, 20 jul",
    "butter": "4 bags butter, frozen, chest, 20 oct",
    "chick": "4 pint jars chicken, pressure canned, larder, 20 nov, minutes=75 psi=11",
}
GOOD = {
    "fchick": """
overnight in the fridge before freezing
one day in the fridge before
a night in the fridge, then frozen
thaw two days in the fridge
keeps 2 days in the fridge once thawed
needs 2 days in the fridge to thaw
eat within 2 days in the fridge
frozen the day I bought it
bought Monday, frozen Monday
bought Monday, frozen Tuesday
fridge was full, so straight in the freezer
meant for the fridge, 5 days ago, frozen instead
half a day in the fridge
5 days of work in the garden
for the party in 5 days, then fridge
""",
    "fbeef": """
not a day in the fridge, straight in
never in the fridge, frozen at once
""",
    "fsteak": """
two days in the fridge before freezing
three days in the fridge
hung two weeks in the cold room
dry-aged 3 weeks in the fridge
""",
    "fsalmon": """
caught Sunday, frozen Sunday
one day in the fridge, then frozen
""",
    "fstew": """
two days in the fridge before freezing
""",
    "lasagne": """
a day in the fridge, then frozen
""",
    "fmilk": """
2 days in the fridge
""",
    "fbean": """
five days in the fridge before
""",
    "fberry": """
3 days in the fridge first
""",
    "butter": """
a week in the fridge before
""",
    "chick": """
five days in the cellar, fine
""",
}
BAD = {
    "fchick": """
had been five days in the fridge before
in the fridge for a week before freezing
five days old when frozen
frozen on day 6
frozen after 4 days in the fridge
froze it 5 days later
4 days after buying, frozen 4 days late
a week in the cold room, then freezer
frozen only after a week
the fridge had them for 6 days
""",
    "fbreast": """
stood in the fridge all week, then frozen
bought on Monday, frozen on Friday
""",
    "fbeef": """
a few days in the fridge first
too long in the fridge before I froze it
forgot it in the fridge, then froze it
4 days in the fridge
nobody knows how long in the fridge
""",
    "fsteak": """
sat in the refrigerator for ten days before it went into the freezer
from the fridge, a week old when it went in
had been in the fridge for longer than it should
""",
    "fsalmon": """
three days in the fridge before I got round to freezing
caught Sunday, frozen Thursday
""",
    "fcod": """
in the fridge over the weekend, then frozen
lay several days in the fridge
""",
    "fstew": """
five days in the fridge before freezing
""",
    "lasagne": """
in the fridge for five days before freezing
""",
    "fmilk": """
two weeks in the fridge first
""",
    "soup": """
had been six days in the fridge before
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
