"""What notes say of food that was carried about, hidden, laid out, or found warm or soft, and what
speaks of the same things and says nothing against it."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "peas": "6 bags peas, frozen, chest, 2026-11-20",
    "chicken": "2 packs chicken breast, frozen, chest, 2026-11-20",
    "salmon": "2 packs salmon, frozen, chest, 2026-11-20",
    "boiled eggs": "6 hard-cooked eggs, fridge, 2026-11-28",
    "ham": "1 ham, cooked meal, fridge, 2026-11-28",
    "bought ham": "1 ham, bought, fridge, use by 2026-12-20",
    "soup": "2 boxes pea soup, cooked meal, fridge, 2026-11-28",
    "frozen soup": "2 boxes pea soup, cooked meal, chest, 2026-11-28",
    "lasagne": "2 boxes lasagne, cooked meal, fridge, 2026-11-28",
}
GOOD = {
    "peas": """
soft peas, young
soft fruit bags
soft in the middle of cooking
found in the garden
picked soft
soft when cooked
""",
    "chicken": """
soft pack ice on top
tender and soft when cooked
plug was pulled to clean it, before it was filled
plug checked, all frozen hard
new plug on the freezer
came home frozen hard
from the shop by the station
soft packs go on top
thaws soft
the freezer plug is behind the door
short drive home
hot summer, bought early
""",
    "boiled eggs": """
brown shells, for the egg hunt on sunday
dyed for easter
for the lunch boxes
for the picnic
dyed red and blue
from the hens on the lawn
cooked for the easter table
free range, on the lawn all day
hens in the garden all day
egg hunt next week
painted by the kids
dyed, hidden in the fridge from the kids
for easter
for the easter basket
for lunch at school
for the picnic tomorrow
take to work
""",
    "ham": """
for the buffet
for the party on saturday
sliced for the buffet
for christmas
""",
    "bought ham": """
for the buffet
for the party on saturday
sliced for the buffet
for christmas
""",
    "soup": """
cooled in ice water, into the fridge within the hour
from the slow cooker, straight into the fridge
made in the slow cooker
eaten warm on sunday, rest chilled at once
good warm in the morning
slow cooker recipe from Ann
freeze the leftovers
dinner leftovers, chilled at once
into the fridge by nine, dinner at eight
made in the crock pot, off at six, fridge by seven
slow cooker, eight hours on low
slow cooker on low, turned off and chilled at once
put away at midnight, cooked at eleven
cooked late, in the fridge by midnight
ready this morning
hot in the morning for school
heat in a pan
in the big pot
""",
    "salmon": """
from the shop, in a cool box
came home in the cool bag, hard
two hours drive, on ice
from the shop
bought on the way home
two minute drive from the shop
came home frozen hard
from the shop by the station
short drive home
hot summer, bought early
two hours at sea
firm, bought at the harbour
two hours from catch to freezer
""",
    "lasagne": """
for lunch at school
for the picnic tomorrow
take to work
for the pot luck
made for the wedding
rest of the party size pan
party food
rest is in the freezer
back garden herbs
from the office cookbook
leftovers
leftover from sunday dinner
leftovers of the party, chilled at once
""",
}
BAD = {
    "peas": """
found soft after the plug was pulled, nobody knows how long
the breaker had tripped, was mushy
""",
    "chicken": """
found soft after the plug was pulled, nobody knows how long
the breaker had tripped, was mushy
plug was out, everything soft when I came home
came home to soft packs
was half thawed when I found it
plug pulled by the cleaner, all limp
the kids pulled the plug, found it soft
someone switched the socket off, soft all through
freezer was off, no idea since when, meat was soft
packs were soft when the power came back
thawed in the chest, refrozen
somebody unplugged it for the vacuum cleaner
cord came loose, all was mushy
freezer had stopped, soft to the thumb
found floppy on Sunday morning
the plug had slipped out
no power for nobody knows how long
meat gave under the finger
cable slipped out, all soft
dog pulled the plug
opened the chest and found everything soft
arrived home limp
long hot drive home
3 hour drive, no cool bag
found thawed on monday
dents under the thumb
""",
    "boiled eggs": """
hidden on the lawn all afternoon
egg hunt
from the egg hunt
in the lunchbox till four, then back
easter table decoration since friday
hidden in the garden for the children
in the lunch box all day
on the easter table since friday
decorated the table for three days
came back uneaten from school
taken along on the hike, brought back
was in the picnic basket all afternoon
left on the breakfast table until noon
in the easter nest outside
hid them in the garden, all found again
found behind the couch after easter egg hunt
were in the easter basket since sunday
in his schoolbag since monday
back from the picnic
taken to work, came home again
served as table decoration at brunch
lay on the table as decoration
""",
    "ham": """
buffet leftovers
leftovers from the buffet
left over from the party
party leftovers
rest of the wedding buffet
what was left on the buffet
left over from the garden party
remains of the wedding buffet
brought home from the party
""",
    "bought ham": """
buffet leftovers
leftovers from the buffet
left over from the party
party leftovers
rest of the wedding buffet
what was left on the buffet
left over from the garden party
""",
    "lasagne": """
buffet leftovers
in his schoolbag since monday
back from the picnic
taken to work, came home again
left over from the garden party
remains of the wedding buffet
potluck leftovers
bbq leftovers, salad and meat
""",
    "soup": """
still warm in the pot this morning
put away lukewarm at midnight after the dinner
in the slow cooker, which had been unplugged when I got home
pot was lukewarm when I got up
slow cooker was off when I came home
slow cooker had switched itself off
crock pot not plugged in, noticed at noon
into the fridge at midnight, dinner was at seven
was still warm on the stove this morning
forgot it on the stove, put it in the fridge this morning
found it lukewarm in the pot next day
cold on the stove this morning
tepid in the pot next morning
cooker unplugged, came home to cold soup
slow cooker came unplugged
crockpot was off when I came back
boxed up lukewarm after the guests had gone
put away at midnight, eaten at 7
in the fridge at midnight, cooked at six
stood in the pot until morning
forgot the pot on the stove, morning found it
""",
    "frozen soup": """
still warm in the pot this morning
in the slow cooker, which had been unplugged when I got home
""",
    "salmon": """
came home from the shop quite limp, two hours drive in summer
two hours in the hot car
soft by the time we got home
had thawed on the way home
limp when it came home
three hours in the boot coming home
was soft when it went into the freezer
long drive home in the heat
arrived home limp
long hot drive home
3 hour drive, no cool bag
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_what_was_kept_cold_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_what_was_out_of_the_cold_is_heard(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
