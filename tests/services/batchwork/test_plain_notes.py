"""Plain notes that a careful canner writes of good batches, which say nothing against them, and
plain words of danger, which all do: each of every kind on a batch that is sound without a note."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 29)
PLACES = (("larder", "pantry"), ("cellar", "cellar"), ("fridge", "fridge"), ("chest", "freezer"))
LINES = {
    "beans": "7 pint jars runner beans, pressure canned, larder, 2026-11-20, minutes=20 psi=11",
    "chicken": "2 packs chicken breast, frozen, chest, 2026-11-20",
    "pickles": "6 pint jars dill pickles, vinegar pickle, larder, 20 nov, minutes=15 vinegar=5%",
    "apples": "1 jar apples, dried, larder, 2026-11-10",
    "eggs": "12 eggs, fresh, fridge, 2026-11-20",
    "fridge pickles": "2 jars dill pickles, fridge pickle, fridge, 2026-11-20",
    "gin": "1 bottle sloe gin, infused, larder, 2026-10-20",
    "ham": "1 ham, salted, fridge, 2026-10-01",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 2026-11-20, minutes=10",
    "jerky": "1 jar beef jerky, dried, larder, 2026-11-25",
    "kraut": "2 quart jars sauerkraut, fermented, fridge, 2026-11-01",
    "pesto": "1 jar pesto, in oil, fridge, 2026-11-28",
    "lasagne": "2 boxes lasagne, cooked meal, fridge, 2026-11-28",
    "milk": "2 bottles milk, fresh, fridge, 2026-11-27",
    "peas": "6 bags peas, frozen, chest, 2026-11-20",
    "potatoes": "1 crate potatoes, cellar-stored, cellar, 2026-10-10",
    "beef": "4 pint jars beef, pressure canned, larder, 2026-11-20, minutes=75 psi=11",
    "tomatoes": "6 pint jars tomatoes, boiling-water canned, larder, 20 nov, minutes=85 acid=lemon",
    "trout": "2 packs smoked trout, hot smoked, fridge, 2026-11-25",
}
GOOD = {
    "beans": """
took them out when the pressure was down
all lids pinged within an hour
pinged within an hour
last lid pinged after two hours
the last one took half an hour to ping
a third of the liquid lost
about a quarter of the liquid lost in two jars
lost a third of the liquid, beans still covered
liquid dropped a little, beans still covered
a little siphoning, lids down tight
waited ten minutes before opening the canner
let the pressure come down by itself
canner cooled on its own for an hour
vented for ten minutes as the book says
new gasket fitted before we started
gauge checked at the fair in spring
jars were hot when filled
left an inch at the top
one inch headspace in every jar
beans a shade darker than last year
Tom helped snap the beans
grandma watched the gauge the whole time
rained all day
thunder outside but the power stayed on
label smudged on two jars
lids by a new maker, all flat
rings taken off and lids washed
stored without rings
wiped every rim with vinegar
checked all seals the next morning
will cut them shorter next year
next year start earlier in the day
one jar given to Mia
salt left out for Dad
no salt, doctor's orders
half a teaspoon of salt a jar
beans picked the same morning
second picking of the season
a few bubbles rose as they cooled
still bubbling when they came out of the canner
jars stood on a towel overnight
kept at pressure the whole twenty minutes
steady at 11 the whole time
needle at 12, never under 11
cloudy from the starch
added vinegar to the canner water against lime
one jar broke in the canner, the others are fine
threw away the jar that broke
seven jars went in and six came out, one cracked
out of the canner when the pressure was at zero
opened it after the pressure was down
let it stand ten minutes before opening
a fifth of the liquid lost, lids tight
liquid a quarter inch down
popped within ten minutes
sealed within the hour
""",
    "tomatoes": """
lemon juice in every jar
2 tablespoons of lemon juice per quart as published
bottled lemon juice, one spoon a jar
tomatoes floated, will pack hotter next year
a bit watery
juice separated from the flesh
seeds in it, we do not mind
pulp at the top and clear juice below
took half an hour to come to the boil
timer started when it boiled again
water stayed two inches over the lids
water was topped up with boiling water
kept boiling the whole time
lid off, five minutes' rest, then out
cooled on the counter overnight
lids popped down one after another
one did not seal, went into the fridge and was eaten
one jar did not seal and we ate it the same day
one lid failed, that jar was frozen
skins slipped off easily
a few black specks of pepper
basil leaf left out this year
from our own vines
too many tomatoes this year
hot day, all the windows open
label says tomatoes 2026
lost about half an inch of juice
liquid down half an inch
air bubbles let out with a chopstick
jars warm, not cracked
jar on its side for a day
2 tablespoons of lemon juice per quart
""",
    "jam": """
