"""The laws of verdicts over random lives: same minutes, unknown hours, late bookings,
wrong clocks, power cuts, readings that nobody can date, and every order of booking."""

from __future__ import annotations

import random
from copy import deepcopy
from dataclasses import replace
from datetime import timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.no_day import is_gone
from pantry_tui.core.model import Cut, Held, Read, Turn
from pantry_tui.core.words import Climate, Method, State, Verdict
from tests.core.keeping.told import HOUSE, MADE, Told, when
from tests.examples import many

CASES = [
    ("garlic", Method.IN_OIL, "fridge"), ("pesto", Method.IN_OIL, "fridge"),
    ("salmon", Method.HOT_SMOKED, "fridge"), ("salmon", Method.COLD_SMOKED, "freezer"),
    ("ground beef", Method.FROZEN, "freezer"), ("peas", Method.FROZEN, "freezer"),
    ("strawberries", Method.FROZEN, "freezer"), ("salmon", Method.FROZEN, "freezer"),
    ("runner beans", Method.PRESSURE, "larder"), ("beef", Method.PRESSURE, "larder"),
    ("peaches", Method.BOILING_WATER, "larder"), ("strawberry jam", Method.JAM, "larder"),
    ("strawberry jam", Method.FREEZER_JAM, "freezer"), ("apples", Method.DRIED, "kitchen"),
    ("jerky", Method.DRIED, "kitchen"), ("lasagne", Method.MEAL, "fridge"),
    ("chicken soup", Method.MEAL, "freezer"), ("eggs", Method.FRESH, "fridge"),
    ("ground beef", Method.FRESH, "fridge"), ("butter", Method.FRESH, "fridge"),
    ("cucumbers", Method.FRIDGE_PICKLE, "fridge"), ("sauerkraut", Method.LACTIC, "fridge"),
    ("bacon", Method.SALTED, "fridge"), ("country hams", Method.SALTED, "vault"),
    ("carrots", Method.CELLAR, "vault"), ("chickens", Method.BOUGHT, "fridge"),
]  # fmt: skip

#: A day and an hour of it; None is an unknown one. Few hours, so that many fall together.
HOURS = st.sampled_from([8.0, 8.0, 9.0, 12.0, 12.0, 12.5, 18.0, None])
MOMENTS = st.tuples(st.integers(0, 6), HOURS)
KNOWN = st.tuples(st.integers(0, 6), HOURS.filter(lambda hour: hour is not None))
PLACES = st.sampled_from(list(HOUSE))
WARMTHS = st.sampled_from([-5.0, 0.0, 10.0, 31.0, 36.0, 38.0, 40.0, 40.5, 41.0, 45.0, 60.0, 95.0])
SINCE = st.sampled_from([None, None, 0, 60, 119, 121, 600])
ACTS = st.one_of(
    st.tuples(st.just("move"), PLACES),
    st.tuples(st.just("open"), st.none()),
    st.tuples(st.just("thaw"), st.sampled_from(["", "microwave", "done"])),
    st.tuples(st.just("ready"), st.none()),
    st.tuples(st.just("read"), st.tuples(PLACES, WARMTHS, SINCE)),
    st.tuples(st.just("hold"), st.tuples(PLACES, st.sampled_from(list(Climate)))),
    st.tuples(
        st.just("cut"),
        st.tuples(
            PLACES,
            st.sampled_from([1, 3.5, 5, 30]),
            st.sampled_from([True, False, None]),
            st.sampled_from([None, 38.0, 50.0]),
            st.sampled_from([None, True, False]),
        ),
    ),
)
LIVES = st.lists(st.tuples(MOMENTS, ACTS), max_size=5)
FEW = settings(max_examples=many(60), deadline=None)


def told(case: tuple[str, Method, str], packed: bool = False) -> Told:
    food, method, place = case
    more: Any = {"vacuum": "yes"} if packed else {}
    return Told(food, method, place, **more)


def _did(act: Any) -> str:
    """What an act of a life is."""
    return str(act[1][0])


