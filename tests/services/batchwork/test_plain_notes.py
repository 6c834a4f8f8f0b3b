"""Plain notes that a careful canner writes of good batches, which say nothing against them, and
plain words of danger, which all do: each of every kind on a batch that is sound without a note."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "beans": "7 pint jars runner beans, pressure canned, larder, 2026-11-20, minutes=20 psi=11",
    "chicken": "2 packs chicken breast, frozen, chest, 2026-11-20",
    "pickles": "6 pint jars dill pickles, vinegar pickle, larder, 20 nov, minutes=15 vinegar=5%",
    "apples": "1 jar apples, dried, larder, 2026-11-10",
    "eggs": "12 eggs, fresh, fridge, 2026-11-20",
    "fridge pickles": "2 jars dill pickles, fridge pickle, fridge, 2026-11-20",
    "gin": "1 bottle sloe gin, infused, larder, 2026-10-20",
    "ham": "1 ham, salted, fridge, 2026-10-01",
    "rhubarb jam": "6 half-pint jars rhubarb jam, jam, larder, 2026-11-20, minutes=10",
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
LINES |= {
    "mushrooms": "1 lb dried mushrooms, larder, 2026-09-01",
    "nettles": "1 jar nettles, dried, larder, 2026-06-01",
    "rhubarb": "5 1-lb bags rhubarb, frozen, chest, 2026-06-01",
    "apricots": "4 pint jars apricots, boiling-water canned, larder, 2026-11-20, minutes=25",
}
GOOD = {
    "rhubarb jam": """
with a bay leaf
leaves on the heap
""",
    "mushrooms": """
field mushrooms from the shop
mixed wild ones, bought
picked in the woods with the club, kind certain
from the market
mixed with salt
sliced thin, kind of leathery
not sure how long they took
""",
    "nettles": """
gloves on
young tops from behind the barn
not sure this is enough for winter
""",
    "rhubarb": """
with mint leaves
with a bay leaf
some leaves cut off late
leaves cut off
leaves composted
no leaves
pink stalks
""",
    "apricots": """
not sure of the kind, a neighbour's tree
kernels taken out
cracked stones thrown away
stones taken out
with a stick of vanilla
halved
""",
    "beans": """
power cut in the week after
gas ran out the day after
no power cut this time
waited for the pressure to drop before opening
pressure back to zero before the lid came off
stove was off while it cooled
water mains off
turned off the heat and waited while the pressure dropped
stove was off while they cooled
power went out while we were on holiday
heat off and canner left to cool by itself
not sure which variety
no idea what kind they are, seed from a neighbour
washed up the lids
picked in frost
no sour smell
no vacuum sealer here
followed the guide to the letter
hot pack
cut into inch pieces
washed and snapped the evening before, kept in the fridge
swapped one for eggs
a jar fell and broke on the way to the cellar
lids from 2025, unused
no leaks, no bad lids
did not need the second canner
one more picking to come
looks like a good year for beans
hand tight
only six jars this time
one pint short of a full load
half a jar left over went into the soup
headspace a little more than an inch
some starchy sediment
a few yellow ones among them
tender and young
beans a little overgrown
no drafts, lid shut
turned the burner down a little and it held
rocked gently all the time
weight jiggled steadily
the pressure rose to 12 once, never below 11
ten minutes of steam first
took forty minutes to come to pressure
had to wait for the pressure to come down
brought the canner down from the attic
radio on, kids asleep
slept badly, canned anyway
started at nine, done by noon
second load was done by ten at night
two batches back to back
tall jars of the old kind
rinsed the jars and dried them before shelving
tight seals all round
seals checked after 24 hours
put the jars away on the bottom shelf
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
Sunday afternoon with Ines
used the big pot
liquid at the top clear
less juice than last year
a seed or two floats
kids dropped one, no harm
lids concave the next day
smells like summer
quite thick
small air pockets along the side
foam skimmed
yellow tomatoes among them
juice a bit pale
the second load waited in hot water
processed in two loads
half a teaspoon salt per jar
some split skins
cored and peeled in the morning
crushed a few to make juice
hot packed
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
three cups of sugar less than gran, low sugar pectin
turned once while cooling so that the fruit spreads
splash of lemon
a pinch of cinnamon
a hint of vanilla
turned out sweeter
sieved half the seeds
spread out over two days
warm jars, hot jam
jars sterilised in the oven
jars hot from the oven when filled
from the freezer berries
thick foam came off
a spoonful tasted, very good
wobbles nicely
a little runny still
pectin from a new packet
boiled hard for one minute
tested with a cold plate
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
first in ice water for two hours
soaked in ice
spoon of sugar
one extra jar for the fridge
vinegar smell in the whole house
kids prefer the sweet ones
for burgers
bottoms paler
white garlic went a bit green
chilies made it hot
dill from the garden
mustard seeds cloud it a bit
left in salt water overnight, rinsed
ice water for two hours first
small cucumbers only
firm
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
a few bubbles when stirred
lovely smell
kept at 65 F for three weeks
mild still
three percent salt by weight
caraway and juniper
brine rose over the rim the second day
gas in the first week
burped daily
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
topped up with fresh cream
topped with more cheese
leftovers from sunday
for the party, 3 to 8 guests
in the fridge overnight
for Monday's lunch
ate at 7, away by 8
extra cheese on top
spinach in it
out of the oven at 6, eaten at 6.30, fridge at 7.30
baked an hour at 350 F
half eaten on Saturday, the rest into the fridge after dinner
cut into portions and chilled at once
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
from the nest box
6 in the nest this morning
for the Easter cake
from Rosa's hens
collected twice a day
small ones from the pullets
one double yolk
from our own hens
washed
brown and white
laid between 9 and 11 November
collect 9-12 a day now
box 9-10
for the egg hunt 9-1
""",
    "apples": """
