"""Tins and packs from a shop, long before their date: they stand by, and come where nothing else
does, in a dish, and where the household puts them."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.candidates import _BOUGHT_AHEAD, unasked
from tests.services.plan.putting_up import up


def tuna(p: Pantry, tins: int = 4) -> str:
    return up(p, f"{tins} tins tuna, bought in, larder, best by {p.today + timedelta(days=700)}")


def evenings(p: Pantry) -> dict[date, str]:
    return {day: take.dish or take.food for take in weeks.week(p).take for day in take.days}


def test_an_evening_on_which_nothing_else_stands_has_one(p: Pantry) -> None:
    tuna(p)
    assert set(evenings(p).values()) == {"tuna"}
    assert weeks.week(p).no_main == ""
    up(p, f"9 pint jars venison, pressure canned, larder, {p.today - timedelta(days=60)}")
    found = set(evenings(p).values())
    assert "venison" in found
    assert "tuna" not in found
    assert "tuna" in {take.food for take in weeks.week(p).more}


def test_a_dish_and_the_household_s_own_word_take_it(p: Pantry) -> None:
    code = tuna(p)
    up(p, f"3 lb pasta, bought in, larder, best by {p.today + timedelta(days=700)}")
    dishes.keep(p, "tuna pasta = 2 tuna, 2 pasta")
    assert "tuna pasta" in evenings(p).values()
    wishes.pin(p, code, p.today + timedelta(days=3))
    assert evenings(p)[p.today + timedelta(days=3)] == "tuna"


@pytest.mark.parametrize("days", [_BOUGHT_AHEAD, _BOUGHT_AHEAD + 1])
def test_it_stands_by_until_four_months_before_its_date(p: Pantry, days: int) -> None:
    assert _BOUGHT_AHEAD == 120
    up(p, f"2 tins sardines, bought in, larder, best by {p.today + timedelta(days=days)}")
    assert {one.stands_by for one in unasked(p, p.today)} == {days > _BOUGHT_AHEAD}