def do(life: Told, moment: tuple[int, float | None], act: tuple[str, object]) -> None:
    """One thing that happened, now or long ago."""
    life.at(*moment)
    what, more = act
    if what == "move":
        life.move(str(more))
    elif what == "open":
        life.open()
    elif what == "thaw":
        life.thaw(None, str(more))
    elif what == "ready":
        life.ready()
    elif what == "read":
        life.read(*more)  # type: ignore[misc]
    elif what == "hold":
        life.hold(*more)  # type: ignore[misc]
    else:
        life.cut(*more)  # type: ignore[misc]


def lived(case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool) -> Told:
    life = told(case, packed)
    for moment, act in acts:
        do(life, moment, act)  # type: ignore[arg-type]
    return life


def no_later(before: Judgement, after: Judgement) -> None:
    """What came in addition has not moved the last day later, nor made unfit food fit."""
    if before.discard_after is not None:
        assert after.discard_after is not None
        assert after.discard_after <= before.discard_after
    if before.verdict in UNFIT:
        assert after.verdict in UNFIT


@FEW
@given(
    case=st.sampled_from(CASES), acts=LIVES, packed=st.booleans(), act=ACTS, after=st.integers(0, 3)
)
def test_what_happens_next_never_moves_the_last_day_later(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool,
    act: tuple[str, object], after: int,
) -> None:  # fmt: skip
    life = lived(case, acts, packed)
    now = 7 + after, 12.0
    before = life.judged(*now)
    do(life, now, act)
    no_later(before, life.judged(*now))


@FEW
@given(
    case=st.sampled_from(CASES),
    acts=LIVES,
    moment=KNOWN,
    act=st.sampled_from([("open", None), ("thaw", ""), ("thaw", "microwave"), ("thaw", "done")]),
)
def test_to_open_or_to_thaw_at_any_moment_never_lengthens(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]],
    moment: tuple[int, float], act: tuple[str, object],
) -> None:  # fmt: skip
    life = lived(case, acts, packed=False)
    before = life.judged(9)
    do(life, moment, act)
    no_later(before, life.judged(9))


@FEW
@given(
    case=st.sampled_from(CASES), acts=LIVES, packed=st.booleans(), moment=MOMENTS, place=PLACES,
    warm=st.sampled_from([45.0, 60.0, 95.0]), hours=st.sampled_from([1, 3.5, 5, 30, 60]),
)  # fmt: skip
def test_a_cut_or_warmth_found_out_late_never_lengthens(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool,
    moment: tuple[int, float], place: str, warm: float, hours: float,
) -> None:  # fmt: skip
    for fact in (("cut", (place, hours, None, None, None)), ("read", (place, warm, 150))):
        life = lived(case, [one for one in acts if _did(one) != "read"], packed)
        before = life.judged(9)
        do(life, moment, fact)
        if fact[0] == "cut":
            no_later(before, life.judged(9))
        elif before.discard_after is not None:
            after = life.judged(9).discard_after
            assert after is not None
            assert after <= before.discard_after


@FEW
@given(
    case=st.sampled_from(CASES), acts=LIVES, packed=st.booleans(),
    seed=st.integers(0, 10**6), day=st.integers(0, 9),
)  # fmt: skip
def test_the_order_of_booking_never_counts(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool, seed: int, day: int
) -> None:
    life = lived(case, acts, packed)
    shuffled = acts[:]
    random.Random(seed).shuffle(shuffled)
    other = lived(case, shuffled, packed)
    assert life.judged(day) == other.judged(day)
    assert life.assessed(day).steps() == other.assessed(day).steps()