shook the jar for a week, no damp
vacuum sealed
sliced thin
a bit brown
at 135 F for eight hours
pretreated with lemon
leathery, no moisture when cut
conditioned for a week
dried 10 hours
no drops on the glass
soft but dry inside
""",
    "jerky": """
not hot
kitchen never got hot
blotted the fat
lean beef
in the oven at 275 F for ten minutes after drying
teriyaki
strips a quarter inch
heated to 160 F before drying
marinated overnight in the fridge
a bit salty
""",
    "trout": """
never warm on the way home
fridge never warm
to 160 F inside for half an hour
from the lake, gutted at once, on ice
alder smoke
brined overnight in the fridge
smoked at 180 F for three hours
skin on
""",
    "potatoes": """
lightly brushed
checked in November, all firm
turned once
no light gets in
cured for ten days
some soil left on
a few small ones
damp sand
""",
    "beef": """
two loads, one evening
own steer
salt a teaspoon a quart
fat trimmed
cubes of an inch
raw pack, no liquid added
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
2 cups vinegar to 1 cup water
1 cup vinegar to 1 cup water
topped up with more brine the same day
half vinegar, half water
half cider vinegar, half white
ready after three days
vinegar brought to the boil first
brine clear
lid flat
""",
    "chicken": """
no power cuts this year
freezer opened once a day
freezer lid was open while I sorted
freezer unplugged in August for cleaning
new fuse box in the house
water mains off that day
opened the freezer lid to sort it
freezer at 0 F when checked
from the farm, chilled at once
never thawed
a little frost inside
air pressed out
flat packs freeze fast
two each
bought on offer, frozen the same day
""",
}
BAD = {
    "rhubarb jam": """
rhubarb leaves used
leaves and stalks together
""",
    "mushrooms": """
foraged, kind unsure
unknown species
picked in the woods, chanterelles I hope
identified from an app
foraged, not sure of the kind
mixed bag from the woods
wild, unidentified
might be false ones
""",
    "nettles": """
might be hemlock among it
""",
    "rhubarb": """
with the leaves
""",
    "apricots": """
pits crushed
kernels added for almond taste
foraged in a hedge, unidentified
with elderflower and a few noyaux
with crushed stones for flavour
""",
    "beans": """
