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
)  # fmt: skip


@pytest.mark.parametrize("line", [STEW, RICE, FROZEN, MILK])
def test_hours_out_of_the_cold_throw_away_what_must_be_cold(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, OUT)
    assert {note for note, one in found.items() if one.verdict is not Verdict.DISCARD} == set()


@pytest.mark.parametrize("line", [STEW, RICE, FROZEN, MILK])
def test_hours_of_the_day_that_are_none_out_of_it_raise_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, WELL)
    assert quoted(found) == set()
    same = bare.verdict, bare.discard_after
    assert {n for n, one in found.items() if (one.verdict, one.discard_after) != same} == set()


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
