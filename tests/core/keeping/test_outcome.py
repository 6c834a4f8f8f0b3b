"""What power cuts do to a container, worked out by hand.

A refrigerator stays cold for 4 hours, a full freezer for 48, a half full one for 24
(foodsafety.gov; NC Cooperative Extension); perishable food above 40 °F for over two hours, or
above 90 °F for over one, is thrown away (USDA FSIS).
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from pantry_tui.core.keeping.exposure import exposures
from pantry_tui.core.keeping.outcome import Outcome, after_cuts
from pantry_tui.core.keeping.reckoning import Reckoning
from pantry_tui.core.words import Climate, Method
from tests.core.keeping.told import Told, when


def stew(hour: float = 10) -> Told:
    return Told("stew", Method.MEAL, "fridge", hour=hour)


def beef(hour: float = 10) -> Told:
    return Told("ground beef", Method.FROZEN, "freezer", hour=hour)


def outcomes(life: Told, day: int = 3, hour: float = 12) -> tuple[list[Outcome], int]:
    """What the cuts left, and how many of the two hours are charged."""
    now = when(day, hour)
    spans = exposures(life.batch, life.box, life.places, now)
    reckoning = Reckoning(life.batch, spans, life.book, now)
    found = after_cuts(reckoning, life.places, now)
    return found, reckoning.charged(now.last)


def answered(life: Told, day: int = 3, hour: float = 12) -> tuple[list[str], int]:
    found, charged = outcomes(life, day, hour)
    return [one.triage.action for one in found], charged


#: What happened, what the table says of it, and the minutes of the two hours that are gone.
CUTS: list[tuple[str, Callable[[], Told], list[str], int]] = [
    ("no cut", stew, [], 0),
    ("as long as a shut door holds", lambda: stew().at(1, 8).cut("fridge", 4), [], 0),
    ("a minute longer", lambda: stew().at(1, 8).cut("fridge", 4 + 1 / 60), ["discard"], 0),
    # Read warm, it counts from the beginning: the hours of the door promise nothing then.
    ("two hours read warm", lambda: stew().at(1, 8).cut("fridge", 2, None, 45), [], 120),
    ("and a minute", lambda: stew().at(1, 8).cut("fridge", 121 / 60, None, 45), ["discard"], 121),
    ("an hour read hot", lambda: stew().at(1, 8).cut("fridge", 1, None, 95), [], 120),
    ("and a minute more", lambda: stew().at(1, 8).cut("fridge", 61 / 60, None, 95), ["discard"],
     61),
    ("90 F is not above it", lambda: stew().at(1, 8).cut("fridge", 2, None, 90), [], 120),
    ("read cold it stayed cold", lambda: stew().at(1, 8).cut("fridge", 9, None, 40), [], 0),
    ("of two readings the warmer counts", lambda: (
        stew().at(1, 8).cut("fridge", 2, None, 40).at(1, 8).cut("fridge", 2.5, None, 45)),
     ["discard"], 150),
    ("of two said of one cut the warmer is charged", lambda: (
        stew().at(1, 8).cut("fridge", 0.5, None, 38).at(1, 8).cut("fridge", 0.5, None, 45)),
     [], 30),
    # Put in late, while the power was on for a moment: the shut door's hours were over by then, 4
    # of a refrigerator to the minute, 24 of a freezer that was not said to be full each time.
    ("late, a moment of power after four hours", lambda: (
        stew(12).at(0, 8).cut("fridge", 242 / 60).at(0, 12 + 32 / 60).cut("fridge", 0.5)), [], 62),
    ("late, a moment of power, full as one of two said", lambda: (
        beef(9).at(-1, 8).cut("freezer", 25, True).at(0, 9.5).cut("freezer", 0.5)), [], 60),
    # Short ones add up, each with its warm minutes.
    ("90 minutes and 30, days apart", lambda: (
        stew().at(1, 6).cut("fridge", 1.5, None, 45).at(2, 10).cut("fridge", 0.5, None, 45)),
     [], 120),
    # What came while it was off is charged with what it stood there for.
    ("late, two hours", lambda: stew(16).at(0, 8).cut("fridge", 10), [], 120),
    ("late, and a minute", lambda: stew(16).at(0, 8).cut("fridge", 10 + 1 / 60), ["discard"], 121),
    ("late and hot, an hour", lambda: stew(16).at(0, 8).cut("fridge", 9, None, 95), [], 120),
    ("late and hot, and a minute", lambda: (
        stew(16).at(0, 8).cut("fridge", 9 + 1 / 60, None, 95)), ["discard"], 61),
    ("late, and hot as one of two said", lambda: (
        stew(16).at(0, 8).cut("fridge", 9.5, None, 38).at(0, 8).cut("fridge", 9.5, None, 95)),
     ["discard"], 90),
    ("late at 90 F, two hours", lambda: stew(16).at(0, 8).cut("fridge", 10, None, 90), [], 120),
    ("late, where it was read cold", lambda: stew(16).at(0, 8).cut("fridge", 9.9, None, 38), [], 0),
    ("late, of which one cut is not read", lambda: (
        stew(16).at(0, 8).cut("fridge", 9, None, 38).at(0, 8).cut("fridge", 9)), [], 60),
    ("late, gone between", lambda: (
        stew(16).at(0, 8).cut("fridge", 9.5).at(0, 17).move("second fridge")), [], 60),
    # Freezers: full only where all that was said of it says so.
    ("48 h, full", lambda: beef().at(1, 8).cut("freezer", 48, True), [], 0),
    ("and a minute more, full", lambda: beef().at(0, 11).cut("freezer", 48 + 1 / 60, True),
     ["discard"], 0),
    ("full and not said", lambda: (
        beef().at(0, 11).cut("freezer", 30, True).at(0, 11).cut("freezer", 30)), ["discard"], 0),
    ("ice left", lambda: beef().at(0, 11).cut("freezer", 60, True, None, True), ["refreeze"], 0),
    ("ice seen, and none seen", lambda: (
        beef().at(0, 11).cut("freezer", 60, True, None, True)
        .at(0, 11).cut("freezer", 60, True, None, False)), ["discard"], 0),
    ("an hour, read warm", lambda: beef().at(0, 11).cut("freezer", 1, True, 45), ["refreeze"], 60),
    ("late, ice left", lambda: beef(16).at(0, 8).cut("freezer", 10, True, None, True), [], 0),
    ("late, none left", lambda: beef(16).at(0, 8).cut("freezer", 9, True, None, False), [], 60),
    ("late, read warm", lambda: beef(16).at(0, 8).cut("freezer", 9, True, 45), [], 60),
    # A crop that needs no cold is charged with nothing.
    ("late, whole carrots", lambda: (
        Told("carrots", Method.FRESH, "fridge", hour=16).at(0, 8).cut("fridge", 9)), [], 0),
    ("whole carrots", lambda: Told("carrots", Method.FRESH, "fridge").at(1, 8).cut("fridge", 9),
     [], 0),
    # Of what was both it is the worse: a jar that was opened while it was off.
    ("a sealed jar", lambda: (
        Told("runner beans", Method.PRESSURE, "fridge").at(1, 8).cut("fridge", 9)), [], 0),
    ("opened meanwhile", lambda: (
        Told("runner beans", Method.PRESSURE, "fridge").at(1, 8).cut("fridge", 9)
        .at(1, 9).open()), ["discard"], 0),
    ("late, and opened meanwhile", lambda: (
        Told("runner beans", Method.PRESSURE, "larder").at(1, 8).cut("fridge", 9)
        .at(1, 16).move("fridge").at(1, 16.5).open()), [], 60),
    # Packed without air until it was opened, in the course of it or before.
    ("a pack without air", lambda: (
        Told("carrots", Method.CELLAR, "fridge", vacuum="yes").at(1, 8).cut("fridge", 9)),
     ["discard"], 0),
    ("opened in the course of it", lambda: (
        Told("carrots", Method.CELLAR, "fridge", vacuum="yes").at(1, 8).cut("fridge", 9)
        .at(1, 12).open()), ["discard"], 0),
    ("opened before", lambda: (
        Told("carrots", Method.CELLAR, "fridge", vacuum="yes").at(0, 12).open()
        .at(1, 8).cut("fridge", 9)), [], 0),
    # No publication speaks of it, and it needs no cold: somebody looks at it.
    ("fat", lambda: Told("lard", Method.RENDERED_FAT, "fridge").at(1, 8).cut("fridge", 9),
     ["look at it"], 0),
    ("dried beans, opened", lambda: (
        Told("runner beans", Method.DRIED, "fridge").at(0, 12).open().at(1, 8).cut("fridge", 9)),
     ["use now"], 0),
]  # fmt: skip


@pytest.mark.parametrize(
    ("told", "actions", "charged"), [one[1:] for one in CUTS], ids=[one[0] for one in CUTS]
)
def test_what_a_cut_leaves(told: Callable[[], Told], actions: list[str], charged: int) -> None:
    found, minutes = answered(told())
    assert found == actions
    # What must go by the table is charged with what goes beyond a shut door's hours, or not.
    assert minutes == charged or actions == ["discard"]


def test_a_moment_of_power_between_two_cuts_cools_nothing() -> None:
    """What is put into a fridge whose door has held its hours is warm in the half-hour between."""
    life = Told("beef roast", Method.FRESH, "fridge", hour=15).at(0, 8).cut("fridge", 7.5)
    assert answered(life.at(0, 16).cut("fridge", 1)) == ([], 120)


def test_two_cuts_apart_have_an_answer_each() -> None:
    life = beef().at(0, 11).cut("freezer", 25).at(6, 8).cut("freezer", 3)
    life.at(9, 8).cut("freezer", 49, True)
    assert answered(life, 20)[0] == ["discard", "discard"]


def test_the_sentence_tells_hours_day_answer_and_reason() -> None:
    for hours, told in ((4 + 20 / 60, "4.3 h"), (7, "7 h"), (5.5, "5.5 h")):
        ((found,), _) = outcomes(stew().at(1, 8).cut("fridge", hours))
        assert found.said.startswith(f"Power cut of {told} (Mon 2 Mar 2026): discard. Above 40 F")
    assert found.day == when(1, 0).day


def test_the_day_is_that_on_which_it_may_have_met_it() -> None:
    life = stew().at(-1, 20).cut("fridge", 30)
    ((found,), _) = outcomes(life)
    assert found.day == when(0, 0).day
    assert "(Sat 28 Feb 2026)" in found.said, "the cut began the day before"


def test_what_is_charged_says_so_once_it_is_too_much() -> None:
    life = stew(16).at(0, 14).cut("fridge", 3.5).at(1, 20).cut("fridge", 0.75, None, 45)
    reasons = " ".join(life.judged(2).reasons)
    assert "Without power, 45 F read, for over two hours in all: discard." in reasons
    dark = stew(16).at(0, 15).cut("fridge", 2).at(0, 20).cut("fridge", 1.25)
    assert dark.judged(1).reasons[0] == "Without power, for over two hours in all: discard."


def test_a_place_that_was_made_a_freezer_meanwhile_is_judged_as_both() -> None:
    life = Told("peas", Method.FROZEN, "fridge").at(2, 12).hold("fridge", Climate.FREEZER)
    life.at(2, 9).cut("fridge", 60)
    assert answered(life, 6)[0] == ["discard", "discard"]
