"""Notes of the end of a process, of another day, of what was asked and denied, and of parts."""

from __future__ import annotations

import pytest

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "tom": "6 pint jars tomatoes, boiling-water canned, larder, 20 nov, minutes=85 acid=lemon",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "fbeef": "6 bags ground beef, frozen, chest, 20 oct",
    "fbean": "6 bags green beans, frozen, chest, 20 sep",
    "pick": "6 pint jars dill pickles, boiling-water canned, larder, 20 sep, minutes=10",
    "relish": "6 pint jars beets, vinegar pickle, larder, 20 sep, minutes=30",
    "lasagne": "2 boxes lasagne, cooked meal, chest, 20 nov",
    "pick5": "6 pint jars dill pickles, vinegar pickle, larder, 20 sep, minutes=15 vinegar=5%",
    "stew": "4 pint jars beef, pressure canned, larder, 20 nov, minutes=75 psi=11",
    "apple": "6 pint jars applesauce, boiling-water canned, larder, 20 nov, minutes=20",
    "stock": "4 pint jars chicken stock, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "peach": "6 pint jars peaches, boiling-water canned, larder, 20 sep, minutes=25",
    "trout": "2 bags trout, hot smoked, fridge, 27 nov",
    "fpick": "3 pint jars cucumbers, refrigerator pickle, fridge, 20 nov",
    "fonion": "3 pint jars red onions, refrigerator pickle, fridge, 20 nov",
    "dryb": "4 pint jars kidney beans, pressure canned, larder, 20 nov, minutes=75 psi=11",
    "cherry": "6 pint jars cherries, boiling-water canned, larder, 20 jul, minutes=25",
    "rhub": "6 pint jars rhubarb, boiling-water canned, larder, 20 jun, minutes=15",
    "fridgestew": "2 boxes beef stew, cooked meal, fridge, 28 nov",
}
GOOD = {
    "bean": """
canner off the heat, ten minutes rest, then the lid off
heat off
heat off, ten minutes, lid off
stove off, window open
stove switched off afterwards
turned off the burner, let it come down
off the heat, pressure down in half an hour
heat off, zero after 35 minutes, two more minutes, lid off
heat off, pressure dropped by itself, lid off after 45 minutes
gauge at zero, waited ten more minutes, opened
pressure fell to zero by itself, then opened
natural pressure release, 40 minutes
stove off, coffee, then opened
opened the canner after it was cold
lid opened away from me, steam
then ten minutes more
ten more minutes for luck
another ten minutes
white outside
jars white outside from the water
white film on the glass from hard water
left the rings loose
the kitchen was hot as an oven
power cut on Monday
power cut on Sunday, two days later
power off for repairs on Tuesday, that was before
power went out that evening, jars already on the towel
power failed two hours after they came out
lost power in the storm on Friday, jars were long done
power came back in the morning, canned in the afternoon
gas low but lasted
half of them with a slice of onion? no, plain
pressure dropped? no, steady
mould? nope
did the power go? no
""",
    "tom": """
heat off
stove off
took off the heat, lid off, five minutes
heat off, five minutes, out
then ten minutes more
5 minutes extra
white outside
left the rings loose
rings loose when they went in
jars warmed in the oven first
jars from the oven, hot
power out on Sunday
power was off in the village on Sunday, canned on Friday
gas ran out after the last load
water mains off for an hour in the morning, started after lunch
lid left off the canner while it came to the boil
topped up with boiling water? no, own juice
""",
    "jam": """
jars hot from the oven
jars sat in the warm oven till filling
the power came back so I could use the mixer
""",
    "fbeef": """
defrosted the freezer in October before filling
""",
    "fbean": """
defrosted the chest in August, long before
freezer defrosted and cleaned before
freezer was defrosted, then filled
thawed out the chest before the beans went in
""",
    "pick": """
heat off, jars out after five minutes
stove off, jars out after five minutes
power cut on Monday
equal parts vinegar and water, 5 percent
vinegar and water equal, 5%
""",
    "relish": """
4 cups vinegar, 1.5 cups water
""",
    "lasagne": """
oven broke, used Ben's
oven was off, cooked on the stove
""",
    "pick5": """
half vinegar half water
half water, half vinegar
1 part vinegar 1 part water
1 cup vinegar, 1 cup water
equal vinegar and water
vinegar and water, equal amounts
""",
    "stew": """
off the heat, waited for zero, opened
browned in a bit of butter? no, lard trimmed off
""",
    "apple": """
baked apples in the oven, then milled and boiled up
power cut during supper, jars cold by then
""",
    "stock": """
stove off overnight? no, strained and canned the same evening
""",
    "peach": """
half the peaches were white? no, all yellow
""",
    "trout": """
power cut on Thursday? that was before it was smoked
""",
    "fpick": """
1 cup vinegar, 1 cup water
2 cups vinegar, 1 cup water
half pint vinegar, half pint water
half a cup vinegar, half a cup water
""",
    "fonion": """
3 parts vinegar, 1 part water
""",
    "dryb": """
quick soak, one hour
""",
    "cherry": """
kernels none, all stoned
""",
    "rhub": """
big leaves, fat stalks
""",
    "fridgestew": """
cooker broke, finished on the hob
""",
}
BAD = {
    "bean": """
heat off for ten minutes in the middle
heat off, back on
stove off by mistake, on again
heat off halfway
heat off at ten minutes
heat off too early
kids turned the stove off
stove went off, relit
heat off, forced the lid
heat off, weight pulled at 5 lb
heat off, cold water over it
heat off, opened at once
power cut on Friday
power cut on Friday, started again
power cut at ten minutes
power cut
power went off, came back, carried on
power came back so I carried on
power came back and the canner went on
gas ran out
gas low
canned? no
sealed? no
did they all seal? no
processed the full time? no
was the pressure right? no
should have had ten minutes more
10 minutes short
white fluff outside the lid
white stuff leaking outside
lids loose
rings loose and lids up
lid opened by itself
one jar opened
""",
    "tom": """
heat off during the process
heat off, left in the water overnight
lemon in? no
was lemon in each jar? no
heated the filled jars in the oven
processed in the oven
jars sealed in the oven
oven canned
""",
    "jam": """
jars sealed in the hot oven
""",
    "fbeef": """
defrosted in October, frozen again
freezer defrosted itself
""",
    "fbean": """
freezer defrosted
freezer defrosted in a power cut before I noticed
defrosted the freezer before I noticed they were still in
freezer was defrosted, bags on the floor meanwhile
defrosted in the sink first
half defrosted before I put them back
""",
    "pick": """
two thirds water
half the vinegar
half vinegar half water, 4 percent vinegar
1 part vinegar 2 parts water
half vinegar, rest water and juice of the cucumbers
half vinegar half water
""",
    "relish": """
half vinegar half water
""",
    "lasagne": """
oven broke halfway, left in it
oven broke overnight with it in
oven died while it was in, finished at Ben's
""",
    "pick5": """
equal parts
1 to 1
1 cup vinegar, 2 cups water
half rice vinegar half water
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)


def test_a_power_cut_on_the_day_it_is_put_right_to_is_held_against_it(larder: Pantry) -> None:
    process = "altitude=500ft minutes=20 psi=11"
    line = f"7 pint jars runner beans, pressure canned, larder, 20 nov, {process}"
    code = putup.put_up(larder, putup.read(larder, line, note="power cut on Monday")).code
    assert not larder.stock.batches[next(iter(larder.stock.batches))].doubt
    correct(larder, code, made="23 nov")
    (batch,) = larder.stock.batches.values()
    assert batch.doubt
