"""What is learned from the log: drawn amounts, opened jars, unrecorded use, full weeks."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.plan.appetite import FOOD_CEILING
from pantry_tui.core.words import Group
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import portions
from pantry_tui.services.plan.eaten import eaten_a_week, full_weeks, learned
from pantry_tui.services.stock import act, places, undo
from pantry_tui.services.stock import count as rounds
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("bins", "cellar")):
            places.add(pantry, name, climate)
        yield pantry


def test_a_drawn_amount_is_its_part_of_the_crate(p: Pantry) -> None:
    p.today = TODAY - timedelta(weeks=10)
    code = up(p, "1 crate carrots, cellar-stored, bins, amount=30lb")
    (crate,) = p.stock.containers.values()
    assert portions.whole(p, crate) == 90, "three servings to a pound of roots"
    for _ in range(10):
        act.use(p, code, "8 oz")
        p.today += timedelta(weeks=1)
    (crate,) = p.stock.containers.values()
    assert crate.amount == "25 lb"
    assert portions.left_in(p, crate) == pytest.approx(75)
    assert eaten_a_week(p)["carrots"] == pytest.approx(1.5, rel=0.01)
    # The rest is thrown away: only what was still in it is lost.
    act.discard(p, code, "all", why="soft, slimy or rotten")
    assert portions.leavings(p)[-1].servings == pytest.approx(75)


def test_an_opened_jar_counts_once_and_a_discarded_one_not_at_all(p: Pantry) -> None:
    p.today = TODAY - timedelta(weeks=9)
    code = up(p, "12 pint jars peaches, boiling-water canned, larder, 2026-08-01")
    for number in range(1, 10):
        act.open_(p, f"{code}/{number}")
        act.use(p, f"{code}/{number}")
        p.today += timedelta(weeks=1)
    act.open_(p, f"{code}/10")
    act.discard(p, f"{code}/10", why="nobody would eat it")
    assert eaten_a_week(p)["peaches"] == pytest.approx(4, rel=0.01)


def test_weeks_without_any_do_not_make_a_household_eat_more_slowly(p: Pantry) -> None:
    p.today = TODAY - timedelta(weeks=30)
    code = up(p, "10 pint jars peaches, boiling-water canned, larder")
    for _ in range(10):
        act.use(p, code)
        p.today += timedelta(weeks=1)
    p.today = TODAY
    assert eaten_a_week(p)["peaches"] == pytest.approx(4, rel=0.01)


def test_less_than_eight_weeks_teach_nothing(p: Pantry) -> None:
    p.today = TODAY - timedelta(weeks=6)
    code = up(p, "10 pint jars peaches, boiling-water canned, larder")
    act.use(p, code)
    p.today = TODAY
    assert eaten_a_week(p) == {}
    assert full_weeks(p) == ({}, {})


def test_unrecorded_use_counts_as_eaten_since_the_round_before(p: Pantry) -> None:
    p.today = TODAY - timedelta(weeks=40)
    code = up(p, "20 pint jars peaches, boiling-water canned, larder")
    larder = p.find_place("larder")
    for weeks_ago, seen in ((20, 20), (0, 15)):
        p.today = TODAY - timedelta(weeks=weeks_ago)
        rounds.from_counts(p, larder, {code: seen})
        rounds.finish(p, larder)
    assert eaten_a_week(p)["peaches"] == pytest.approx(5 * 4 / 20, rel=0.02)
    foods, _ = full_weeks(p)
    assert foods["peaches"] == pytest.approx(20 / 21), "spread over the weeks between"
    undo.undo(p)
    assert eaten_a_week(p) == {}


def test_a_full_week_is_the_upper_quartile_of_those_in_which_it_was_eaten(p: Pantry) -> None:
    p.today = TODAY - timedelta(weeks=20)
    peaches = up(p, "40 pint jars peaches, boiling-water canned, larder")
    plums = up(p, "9 pint jars plums, boiling-water canned, larder")
    p.today = TODAY - timedelta(weeks=16) + timedelta(days=1)
    for week in range(16):
        # Every third week three jars, the others one; plums beside them in the last eight weeks.
        act.use(p, peaches, "3" if week % 3 == 0 else "1")
        if week >= 8:
            act.use(p, plums)
        p.today += timedelta(weeks=1)
    p.today = TODAY
    foods, groups = full_weeks(p)
    assert foods["peaches"] == pytest.approx(12)
    assert foods["plums"] == pytest.approx(4)
    assert groups[Group.FRUIT] == pytest.approx(12)
    assert learned(p)["peaches"] == pytest.approx(12 / p.people)
    assert learned(p)["plums"] == FOOD_CEILING, "who was not offered more could not eat more"
