"""What is begun: the rest of it keeps its place in the plan, and its days hurry nothing else."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import act, places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize("meat", ["ground pork", "ground beef"])
def test_the_half_that_finds_no_day_before_its_last_is_named(p: Pantry, meat: str) -> None:
    up(p, f"1 lb {meat}, bought in, fridge, {TODAY}")
    up(p, f"1 quart box pea soup, cooked meal, fridge, {TODAY - timedelta(days=2)}")
    found = weeks.week(p)
    on = {take.food: take.servings for take in found.take}
    assert on[meat] == 2
    said = [note for note in found.notes if meat in note]
    assert any("2 servings of" in note and "no room for it" in note for note in said)


def test_what_is_laid_whole_is_named_nowhere(p: Pantry) -> None:
    up(p, f"1 lb ground pork, bought in, fridge, {TODAY}")
    found = weeks.week(p)
    assert sum(take.servings for take in found.take) == 4
    assert not any("ground pork" in note for note in found.notes)


def test_an_open_bag_of_dried_fruit_goes_on_being_eaten(p: Pantry) -> None:
    code = up(p, f"1 4 lb bag apricots, dried, larder, {TODAY - timedelta(days=200)}")
    weeks.accept(p)
    weeks.eaten(p, TODAY)
    p.today = TODAY + timedelta(days=1)
    found = weeks.week(p)
    assert [take.code for take in found.take] == [code]
    assert not found.fallen
    assert any("no published figure" in row.reasons[0].lower() for row in found.waiting)
    assert [one.food for one in outlook(p).foods] == ["apricots"]


def test_the_days_of_an_open_jar_say_nothing_of_the_shut_ones(p: Pantry) -> None:
    how = "pressure canned, minutes=90 psi=11 canner=dial"
    code = up(p, f"8 quart jars chickens, {how}, larder, {TODAY}")
    before = next(one for one in outlook(p).foods)
    act.open_(p, code)
    after = next(one for one in outlook(p).foods)
    assert after.pace_need <= before.pace_need
    assert "give" not in after.pace_says


def test_the_days_of_the_last_jar_are_those_of_its_food(p: Pantry) -> None:
    code = up(p, f"1 pint jar peaches, boiling-water canned, minutes=25, larder, {TODAY}")
    act.open_(p, code)
    (peaches,) = outlook(p).foods
    assert peaches.pace_need > peaches.pace_can


def test_a_pound_of_butter_stays_frozen_where_most_of_it_would_be_thrown_away(p: Pantry) -> None:
    places.add(p, "freezer", "freezer")
    up(p, f"4 1 lb packs butter, frozen, freezer, {TODAY - timedelta(days=75)}")
    found = weeks.week(p)
    assert not found.beside
    assert [one.food for one in found.more] == ["butter"], "for who wants it"
