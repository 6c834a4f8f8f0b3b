"""The outlook of a store: alarms, groups, and what to put up from what was eaten."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.plan.appetite import FOOD_CEILING
from pantry_tui.core.plan.pace_words import Unit, a_week
from pantry_tui.core.words import Group
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import paces
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.appetite import appetite, set_table
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import act, places, view
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.seen import At
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge")):
            places.add(pantry, name, climate)
        yield pantry


def test_what_falls_due_at_once_raises_the_alarm(p: Pantry) -> None:
    up(p, "12 pint jars peaches, boiling-water canned, larder, 2025-12-05")
    found = outlook(p)
    (peaches,) = found.foods
    assert peaches.food == "peaches"
    assert peaches.group == "fruit"
    assert peaches.servings == 48
    assert peaches.pace_need > peaches.pace_can
    assert peaches.lost > 0
    assert any("pass their date" in one for one in found.alarms)
    assert [group.food for group in found.groups] == ["fruit"]


def test_the_appetite_is_learned_from_eight_weeks_of_use(p: Pantry) -> None:
    code = up(p, "30 pint jars runner beans, pressure canned, larder, 2026-08-01")
    for week in range(10, 0, -1):
        act.use(p, code, at=At(TODAY - timedelta(weeks=week)))
    (beans,) = outlook(p).foods
    assert beans.rate == pytest.approx(4, rel=0.05), "a pint of four servings a week"
    assert beans.runs_out is not None or beans.left > 0
    assert beans.put_up is None, "what is eaten in a year nobody knows after ten weeks"
    assert "not known yet" in beans.reckoning


def test_what_is_unfit_is_no_supply(p: Pantry) -> None:
    up(p, "2 jars garlic, in oil, fridge, 2026-10-01")
    assert outlook(p).foods == ()


def test_the_week_and_the_outlook_know_one_ceiling(p: Pantry) -> None:
    up(p, "40 pint jars runner beans, pressure canned, larder, 2025-12-15")
    up(p, "1 net onions, cellar-stored, larder, 2026-10-01 amount=20lb")
    up(p, "20 pint jars chicken, pressure canned, larder, 2026-09-01")
    eats = appetite(p)
    most = eats.of_food("runner beans")
    assert most == 2 * FOOD_CEILING
    assert paces.most_eaten(p, eats, "runner beans", Group.VEGETABLE, None) == most
    row = next(one for one in outlook(p).foods if one.food == "runner beans")
    assert f"at most {a_week(most, Unit(4.0, 'jars'), at_most=True)}" in row.pace_says
    assert row.rate <= most
    laid = sum(take.servings for take in weeks.week(p).take if take.food == "runner beans")
    assert laid <= most + 4, "no more than the jar that is begun"


def test_a_main_is_eaten_as_often_as_no_other_stands(p: Pantry) -> None:
    eats, until = appetite(p), TODAY + timedelta(days=27)
    places.add(p, "freezer", "freezer")
    up(p, "60 1 lb packs ground beef, frozen, freezer, 2026-11-01")
    assert paces.most_eaten(p, eats, "ground beef", Group.MEAT, until) == 14, "a main a day for two"
    up(p, "6 1 lb packs cod, frozen, freezer, 2026-11-01")
    cod = next(one for one in outlook(p).foods if one.food == "cod").servings / 4
    assert cod > 2
    others = min(cod, eats.of_group(Group.FISH), eats.of_food("cod"))
    assert paces.most_eaten(p, eats, "ground beef", Group.MEAT, until) == 14 - others


def test_a_pace_heeds_that_nobody_is_at_home(p: Pantry) -> None:
    usual = paces.most_eaten(p, appetite(p), "beef", Group.MEAT, TODAY + timedelta(days=13))
    assert usual == 14, "a main a day for two"
    set_table(p, 0, TODAY, TODAY + timedelta(days=6))
    away = paces.most_eaten(p, appetite(p), "beef", Group.MEAT, TODAY + timedelta(days=13))
    assert away == pytest.approx(usual / 2)


def test_what_the_accepted_week_eats_is_not_told_to_be_given_away(p: Pantry) -> None:
    up(p, "4 pint jars peaches, boiling-water canned, larder, 2025-12-02")
    appetite_of = outlook(p).foods[0]
    weeks.accept(p)
    eaten = sum(one.servings for one in weeks.week(p).take)
    (peaches,) = outlook(p).foods
    assert appetite_of.lost > peaches.lost, "what the week eats is not lost"
    assert peaches.servings == appetite_of.servings == 16, "all of it stands still"
    assert peaches.lost == pytest.approx(16 - eaten, abs=0.5)
    assert outlook(p).household.lost == peaches.lost
    p.today += timedelta(days=1)
    assert outlook(p).foods[0].lost >= peaches.lost, "what was not eaten is not in the week"


@pytest.mark.parametrize(
    "line", ["1 half-pint jar garlic in oil, fridge", "1 box lasagne, fridge, 2026-11-24"]
)
def test_nothing_runs_out_after_its_last_safe_day_whatever_the_week_eats(
    p: Pantry, line: str
) -> None:
    up(p, line)
    (last,) = {row.discard_after for row in view.due(p)}
    assert last is not None
    before = outlook(p).foods[0]
    weeks.accept(p)
    (take,) = {one.day for one in weeks.week(p).take[-1:]}
    (food,), whole = outlook(p).foods, outlook(p).household
    assert food.lost == 0, "what the accepted week eats is not lost"
    assert food.runs_out == whole.runs_out == take
    for gone in (food.runs_out, before.runs_out):
        assert gone is not None
        assert gone <= last


def test_what_the_week_eats_after_its_last_safe_day_is_lost(p: Pantry) -> None:
    up(p, "2 boxes lasagne, fridge, 2026-11-25")
    weeks.accept(p)
    assert len({one.day for one in weeks.week(p).take}) > 1
    assert outlook(p).foods[0].lost == 0
    correct(p, "2A", made="2026-11-22")
    (lasagne,) = outlook(p).foods
    assert lasagne.lost > 0
    assert lasagne.runs_out == TODAY


def test_of_what_the_week_eats_up_the_outlook_says_that_alone(p: Pantry) -> None:
    up(p, "2 pint jars peaches, boiling-water canned, larder, 2025-12-02")
    weeks.accept(p)
    (peaches,) = outlook(p).foods
    assert (peaches.lost, peaches.hoarding) == (0, "")
    assert peaches.pace_says == "Peaches: all of it is in the accepted week."


def test_what_is_dried_to_be_eaten_by_the_slice_is_no_main(p: Pantry) -> None:
    eats, until = appetite(p), TODAY + timedelta(days=27)
    up(p, "12 1 lb bags beef, dried, fridge, 2026-11-22")
    alone = paces.usual_room(p, eats, "beef", Group.MEAT, until)
    assert alone == min(eats.of_food("beef"), eats.of_group(Group.MEAT)), "not each meal of a week"
    up(p, "9 pint jars chicken, pressure canned, larder, 2026-09-01")
    assert paces.usual_room(p, eats, "chickens", Group.MEAT, until) == 14, (
        "it takes no meal of these"
    )
