"""The sentences beside a verdict, each from what it is made of."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.exposure import exposures
from pantry_tui.core.keeping.outcome import after_cuts
from pantry_tui.core.keeping.reckoning import Limit, Reckoning
from pantry_tui.core.keeping.rules import COOK_AT_ONCE, THAWED_ONE_DAY, THAWED_OUT
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.keeping.wording import (
    BEST,
    DISCARD,
    aged,
    ahead,
    because,
    first_words,
    floor,
    hurry,
    notes,
    why_none,
)
from pantry_tui.core.words import Method, Verdict
from tests.core.keeping.told import MADE, Told, when

DAY = date(2026, 3, 9)
LIMIT = Limit(DAY, MADE, THAWED_ONE_DAY)


@pytest.mark.parametrize(
    ("word", "limit", "said"),
    [
        (DISCARD, LIMIT, f"Discard after Mon 9 Mar 2026: 1 day from Sun 1 Mar 2026. "
                         f"{THAWED_ONE_DAY.wording}"),
        (BEST, Limit(DAY, MADE, None, "The printed date."),
         "Best by Mon 9 Mar 2026: The printed date."),
        (DISCARD, Limit(DAY, MADE, None, "The printed date."), "The printed date."),
        (DISCARD, Limit(DAY, MADE, THAWED_OUT, "never said"), THAWED_OUT.wording),
    ],
)  # fmt: skip
def test_a_date_and_why_it_is_that_one(word: str, limit: Limit, said: str) -> None:
    assert because(word, limit) == said


def test_its_last_day_is_still_to_come_on_that_day() -> None:
    assert ahead(LIMIT, when(8, 12))
    assert not ahead(LIMIT, when(9, 0))


@pytest.mark.parametrize(
    ("safety", "doubted", "working", "why"),
    [
        (LIMIT, Trouble("x"), True, ""), (None, Trouble("x"), True, "nothing published"),
        (None, None, True, "in progress"), (None, None, False, "no limit"),
    ],
)  # fmt: skip
def test_why_there_is_no_last_day(
    safety: Limit | None, doubted: Trouble | None, working: bool, why: str
) -> None:
    assert why_none(safety, doubted, working) == why


def reckoned(life: Told, day: int = 2, hour: float = 12) -> Reckoning:
    now = when(day, hour)
    return Reckoning(life.batch, exposures(life.batch, life.box, life.places, now), life.book, now)


def test_what_is_said_first() -> None:
    icy = (
        Told("ground beef", Method.FROZEN, "freezer").at(0, 11).cut("freezer", 30, None, None, True)
    )
    gone = Told("stew", Method.MEAL, "fridge").at(0, 11).cut("fridge", 9)
    (mild,) = after_cuts(reckoned(icy), icy.places, when(2, 12))
    (bad,) = after_cuts(reckoned(gone), gone.places, when(2, 12))
    work = "Still in progress: look at it, and mark it ready when it is."
    doubt = Trouble("Nobody knows.")
    assert first_words(None, False, [mild, bad], over=False) == [mild.said]
    assert first_words(None, False, [mild], over=True) == [], "what is over is told nothing milder"
    assert first_words(doubt, True, [mild], over=False) == ["Nobody knows.", mild.said]
    assert first_words(None, True, [mild], over=False) == [work, mild.said]
    assert first_words(None, True, [], over=True) == [work]
    assert first_words(None, False, [], over=False) == []
    assert [floor([mild], False), floor([bad], False), floor([], True), floor([], False)] == [
        Verdict.EAT_SOON, Verdict.SOUND, Verdict.EAT_SOON, Verdict.SOUND,
    ]  # fmt: skip
    assert floor([bad, mild], False) is Verdict.EAT_SOON


def test_what_is_to_be_done_at_once() -> None:
    meal = reckoned(Told("stew", Method.MEAL, "fridge"))
    assert hurry(meal, None) == []
    # The hour stands in it, since a list shows the sentence as long as nothing happens.
    warm = "It stands too warm: eat it, or put it in the cold within 30 minutes"
    assert hurry(meal, meal.now.last + 31) == [f"{warm} of 12:00, by 12:30."]
    meal.now = meal.now._replace(first=meal.now.first - 1)  # nobody knows the hour
    assert hurry(meal, meal.now.last + 31) == [f"{warm}."]


def test_what_else_is_to_be_known_of_its_place_and_its_two_hours() -> None:
    def told(life: Told, safety: Limit | None) -> list[str]:
        found = reckoned(life)
        here = [one for one in found.spans if one.end > found.now.last]
        return notes(found, here, safety)

    plain = Told("stew", Method.MEAL, "fridge")
    assumed = "38 F is assumed for its place, not measured."
    assert told(plain, None) == [assumed]
    warm = Told("stew", Method.MEAL, "fridge").at(1, 12).read("fridge", 45, 29)
    warm.at(1, 12 + 1 / 60).read("fridge", 38)
    gone = "30 of the 120 minutes that it may be out of the cold in all are gone."
    assert told(warm, None) == [gone]
    assert told(warm, Limit(MADE + timedelta(days=2), MADE, COOK_AT_ONCE)) == [gone]
    assert told(warm, Limit(MADE + timedelta(days=1), MADE, COOK_AT_ONCE)) == [], "it is over"
    both = Told("stew", Method.MEAL, "fridge").at(0, 11).read("fridge", 41)
    (rule,) = told(both, None)
    assert rule.startswith("It stood at 40 to 41 F: United States pages say 40 F, others 41 F")
    found = reckoned(plain)
    assert notes(found, [], None) == []


def test_a_word_for_sealed_jars_of_two_years() -> None:
    """University of Idaho Extension: it would throw them out."""
    jar = reckoned(Told("runner beans", Method.PRESSURE, "larder", minutes="20"))
    ((since, said),) = aged(jar, jar.spans)
    assert (since, said.partition(":")[0]) == (date(2028, 3, 1), "Over two years old")
    for other in (
        Told("runner beans", Method.PRESSURE, "larder", minutes="20", made=None),
        Told("runner beans", Method.PRESSURE, "fridge", minutes="20").at(0, 10).open(),
        Told("peas", Method.FROZEN, "freezer"),
    ):
        found = reckoned(other)
        here = [one for one in found.spans if one.end > found.now.last and one.opened] or [
            one for one in found.spans if not one.opened
        ]
        assert aged(found, here) == ()
