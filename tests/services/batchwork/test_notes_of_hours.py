"""Notes of hours out of the cold, by parts of the day, by the clock, or in two clauses. What must
be cold within two hours (USDA FSIS) is over; cooking, chilling and plans raise nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

STEW = "2 tubs beef stew, cooked meal, fridge"
RICE = "2 boxes cooked rice, cooked meal, fridge"
FROZEN = "2 boxes beef stew, cooked meal, freezer"
BEEF = "3 bags ground beef, frozen, freezer"
MILK = "1 carton milk, bought in, fridge"
OUT = (
    "cooled on the counter until morning", "put in the fridge the next day",
    "did not get it into the fridge till morning", "found still warm next morning",
    "took six hours to cool", "went in hot at 11pm after cooking at 4pm",
    "on the worktop from lunch till supper", "stood from noon to six", "stood from 9 to 5",
    "four hours on the side before the fridge", "in the crock on low unplugged",
    "slow cooker went off", "lunchbox came home uneaten", "came back from school untouched",
    "made in the morning, fridged at supper", "fridged at supper, made in the morning",
    "left out after breakfast until dinner", "in the car boot after shopping, half a day",
    "on the counter, 5 hours", "only got into the fridge in the morning",
    "refrigerated the following day", "still hot when we got up",
    "cooked 18:00, fridge 20:45", "cooked at 6pm, fridge at 11pm", "cooked 18:00 fridge 20:45",
    "in the fridge 5 hours after cooking", "from noon till four on the buffet",
    "buffet 12:00-16:00", "served 12 to 4", "taken out 08:00, back 13:00", "cold after six hours",
    "cooked at breakfast, fridge at supper", "still lukewarm at bedtime",
    "stood out from 8 to half past eleven", "off the stove 6 p.m., refrigerated 9.30 p.m.",
    "out of the oven at half past four and into the fridge at quarter to eight",
    "18:00 cooked, 20:45 fridge", "taken out at 8:00, put back 20:30", "out at 8, back in at 11",
    "not in the fridge until 11pm, cooked at 6pm", "fridge 11pm, cooked 7pm",
    "taken out 08:00, back 09:30; out 12:00, back 13:30", "cake stall 9-15:00",
    "came home 14:00, fridge 17:30", "put away 3 hours after dinner", "sat 17:00-20:00",
    "made before lunch, in the fridge after supper", "still hot at midnight",
    "took till bedtime to get cold", "half past five to nine on the worktop",
    "cooked 18:00, eaten 19:00, fridge 21:30", "out of fridge 6 hours",
    "ready 17.15; chilled 21.00",
    "cooled from 6 until 10 then fridge", "five hours before it was in the fridge",
)  # fmt: skip
#: It may have been, and may not: none is eaten, and none thrown away, until somebody says.
PERHAPS = (
    "served 8 to 12", "chilled 5 hours after cooking", "cooked 18:00, freezer 22:45",
    "cooked 17:00, served 18:00, fridge 19:30", "dinner at 6, fridge at 10",
)  # fmt: skip
WELL = (
    "cooled an hour and put in the fridge", "in the fridge until morning", "fridged at once",
    "made in the morning, in the fridge until supper", "took an hour to cool",
    "took two hours to cool in the fridge", "sat up until midnight cooking",
    "waited until morning to label it", "for lunch or supper", "from breakfast to supper a meal",
    "one hour on the side before the fridge", "cooled on ice until morning",
    "from the market, open noon to six", "keep until sunday", "lunchbox size", "for the lunchbox",
    "in the slow cooker all day then chilled", "came home from the shop",
    "in the fridge by evening", "the next day it tastes better", "for 4 to 6 people",
    "chilled until supper", "frozen the next day", "lunch with milk, at home", "for supper",
    "good until the morning after", "in the fridge, 2 hours", "stood from noon to one",
    "taken out 08:00, back 08:20", "for lunch at 12, dinner at 6", "taken out 08:00 for an hour",
    "out 5pm, fridge by 6.30", "served 4 to 6", "served at 7", "serves 8 to 12",
    "for the buffet 12 to 4", "in fridge 16:00-20:00", "fridge from 8pm to 7am", "fridge 11:00",
    "started cooking at 4pm, fridge at 7pm", "in the oven at 3pm, out at 5pm, fridge at 6pm",
    "cold after six hours in the fridge", "still cold after six hours",
    "in the fridge for 5 hours after cooking", "half past six dinner",
    "in the fridge 1 hour after cooking", "lunch in the fridge at 2", "ready at 6, cold by 8",
)  # fmt: skip
COOKED_WELL = (
    "cooked 18:00, fridge 18:45", "cooked 18:00, fridge 19:50",
    "cooked 12:00, fridge 13:30, eat by 18:00", "cooked overnight from 9pm to 7am, fridge at 8am",
    "cooked 16:00-17:00, fridge 18:00", "slow cooked from 8am, fridge at 6pm",
    "cooked 18:00, on ice 18:30, fridge 23:00", "cooked supper at 9pm, in fridge at 10pm",
)  # fmt: skip


@pytest.mark.parametrize("line", [STEW, RICE, FROZEN, MILK])
def test_hours_out_of_the_cold_throw_away_what_must_be_cold(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, OUT)
    assert {note for note, one in found.items() if one.verdict is not Verdict.DISCARD} == set()


@pytest.mark.parametrize("line", [STEW, RICE, FROZEN, MILK])
def test_hours_of_the_day_that_are_none_out_of_it_raise_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, WELL if line == MILK else WELL + COOKED_WELL)
    assert quoted(found) == set()
    same = bare.verdict, bare.discard_after
    assert {n for n, one in found.items() if (one.verdict, one.discard_after) != same} == set()


@pytest.mark.parametrize("line", [STEW, RICE, FROZEN, MILK])
def test_hours_that_may_have_been_out_of_the_cold_are_asked_about(
    chilled: Pantry, line: str
) -> None:
    found = tried_each(chilled, line, PERHAPS)
    assert {note for note, one in found.items() if one.verdict is not Verdict.UNKNOWN} == set()
    assert quoted(found) == set(PERHAPS)


@pytest.mark.parametrize(
    "note",
    [
        "second time in the freezer", "frozen for the third time", "back into the freezer",
        "previously frozen", "had been frozen once before",
    ],
)  # fmt: skip
def test_what_was_in_the_freezer_before_is_thawed_and_refrozen(chilled: Pantry, note: str) -> None:
    before = tried(chilled, BEEF, "thawed and refrozen")
    found = tried(chilled, BEEF, note)
    assert (found.verdict, quoted({note: found})) == (before.verdict, {note})


@pytest.mark.parametrize(
    "note",
    ["with previously frozen peas", "back in the freezer at once", "frozen twice as many as last",
     "first time in the freezer", "back of the freezer"],
)  # fmt: skip
def test_a_freezer_spoken_of_is_no_second_one(chilled: Pantry, note: str) -> None:
    assert quoted(tried_each(chilled, FROZEN, [note])) == set()


def test_what_is_made_and_chilled_within_hours_is_well(chilled: Pantry) -> None:
    notes = (
        "cooked at 4pm, fridged at 5pm", "made in the evening, fridged at night",
        "made in the afternoon, in the fridge in the evening", "boiled at noon, chilled at 1pm",
        "cooked at 4pm, put away at 6pm",
    )  # fmt: skip
    assert quoted(tried_each(chilled, STEW, notes)) == set()


@pytest.mark.parametrize(
    "line",
    [
        "20 lb potatoes, cellar-stored, cellar",
        "2 jars apples, dried, larder",
        "1 crock sauerkraut 10 lb, lactic ferment, cellar, salt=2.25%",
        "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial",
    ],
)
def test_what_needs_no_cold_may_stand(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, ("on the side from lunch till supper", "took 6 hours to cool",
                                       "stood from noon to six"))  # fmt: skip
    assert quoted(found) == set()
