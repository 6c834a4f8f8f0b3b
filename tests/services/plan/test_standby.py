"""For an evening whose main has to thaw the week names a supper that needs none, and how long the
mains last."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.services.output import paper
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import dishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.standby import mains_last
from pantry_tui.services.stock import act, places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)
NONE = "No main stands that is ready without thawing"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "s.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "s.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("chest", "freezer")):
            places.add(pantry, name, climate)
        up(pantry, "20 1 lb packs ground beef, frozen, chest, 2026-11-01")
        yield pantry


def thawing(p: Pantry) -> list[date]:
    return sorted({take.day for take in weeks.week(p).take if take.thaw_by})


def test_where_all_mains_must_thaw_it_says_so(p: Pantry) -> None:
    up(p, "10 quart jars peaches, boiling-water canned, larder, 2026-10-01")
    found = weeks.week(p)
    # What was cooked the evening before and goes on needs no thawing; tonight none is thawed yet.
    goes_on = {day for take in found.take if take.thaw_by for day in take.days if day > take.day}
    assert {one.day for one in found.no_thaw} == {TODAY, *thawing(p)} - goes_on
    assert {one.food for one in found.no_thaw} == {""}
    assert sum(NONE in one for one in found.notes) == 1


def test_for_today_a_small_pack_thaws_in_cold_water(p: Pantry) -> None:
    eaten = up(p, "1 quart jar chicken, pressure canned, larder, minutes=90 psi=11, 2026-10-01")
    act.use(p, eaten)
    assert not any("cold water" in one for one in weeks.week(p).notes), "today's main is eaten"
    p.today += timedelta(days=1)
    (said,) = [one for one in weeks.week(p).notes if "cold water" in one]
    name = said.split()[2]
    assert said.startswith(f"For today {name} ground beef (chest) can thaw in cold water")
    assert "every half hour" in said
    assert "Cook it at once" in said
    act.thaw(p, name, "cold water")
    found = weeks.week(p)
    assert [take.day for take in found.take if name in take.containers] == [p.today]
    assert not any("cold water" in one for one in found.notes)


def test_nothing_thaws_in_cold_water_where_another_main_is_ready_or_a_bird_alone_stands(
    p: Pantry,
) -> None:
    up(p, "3 quart jars chicken, pressure canned, larder, minutes=90 psi=11, 2026-10-01")
    assert not any("cold water" in one for one in weeks.week(p).notes)
    for name in ("2A", "3A"):
        while any(one.here for one in p.containers_of(p.batch(name) or p.batches()[0])):
            act.use(p, name, any_=True)
    up(p, "1 turkey 14 lb, frozen, chest, 2026-11-01")
    assert not any("cold water" in one for one in weeks.week(p).notes)


def test_a_main_that_needs_none_stands_ready_also_once_the_week_is_accepted(p: Pantry) -> None:
    code = up(p, "3 quart jars chicken, pressure canned, larder, minutes=90 psi=11, 2026-10-01")
    for accept in (False, True):
        if accept:
            weeks.accept(p)
        found = weeks.week(p)
        assert {one.day for one in found.no_thaw} <= {TODAY, *thawing(p)}
        assert {(one.code, one.place) for one in found.no_thaw} <= {(code, "larder")}
        (said,) = [one for one in found.notes if "without thawing" in one]
        assert f"({code}, larder)" in said
        assert said in paper.sheet(p, "week").notes


def test_what_is_eaten_before_that_evening_is_not_counted_on(p: Pantry) -> None:
    """A cooked meal that must be eaten on the first days is gone on the last."""
    up(p, "2 boxes lasagne, cooked meal, fridge, 2026-11-24")
    found = weeks.week(p)
    meals = [day for take in found.take if take.food == "lasagne" for day in take.days]
    assert meals
    later = [one for one in found.no_thaw if one.day > max(meals)]
    assert later
    assert all(one.food == "" for one in later)


def test_a_dish_of_one_s_own_is_a_supper(p: Pantry) -> None:
    up(p, "4 pint jars runner beans, pressure canned, larder, minutes=20 psi=11, 2026-10-01")
    up(p, "30 quart jars peaches, boiling-water canned, larder, 2026-10-01")
    dishes.keep(p, "beans and peaches = 4 runner beans, 4 peaches")
    names = {one.food for one in weeks.week(p).no_thaw}
    assert names <= {"", "beans and peaches"}
    assert "beans and peaches" in names


def test_mains_that_do_not_last_are_said_with_their_day(p: Pantry) -> None:
    (said,) = [one for one in weeks.week(p).notes if "mains for 2 stand" in one]
    # Eighty servings, two a day.
    assert said == "About 40 mains for 2 stand: at 7 a week they last to Sun 3 Jan 2027."
    up(p, "20 1 lb packs ground beef, frozen, chest, 2026-11-01")
    assert not any("mains for 2" in one for one in weeks.week(p).notes), "eleven weeks are no news"
    assert TODAY + timedelta(days=39) == date(2027, 1, 3)


def test_the_mains_last_by_who_sits_at_the_table() -> None:
    start, many = date(2026, 12, 20), {date(2026, 12, 25): 10}
    away = {start + timedelta(days=n): 0 for n in range(3)}

    def last(table: dict[date, int], meals: int = 7) -> str:
        (said,) = mains_last(Appetite(2, meals=meals, table=table), 28.0, start)
        return said.rpartition("to ")[2]

    assert last({}) == "Sat 2 Jan 2027."
    assert last(many) == "Tue 29 Dec 2026.", "eight more on one day are four days of two"
    assert last(away) == "Tue 5 Jan 2027."
    assert last({}, meals=4) == "Tue 12 Jan 2027."
    assert not list(mains_last(Appetite(2), 200.0, start))
