"""The week and the outlook of small stores whose right answers are reckoned by hand."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.losses import losses
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import appetite, dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import act, places, undo

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
    tray = up(p, "4 trays lasagne, cooked meal, fridge, 2026-11-24")  # three days: to the 27th
    appetite.read_table(p, "away 26 nov to 5 dec")
    note = next(one for one in weeks.week(p).notes if "lasagne" in one)
    # Three are for today, before they leave: a serving and a half each, rather than lost.
    assert note.startswith(f"{tray}/4 lasagne must be eaten by Fri 27 Nov 2026")
    assert not any("stock" in one and "must be eaten" in one for one in weeks.week(p).notes)


def test_more_than_can_be_eaten_in_time_is_said(p: Pantry) -> None:
    tray = up(p, "12 trays lasagne, cooked meal, fridge, 2026-11-24")
    found = weeks.week(p)
    planned = sum(take.count for take in found.take)
    assert 0 < planned < 12
    note = next(one for one in found.notes if "lasagne" in one)
    named, _, said = note.partition(" lasagne ")
    assert said.startswith("must be eaten by Fri 27 Nov 2026")
    rest = [f"{tray}/{n}" for n in range(planned + 1, 13)]
    assert named in (", ".join(rest), f"{len(rest)} of {tray}")


def test_an_accepted_week_says_what_no_longer_keeps_until_its_day(p: Pantry) -> None:
    code = up(p, "6 pint jars tomatoes, boiling-water canned, larder, 2025-12-20")
    wishes.pin(p, f"{code}/1", date(2026, 12, 1))
    weeks.accept(p)
    assert weeks.week(p).notes == ()
    act.open_(p, f"{code}/1")  # three days in the fridge: to the 28th
    found = weeks.week(p)
    (note,) = found.notes
    (why,) = found.fallen
    assert (why.day, why.code) == (date(2026, 12, 1), code)
    assert "its last safe day is Sat 28" in why.told
    assert note.startswith(f"{code}/1 tomatoes must be eaten by Sat 28 Nov 2026")


def test_what_nobody_eats_is_said_before_it_goes_off(p: Pantry) -> None:
    up(p, "1 tray lasagne, cooked meal, fridge, 2026-11-24")
    appetite.set_ceiling(p, "lasagne", "0")
    found = weeks.week(p)
    assert found.take == ()
    assert len(found.notes) == 1


# -- a big one -------------------------------------------------------------------------------------


def test_a_thawed_roast_keeps_three_days_and_the_rest_is_shared(p: Pantry) -> None:
    """Nine pounds are 18 servings. At 5 lb a day it thaws from Wednesday to Friday; raw beef keeps
    three days then, so four people eat on four days, 16 servings: 2 are left."""
    up(p, "1 9-lb bag beef roast, frozen, chest, 2025-11-30")
    (roast,) = weeks.week(p).take
    assert roast.thaw_by == TODAY
    assert roast.servings == 18
    assert [day.isoformat() for day in roast.days] == [
        "2026-11-27",
        "2026-11-28",
        "2026-11-29",
        "2026-11-30",
    ]
    assert any(why.startswith("About 2 servings are more than you can eat") for why in roast.why)


def test_a_jar_that_goes_on_into_next_week_is_not_to_be_finished_in_this_one(p: Pantry) -> None:
    """A pint of jam is 16 servings; two people eat 14 of them in seven days."""
    appetite.set_people(p, 2)
    up(p, "8 pint jars strawberry jam, jam, larder, 2026-03-17")
    (jar,) = weeks.week(p).beside
    assert len(jar.days) == 7
    said = next(why for why in jar.why if why.startswith("It is for"))
    assert said.startswith("It is for 7 days, and about 2 servings for next week")
    assert "1 Dec" not in said
    weeks.accept(p)
    assert weeks.week(p).beside[0].why == jar.why


# -- which week ------------------------------------------------------------------------------------


def test_what_is_partly_for_the_next_week_is_opened_and_not_booked_as_finished(p: Pantry) -> None:
    appetite.set_people(p, 2)
    code = up(p, "1 quart jar tomatoes, boiling-water canned, larder, 2026-08-20")
    last = TODAY + timedelta(days=6)
    wishes.pin(p, f"{code}/1", last)
    weeks.accept(p)
    p.today = last
    weeks.eaten(p, last)
    (container,) = p.stock.containers.values()
    assert container.state is State.OPEN
    assert container.here
    with pytest.raises(Refused, match="has nothing more for"):
        weeks.eaten(p, last)


def test_a_day_of_a_jar_that_is_open_already_has_nothing_to_book(p: Pantry) -> None:
    appetite.set_people(p, 2)
    up(p, "1 pint jar strawberry jam, jam, larder, 2026-03-17")
    weeks.accept(p)
    weeks.eaten(p, TODAY)
    before = len(p.events)
    assert "nothing to book" in weeks.eaten(p, TODAY + timedelta(days=1)).message
    assert len(p.events) == before


def test_a_week_that_is_over_is_refused(p: Pantry) -> None:
    for ask in (weeks.week, weeks.accept):
        with pytest.raises(BadInput, match="is over"):
            ask(p, TODAY - timedelta(days=7))
    assert weeks.week(p, TODAY - timedelta(days=6)).end == TODAY


def test_an_empty_week_says_whether_there_is_anything(p: Pantry) -> None:
    assert not weeks.week(p).stocked
    up(p, "5 half-pint jars raspberry jam, jam, larder, today")
    found = weeks.week(p)
    assert found.take == ()
    assert found.stocked


# -- the outlook -----------------------------------------------------------------------------------


def test_what_nobody_eats_is_to_be_given_away_and_not_put_up_again(p: Pantry) -> None:
    """Eight jars, eaten at one a week in autumn; then the household has had enough of them."""
    p.today = TODAY - timedelta(weeks=10)
    code = up(p, "18 pint jars pickled beets, vinegar pickle, larder, 2026-01-05")
    for _ in range(10):
        act.use(p, code)
        p.today += timedelta(weeks=1)
    (beets,) = outlook(p).foods
    assert beets.put_up
    appetite.set_ceiling(p, "pickled beets", "0")
    (beets,) = outlook(p).foods
    said = "Pickled beets: not eaten here; give away eight jars by Tue 5 Jan 2027."
    assert beets.hoarding == beets.pace_says == said
    assert beets.put_up == 0


def test_the_household_plans_no_more_than_it_says_it_eats(p: Pantry) -> None:
    """Four servings a week were eaten; at half a serving for each of four people it is two:
    52 weeks of two servings, at four to the jar, are 26 jars."""
    p.today = TODAY - timedelta(weeks=10)
    code = up(p, "22 pint jars runner beans, pressure canned, larder, 2026-08-01")
    for _ in range(10):
        act.use(p, code)
        p.today += timedelta(weeks=1)
    appetite.set_ceiling(p, "runner beans", "0.5")
    (beans,) = outlook(p).foods
    assert beans.rate == 2
    assert "2.0 servings a week (as you said)" in beans.reckoning
    assert beans.left == 0
    assert beans.put_up == 26


def test_no_food_is_reckoned_to_be_eaten_faster_than_its_group(p: Pantry) -> None:
    """Four people eat two servings each of fish a week as they say, though three of any one food.
    Where nobody says it, the one main that stands is on the table of any day."""
    up(p, "40 1-lb packs cod, frozen, chest, 2026-11-01")
    (cod,) = outlook(p).foods
    assert cod.rate > 8
    appetite.set_ceiling(p, "fish", "2")
    (cod,) = outlook(p).foods
    assert cod.rate == 8


def test_a_nearer_look_asks_for_no_more_at_the_next_harvest(p: Pantry) -> None:
    up(p, "9 pint jars runner beans, pressure canned, larder, 2025-08-10")
    up(p, "9 pint jars runner beans, pressure canned, larder, 2026-08-10")
    (whole,) = outlook(p).foods
    (near,) = outlook(p, date(2027, 1, 1)).foods
    assert near.put_up is not None
    assert whole.put_up is not None
    assert near.put_up <= whole.put_up


def test_losses_of_a_time_are_a_share_of_what_stood_or_was_put_up_in_it(p: Pantry) -> None:
    """Ten jars, two gone in May: of the eight that stood in December one was lost."""
    p.today = date(2026, 5, 1)
    code = up(p, "10 pint jars dill pickles, vinegar pickle, larder, 2026-04-10")
    act.discard(p, code, 2, "seal failed")
    p.today = date(2026, 12, 10)
    act.discard(p, code, 1, "past its date")
    found = losses(p, date(2026, 12, 1))
    assert found.share == 0.125
    assert [row.share for row in found.rows] == [0.125]


# -- an accepted week is arranged again ------------------------------------------------------------


@pytest.fixture
def soup(p: Pantry) -> Pantry:
    """An accepted week with a dish on Friday."""
    appetite.set_people(p, 2)
    up(p, "6 pint jars runner beans, pressure canned, larder, 2026-01-20")
    up(p, "4 pint tubs chicken stock, frozen, chest, 2026-07-25")
    dishes.keep(p, "bean soup = 4 runner beans, 2 chicken stock")
    wishes.cook(p, "bean soup", date(2026, 11, 27))
    weeks.accept(p)
    return p


def cooked(p: Pantry) -> dict[str, date]:
    return {take.food: take.day for take in weeks.week(p).take if take.dish}


def test_a_dish_of_an_accepted_week_moves_with_all_that_it_takes(soup: Pantry) -> None:
    friday, monday = date(2026, 11, 27), date(2026, 11, 30)
    assert cooked(soup) == {"runner beans": friday, "chicken stock": friday}
    before = len(weeks.week(soup).take)
    wishes.cook(soup, "bean soup", monday)
    assert cooked(soup) == {"runner beans": monday, "chicken stock": monday}
    assert len(weeks.week(soup).take) == before
    undo.undo(soup)
    assert set(cooked(soup).values()) == {friday}


def test_a_new_dish_comes_into_an_accepted_week(soup: Pantry) -> None:
    dishes.keep(soup, "bean salad = 4 runner beans")
    wishes.cook(soup, "bean salad", date(2026, 11, 29))
    takes = [take for take in weeks.week(soup).take if take.dish == "bean salad"]
    assert [take.day for take in takes] == [date(2026, 11, 29)]
    assert set(cooked(soup)) == {"runner beans", "chicken stock"}  # the soup is there too


def test_what_is_unpinned_stays_in_an_accepted_week_and_the_rest_keeps_its_reason(
    soup: Pantry,
) -> None:
    was = {take.containers: take.why[0] for take in weeks.week(soup).take}
    lone = next(take for take in weeks.week(soup).take if not take.dish)
    wishes.unpin(soup, lone.containers[0])
    now = {take.containers: take.why[0] for take in weeks.week(soup).take}
    assert now.keys() == was.keys()
    assert all(now[one] == was[one] for one in was if one != lone.containers)


# -- a week accepted ahead -------------------------------------------------------------------------


def test_a_week_accepted_on_sunday_evening_is_eaten_from_monday_on(p: Pantry) -> None:
    p.today = date(2026, 11, 22)
    code = up(p, "12 pint jars tomatoes, boiling-water canned, larder, 2025-12-20")
    monday = date(2026, 11, 23)
    weeks.accept(p, monday)
    plan = weeks.week(p)
    assert plan.accepted
    assert plan.start == monday
    wishes.pin(p, f"{code}/12", date(2026, 11, 28))  # on Sunday still; the week stays accepted
    assert weeks.week(p).accepted
    assert weeks.week(p).start == monday
    with pytest.raises(BadInput):
        wishes.pin(p, f"{code}/12", date(2026, 11, 22))
    p.today = monday
    assert weeks.eaten(p, monday).message == f"Booked Mon 23 Nov 2026 as eaten: {code}/1 tomatoes."
    assert monday not in {take.day for take in weeks.week(p).take}


def test_a_later_week_is_not_accepted_over_one_that_runs(p: Pantry) -> None:
    up(p, "12 pint jars tomatoes, boiling-water canned, larder, 2025-12-20")
    weeks.accept(p)
    was = weeks.week(p)
    with pytest.raises(Refused, match="not all eaten"):
        weeks.accept(p, TODAY + timedelta(days=7))
    assert weeks.week(p) == was
    weeks.forget(p)
    weeks.accept(p, TODAY + timedelta(days=7))
    assert weeks.week(p).start == TODAY + timedelta(days=7)


def test_an_accepted_week_survives_what_another_window_does(p: Pantry) -> None:
    code = up(p, "12 pint jars tomatoes, boiling-water canned, larder, 2025-12-20")
    weeks.accept(p)
    was = [(take.day, take.containers) for take in weeks.week(p).take]
    with open_pantry(p.store.path, TODAY) as other:
        act.give(other, f"{code}/12", 1, "Aunt Sunniva")
        up(other, "9 pint jars peaches, boiling-water canned, larder, 2025-12-05")
        places.add(other, "attic", "room")
    act.use(p, f"{code}/11")
    undo.undo(p)
    found = weeks.week(p)
    assert found.accepted
    assert [(take.day, take.containers) for take in found.take] == was


def test_a_week_is_accepted_at_most_a_week_ahead(p: Pantry) -> None:
    with pytest.raises(BadInput, match="Wed 2 Dec 2026"):
        weeks.accept(p, TODAY + timedelta(days=8))


def test_of_a_crate_only_what_is_eaten_while_it_keeps_is_put_up(p: Pantry) -> None:
    """Forty pounds of carrots a year are 120 servings, 2.31 a week. They keep four months, 120 days
    from 25 November: 39.6 servings in that time, at three a pound 14 lb, and not the crate."""
    appetite.set_people(p, 2)
    places.add(p, "cellar", "cellar")
    for year in (2025, 2026):
        code = up(p, f"1 crate carrots 40 lb, cellar-stored, cellar, {year}-10-01")
        if year == 2025:
            act.use(p, code, "all")
    (carrots,) = outlook(p).foods
    assert "as many as last year" in carrots.reckoning
    assert (carrots.put_up, carrots.pounds) == (1, 14)