with a bit of butter in
a dab of butter to keep the foam down
butter the size of a pea against the foam
foam skimmed off
a little foam on top
did not set at first, firm after two weeks
set like a dream
too stiff, boiled a minute too long
a bit dark because it boiled too long
low sugar pectin as on the box
a few bubbles trapped in the jam
fruit floated to the top
from frozen berries
berries thawed overnight in the fridge, then cooked
turned the jars now and then to spread the fruit
sugar crystals on one spoon
used up the last of the sugar
smells of summer
tastes of honey
lids clicked on the counter
all sealed by the time we had tea
seeds sieved out
for the Christmas boxes
two jars to the neighbours
made with Lena and her mum
1/2 tsp butter to stop the foam
with a knob of butter
butter the size of a hazelnut against foam
1/4 teaspoon of butter in it
""",
    "pickles": """
garlic clove in each jar
a head of dill and a chili in each
cloudy from table salt
garlic turned blue
still crunchy
a little soft but good
vinegar from a new bottle, 5 %
brine to half an inch from the rim
half an inch headspace
cucumbers from the market
liquid covers everything
one cucumber sticks up a bit
blossom ends cut off
grape leaf in each jar
waited six weeks before opening one
sealed with a lovely ping
spices sank to the bottom
""",
    "kraut": """
bubbled for a week and then stopped
smells sour and clean
white film skimmed off, kraut below is fine
brine topped up with salt water
weighed down with a glass weight
a bit salty
foamed the first days
crunchy
pink from the red cabbage
moved to the fridge when it was sour enough
""",
    "peas": """
blanched two minutes and chilled in ice water
froze on a tray first
picked and frozen within two hours
some ice crystals in the bag
bag double wrapped
shelled by the kids
out of the pot, cooled in ice water, in the freezer by noon
peas left out all night before they were blanched
""",
    "lasagne": """
in the fridge within an hour
cooled in the sink, in the fridge by 8
cooked at 6, fridge at 7.30
served 4 to 6 people
set out at 12, back in the fridge at 1
reheat until steaming
made for 6 to 8 people
table for 8 at 7
from page 9-11 of the blue book
9-13 pieces
oven at 180 from 4 to 5, fridge at 6
for the party, served 4-6
for the egg hunt at 9, in the fridge until then
""",
    "eggs": """
from our own hens
washed
brown and white
laid between 9 and 11 November
collect 9-12 a day now
box 9-10
for the egg hunt 9-1
""",
    "apples": """
leathery, no moisture when cut
conditioned for a week
dried 10 hours
no drops on the glass
soft but dry inside
""",
    "jerky": """
heated to 160 F before drying
marinated overnight in the fridge
a bit salty
""",
    "trout": """
brined overnight in the fridge
smoked at 180 F for three hours
skin on
""",
    "potatoes": """
cured for ten days
some soil left on
a few small ones
damp sand
""",
    "beef": """
fat skimmed off first
jar on its side for a day
jar on its side in the box
a thin layer of fat on top
broth jelled when cold
meat browned first
carried home in the car
one tall jar lay on its side in the crate
lay on its side on the way home
hunters' recipe, no flour
processed 75 minutes as the table says
all jars were covered by steam, none stood in too much water
""",
    "gin": """
shaken every week
strained through a cloth
sloes pricked after the first frost
""",
    "fridge pickles": """
ready after three days
vinegar brought to the boil first
brine clear
lid flat
""",
}
BAD = {
    "beans": """
lid lifts off with a finger
the lids came off without any effort
lid loose this morning
one lid moves up and down when pressed
seal gave way last week
lid not sucked down
hissed when I opened one
gas came out
spurted when opened
smells off
bad smell from one
smells like old socks
stinks
white fluff under the lid
green stuff on the beans
mould on one
liquid turned milky and it fizzes
bulging lid on one
one is swollen
leaking down the shelf
sticky where it leaked
pressure dropped to 8 for a while
pressure fell under ten twice
timer was off by ten minutes, took them out too soon
only ten minutes because the gas ran out
cut it to 15 minutes
turned it off ten minutes early
power went out halfway
did not vent
forgot to vent the canner
ran dry
the canner boiled dry near the end
filled to the top
filled right up to the rim, no headspace
packed too tight
did them in the oven
oven canned at 250
jars baked in the oven for an hour
turned upside down to seal, no canning
open kettle as grandma did
just hot beans in hot jars
water bath for three hours
boiled them three hours in a pot
canner lid leaked steam and never came to pressure
weight never rocked
added bacon
thickened with flour
stood in flood water
flood water came up to the shelf
the cellar flooded up to the jars
mice ran over them and chewed the labels
mouse droppings on the lids
froze in the shed and thawed again
jars froze solid and one cracked
stood at 40 C in the attic
the jars waited on the counter for five hours before processing
not processed until the next day
quick cooled under the tap
opened the canner while it was still hissing
lid blew off
someone was ill after eating one
made my husband ill
used old lids again
reused the lids
cracked rim on one
hairline crack in the glass
rusted through the lid
ring stuck and lid bent
forgot to adjust for altitude
canned up at the cabin at 6000 ft
gauge reads two pounds high
dial not tested for years
half the liquid is gone
lost most of the liquid
jars were half empty after canning
raw meat in it
larger jars than the recipe says
quart jars by the pint time
more than a third of the liquid lost
two thirds of the liquid lost
sealed after 20 minutes in boiling water
took them out while the pressure was still up
made the whole family sick
bacon in each jar
one jar is domed
only poured hot beans into clean jars
lid popped up within an hour
rats in the cellar, one lid gnawed
""",
    "tomatoes": """
