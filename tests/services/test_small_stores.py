"""The week and the outlook of small stores whose right answers are reckoned by hand."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services import act, appetite, places, putup, wishes
from pantry_tui.services import week as weeks
from pantry_tui.services.pantry import Pantry, create, open_pantry

TODAY = date(2026, 11, 25)  # a Wednesday


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("chest", "freezer")):
            places.add(pantry, name, climate)
        yield pantry


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


# -- what must go and has no day -------------------------------------------------------------------


def test_what_goes_off_while_nobody_is_at_home_is_said_and_what_is_frozen_is_not(
    p: Pantry,
) -> None:
    up(p, "6 pint tubs chicken stock, frozen, chest, 2026-10-01")
    tray = up(p, "2 trays lasagne, cooked meal, fridge, 2026-11-24")  # three days: to the 27th
    appetite.read_table(p, "away 26 nov to 5 dec")
    (note,) = weeks.week(p).notes
    assert note.startswith(f"{tray}/1, {tray}/2 lasagne must be eaten by Fri 27 Nov 2026")


def test_more_than_can_be_eaten_in_time_is_said(p: Pantry) -> None:
    tray = up(p, "9 trays lasagne, cooked meal, fridge, 2026-11-24")
    found = weeks.week(p)
    planned = sum(take.count for take in found.take)
    assert 0 < planned < 9
    (note,) = found.notes
    assert note.startswith(f"{9 - planned} of {tray} lasagne must be eaten by Fri 27 Nov 2026")


def test_an_accepted_week_says_what_no_longer_keeps_until_its_day(p: Pantry) -> None:
    code = up(p, "6 pint jars tomatoes, boiling-water canned, larder, 2025-12-20")
    wishes.pin(p, f"{code}/1", date(2026, 12, 1))
    weeks.accept(p)
    assert weeks.week(p).notes == ()
    act.open_(p, f"{code}/1")  # three days in the fridge: to the 28th
    (note,) = weeks.week(p).notes
    assert note.startswith(f"{code}/1 tomatoes must be eaten by Sat 28 Nov 2026")


def test_what_nobody_eats_is_said_before_it_goes_off(p: Pantry) -> None:
    up(p, "1 tray lasagne, cooked meal, fridge, 2026-11-24")
    appetite.set_ceiling(p, "lasagne", "0")
    found = weeks.week(p)
    assert found.take == () and len(found.notes) == 1


# -- a big one -------------------------------------------------------------------------------------


def test_a_thawed_roast_keeps_three_days_and_the_rest_is_shared(p: Pantry) -> None:
    """Nine pounds are 36 servings. At 4 lb a day it thaws from Wednesday to Saturday; raw beef
    keeps three days then, so four people eat on four days, 16 servings: 20 are left."""
    up(p, "1 9-lb bag beef roast, frozen, chest, 2025-11-30")
    (roast,) = weeks.week(p).take
    assert roast.thaw_by == TODAY and roast.servings == 36
    assert [day.isoformat() for day in roast.days] == [
        "2026-11-28", "2026-11-29", "2026-11-30", "2026-12-01",
    ]  # fmt: skip
    assert any(why.startswith("About 20 servings are more than you can eat") for why in roast.why)


def test_a_jar_that_goes_on_into_next_week_is_not_to_be_finished_in_this_one(p: Pantry) -> None:
    """A pint of jam is 16 servings; two people eat 14 of them in seven days."""
    appetite.set_people(p, 2)
    up(p, "8 pint jars strawberry jam, jam, larder, 2026-03-17")
    (jar,) = weeks.week(p).take
    assert len(jar.days) == 7
    said = next(why for why in jar.why if why.startswith("It is for"))
    assert said.startswith("It is for 7 days, and about 2 servings for next week")
    assert "1 Dec" not in said
    weeks.accept(p)
    assert weeks.week(p).take[0].why == jar.why


# -- which week ------------------------------------------------------------------------------------


def test_a_week_that_is_over_is_refused(p: Pantry) -> None:
    for ask in (weeks.week, weeks.accept):
        with pytest.raises(BadInput, match="is over"):
            ask(p, TODAY - timedelta(days=7))
    assert weeks.week(p, TODAY - timedelta(days=6)).end == TODAY


def test_an_empty_week_says_whether_there_is_anything(p: Pantry) -> None:
    assert not weeks.week(p).stocked
    up(p, "5 half-pint jars raspberry jam, jam, larder, today")
    found = weeks.week(p)
    assert found.take == () and found.stocked
