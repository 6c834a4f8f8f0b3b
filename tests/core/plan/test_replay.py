"""Replays of own weeks: what each of them does is what eating week by week does."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.plan.outlook import ahead
from pantry_tui.core.plan.pace import Portion
from pantry_tui.core.plan.pace_words import Unit
from pantry_tui.core.plan.range_words import from_to, gone_between, in_words, range_note
from pantry_tui.core.plan.replay import REPLAYS, Replayed, draws, replayed
from tests.examples import many

TODAY = date(2026, 11, 25)
JARS = Unit(4.0, "jars")

portions = st.lists(
    st.builds(
        Portion,
        st.integers(1, 40).map(float),
        st.none() | st.integers(0, 400).map(lambda days: TODAY + timedelta(days=days)),
    ),
    max_size=6,
)


@given(portions, st.integers(1, 300), st.integers(1, 30).map(float))
@settings(max_examples=many(200))
def test_a_household_that_eats_the_same_each_week_has_no_range(
    parts: list[Portion], days: int, rate: float
) -> None:
    harvest = TODAY + timedelta(days=days)
    plain = ahead(parts, harvest, TODAY, eaten=rate)
    found = replayed(parts, harvest, TODAY, [3.0] * 10, rate)
    low, high = found.lost_range
    assert abs(low - plain.lost) < 1e-6
    assert abs(high - plain.lost) < 1e-6
    assert found.runs_out_range == (plain.runs_out, plain.runs_out)


@given(
    portions, st.integers(8, 300), st.lists(st.integers(0, 9).map(float), min_size=8, max_size=52)
)
@settings(max_examples=many(50))
def test_every_replay_is_eating_week_by_week(
    parts: list[Portion], days: int, own: list[float]
) -> None:
    harvest = TODAY + timedelta(days=days)
    mean = sum(own) / len(own)
    found = replayed(parts, harvest, TODAY, own, mean)
    weeks = -(-days // 7)
    for number, drawn in enumerate(draws(len(own), weeks)):
        factors = [own[at] for at in drawn]
        plain = ahead(parts, harvest, TODAY, eaten=1.0 if mean else 0.0, factors=factors)
        assert abs(found.lost[number] - plain.lost) < 1e-6
        assert found.runs_out[number] == plain.runs_out


def test_weeks_that_differ_give_a_range_about_what_is_reckoned() -> None:
    parts = [Portion(40.0, TODAY + timedelta(days=70)), Portion(40.0, None)]
    harvest, own = TODAY + timedelta(days=250), [0.0, 0.0, 4.0, 8.0, 0.0, 12.0, 2.0, 6.0]
    plain = ahead(parts, harvest, TODAY, eaten=4.0)
    found = replayed(parts, harvest, TODAY, own, 4.0)
    low, high = found.lost_range
    assert low <= plain.lost <= high
    assert low < high
    first, last = found.runs_out_range
    assert first is not None
    assert plain.runs_out is not None
    assert first < plain.runs_out
    assert last is None or last > plain.runs_out
    assert found == replayed(parts, harvest, TODAY, own, 4.0), "the draws are fixed"
    assert len(found.lost) == REPLAYS


def test_guests_empty_it_sooner_and_days_away_later() -> None:
    parts, harvest = [Portion(40.0, None)], TODAY + timedelta(days=300)

    def out(*factors: float) -> date:
        found = replayed(parts, harvest, TODAY, [4.0] * 8, 4.0, factors).runs_out_range[0]
        assert found is not None
        return found

    assert out(3.0) < out() < out(0.0, 0.0)


def test_it_is_said_in_jars_and_days() -> None:
    days = [date(2027, 4, 3)] * (REPLAYS // 2) + [date(2027, 5, 20)] * (REPLAYS // 2)
    lost = [8.0] * (REPLAYS // 2) + [36.0] * (REPLAYS // 2)
    found = Replayed(tuple(lost), tuple(days))
    assert in_words(found, JARS, 20.0) == (
        "By your own weeks: gone between Sat 3 Apr 2027 and Thu 20 May 2027; "
        "2 to 9 jars lost (about 5)."
    )
    lasts = Replayed((0.0,) * REPLAYS, (None,) * REPLAYS)
    assert in_words(lasts, JARS, 0.0) == ""
    assert "perhaps not at all" in gone_between(date(2027, 4, 3), None)
    assert (from_to(0, 3), from_to(2, 2), from_to(0, 0)) == ("up to 3", "2", "0")


def test_a_first_year_says_that_there_is_no_range_yet() -> None:
    assert range_note(0, 5) == "No range yet: it takes 8 weeks of your own eating of a food."
    assert range_note(5, 5) == ""
    assert "2 of 5" in range_note(2, 5)
