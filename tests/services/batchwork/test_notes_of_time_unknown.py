"""Notes of a process of which nobody knows the time, and of other things that nobody knows."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import each, speaks_against

LINES = {
    "bean": "4 pint jars green beans, pressure canned, larder, 20 nov, minutes=20 psi=11",
    "tom": "6 pint jars crushed tomatoes, boiling-water canned, larder, minutes=40 acid=lemon",
    "pick": "6 pint jars dill pickles, boiling-water canned, larder, 20 sep, minutes=10",
    "jam": "6 half-pint jars strawberry jam, jam, larder, 20 jun",
    "peach": "6 pint jars peaches, boiling-water canned, larder, 20 sep, minutes=25",
    "apple": "6 pint jars applesauce, boiling-water canned, larder, 20 nov, minutes=20",
}
GOOD = {
    "bean": """
timed with the phone
timed it with the phone, 20 minutes exactly
phone died after, photo lost
my phone died that evening
lost count of the beans
lost count of the jars
forgot when we planted these
forgot when I picked them
I think they are Blue Lake
think these were 20 pods a plant
not sure how many pounds
no idea how long the row was
took longer than I thought to string
timer and phone both set, 20 minutes on both
used two timers
set the timer for 20
timer rang, heat off
forgot to buy more lids
fell asleep after, jars cooled overnight
forgot to write the date on the lids
watched the clock the whole time
not sure how long they keep
no idea how long the shelf will hold them
forgot the salt
I think we will have enough
did not look away once
clock on the wall, watch on the wrist
forgot what Anna said
""",
    "tom": """
think they will last till May
not sure how many we eat a year
could be 40 pounds this year
either Roma or San Marzano
""",
    "pick": """
forgot when the cucumbers came
""",
    "jam": """
think it set at last
not sure how long it boiled to set
forgot how much sugar grandma used
""",
    "peach": """
timer broke last year, this is the new one
""",
}
BAD = {
    "bean": """
timed it with the phone, which died
lost count of the minutes
think it was 20 min
forgot when it came to the boil
forgot when it came up to pressure
not sure how many minutes
the timer never rang
forgot to look at the clock
no idea how long it was on
about as long as a film
fell asleep while it was on
the phone with the timer died
watch stopped in the middle
did not note the time
nobody timed it
twenty minutes or so, I think
must have been about 20 minutes, did not look
time unknown
I hope it was long enough
guessed the time
phone ran out of battery, guessed
could be 15, could be 20 minutes
either 15 or 20 minutes
""",
    "tom": """
forgot when it came to the boil
missed when it started to boil
can't remember how long they were in
don't recall the minutes
forgot to set the timer, guessed from the news
went to the door and lost track
long enough, I guess
clock was wrong
the kids reset the timer
somebody turned the timer off
may have been ten minutes short
not quite sure it had its time
""",
    "pick": """
think it was 10 min
""",
    "jam": """
lost count of the minutes
""",
    "peach": """
timer broke, so by the sun
""",
    "apple": """
timer ran on while I was out, no idea when it boiled
""",
}


@pytest.mark.parametrize(("what", "note"), each(GOOD))
def test_it_stays_what_it_is(kitchen: Pantry, what: str, note: str) -> None:
    assert not speaks_against(kitchen, LINES[what], note)


@pytest.mark.parametrize(("what", "note"), each(BAD))
def test_it_is_held_against_it(kitchen: Pantry, what: str, note: str) -> None:
    assert speaks_against(kitchen, LINES[what], note)
