"""From dates to the verdict of a day, and to the day on which it turns."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.ladder import (
    LAST_DAYS,
    Assessment,
    Care,
    Fixed,
    Judgement,
    soon_window,
    worse,
)
from pantry_tui.core.words import SEVERITY, Verdict

MADE = date(2026, 3, 1)


def day(number: int) -> date:
    return MADE + timedelta(days=number)


def lasting(best: int | None = None, last: int | None = None, **more: object) -> Assessment:
    """Best by and discard after so many days after it was made; assessed on the day made."""
    return Assessment(
        MADE,
        None if best is None else day(best),
        None if last is None else day(last),
        MADE,
        facts_to=MADE,
        **more,  # type: ignore[arg-type]
    )


def words(one: Assessment, *days: int) -> list[str]:
    return [one.on(day(n)).verdict.value for n in days]


def test_it_is_eaten_first_in_the_last_quarter_of_its_life_a_day_to_a_month() -> None:
    assert [soon_window(n) for n in (0, 3, 8, 40, 119, 120, 124, 900)] == [
        1, 1, 2, 10, 29, 30, 30, 30,
    ]  # fmt: skip


def test_a_jar_is_sound_then_to_be_eaten_soon_then_past_its_best_and_still_good() -> None:
    jar = lasting(best=40)
    assert words(jar, 29, 30, 40, 41) == ["sound", "eat soon", "eat soon", "past best"]
    assert jar.on(day(9000)).usable
    assert jar.soon_from == day(30)


def test_on_the_last_day_it_may_still_be_eaten_and_on_the_next_it_may_not() -> None:
    stew = lasting(last=4)
    assert words(stew, 0, 1, 4, 5) == ["sound", "eat soon", "eat soon", "discard"]
    assert stew.on(day(4)).usable
    assert not stew.on(day(5)).usable


@pytest.mark.parametrize("last", [1, 2, 3, 5, 7, 11, 12, 15, 40, 400])
def test_a_last_day_within_three_days_is_soon_however_short_its_life(last: int) -> None:
    food = lasting(last=last)
    near = max(LAST_DAYS, soon_window(last))
    assert {words(food, n)[0] for n in range(max(0, last - 3), last + 1)} == {"eat soon"}
    assert food.soon_from == day(last - near)
    if last > near:
        assert words(food, last - near - 1) == ["sound"]


def test_three_days_are_for_a_last_day_alone() -> None:
    assert words(lasting(best=4), 1, 2, 3, 4, 5) == [
        "sound", "sound", "eat soon", "eat soon", "past best",
    ]  # fmt: skip


def test_of_both_dates_the_one_of_safety_is_the_harder_word() -> None:
    cheese = lasting(best=40, last=48)
    assert words(cheese, 30, 35, 36, 41, 48, 49) == [
        "eat soon", "eat soon", "eat soon", "eat soon", "eat soon", "discard",
    ]  # fmt: skip
    assert cheese.soon_from == day(30)
    wide = lasting(best=40, last=400)
    assert words(wide, 41, 369, 370, 401) == ["past best", "past best", "eat soon", "discard"]


@pytest.mark.parametrize(("harmless", "soon"), [(False, "needs care"), (True, "eat soon")])
def test_what_can_hurt_is_looked_at_before_it_is_eaten_also_on_its_last_days(
    harmless: bool, soon: str
) -> None:
    seen = lasting(last=8, floor=Verdict.NEEDS_CARE, harmless=harmless)
    assert words(seen, 0, 6, 8, 9) == ["needs care", soon, soon, "discard"]
    assert seen.on(day(7)).usable is harmless
    late = lasting(best=2, last=40, harmless=harmless, care=(Care(day(1), day(20), "late"),))
    assert words(late, 1, 3, 21) == [
        soon,
        "past best" if harmless else "needs care",
        "past best",
    ]
    assert late.on(day(3)).usable is harmless
    assert late.on(day(21)).usable


def test_without_dates_it_is_what_is_known_of_it() -> None:
    assert words(lasting(), 0, 9000) == ["sound", "sound"]
    assert lasting().soon_from is None
    assert words(lasting(doubt=True), 0) == ["unknown"]
    assert words(lasting(in_progress=True), 0) == ["needs care"]


def test_doubt_hides_no_date_and_care_hides_no_doubt() -> None:
    assert words(lasting(last=4, doubt=True), 4, 5) == ["unknown", "discard"]
    assert words(lasting(last=4, in_progress=True), 4, 5) == ["needs care", "discard"]
    assert words(lasting(in_progress=True, doubt=True), 0) == ["unknown"]
    assert not lasting(in_progress=True, harmless=True).on(MADE).usable


def test_what_has_been_too_warm_is_discarded_from_that_day_on() -> None:
    warm = lasting(best=40, over_from=day(6))
    assert words(warm, 5, 6, 7) == ["sound", "discard", "discard"]
    assert warm.on(day(2)).until == day(5)
    assert warm.steps() == ((MADE, Verdict.SOUND), (day(6), Verdict.DISCARD))


def test_a_sign_stands_above_every_date_and_the_worse_word_counts() -> None:
    signed = lasting(last=4, floor=Verdict.DO_NOT_TASTE)
    assert words(signed, 0, 9) == ["do not taste", "do not taste"]
    soft = lasting(last=4, floor=Verdict.EAT_SOON)
    assert words(soft, 0, 5) == ["eat soon", "discard"]


def test_a_verdict_that_no_date_turns_may_have_a_last_day_of_its_own() -> None:
    fixed = lasting(last=1, fixed=Fixed(Verdict.UNKNOWN, day(3), Verdict.DISCARD))
    assert words(fixed, 0, 2, 3, 4) == ["unknown", "unknown", "unknown", "discard"]
    assert fixed.on(MADE).until == day(3)
    assert words(lasting(fixed=Fixed(Verdict.UNKNOWN)), 0, 9000) == ["unknown", "unknown"]
    assert words(lasting(fixed=Fixed(Verdict.UNKNOWN, day(3))), 4) == ["unknown"]
    assert words(lasting(fixed=Fixed(Verdict.SOUND), floor=Verdict.DISCARD), 0) == ["discard"]


def test_reasons_that_come_with_time_are_said_from_the_day_after() -> None:
    jar = lasting(best=40, reasons=("canned",), later=((day(40), "past its best"),))
    assert jar.on(day(40)).reasons == ("canned",)
    assert jar.on(day(41)).reasons == ("canned", "past its best")


@pytest.mark.parametrize(("one", "other"), [(one, other) for one in Verdict for other in Verdict])
def test_of_two_verdicts_the_worse_one_counts(one: Verdict, other: Verdict) -> None:
    found = worse(one, other)
    assert found is worse(other, one)
    assert found in (one, other)
    assert SEVERITY.index(found) == min(SEVERITY.index(one), SEVERITY.index(other))


days = st.none() | st.integers(-3, 60)
ladders = st.builds(
    lasting,
    days,
    days,
    doubt=st.booleans(),
    in_progress=st.booleans(),
    floor=st.sampled_from([Verdict.SOUND, Verdict.EAT_SOON, Verdict.UNKNOWN]),
    over_from=st.none() | st.integers(0, 60).map(day),
    fixed=st.none()
    | st.builds(Fixed, st.just(Verdict.UNKNOWN), st.integers(0, 60).map(day),
                st.just(Verdict.DISCARD)),
)  # fmt: skip


@given(ladders)
def test_the_steps_of_the_ladder_say_what_every_day_says(one: Assessment) -> None:
    """What a list shows is read off the steps: they may never differ from the judge."""
    steps = one.steps()
    assert steps[0][0] == MADE
    for n in range(70):
        since = [verdict for start, verdict in steps if start <= day(n)]
        assert since[-1] is one.on(day(n)).verdict
    assert all(one_[1] is not other[1] for one_, other in pairwise(steps))


@given(ladders, st.integers(0, 65))
def test_a_verdict_stands_until_the_day_it_says_and_no_longer(one: Assessment, n: int) -> None:
    judged = one.on(day(n))
    if judged.until is None:
        assert {one.on(day(m)).verdict for m in range(n, 130)} == {judged.verdict}
    else:
        last = (judged.until - MADE).days
        assert last >= n
        assert {one.on(day(m)).verdict for m in range(n, last + 1)} == {judged.verdict}
        assert one.on(day(last + 1)).verdict is not judged.verdict


@given(ladders, st.integers(0, 65))
def test_food_that_cannot_be_eaten_any_more_does_not_become_fit_by_waiting(
    one: Assessment, n: int
) -> None:
    if not one.on(day(n)).usable and not one.in_progress:
        assert not one.on(day(n + 1)).usable


def test_the_ladder_begins_with_its_last_fact_or_today_whichever_is_earlier() -> None:
    late = Assessment(day(9), day(40), began=MADE, facts_to=day(2))
    assert late.steps()[0][0] == day(2)
    early = Assessment(day(1), day(40), began=MADE, facts_to=day(2))
    assert early.steps()[0][0] == day(1)


def test_what_was_said_beside_is_handed_on() -> None:
    one = lasting(standing=("not checked",), refused="too warm here", why_no_discard="frozen")
    judged = one.on(MADE)
    assert judged.standing == ("not checked",)
    assert judged.refused == "too warm here"
    assert judged.why_no_discard == "frozen"


def test_where_nothing_is_said_nothing_is_offered_nor_held_against_it() -> None:
    assert not Judgement(Verdict.SOUND, None, None, (), ()).usable
    bare = Assessment(MADE)
    assert (bare.doubt, bare.in_progress, bare.harmless) == (False, False, False)


def test_a_day_that_is_unknown_turns_nothing() -> None:
    fixed = Fixed(Verdict.UNKNOWN, None, Verdict.DISCARD)
    assert fixed.on(MADE + timedelta(days=900)) is Verdict.UNKNOWN
    assert Fixed(Verdict.UNKNOWN, MADE, None).on(MADE + timedelta(days=9)) is Verdict.UNKNOWN


def test_the_ladder_begins_with_the_last_fact_also_where_dates_lie_before_it() -> None:
    found = Assessment(day(400), best_by=day(300), facts_to=day(400))
    assert found.steps() == ((day(400), Verdict.PAST_BEST),)


def test_it_is_to_be_eaten_first_before_the_earlier_of_its_dates() -> None:
    both = Assessment(MADE, best_by=day(100), discard_after=day(40), began=MADE)
    assert both.soon_from == day(30)
    assert replace(both, best_by=None).soon_from == day(30)
    assert replace(both, discard_after=None).soon_from == day(75)


def test_a_verdict_lasts_until_the_day_on_which_it_turns() -> None:
    doubtful = Assessment(MADE, best_by=day(10), discard_after=day(11), began=MADE, doubt=True)
    assert doubtful.on(day(5)).until == day(11), "a date of quality turns no doubt"
    assert doubtful.on(day(12)).until is None
