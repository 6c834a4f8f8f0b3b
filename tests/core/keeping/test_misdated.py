"""What a clock that was days ahead booked, while nothing was booked by one that is right: judged no
milder than at any time at which it may have happened."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.misdated import WRONG_CLOCK, of_wrong_clock
from pantry_tui.core.model import DAY_MIN, Container, Turn, When
from pantry_tui.core.words import Climate, Method, State, Verdict
from tests.core.keeping.told import Told, when

NOW = when(5, 12)
#: So many days after the one on which it is asked about.
AHEAD = 700


@pytest.mark.parametrize(
    ("moment", "wrong"),
    [
        (when(5, 12), False), (when(5, 13), False), (when(6, 0), True), (when(700, 8), True),
        (when(5, None), False), (when(4, 8), False),
        # Its clock was in a zone where it was the next day already.
        (When(NOW.first, NOW.last, NOW.day + timedelta(days=1), DAY_MIN), False),
        (When(NOW.first - 1, NOW.last - 1, NOW.day + timedelta(days=1), DAY_MIN), False),
    ],
)  # fmt: skip
def test_what_was_booked_by_a_clock_days_ahead_happened_nobody_knows_when(
    moment: When, wrong: bool
) -> None:
    turns = (Turn(when(0, 10), "e0", "p"), Turn(moment, "e1", "p"))
    box = Container("b.1", "b", 1, State.SEALED, "p", turns)
    assert of_wrong_clock(box, NOW) is wrong


def cordial() -> Told:
    return Told("elderflower cordial", Method.SUGAR, "vault")


def stew() -> Told:
    return Told("stew", Method.MEAL, "freezer")


#: By which it would have to be discarded, had it happened as it was put up.
SPOILS: dict[str, Callable[[int], Told]] = {
    "opened in a cellar": lambda day: cordial().at(day).open("vault"),
    "moved out of the cold": lambda day: stew().at(day).move("kitchen"),
    "its place is a pantry": lambda day: stew().at(day).hold("freezer", Climate.PANTRY),
    "its place was read warm": lambda day: stew().at(day).read("freezer", 60, 600),
    "the power was off": lambda day: stew().at(day).cut("freezer", 90),
}


@pytest.mark.parametrize("what", SPOILS)
def test_it_is_not_offered_where_it_would_be_discarded_had_it_happened_before(what: str) -> None:
    assert not SPOILS[what](1).judged(5).usable
    assert not SPOILS[what](AHEAD).judged(5).usable


def test_what_may_have_been_moved_out_before_a_cut_was_met_by_it() -> None:
    """A cut that was booked by the wrong clock strikes also what was moved out since."""
    met = stew().at(3).move("chest")
    assert met.judged(5).usable
    assert not met.at(AHEAD).cut("freezer", 90).judged(5).usable


def test_what_nobody_could_be_hurt_by_at_any_time_is_offered() -> None:
    flour = Told("wheat flour", Method.DRIED, "larder").at(AHEAD).move("kitchen").judged(5)
    assert (flour.verdict, flour.usable, flour.reasons[0]) == (Verdict.UNKNOWN, True, WRONG_CLOCK)
    berries = Told("strawberries", Method.FROZEN, "freezer")
    assert berries.at(AHEAD).read("freezer", 0).judged(5).usable


def test_what_is_judged_of_no_wrong_moment_is_as_it_was() -> None:
    cold = stew().judged(5)
    assert stew().at(AHEAD).read("second fridge", 60).judged(5) == cold
    assert WRONG_CLOCK not in cold.reasons


def test_its_last_day_is_that_of_the_strictest_moment() -> None:
    """The freezer is a fridge by now, nobody knows since when."""

    def last(day: int) -> date | None:
        return stew().at(day).hold("freezer", Climate.FRIDGE).judged(2).discard_after

    soonest, latest = last(0), last(2)
    assert soonest is not None
    assert latest is not None
    assert soonest < latest
    assert last(AHEAD) == soonest


def test_a_clock_that_went_back_before_the_put_up_still_judges() -> None:
    """By minutes, so that the put-up itself lies after now: no stay ends before it begins."""
    told = Told("elderflower cordial", Method.SUGAR, "vault", hour=13)
    found = told.at(AHEAD).open("vault").judged(0, 12)
    assert (found.verdict, found.reasons[0]) == (Verdict.UNKNOWN, WRONG_CLOCK)
