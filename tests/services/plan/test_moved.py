"""What a change to the week moves is said: nothing that lay on a day goes to another unawares."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.errors import Refused
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act
from tests.services.plan.putting_up import TODAY, fill, up

FRIDAY = TODAY + timedelta(days=2)
SUNDAY = TODAY + timedelta(days=4)


@pytest.fixture
def p(four_places: Pantry) -> Pantry:
    return four_places


def days_of(p: Pantry, code: str) -> set[date]:
    return {take.day for take in weeks.week(p).take if take.code == code}


def test_eating_out_says_where_the_pin_and_the_rest_of_that_day_went(p: Pantry) -> None:
    fill(p)
    venison = up(p, "1 pint jar venison, pressure canned, pantry, 2026-08-01, minutes=75 psi=11")
    wishes.pin(p, venison, FRIDAY)
    assert days_of(p, venison) == {FRIDAY}
    (said,) = wishes.out(p, FRIDAY).warnings
    (now,) = days_of(p, venison)
    assert f"{venison} venison from Fri 27 Nov to {now:%a} {now.day} {now:%b}" in said


@pytest.mark.parametrize("accepted", [False, True])
def test_each_move_that_is_told_is_one_and_each_of_that_day_is_told(
    p: Pantry, accepted: bool
) -> None:
    codes = [fill(p), "2B"]
    if accepted:
        weeks.accept(p)
    before = {take.code: days_of(p, take.code) for take in weeks.week(p).take}
    there = {code for code, days in before.items() if FRIDAY in days}
    assert there, codes
    (said,) = wishes.out(p, FRIDAY).warnings
    for code in there:
        assert FRIDAY not in days_of(p, code)
        assert f"{code} " in said


def test_a_jar_that_is_put_on_another_day_is_said_to_leave_the_old_one(p: Pantry) -> None:
    fill(p)
    venison = up(p, "1 pint jar venison, pressure canned, pantry, 2026-08-01, minutes=75 psi=11")
    assert not any(venison in one for one in wishes.pin(p, venison, FRIDAY).warnings)
    weeks.accept(p)
    (said,) = wishes.pin(p, venison, SUNDAY).warnings
    assert f"{venison} venison from Fri 27 Nov to Sun 29 Nov" in said


def test_a_dish_that_moves_is_named_by_its_name(p: Pantry) -> None:
    stews, _ = fill(p)
    dishes.keep(p, "stew pot = 2 beef, 2 carrots")
    wishes.cook(p, "stew pot", FRIDAY)
    assert (
        "stew pot from Fri 27 Nov to Sun 29 Nov" in wishes.cook(p, "stew pot", SUNDAY).warnings[0]
    )
    (said,) = wishes.out(p, SUNDAY).warnings
    assert "stew pot " in said
    assert stews


def test_what_lay_on_a_day_away_is_told_when_that_is_said_and_the_rest_of_a_proposal_is_no_news(
    p: Pantry,
) -> None:
    stews, _ = fill(p)
    (said,) = appetite.read_table(p, "away friday").warnings
    assert "from Fri 27 Nov" in said or "of Fri 27 Nov" in said
    assert "from Sun" not in said, "that is another proposal"
    appetite.read_table(p, "usual friday")
    wishes.pin(p, stews, FRIDAY)
    (said,) = appetite.read_table(p, "away friday").warnings
    assert f"{stews} beef" in said
    assert "Fri 27 Nov" in said
    assert not appetite.read_table(p, "away 20 dec to 22 dec").warnings


def test_what_was_left_out_by_name_is_not_said_to_be_gone_as_well(p: Pantry) -> None:
    fill(p)
    weeks.accept(p)
    for said in wishes.leave_out(p, "carrots").warnings:
        assert "carrots" not in said


def test_a_week_that_is_reworked_says_what_it_moved(p: Pantry) -> None:
    fill(p)
    weeks.accept(p)
    before = {take.code: days_of(p, take.code) for take in weeks.week(p).take}
    appetite.read_table(p, "away friday to sunday")
    (said,) = weeks.accept(p).warnings
    moved = {code for code, days in before.items() if days - days_of(p, code)}
    assert moved
    assert all(f"{code} " in said for code in moved)


def test_the_pack_that_its_code_thaws_first_is_the_one_of_the_first_day(
    four_places: Pantry,
) -> None:
    p = four_places
    appetite.set_people(p, 7)
    code = up(p, "30 1-lb packs ground beef, frozen, freezer, 2026-11-01")
    weeks.accept(p)

    def beef() -> list[tuple[date, int]]:
        return [(t.day, t.count) for t in weeks.week(p).take if t.code == code]

    before = beef()
    assert len(before) > 3
    for day in range(3):
        for _ in range(before[day][1]):
            act.thaw(p, code)
        (mine,) = [take for take in weeks.week(p).take if take.day == before[day][0]]
        assert mine.place == "fridge"
        assert (beef(), weeks.week(p).fallen) == (before[day:], ())
        p.today += timedelta(days=1)
        weeks.eaten(p, p.today)


def test_nothing_is_put_on_a_day_that_is_eaten_already(p: Pantry) -> None:
    up(p, "9 pint jars chicken, pressure canned, pantry, minutes=75 psi=11, 2026-10-01")
    code = up(p, "20 lb carrots, cellar-stored, pantry, 2026-11-20")
    weeks.accept(p)
    weeks.eaten(p, TODAY)
    with pytest.raises(Refused, match="eaten already"):
        wishes.pin(p, code, TODAY)
    wishes.pin(p, code, TODAY + timedelta(days=3))
    assert any(t.code == code and t.day == TODAY + timedelta(days=3) for t in weeks.week(p).take)
