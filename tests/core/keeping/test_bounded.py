"""How what it was made of bounds the verdict of a thing: the dates, doubts and reasons of both."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.bounds import Bound, How, bounded, suspected
from pantry_tui.core.keeping.ladder import Assessment, Fixed
from pantry_tui.core.keeping.rules import THAWED_ONE_DAY
from pantry_tui.core.words import Verdict
from tests.core.keeping.told import MADE


def day(number: int) -> date:
    return MADE + timedelta(days=number)


OWN = Assessment(
    day(10), best_by=day(100), discard_after=day(50), reasons=("its own",), facts_to=day(10),
    harmless=True, standing=("said of it",), rules=(THAWED_ONE_DAY,),
)  # fmt: skip
WHOLE = replace(OWN, reasons=("of the part",))


def on(part: Assessment, own: Assessment = OWN) -> Assessment:
    return bounded(own, [Bound("2A/1", part, How.GOES_ON)], day(10))


def of(part: Assessment, own: Assessment = OWN) -> Assessment:
    return bounded(own, [Bound("2A/1", part)], day(10))


@pytest.mark.parametrize(("own", "part", "bound"), [(50, 20, 20), (20, 50, 20), (None, 9, 9),
                                                    (9, None, 9), (None, None, None)])  # fmt: skip
def test_of_two_days_the_earlier_counts(
    own: int | None, part: int | None, bound: int | None
) -> None:
    last = None if bound is None else day(bound)
    for field in ("discard_after", "best_by"):
        mine = replace(OWN, **{field: None if own is None else day(own)})  # type: ignore[arg-type]
        its = replace(WHOLE, **{field: None if part is None else day(part)})  # type: ignore[arg-type]
        assert getattr(on(its, mine), field) == last


def test_why_there_is_no_last_day_is_said_only_where_there_is_none() -> None:
    none = replace(OWN, discard_after=None, why_no_discard="no limit")
    assert on(WHOLE, none).why_no_discard == ""
    assert on(replace(WHOLE, discard_after=None), none).why_no_discard == "no limit"
    told = replace(none, why_no_discard="")
    assert on(replace(none, why_no_discard="in progress"), told).why_no_discard == "in progress"


@pytest.mark.parametrize("verdict", [Verdict.DISCARD, Verdict.UNKNOWN, Verdict.EAT_SOON])
def test_what_stands_against_the_part_stands_against_it(verdict: Verdict) -> None:
    assert on(replace(WHOLE, floor=verdict)).floor is verdict
    assert on(WHOLE, replace(OWN, floor=verdict)).floor is verdict
    assert on(replace(WHOLE, fixed=Fixed(verdict))).floor is verdict


def test_what_a_day_settles_for_the_part_it_settles_for_it() -> None:
    doubtful = replace(WHOLE, fixed=Fixed(Verdict.UNKNOWN, day(11), Verdict.DISCARD))
    found = on(doubtful)
    assert found.over_from == day(12)
    assert [found.on(day(n)).verdict for n in (11, 12)] == [Verdict.UNKNOWN, Verdict.DISCARD]
    assert on(replace(WHOLE, fixed=Fixed(Verdict.UNKNOWN, day(11)))).over_from is None
    assert on(replace(WHOLE, fixed=Fixed(Verdict.UNKNOWN, None, Verdict.DISCARD))).over_from is None


def test_of_two_ends_by_the_clock_the_earlier_counts() -> None:
    for field, early, late in (("over_from", day(11), day(12)), ("again_at", 700, 900)):
        one, other = {field: early}, {field: late}
        for part, own in ((one, other), (other, one), (one, {}), ({}, one)):
            found = on(replace(WHOLE, **part), replace(OWN, **own))  # type: ignore[arg-type]
            assert getattr(found, field) == early
        assert getattr(on(WHOLE), field) is None


@pytest.mark.parametrize("field", ["doubt", "in_progress"])
def test_a_doubt_or_what_works_still_goes_with_it(field: str) -> None:
    yes = {field: True}
    assert getattr(on(replace(WHOLE, **yes)), field) is True  # type: ignore[arg-type]
    assert getattr(on(WHOLE, replace(OWN, **yes)), field) is True  # type: ignore[arg-type]
    assert getattr(on(WHOLE), field) is False


def test_it_is_harmless_only_where_both_are() -> None:
    hurts = {"harmless": False}
    assert on(WHOLE).harmless
    assert not on(replace(WHOLE, **hurts)).harmless  # type: ignore[arg-type]
    assert not on(WHOLE, replace(OWN, **hurts)).harmless  # type: ignore[arg-type]


def test_what_is_said_of_both_is_said_once_and_it_rests_on_the_facts_of_both() -> None:
    other = replace(THAWED_ONE_DAY, id="other")
    part = replace(
        WHOLE, rules=(THAWED_ONE_DAY, other), standing=("said of it", "of the part"),
        facts_to=day(30),
    )  # fmt: skip
    found = on(part)
    assert found.rules == (THAWED_ONE_DAY, other)
    assert found.standing == ("said of it", "of the part")
    assert found.facts_to == of(part).facts_to == day(30)
    assert on(WHOLE, replace(OWN, facts_to=day(30))).facts_to == day(30)


@pytest.mark.parametrize(
    "stricter",
    [{"discard_after": day(20)}, {"best_by": day(20)}, {"floor": Verdict.UNKNOWN}, {"doubt": True}],
    ids=lambda one: next(iter(one)),
)
def test_the_part_is_named_where_it_is_what_bounds_it(stricter: dict[str, object]) -> None:
    found = on(replace(WHOLE, **stricter))  # type: ignore[arg-type]
    assert found.reasons == ("Made from 2A/1: of the part", "its own")
    assert on(WHOLE).reasons == ("its own",)
    silent = replace(WHOLE, reasons=(), **stricter)  # type: ignore[arg-type]
    assert on(silent).reasons == ("Made from 2A/1.", "its own")


# -- what it was made of, where it became another thing --------------------------------------------


def test_of_a_part_that_was_fit_on_that_day_nothing_remains() -> None:
    assert of(replace(WHOLE, discard_after=day(10))) == OWN
    assert of(replace(WHOLE, best_by=day(5))) == OWN, "past its best it is safe"


def test_of_a_part_that_was_past_its_day_it_is_over_at_once() -> None:
    found = of(replace(WHOLE, discard_after=day(9)), replace(OWN, why_no_discard="no limit"))
    assert found.discard_after == day(9)
    assert found.on(day(10)).verdict is Verdict.DISCARD
    assert (found.why_no_discard, found.harmless) == ("", False)
    assert found.reasons[0] == "Made from 2A/1: of the part"
    never = of(replace(WHOLE, floor=Verdict.DO_NOT_TASTE), replace(OWN, discard_after=None))
    assert never.discard_after == day(9)
    assert never.floor is Verdict.DO_NOT_TASTE


def test_of_a_part_of_which_nobody_knew_it_is_unknown_and_not_usable() -> None:
    unlimited = replace(OWN, discard_after=None, why_no_discard="no limit")
    found = of(replace(WHOLE, doubt=True, harmless=False), unlimited)
    assert found.on(day(10)).verdict is Verdict.UNKNOWN
    assert not found.on(day(10)).usable
    assert (found.discard_after, found.why_no_discard) == (None, "no limit")
    dated = of(replace(WHOLE, doubt=True, harmless=False), replace(OWN, why_no_discard="x"))
    assert (dated.discard_after, dated.why_no_discard) == (day(50), "x")
    worse = of(replace(WHOLE, doubt=True, harmless=False), replace(OWN, floor=Verdict.DISCARD))
    assert worse.floor is Verdict.DISCARD


def test_what_still_works_becomes_another_thing_that_nobody_knows() -> None:
    found = of(replace(WHOLE, discard_after=None, in_progress=True, harmless=False))
    assert found.floor is Verdict.UNKNOWN
    assert found.discard_after == day(50)


def test_every_part_bounds_it() -> None:
    parts = [
        Bound("2A/1", replace(WHOLE, discard_after=day(30)), How.GOES_ON),
        Bound("2A/2", replace(WHOLE, discard_after=day(20)), How.GOES_ON),
        Bound("2A/3", WHOLE),
    ]
    assert bounded(OWN, parts, day(10)).discard_after == day(20)
    assert bounded(OWN, [], day(10)) == OWN


# -- suspicion -------------------------------------------------------------------------------------


def test_what_its_jam_is_suspected_of_it_is_suspected_of() -> None:
    found = suspected(OWN, "Look at it: 3B swells.")
    assert (found.floor, found.harmless) == (Verdict.UNKNOWN, False)
    assert found.reasons == ("Look at it: 3B swells.", "its own")
    assert suspected(replace(OWN, floor=Verdict.DISCARD), "Look at it.").floor is Verdict.DISCARD
    assert suspected(OWN, "") == OWN
