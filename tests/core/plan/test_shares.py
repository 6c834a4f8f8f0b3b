"""The pace of the week against reckonings by hand: credit, shares, and a winter of weeks."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.shares import (
    LEAST,
    STAND_BACK,
    Harvest,
    PutUp,
    expected,
    needs,
    rates,
    saved,
    shares,
)
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group

START = date(2026, 11, 2)
TWO = Appetite(2)


def jar(number: int, food: str = "beans", last: date | None = None) -> Candidate:
    return Candidate(f"{food} {number}", food, Group.VEGETABLE, 4.0, last)


def test_half_a_container_a_week_comes_every_other_week() -> None:
    log: list[float] = []
    for _ in range(8):
        log.append(4.0 if saved(2.0, log) >= 2.0 else 0.0)
    assert log == [0, 4, 0, 4, 0, 4, 0, 4]


def test_credit_is_what_the_weeks_gave_less_what_was_eaten_and_counts_in_weeks() -> None:
    assert saved(0.5, [0.0] * 4) == 2.0
    assert saved(2.0, [0.0] * 9) == 18.0, "what waits for a big jar is not forgotten"
    assert saved(2.0, [0.0, 9.0]) == -5.0
    assert Credit(2.0, 0.5).weeks() == 4.0
    assert Credit(2.0, 0.5).weeks(eaten=4.0) == -4.0
    assert Credit(4.0, 0.1).weeks() == 12.0, "a quarter of a year at most"
    assert Credit(4.0, 0.0).weeks() == 0.0


def test_a_rate_is_what_dates_need_or_the_harvest_allows_and_never_above_the_ceiling() -> None:
    harvest = {"beans": START + timedelta(weeks=40), "peas": START + timedelta(weeks=40)}
    stock = [
        *[jar(n) for n in range(20)],
        *[jar(n, "peas", START + timedelta(weeks=10, days=-1)) for n in range(5)],
    ]
    assert rates(stock, TWO, START, harvest) == pytest.approx({"beans": 2.0, "peas": 2.0}, rel=0.01)
    many = [jar(n, "peas", START + timedelta(weeks=1, days=-1)) for n in range(5)]
    assert rates(many, TWO, START, harvest) == {"peas": 6.0}


def test_the_share_is_what_lasts_to_the_harvest_and_never_below_half_of_a_year_s() -> None:
    harvest = [Harvest("vegetable", 10, 100.0)]
    assert LEAST == 0.5
    assert shares({"vegetable": 80.0}, harvest) == {"vegetable": 8.0}
    assert shares({"vegetable": 4.0}, harvest) == {"vegetable": pytest.approx(LEAST * 104 / 52)}
    # Half the time away is half the weeks to last.
    assert shares({"vegetable": 80.0}, harvest, [0.0] * 5) == {"vegetable": 16.0}
    # A second harvest that is too small is made to last as well: (44 + 1.5 x 10) / 20.
    two = [Harvest("vegetable", 10, 10.0), Harvest("vegetable", 20, 200.0)]
    assert shares({"vegetable": 20.0}, two)["vegetable"] == pytest.approx(LEAST * 230 / 52)
    assert shares({"vegetable": 44.0}, two)["vegetable"] == pytest.approx(59 / 20)
    assert shares({"vegetable": 80.0}, []) == {}


def test_a_group_of_which_much_got_too_old_is_not_made_to_last() -> None:
    harvest = [Harvest("vegetable", 10, 100.0), Harvest("fruit", 10, 100.0)]
    standing = {"vegetable": 80.0, "fruit": 80.0}
    assert STAND_BACK == 0.03
    assert shares(standing, harvest, lost={"fruit": 3.0}) == {"vegetable": 8.0, "fruit": 8.0}
    assert shares(standing, harvest, lost={"fruit": 3.1}) == {"vegetable": 8.0}
    nothing = [Harvest("vegetable", 10, 0.0)]
    assert shares(standing, nothing) == {"vegetable": 8.0}, "what brings nothing lost nothing"
    given = needs([jar(n) for n in range(20)], TWO, START, {}, {}, harvest, lost={"vegetable": 9.0})
    assert set(given.shares) == {"fruit"}


def test_the_garden_is_expected_to_do_again_what_it_did() -> None:
    put_up = [
        PutUp("beans", Group.VEGETABLE, 30.0, START - timedelta(weeks=12)),
        PutUp("beans", Group.VEGETABLE, 50.0, START - timedelta(weeks=64)),
    ]
    stock = [jar(1), jar(1, "peas")]
    found = expected(put_up, stock, START, {"peas": START + timedelta(weeks=33)})
    assert found == [Harvest("vegetable", 40, 30.0), Harvest("vegetable", 33, 0.0)]


def winter(stock: list[Candidate], harvest: date, weeks: int) -> list[list[str]]:
    """The foods of each week, when each is planned and eaten as planned."""
    log: dict[str, list[float]] = {one.food: [] for one in stock}
    harvests = dict.fromkeys(log, harvest)
    found = []
    for week in range(weeks):
        start = START + timedelta(weeks=week)
        coming = expected([], stock, start, harvests)
        need = needs(stock, TWO, start, harvests, log, coming)
        picks = plan(stock, TWO, start, need).picks
        gone = {pick.candidate.container for pick in picks}
        for food, eaten in log.items():
            eaten.append(sum(p.candidate.servings for p in picks if p.candidate.food == food))
        found.append(sorted(pick.candidate.food for pick in picks))
        stock = [one for one in stock if one.container not in gone]
    return found


def test_eight_jars_for_sixteen_weeks_come_every_other_week() -> None:
    weeks = winter(
        [*[jar(n) for n in range(8)], *[jar(n, "peas") for n in range(32)]],
        START + timedelta(weeks=16),
        16,
    )
    beans = [week.count("beans") for week in weeks]
    assert beans[:8] == [1, 0] * 4
    assert sum(beans) == 8


def test_no_week_is_empty_while_something_stands() -> None:
    weeks = winter([jar(n) for n in range(8)], START + timedelta(weeks=16), 9)
    assert [len(week) for week in weeks] == [1] * 8 + [0]


def test_two_foods_take_turns_and_both_last() -> None:
    stock = [*[jar(n) for n in range(9)], *[jar(n, "peas") for n in range(9)]]
    weeks = winter(stock, START + timedelta(weeks=18), 18)
    assert [len(week) for week in weeks] == [1] * 18
    assert all(weeks[n] != weeks[n + 1] for n in range(17))


def test_a_small_stock_of_one_food_comes_seldom_beside_a_big_one() -> None:
    stock = [*[jar(n) for n in range(24)], *[jar(n, "peas") for n in range(3)]]
    weeks = winter(stock, START + timedelta(weeks=27), 27)
    peas = [number for number, week in enumerate(weeks) if "peas" in week]
    assert len(peas) == 3
    assert min(b - a for a, b in pairwise(peas)) >= 5
    assert max(len(week) for week in weeks) <= 2
