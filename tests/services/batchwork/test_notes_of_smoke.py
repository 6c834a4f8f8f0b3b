"""What a note says of smoked, cured and dried food: no salt was on it, its smoke or its dryer
failed. Smoke alone keeps nothing; what was salted in another way, or heated after all, is well."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, quoted, tried, tried_each

TROUT = "3 packs hot smoked trout, fridge"
SALMON = "3 packs cold smoked salmon, fridge"
SALTED_SALMON = f"{SALMON}, salt=3.5%"
PORK = "2 packs hot smoked pork shoulder, fridge"
CHICKEN = "2 packs hot smoked chicken, fridge"
BRISKET = "2 packs hot smoked brisket, fridge"
HAM = "2 packs smoked ham, hot smoked, fridge"
BACON = "2 packs bacon, cold smoked, fridge"
SAUSAGES = "2 packs sausages, cold smoked, fridge"
APPLES = "3 jars dried apples, larder"
MUSHROOMS = "2 jars dried mushrooms, larder"
BASIL = "2 jars dried basil, larder"
JERKY = "3 packs jerky, larder"

_NO_BRINE = (
    "not salted", "not brined", "unbrined", "no brine", "no cure", "skipped the brine",
    "never brined", "wasn't brined", "wasnt salted", "did not brine it", "forgot the brine",
    "brine left out", "brining skipped", "straight into the smoker, no brine", "never saw brine",
    "without brining", "brined not at all", "only smoked, not salted", "hardly any salt",
    "non-salted", "never got round to brining", "smoked plain",
)  # fmt: skip
_SMOKE_FAILED = (
    "smoke failed", "smoker went out", "ran out of wood", "ran out of chips", "ran out of pellets",
    "took it off early", "the heat went", "power went while smoking", "chips ran out",
    "fire kept dying", "rain put the fire out", "coals went cold", "gas bottle empty half way",
    "stopped smoking early", "cut the smoke short", "no smoke after an hour", "lost the fire",
    "pulled it early", "taken off too early", "smoker tripped the fuse", "smoke went out",
)  # fmt: skip
_DRYER_FAILED = (
    "dehydrator stopped in the night", "the power went while drying", "the heat went",
    "dehydrator died", "took them out early", "power cut during drying", "stopped drying early",
    "dehydrator switched off overnight", "not long enough in the dryer", "only half the time",
    "oven went off", "the sun went in, rained on day 2", "fuse blew while drying", "fan stopped",
)  # fmt: skip

BAD = {
    TROUT: (
        *_NO_BRINE, *_SMOKE_FAILED, "never reached 160F", "not up to 160F", "below 160F inside",
        "never got to 71 C", "could not get it above 140F", "short of 160F", "never warm enough",
        "stopped short",
        "off the heat too soon", "not sure it got hot enough", "flesh still looked raw",
        "wood gone after half an hour", "never went into the brine", "no time to brine",
        "couldn't get enough heat",
    ),
    SALMON: (*_NO_BRINE, "smoker went out", "ran out of sawdust", "took it out early"),
    SALTED_SALMON: ("not salted", "no brine", "skipped the brine"),
    PORK: ("never reached 145F", "never reached 190F", "smoke failed", "ran out of pellets"),
    CHICKEN: ("never reached 165F", "ran out of chips", "smoker went out", "took it off early"),
    HAM: ("not salted", "no cure", "uncured", "unbrined", "skipped the brine"),
    BACON: (
        "not salted", "unbrined", "no brine", "no cure", "uncured", "not cured", "no pink salt",
        "without nitrite", "skipped the cure", "smoke failed",
    ),
    SAUSAGES: ("no cure", "without nitrite", "not salted"),
    APPLES: (
        *_DRYER_FAILED, "never got above 100F", "half dry when the power went", "never got dry",
        "still had an hour to go", "wasn't finished", "kids switched it off",
        "turned off by mistake",
        "only six of the ten hours",
    ),
    MUSHROOMS: _DRYER_FAILED,
    JERKY: (*_DRYER_FAILED, "never reached 160F", "not hot enough"),
}  # fmt: skip
FINE = {
    TROUT: (
        "not too salty", "not oversalted", "no brine left on the skin", "brine poured off",
        "salted", "brined overnight", "dry brined", "no more salt needed", "desalted",
        "no salt needed at the table", "no salt crust", "no salt taste", "no nitrite",
        "brine without sugar", "unsalted butter with it", "no brine, dry salted 8 hours",
        "no brine, rubbed with salt", "60 g salt per kg, no brine", "not salted too much",
        "did not change the brine", "rinsed off the salt",
        "reached 160F", "got to 165F inside", "ran out of jars", "took off the rind",
        "took it off at 160F", "took it off the smoker at 165F", "early spring catch",
        "started early in the morning", "smoked early today", "smoker never went out",
        "stopped when 160F was reached", "never below 225F", "ran out of freezer bags",
        "heat off, rested 10 minutes", "hit 160 F", "off the bone", "chips soaked first",
        "pellets were cherry", "took off the bones", "left overnight in the brine",
        "wood ran low but lasted", "smoke for an hour, then hot to 165F", "not too much smoke",
        "lightly salted this time", "fire was slow to start", "the smoke ring is lovely",
    ),
    SALMON: ("ran out of jars", "smoke all night", "not too salty", "brine poured off"),
    PORK: ("reached 195F", "took it off the heat at 165F"),
    # Hot smoke cooks meat, which needs no salt for its four days.
    BRISKET: ("unbrined", "no brine", "no salt, only pepper"),
    BACON: (
        "no brine, dry cured 7 days with pink salt", "no sugar in the cure", "not very salty",
        "no salt left on it",
    ),
    APPLES: (
        "ran out of jars", "took off the peel", "dried 8 hours at 135 F", "stopped at 135F",
        "dehydrator stopped by itself after 10 hours", "took them out when leathery",
        "dried in the oven overnight", "power was off when I labelled", "early apples",
        "the oven stayed on", "timer set to 10 h", "power went after they were dry",
        "turned the trays half way",
        "turned off when dry", "in half the time with two of us", "never done it better",
        "finished in the oven until brittle", "no rain",
    ),
    BASIL: ("never got above 100F", "dried under 95 F"),
    JERKY: ("heated to 160 F first, dried at 140 F", "reached 160F", "ran out of bags"),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_was_not_salted_or_not_heated_is_never_sound(chilled: Pantry, line: str) -> None:
    assert tried(chilled, line).verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    assert {one.verdict for one in found.values()} <= {Verdict.UNKNOWN, Verdict.DISCARD}


@pytest.mark.parametrize("line", FINE)
def test_what_was_salted_and_heated_is_well(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, FINE[line])
    assert quoted(found) == set()
    assert judged_otherwise(chilled, line, found) == set()


def test_salt_that_the_record_has_and_the_note_denies_is_asked_about(chilled: Pantry) -> None:
    from pantry_tui.errors import BadInput

    with pytest.raises(BadInput, match="leave one of the two out"):
        tried(chilled, SALTED_SALMON, "without salt")


@pytest.mark.parametrize(
    "note",
    [
        "smoked till the chips ran out after 6 hours and 160F inside",
        "smoker went out, finished in the oven to 165F", "smoker went out, re-lit",
        "never reached 160F",
    ],
)  # fmt: skip
def test_what_may_have_been_hot_enough_is_not_thrown_away(chilled: Pantry, note: str) -> None:
    assert tried(chilled, TROUT, note).verdict is Verdict.UNKNOWN


def test_a_smoke_that_failed_cooked_nothing(chilled: Pantry) -> None:
    assert tried(chilled, TROUT, "smoker went out").verdict is Verdict.DISCARD
    assert tried(chilled, SALMON, "smoker went out").verdict is Verdict.UNKNOWN
