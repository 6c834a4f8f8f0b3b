"""The outlook against examples reckoned by hand, and its laws."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.plan.outlook import ahead, cover, shared, to_put_up, together
from pantry_tui.core.plan.pace import Portion
from pantry_tui.core.plan.replay import replayed

TODAY = date(2026, 11, 25)


def by(weeks: int) -> date:
    return TODAY + timedelta(days=7 * weeks - 1)


def test_a_steady_week_lasts_to_the_harvest() -> None:
    found = ahead([Portion(10, None)], TODAY + timedelta(weeks=10), TODAY)
    assert found.rate == pytest.approx(1, rel=0.02)
    assert found.lost == 0
    assert found.runs_out is None


def test_what_is_eaten_too_slowly_is_lost_and_too_fast_runs_out() -> None:
    slow = ahead([Portion(10, by(4))], by(20), TODAY, eaten=1)
    assert slow.lost == pytest.approx(6)
    fast = ahead([Portion(10, None)], by(20), TODAY, eaten=2)
    assert fast.runs_out == TODAY + timedelta(days=4 * 7 + 6)
    assert fast.left == 0


@pytest.mark.parametrize("eaten", [1.0, 2.0, 9.0])
def test_nothing_runs_out_after_its_own_last_day(eaten: float) -> None:
    soon, later = TODAY + timedelta(days=3), TODAY + timedelta(days=12)
    harvest = TODAY + timedelta(days=200)
    assert ahead([Portion(2, soon)], harvest, TODAY, eaten=eaten).runs_out == soon
    assert ahead([Portion(2, soon), Portion(7, later)], harvest, TODAY, eaten=eaten).runs_out == (
        TODAY + timedelta(days=6) if eaten == 9 else later
    )
    passed = ahead([Portion(2, TODAY - timedelta(days=3))], harvest, TODAY, eaten=2.0)
    assert passed.runs_out == TODAY + timedelta(days=6), "past its best it is eaten this week"


@pytest.mark.parametrize("weeks", [[4.0] * 8, [0.0, 8.0] * 4])
def test_what_a_plan_eats_runs_out_on_its_last_day(weeks: list[float]) -> None:
    soon, harvest = TODAY + timedelta(days=2), TODAY + timedelta(days=200)

    def out(parts: list[Portion], planned: Portion) -> set[date | None]:
        again = replayed(parts, harvest, TODAY, weeks, 4.0, (), planned)
        plain = ahead(parts, harvest, TODAY, eaten=4.0, planned=planned)
        return {plain.runs_out, *again.runs_out}

    assert out([], Portion(4.0, soon)) == {soon}
    assert out([Portion(0.0, None)], Portion(4.0, soon)) == {soon}
    found = ahead([Portion(3.0, TODAY)], harvest, TODAY, eaten=7.0, planned=Portion(4.0, soon))
    assert (found.runs_out, found.lost, found.pace.servings) == (soon, 0, 7)
    assert out([], Portion(0.0, None)) == {TODAY}, "of nothing there is none today"


def test_how_much_to_put_up_is_whole_containers() -> None:
    # 3 servings a week for 30 weeks and 4 people, 8 to a quart, 20 left over: 340 / 8 = 42.5.
    assert to_put_up(3, 30, 4, 8, 20) == 43
    assert to_put_up(1, 52, 1, 4, 100) == 0


def test_the_last_year_corrects_the_plan() -> None:
    # 4 a week for 52 weeks are 208; 12 to give away make 220; a tenth spoiled: 244.4; a tenth on
    # top: 268.9; 20 left over: 248.9, in jars of four 62.2.
    assert to_put_up(4, 52, 1, 4, 20, given=12, spoiled=0.1, margin=0.1) == 63
    assert to_put_up(4, 52, 1, 4) == 52


def test_no_more_is_covered_than_keeps() -> None:
    assert cover(1, 365) == 52
    assert cover(2, 800) == 104
    assert cover(2, 365) == pytest.approx(365 / 7)
    assert cover(1, 14) == 2
    assert cover(2, None) == 52, "without a published life, a year and no more"


@given(st.floats(0, 500), st.dictionaries(st.text(min_size=1), st.floats(0, 20), min_size=1))
def test_substitutes_take_over_all_that_is_missing_by_their_pace(
    missing: float, paces: dict[str, float]
) -> None:
    found = shared(missing, paces)
    assert set(found) == set(paces)
    assert sum(found.values()) == pytest.approx(missing, abs=1e-6)
    assert all(amount >= 0 for amount in found.values())


def test_a_group_is_its_foods_together() -> None:
    # Two foods that fall due one after the other: each needs 4 a week for itself, both together
    # need no more than 4, since the second one waits.
    early, late = [Portion(16, by(4))], [Portion(32, by(12))]
    foods = [(ahead(early, by(20), TODAY), by(20)), (ahead(late, by(40), TODAY), by(40))]
    found = together(foods, [*early, *late], TODAY)
    assert found.pace.servings == 48
    assert found.pace.needs == pytest.approx(4)
    assert found.pace.can == pytest.approx(16 / 20 + 32 / 40)
    assert found.supply[0] == pytest.approx(foods[0][0].supply[0] + foods[1][0].supply[0])
    assert len(found.supply) == len(foods[1][0].supply)


def test_a_group_loses_what_its_ceiling_leaves() -> None:
    parts = [Portion(40, by(4))]
    one, other = ahead(parts, by(20), TODAY), ahead(parts, by(20), TODAY)
    assert one.lost == 0
    found = together([(one, by(20)), (other, by(20))], [*parts, *parts], TODAY, ceiling=15)
    assert found.rate == 15
    assert found.lost == pytest.approx(80 - 4 * 15)


stock = st.lists(
    st.builds(
        Portion,
        st.floats(0.5, 40),
        st.one_of(st.none(), st.integers(0, 400).map(lambda n: TODAY + timedelta(days=n))),
    ),
    min_size=1,
    max_size=10,
)


@given(stock, st.floats(0, 20))
def test_nothing_appears_and_nothing_vanishes(parts: list[Portion], eaten: float) -> None:
    found = ahead(parts, TODAY + timedelta(weeks=52), TODAY, eaten=eaten)
    whole = sum(one.servings for one in parts)
    consumed = whole - found.lost - found.left
    assert -1e-6 <= consumed <= eaten * len(found.supply) + 1e-6
    assert all(a >= b - 1e-9 for a, b in zip(found.supply, found.supply[1:], strict=False))


@given(stock, st.floats(0, 10), st.floats(0, 10))
def test_eating_faster_never_loses_more(parts: list[Portion], one: float, more: float) -> None:
    end = TODAY + timedelta(weeks=52)
    slow = ahead(parts, end, TODAY, eaten=one)
    fast = ahead(parts, end, TODAY, eaten=one + more)
    assert fast.lost <= slow.lost + 1e-6


@given(stock, stock)
def test_a_group_never_needs_more_than_its_foods_and_loses_no_less(
    one: list[Portion], other: list[Portion]
) -> None:
    end = TODAY + timedelta(weeks=52)
    foods = [(ahead(one, end, TODAY), end), (ahead(other, end, TODAY), end)]
    found = together(foods, [*one, *other], TODAY)
    needs = [food.pace.needs for food, _ in foods]
    assert max(needs) - 1e-6 <= found.pace.needs <= sum(needs) + 1e-6
    assert found.lost >= sum(food.lost for food, _ in foods) - 1e-6


def test_of_a_week_in_which_a_date_passes_its_days_to_that_date_count() -> None:
    # 7 a week: two weeks and two days of the third are 16 of the 20 servings.
    last = TODAY + timedelta(days=15)
    found = ahead([Portion(20, last), Portion(9, None)], by(10), TODAY, eaten=7)
    assert found.lost == pytest.approx(4)
    assert found.supply[2] == pytest.approx(4), "the days after it eat what is left"
    again = replayed([Portion(20, last)], by(10), TODAY, [7.0, 7.0], 7.0)
    assert again.lost == pytest.approx((4.0,) * len(again.lost))


def test_what_lies_on_no_day_of_the_accepted_week_is_lost_however_much_is_eaten() -> None:
    parts = [Portion(3, TODAY, missed=True), Portion(5, None)]
    assert ahead(parts, by(10), TODAY, eaten=40).lost == 3
    assert set(replayed(parts, by(10), TODAY, [9.0], 9.0).lost) == {3}
