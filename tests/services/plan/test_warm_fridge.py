"""A refrigerator that was read too warm: nothing is thawed in it for another day."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act, places, readings
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(p: Pantry) -> Pantry:
    places.add(p, "freezer", "freezer")
    return p


def test_nothing_is_planned_that_would_thaw_in_it(p: Pantry) -> None:
    up(p, f"3 1 lb packs ground beef, frozen, freezer, {TODAY - timedelta(days=20)}")
    assert any(take.food == "ground beef" for take in weeks.week(p).take)
    readings.read(p, "fridge", 50.0)
    p.today = TODAY + timedelta(days=8)
    weeks.accept(p)
    assert not weeks.week(p).take
    readings.read(p, "fridge", 37.0)
    p.today += timedelta(days=7)
    assert any(take.food == "ground beef" for take in weeks.week(p).take)


def test_who_thaws_it_there_hears_how_long_it_has(p: Pantry) -> None:
    code = up(p, f"3 1 lb packs ground beef, frozen, freezer, {TODAY - timedelta(days=20)}")
    readings.read(p, "fridge", 50.0)
    p.today = TODAY + timedelta(days=8)
    told = act.thaw(p, code).message
    assert "too warm" in told
    assert "Discard after" not in told


def test_what_is_left_of_a_jar_and_goes_into_it_says_how_long_it_has(p: Pantry) -> None:
    code = up(p, f"2 quart jars tomatoes, boiling-water canned, larder, {TODAY}")
    cold = act.use(p, code, "half")
    assert not any("too warm" in said for said in cold.warnings)
    readings.read(p, "fridge", 50.0)
    warm = act.use(p, f"{code}/2", "half", any_=True)
    assert any("too warm" in said for said in warm.warnings)