heat off by accident for a moment
hob switched itself off
ring went cold in the middle
weight pulled off while hot
topped up one jar from another after opening to check
filled up from another jar after processing
burner went out in the middle of it
electricity off during processing
power blipped while they were in
gas ran out, burner went out half way
fuse blew during the processing
stood outside in frost, lids up
vinegary smell
a third of the water lost from the canner
jars in ice water for two hours
dog got sick from it
we all had stomach cramps after it
tilted a jar and it leaked
lid rusted through
chip in the rim
old mayonnaise jars with used lids
sealed by themselves from the heat
ladled into jars and turned upside down
waited overnight before processing
filled and left till the next morning before canning
rats chewed the lids
sewage backed up to the shelf
river water got into the cellar
the jars were under water when the basement flooded
frozen in the garage, lids came up
my own mixture of beans and meat
canned by guess
with garlic in oil
a roux for thickness
cheese on top
with cream sauce
bacon fat in them
instant pot on the canning button
boiled on the stove for four hours instead of the canner
slow cooker overnight, then jars
steamed in the rice cooker
in the oven for three hours
no room left at the top
too much in each jar, beans over the rim
skipped the venting
weight fell off for a minute
pressure wandered between 7 and 12
kept at about 8 pounds
lost pressure for a few minutes and did not start over
ran out of propane after ten minutes
gave them fifteen minutes since we were late
stopped the timer at twelve
the gauge fell off and we guessed
beans went slimy
white threads on top
black stuff under the lid
fuzzy spot on the underside of the lid
cheesy smell
smells like sewage
funky smell
it reeks
strange smell when opened
jar was fizzing when I opened it
wet ring around the jar on the shelf
contents pushed out under the lid
brine seeping from under the lid
lid clicks when I press it
lid is not concave any more
did not hear it pop when opened, no vacuum
no suction left
lid came up without a sound
could pull the lid off by hand
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
vinegary smell, lid up
sealed from the heat of the sauce
inverted for five minutes instead of boiling
open kettle
oven method
in the oven at 250
mould ring inside
foamy and sour
jar spurted
bubbling on the shelf
lids bulge
half the time
stopped boiling twice
water dropped below the lids
boiled ten minutes only
mouldy ones cut away
rotten spots cut out
dead vines
frosted vines
a handful of basil and oil
two cups of chopped celery added
with onions and peppers, a lot
cut the lemon in half
lemon only in half of them
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
mice ate through the lid
a chopped onion in
carrots and zucchini in it
hot jam in jars and that was it
paraffin on top
turned over to seal, no water bath
not sealed, on the shelf anyway
lids never went down
bubbling in the jar
smells like beer
grey fur
mould under the lid
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
half the vinegar
white mould at the top
bubbles keep rising after a month
scum on the brine
soft and slippery
apple vinegar we made ourselves
one part vinegar to three water
watered the vinegar down
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
hairy growth
no salt at all
stinks of rot
orange mould
slimy brine
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
outage, 3 days
someone unplugged it
lid not shut all week
bags were soft on Monday
puddle under the chest
not all the way frozen any more
fuse went, no idea how long
storm, electricity gone Friday to Sunday
thermostat was set wrong, ran at 35F
breaker tripped while we were away
lid of the chest not shut since Friday
freezer lid was propped open over the weekend
thawed, then forgot it
grey and smells
in the boot of the car all afternoon
power off for four days
was soft when the power came back
freezer broke, it was warm
thawed in the sink and refrozen
sat on the counter from breakfast to lunch, then frozen
thawed on the counter and put back
left out overnight
in the hot car for four hours
smells off
freezer door stood open over the weekend, soft when found
drips at the bottom of the bag, had thawed
went soft and froze again
""",
    "lasagne": """
old pot topped up every day
perpetual stew
topped up with fresh stew on the 28th
topped up the old pot
what was left of tuesday with some new
out for the party, 3 to 8
in the oven, off, overnight
nobody put them away until morning
forgot it in the car
smells sour
fuzzy
ate some and was sick
fridge stopped working yesterday
cooled all afternoon on the windowsill
nobody put it away till bedtime
fridge door open all night
still warm in the morning
cleared away at 5, lunch was at 12
left on the side after supper until breakfast
stood on the table from 12 to 5
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
an egg nest of unknown age
found in the hay
smell rotten
cracked ones among them
two have cracks
out all day on the table
left in the sun
egg hunt 9-1
hidden in the garden from 9 to 1
out for the egg hunt all morning
cracked
one is cracked
left on the counter for a day
smell of sulphur
""",
    "apples": """
larvae
smell of mould
bugs
white mould
sticky and moist
condensation in the jar
drops inside the jar
soft and damp
mouldy
weevils in it
moths in the jar
musty smell
""",
    "jerky": """
meat never got hot
smells off
slimy
dried at 120 F only
green spots
never heated, only dried at 100 F
white fuzz on it
smells rancid
dried without heating the meat
""",
    "trout": """
smoke only, never warm
sticky and sour
left on the counter all day
bloated pack
no salt
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
hot pack, no liquid added
boiled for three hours
stood a day before canning
oven canned
lid loose
gone sour
dumplings in it
with potatoes and flour
lost pressure
at five pounds
half an hour only
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
bulging lid
smells sour
green fur
out of the fridge since yesterday
fizzes
left on the table all day
fuzzy on top
bubbles
lid bulging
""",
    "fridge pickles": """
two thirds water
an old pot topped up
half-pint jars, half water
half vinegar
slimy
mould on the brine
lid bulges
the lid is domed
""",
    "ham": """
black mould deep inside
slime
sour smell at the bone
smells sour at the bone
green slime
no salt at the bone
maggots
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_a_good_batch_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_plain_words_of_danger_are_heard(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