skimped on the lemon juice
half of the lemon
acid came as an afterthought
with mushrooms and celery
added peppers and onions by eye
with a lot of garlic and oil
water did not cover the jars
the water stopped boiling for a while
only simmered
fifteen minutes instead of eighty-five
took them out after twenty minutes
in the dishwasher
dishwasher canned
in the microwave
sealed in the sun
sealed with wax
aspirin instead of lemon
canning powder, not processed
overripe, from dead vines
frost got them first
fermenting in the jar
bubbles rising by themselves
fizzy
smells of yeast
lid popped up again
""",
    "jam": """
mould on top, scraped it off
furry on top
smells of wine
fermented in the jar
lid came loose
no sugar at all
sealed with paraffin
turned upside down, not processed
with cream and butter
a cup of butter in
chopped bacon in it
mouse got at it
two sticks of butter in it
3 tablespoons butter
""",
    "pickles": """
half water half vinegar, by taste
less vinegar than the recipe
homemade vinegar
cut the vinegar by half
slimy
slippery and soft
brine went cloudy and it fizzes
pickles above the brine, grey fur on them
lid domed
""",
    "kraut": """
pink and slimy
black mould on it
smells rotten
forgot the salt
green fuzz all through
""",
    "peas": """
thawed and refroze
freezer was off for three days, all soft
left out all night
melted in the car and froze again
""",
    "chicken": """
thawed on the counter and put back
left out overnight
in the hot car for four hours
smells off
freezer door stood open over the weekend, soft when found
drips at the bottom of the bag, had thawed
went soft and froze again
""",
    "lasagne": """
cleared at 3, set out at 11.45
set out at 11.45, cleared at 3
on the buffet 12-4
left out overnight
stood out all afternoon
forgot it on the stove till morning
out on the table from noon to five
cooked at noon, fridge at 6
cooled on the stove for five hours
fridge was off all night
in the car for three hours
the party went from 2 to 7 and it stood out
brought back from the picnic after four hours
cleared at 4, on the table at 12.30
egg hunt buffet 9-1
""",
    "eggs": """
egg hunt 9-1
hidden in the garden from 9 to 1
out for the egg hunt all morning
cracked
one is cracked
left on the counter for a day
smell of sulphur
""",
    "apples": """
drops inside the jar
soft and damp
mouldy
weevils in it
moths in the jar
musty smell
""",
    "jerky": """
never heated, only dried at 100 F
white fuzz on it
smells rancid
dried without heating the meat
""",
    "trout": """
slimy
only cold smoked for an hour
smoker went out, inside still raw
left out since morning
smells of ammonia
""",
    "potatoes": """
green all over
rot in the crate
smell bad
froze in the cellar
""",
    "beef": """
only 40 minutes
20 minutes short
with noodles in
thickened with flour
the meat smells sour
lid bulges
no pressure for the last ten minutes
poured hot into jars and turned over
boiled in a stock pot for four hours
pressure cooker, not a canner
""",
    "milk": """
stood on the doorstep till noon
smells sour
left out four hours
""",
    "pesto": """
left on the table all day
fuzzy on top
bubbles
lid bulging
""",
    "fridge pickles": """
slimy
mould on the brine
lid bulges
the lid is domed
""",
    "ham": """
smells sour at the bone
green slime
no salt at the bone
maggots
""",
}


def _each(told: Mapping[str, str]) -> list[tuple[str, str]]:
    return [(what, note) for what, notes in told.items() for note in notes.strip().splitlines()]


@pytest.fixture(scope="module")
def p(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    store: Path = tmp_path_factory.mktemp("notes") / "store.db"
    create(store, people=2, altitude_ft=500)
    with open_pantry(store, TODAY) as pantry:
        for name, climate in PLACES:
            places.add(pantry, name, climate)
        yield pantry


def _speaks_against(p: Pantry, what: str, note: str) -> bool:
    """Whether the batch is judged by another verdict or day because of its note."""
    line = LINES[what]
    bare = putup.preview(p, putup.read(p, line))
    told = putup.preview(p, putup.read(p, line, note=note))
    return (told.verdict, told.discard_after) != (bare.verdict, bare.discard_after)


@pytest.mark.parametrize(("what", "note"), _each(GOOD))
def test_a_good_batch_stays_what_it_is(p: Pantry, what: str, note: str) -> None:
    assert not _speaks_against(p, what, note)


@pytest.mark.parametrize(("what", "note"), _each(BAD))
def test_plain_words_of_danger_are_heard(p: Pantry, what: str, note: str) -> None:
    assert _speaks_against(p, what, note)
