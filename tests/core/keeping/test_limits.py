"""The two laws of limits, over random histories, and the verdicts that dates give."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.limits import judge
from pantry_tui.core.model import Batch, Container, FoodFacts, Stay
from pantry_tui.core.words import ASSUMED_F, Acidity, Climate, Group, Method, State, Verdict
from pantry_tui.reference.tables import load_tables

MADE = date(2026, 3, 1)
CASES = [
    ("garlic", Method.IN_OIL),
    ("pesto", Method.IN_OIL),
    ("salmon", Method.HOT_SMOKED),
    ("salmon", Method.FROZEN),
    ("ground beef", Method.FROZEN),
    ("runner beans", Method.PRESSURE),
    ("peaches", Method.BOILING_WATER),
    ("strawberry jam", Method.JAM),
    ("apples", Method.DRIED),
    ("lasagne", Method.MEAL),
    ("eggs", Method.FRESH),
    ("cucumbers", Method.FRIDGE_PICKLE),
    ("sauerkraut", Method.LACTIC),
]


def batch(food: str, method: Method, made: date | None = MADE) -> Batch:
    facts = load_tables().facts(food)
    assert facts is not None, food
    return Batch("b", "2A", facts, method, made)


def stay(day: int, climate: Climate, state: State, warmer: float = 0.0) -> Stay:
    warmth = ASSUMED_F[climate] + warmer
    return Stay(MADE + timedelta(days=day), climate.value, climate, state, warmth)


def verdict(of: Batch, stays: list[Stay], today: date):  # type: ignore[no-untyped-def]
    box = Container("b.1", "b", 1, stays[-1].state, "", tuple(stays))
    return judge(of, box, load_tables().book, today)


histories = st.lists(
    st.tuples(
        st.integers(0, 60),
        st.sampled_from(list(Climate)),
        st.sampled_from([State.SEALED, State.OPEN, State.THAWED]),
        st.sampled_from([0.0, 5.0, 15.0]),
    ),
    min_size=1,
    max_size=5,
)


def _stays(steps: list[tuple[int, Climate, State, float]]) -> list[Stay]:
    day, found = 0, []
    for index, (gap, climate, state, warmer) in enumerate(steps):
        day += gap if index else 0
        found.append(stay(day, climate, state, warmer))
    return found


@given(case=st.sampled_from(CASES), steps=histories, extra=histories, after=st.integers(0, 400))
def test_no_later_event_ever_moves_discard_after_later(case, steps, extra, after):  # type: ignore[no-untyped-def]
    of = batch(*case)
    short = _stays(steps)
    day = (short[-1].since - MADE).days
    longer = short + [
        Stay(s.since + timedelta(days=day), s.place, s.climate, s.state, s.temperature_f)
        for s in _stays(extra)
    ]
    today = MADE + timedelta(days=after)
    before = verdict(of, short, today).discard_after
    then = verdict(of, longer, today).discard_after
    if before is not None:
        assert then is not None and then <= before


@given(case=st.sampled_from(CASES), steps=histories, after=st.integers(0, 400))
def test_past_a_safety_date_nothing_is_ever_fit_to_eat(case, steps, after):  # type: ignore[no-untyped-def]
    today = MADE + timedelta(days=after)
    judged = verdict(batch(*case), _stays(steps), today)
    if judged.discard_after is not None and today > judged.discard_after:
        assert judged.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    assert judged.reasons or judged.verdict is Verdict.SOUND


@given(case=st.sampled_from(CASES), steps=histories)
def test_an_unknown_date_is_never_sound(case, steps):  # type: ignore[no-untyped-def]
    judged = verdict(batch(*case, made=None), _stays(steps), MADE)
    assert judged.verdict in (Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    assert judged.best_by is None and judged.discard_after is None


def test_the_last_day_may_still_be_eaten_and_the_next_may_not() -> None:
    oil = batch("garlic", Method.IN_OIL)
    fridge = [stay(0, Climate.FRIDGE, State.SEALED)]
    assert verdict(oil, fridge, date(2026, 3, 5)).verdict is Verdict.EAT_SOON
    assert verdict(oil, fridge, date(2026, 3, 6)).verdict is Verdict.DISCARD


def test_freezing_late_does_not_stop_the_clock_that_runs() -> None:
    meal = batch("lasagne", Method.MEAL)
    stays = [stay(0, Climate.FRIDGE, State.SEALED), stay(2, Climate.FREEZER, State.SEALED)]
    assert verdict(meal, stays, date(2026, 3, 2)).discard_after == date(2026, 3, 4)


def test_an_hour_of_shelf_for_a_fridge_pickle_is_never_forgiven() -> None:
    pickle = batch("cucumbers", Method.FRIDGE_PICKLE)
    stays = [
        stay(0, Climate.FRIDGE, State.SEALED),
        stay(5, Climate.ROOM, State.SEALED),
        stay(8, Climate.FRIDGE, State.SEALED),
    ]
    assert verdict(pickle, stays, date(2026, 3, 10)).verdict is Verdict.DISCARD


def test_a_warm_freezer_spends_quality_and_gives_no_safety_date() -> None:
    beans = batch("runner beans", Method.FROZEN)
    cold = verdict(beans, [stay(0, Climate.FREEZER, State.SEALED)], MADE)
    warm = verdict(beans, [stay(0, Climate.FREEZER, State.SEALED, 10.0)], MADE)
    assert warm.best_by is not None and cold.best_by is not None
    quarter = (cold.best_by - MADE).days / 4
    assert abs((warm.best_by - MADE).days - quarter) <= 1
    assert warm.discard_after is None and cold.discard_after is None


def test_half_a_life_in_one_place_leaves_half_in_the_next() -> None:
    apples = batch("apples", Method.DRIED)
    room = verdict(apples, [stay(0, Climate.ROOM, State.SEALED)], MADE).best_by
    pantry = verdict(apples, [stay(0, Climate.PANTRY, State.SEALED)], MADE).best_by
    assert room is not None and pantry is not None and room < pantry
    half = (room - MADE).days // 2
    moved = [stay(0, Climate.ROOM, State.SEALED), stay(half, Climate.PANTRY, State.SEALED)]
    best = verdict(apples, moved, MADE).best_by
    assert best is not None and room < best < pantry


def test_low_acid_food_in_boiling_water_is_suspect_without_a_sign() -> None:
    beans = batch("runner beans", Method.BOILING_WATER)
    judged = verdict(beans, [stay(0, Climate.PANTRY, State.SEALED)], MADE)
    assert judged.verdict is Verdict.DO_NOT_TASTE


def test_an_unknown_food_takes_the_strictest_rule_of_its_group() -> None:
    odd = FoodFacts("elder shoots", Group.HERB, Acidity.LOW_ACID, frozenset(), known=False)
    of = Batch("b", "2A", odd, Method.IN_OIL, MADE)
    judged = verdict(of, [stay(0, Climate.FRIDGE, State.SEALED)], MADE)
    assert judged.discard_after == date(2026, 3, 3)


@pytest.mark.parametrize("climate", [Climate.ROOM, Climate.PANTRY, Climate.CELLAR])
def test_where_nothing_is_published_the_verdict_is_not_sound(climate: Climate) -> None:
    fish = batch("salmon", Method.HOT_SMOKED)
    judged = verdict(fish, [stay(0, climate, State.SEALED)], MADE)
    assert judged.verdict in (Verdict.UNKNOWN, Verdict.DISCARD)
