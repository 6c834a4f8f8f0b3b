"""What to put up next, of households made by hand: what a cook would say, and never what made one
laugh (75 pints for two people who had six)."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.services.books import rating
from pantry_tui.services.books.rows import FoodAhead
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.own_yields import own_yields
from pantry_tui.services.stock import act, places, undo
from pantry_tui.services.stock.seen import At
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("freezer", "freezer"), ("bins", "cellar")):
            places.add(pantry, name, climate)
        yield pantry


def eat(p: Pantry, code: str, first: date, every: int, times: int) -> None:
    for number in range(times):
        act.use(p, code, at=At(first + timedelta(days=every * number)))


def of(p: Pantry, food: str) -> FoodAhead:
    return next(one for one in outlook(p).foods if one.food == food)


def test_two_who_had_six_pints_of_tomatoes_want_about_six(p: Pantry) -> None:
    old = up(p, "6 pint jars tomatoes, boiling-water canned, larder, 2025-08-20")
    eat(p, old, date(2025, 10, 1), 50, 6)
    new = up(p, "6 pint jars tomatoes, boiling-water canned, larder, 2026-08-20")
    eat(p, new, date(2026, 9, 20), 30, 2)
    tomatoes = of(p, "tomatoes")
    assert tomatoes.put_up is not None
    assert 5 <= tomatoes.put_up <= 9
    assert "as eaten" in tomatoes.reckoning


def test_five_pickles_gone_in_five_weeks_are_not_thirty_two(p: Pantry) -> None:
    for year in (2025, 2026):
        code = up(p, f"5 pint jars dill pickles, vinegar pickle, larder, vinegar=5%, {year}-08-20")
        eat(p, code, date(year, 10, 1), 7, 5)
    pickles = of(p, "dill pickles")
    assert pickles.put_up is not None
    assert 5 <= pickles.put_up <= 10


def test_in_a_first_year_nobody_knows_yet_and_a_new_food_is_new(p: Pantry) -> None:
    code = up(p, "30 quart jars crushed tomatoes, boiling-water canned, larder, 2026-08-20")
    eat(p, code, date(2026, 9, 1), 7, 12)
    found = of(p, "crushed tomatoes")
    assert (found.put_up, found.pounds) == (None, None)
    assert "full year" in found.reckoning
    view = outlook(p)
    assert view.household.put_up is None
    old = up(p, "8 pint jars plums, boiling-water canned, larder, 2025-08-20")
    eat(p, old, date(2025, 10, 1), 40, 8)
    view = outlook(p)
    assert next(one for one in view.foods if one.food == "plums").put_up is not None
    assert view.household.put_up == of(p, "plums").put_up, "of what is known"


def test_what_nobody_recorded_is_put_up_as_last_year(p: Pantry) -> None:
    up(p, "12 pint jars pears, boiling-water canned, larder, 2025-09-10")
    code = up(p, "12 pint jars pears, boiling-water canned, larder, 2026-09-10")
    for ref in (code, "2A"):
        act.missing(p, ref, 12)
    pears = of(p, "pears") if any(o.food == "pears" for o in outlook(p).foods) else None
    assert pears is None or (pears.put_up or 0) <= 24


def test_two_ways_share_by_what_was_eaten_of_each(p: Pantry) -> None:
    canned = up(p, "20 pint jars runner beans, pressure canned, larder, 2025-08-20")
    frozen = up(p, "20 pint bags runner beans, frozen, freezer, 2025-08-20")
    eat(p, canned, date(2026, 1, 1), 20, 15)
    eat(p, frozen, date(2026, 1, 3), 60, 5)
    ways = {one.method: one.count for one in of(p, "runner beans").ways}
    assert set(ways) == {"pressure canned", "frozen"}
    assert ways["pressure canned"] == pytest.approx(3 * ways["frozen"], abs=3)
    rating.taste(p, frozen, "not again", "watery")
    assert of(p, "runner beans").ways == (), "one way is left"
    undo.undo(p)
    assert len(of(p, "runner beans").ways) == 2


def test_what_keeps_for_months_is_not_put_up_for_a_year(p: Pantry) -> None:
    code = up(p, "1 crate carrots, cellar-stored, bins, 2025-10-01 amount=60lb")
    for week in range(18):
        p.today = date(2025, 10, 5) + timedelta(weeks=week)
        act.use(p, code, "3 lb")
    p.today = TODAY
    carrots = of(p, "carrots")
    assert "as long as it keeps" in carrots.reckoning
    assert carrots.pounds is not None
    assert carrots.pounds <= 60


def test_own_jars_a_pound_go_before_published_ones(p: Pantry) -> None:
    old = up(p, "10 pint jars peaches, boiling-water canned, larder, 2025-08-20")
    eat(p, old, date(2025, 10, 1), 30, 10)
    published = of(p, "peaches")
    assert published.pounds == pytest.approx((published.put_up or 0) * 1.25)
    crop = up(p, "1 crate peaches, fresh, bins, 2026-08-18 amount=40lb")
    p.today = date(2026, 8, 19)
    up(p, f"10 pint jars peaches, boiling-water canned, larder from 20 lb of {crop}")
    p.today = TODAY
    (mine,) = own_yields(p).values()
    assert mine.lb_a_serving == pytest.approx(0.5)
    own = of(p, "peaches")
    assert "of your own" in own.pounds_note
    assert own.pounds == pytest.approx((own.put_up or 0) * 2.0)
    undo.undo(p)
    assert not own_yields(p)


def test_what_is_bought_has_no_harvest_and_no_alarm_about_one(p: Pantry) -> None:
    bacon = up(p, "9 1 lb packs bacon, bought in, freezer, 2026-06-01, best by 2027-02-01")
    eat(p, bacon, date(2026, 6, 10), 14, 9)
    up(p, "9 1 lb packs bacon, bought in, freezer, 2026-11-01, best by 2027-08-01")
    up(p, "9 tins tomatoes, bought in, larder, 2026-11-01, best by 2027-11-01")
    up(p, "9 pint jars beets, pressure canned, larder, 2026-08-20")
    assert of(p, "beets").harvest == date(2027, 7, 1)
    for food in ("bacon", "tomatoes"):
        found = of(p, food)
        assert found.harvest is None
        said = (found.says, found.pace_says, found.hoarding, found.rationing)
        assert "harvest" not in " ".join(said)
        assert not found.rationing