@FEW
@given(case=st.sampled_from(CASES), acts=LIVES, moment=KNOWN, packed=st.booleans())
def test_to_put_it_where_it_stands_changes_nothing(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], moment: tuple[int, float],
    packed: bool,
) -> None:  # fmt: skip
    acts = [one for one in acts if one[0][1] is not None]  # type: ignore[index]
    life = lived(case, acts, packed)
    then = when(*moment)
    turns = [life.box.turns[0], *(t for t in life.box.turns[1:] if t.when.first < then.first)]
    moved = [turn.when.first for turn in life.box.turns if turn.place is not None]
    if then.first < moved[0] or min(moved) < moved[0]:
        return  # it was not put up yet
    if then.first in moved or len(moved) != len(set(moved)):
        return  # which of the two came first nobody can say
    here = next(turn.place for turn in reversed(turns) if turn.place is not None)
    before = life.judged(9)
    life.at(*moment).move(here)
    assert life.judged(9) == before


@FEW
@given(
    case=st.sampled_from(CASES), acts=LIVES, packed=st.booleans(), which=st.integers(0, 4),
    hour=st.sampled_from([8.0, 9.0, 12.0, 18.0]),
)  # fmt: skip
def test_an_unknown_hour_is_never_milder_than_any_it_may_have_been(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool, which: int,
    hour: float,
) -> None:  # fmt: skip
    if not acts:
        return
    picked: Any = acts[which % len(acts)]
    (day, _), act = picked
    known, unknown = deepcopy(acts), deepcopy(acts)
    known[which % len(acts)] = ((day, hour), act)
    unknown[which % len(acts)] = ((day, None), act)
    sure, unsure = lived(case, known, packed).judged(9), lived(case, unknown, packed).judged(9)
    no_later(sure, unsure)
    assert sure.usable or not unsure.usable


@FEW
@given(
    case=st.sampled_from(CASES), acts=LIVES, packed=st.booleans(), day=st.integers(0, 9),
    ahead=st.integers(0, 400),
)  # fmt: skip
def test_past_its_last_day_nothing_is_usable_and_the_ladder_says_what_each_day_says(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool, day: int,
    ahead: int,
) -> None:  # fmt: skip
    ladder = lived(case, acts, packed).assessed(day)
    then = MADE + timedelta(days=day + ahead)
    judged = ladder.on(then)
    if judged.discard_after is not None and then > judged.discard_after:
        assert judged.verdict in UNFIT
        assert not judged.usable
    assert judged.reasons or judged.verdict is Verdict.SOUND
    why = judged.why_no_discard
    assert (judged.discard_after is None) == bool(why) or is_gone(why)
    steps = ladder.steps()
    assert len(steps) <= 6
    on = [verdict for since, verdict in steps if since <= then]
    if on:
        assert on[-1] is judged.verdict


@FEW
@given(case=st.sampled_from(CASES), acts=LIVES, act=ACTS, days=st.integers(20, 900))
def test_what_is_booked_for_later_counts_as_now_and_is_named(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], act: tuple[str, object],
    days: int,
) -> None:  # fmt: skip
    """A clock that ran ahead: no day to come makes anything keep longer."""
    life = lived(case, acts, packed=False)
    before = life.judged(9)
    do(life, (days, 12.0), act)
    after = life.judged(9)
    no_later(before, after)
    if act[0] in ("move", "open", "thaw", "ready"):
        assert any("still to come" in one for one in after.standing)


@FEW
@given(case=st.sampled_from(CASES), acts=LIVES, packed=st.booleans())
def test_the_strictest_advice_is_never_milder(
    case: tuple[str, Method, str], acts: list[tuple[object, ...]], packed: bool
) -> None:
    life = lived(case, acts, packed)
    usual = life.judged(9)
    no_later(usual, life.strictest().judged(9))


def test_the_facts_of_a_test_are_those_of_the_program() -> None:
    life = Told("eggs", Method.FRESH, "fridge").at(1).read("fridge", 38).at(2).cut("fridge", 3)
    kinds = [type(fact) for fact in life.places["fridge"].facts]
    assert kinds == [Held, Read, Cut]
    assert life.move("chest").box.turns[-1] == Turn(when(2, 12), "e001", "chest")
    assert replace(life.box, turns=()).state is State.SEALED
