"""What is past its best and safe is wanted within a quarter of a year, of each food the first, and
so each quarter again; never before what really presses."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core import dates
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import outlook as outlooks
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.candidates import unasked
from pantry_tui.services.stock import places
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.stands import stands
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)
JARS = "pint jars {food}, boiling-water canned, larder, {made}"
QUARTER = timedelta(weeks=13)


@pytest.fixture
def p(p: Pantry) -> Pantry:
    places.add(p, "cellar", "cellar")
    return p


def jars(p: Pantry, food: str, best: date, n: int = 10) -> str:
    """Best within a year while the seal holds."""
    made = best.replace(year=best.year - 1)
    return up(p, f"{n} {JARS.format(food=food, made=made)}")


@pytest.mark.parametrize("days", [1, 30, 84, 88, 91, 92, 300])
def test_what_goes_soft_comes_before_canned_fruit_that_is_past_its_best(
    p: Pantry, days: int
) -> None:
    jars(p, "peaches", TODAY - timedelta(days=days))
    up(p, "1 crate apples, cellar-stored, cellar, 2026-10-12 amount=10lb")
    fruit = [take for take in weeks.week(p).take if take.role == "fruit"]
    assert fruit[0].food == "apples"
    for take in fruit:
        assert not take.why[0].startswith("It falls due")


@pytest.mark.parametrize(
    ("ago", "wanted"),
    [
        (timedelta(days=1), TODAY + QUARTER - timedelta(days=1)),
        (QUARTER, TODAY + timedelta(weeks=5)),
        (QUARTER + timedelta(days=1), TODAY + QUARTER - timedelta(days=1)),
        (5 * QUARTER - timedelta(days=40), TODAY + timedelta(days=40)),
    ],
)
def test_the_first_of_it_is_wanted_within_a_quarter_and_no_other(
    p: Pantry, ago: timedelta, wanted: date | None
) -> None:
    jars(p, "peaches", TODAY - ago, 3)
    jars(p, "peaches", TODAY - ago, 3)
    mine = [one.last for one in unasked(p, TODAY) if one.food == "peaches"]
    assert mine == [wanted, *[None] * 5]


@pytest.mark.parametrize("ago", [(80, 1), (1, 80)])
def test_of_two_lots_the_older_sets_its_day_in_whatever_order_they_were_booked(
    p: Pantry, ago: tuple[int, int]
) -> None:
    for days in ago:
        jars(p, "peaches", TODAY - timedelta(days=days), 2)
    mine = [one.last for one in unasked(p, TODAY) if one.food == "peaches"]
    assert mine == [TODAY + timedelta(weeks=5), None, None, None]


def test_of_a_crop_that_goes_soft_all_is_wanted_also_beside_what_is_put_up(p: Pantry) -> None:
    jars(p, "apples", TODAY - timedelta(days=9), 3)
    up(p, "2 crates apples, cellar-stored, cellar, 2026-09-20 amount=10lb")
    crates = [one.last for one in unasked(p, TODAY) if one.food == "apples" and one.bulk]
    assert len(crates) == 2
    assert all(day is not None and day <= TODAY + QUARTER for day in crates)


def test_the_first_in_is_still_the_first_out_of_a_food(p: Pantry) -> None:
    old = jars(p, "peaches", TODAY - timedelta(days=200), 2)
    jars(p, "peaches", TODAY + timedelta(days=200), 9)
    first = next(take for take in weeks.week(p).take if take.food == "peaches")
    assert first.code == old


def test_a_swap_names_what_goes_soft_before_what_is_long_past_its_best(p: Pantry) -> None:
    up(p, f"9 {JARS.format(food='pears', made='2026-08-01')}")
    weeks.accept(p)
    jars(p, "peaches", TODAY - timedelta(days=200))
    up(p, "1 crate apples, cellar-stored, cellar, 2026-10-12 amount=10lb")
    take = weeks.week(p).take[0]
    could = [batch_named(p, one).food.name for one in wishes.swaps(p, take.containers[0])]
    assert could == ["apples", "peaches"]


@pytest.mark.parametrize(("days", "says"), [(60, True), (70, True), (160, False)])
def test_the_outlook_says_when_a_crop_past_its_best_goes_soft(
    p: Pantry, days: int, says: bool
) -> None:
    up(p, f"1 crate apples, cellar-stored, cellar, {TODAY - timedelta(days=days)} amount=30lb")
    past_best = [one.best_by for one in stands(p) if one.line.food == "apples"]
    assert past_best[0] is not None
    assert past_best[0] < TODAY
    soft = dates.say(past_best[0] + QUARTER)
    (line,) = [one.pace_says for one in outlooks.outlook(p).foods if one.food == "apples"]
    assert (soft in line) is says
    assert ("soft" in line) is says
