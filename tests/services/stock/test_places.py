"""Places that are renamed, joined and removed, and how much they hold."""

from __future__ import annotations

from datetime import datetime, time, timedelta

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, one_batch, outage, places, readings, undo, view
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.seen import At


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    for name, climate in (("shelf two", "pantry"), ("chest", "freezer"), ("garage", "freezer")):
        places.add(larder, name, climate)
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def test_two_places_become_one_and_one_undo_parts_them(p: Pantry) -> None:
    code = up(p, "3 pint jars peaches, boiling-water canned, larder, minutes=30")
    told = places.merge(p, "larder", "shelf two")
    assert "3 containers went to shelf two" in told.message
    assert [row.place for row in view.due(p)] == ["shelf two"]
    with pytest.raises(BadInput):
        p.find_place("larder")
    assert "removed the place larder" in undo.undo(p).message
    assert [row.place for row in view.due(p)] == ["larder"]
    assert p.find_place("larder").climate == "pantry"
    assert code == view.due(p)[0].code


def test_what_stood_in_a_place_that_is_no_more_has_lived_there_all_the_same(p: Pantry) -> None:
    code = up(p, "3 1 lb packs ground beef, frozen, garage")
    p.today += timedelta(days=20)
    before = next(row for row in view.due(p) if row.code == code)
    places.merge(p, "garage", "chest")
    after = next(row for row in view.due(p) if row.code == code)
    assert (after.verdict, after.best_by) == (before.verdict, before.best_by)
    assert after.place == "chest"
    assert any("freezer" in step for _, steps in one_batch.show(p, code).chain for step in steps)


def test_a_freezer_that_is_merged_into_a_larder_thaws_what_is_in_it(p: Pantry) -> None:
    up(p, "1 1 lb pack ground beef, frozen, garage")
    told = places.remove(p, "garage", "larder")
    assert any("may not st" in one for one in told.warnings), told
    p.today += timedelta(days=1)
    assert view.due(p)[0].verdict is Verdict.DISCARD


def test_a_place_with_something_in_it_is_not_removed(p: Pantry) -> None:
    up(p, "3 pint jars peaches, boiling-water canned, larder, minutes=30")
    with pytest.raises(Refused, match="--to"):
        places.remove(p, "larder")
    places.add(p, "top shelf", "pantry", "shelf two")
    with pytest.raises(Refused, match="top shelf"):
        places.remove(p, "shelf two")
    with pytest.raises(BadInput):
        places.merge(p, "larder", "larder")
    places.remove(p, "top shelf")
    places.remove(p, "shelf two")
    assert "shelf two" not in p.place_paths().values()


def test_a_new_name_that_is_taken_is_refused(p: Pantry) -> None:
    places.change(p, "larder", name="pantry wall")
    assert p.find_place("pantry wall").name == "pantry wall"
    with pytest.raises(Refused, match="merge"):
        places.change(p, "shelf two", name="Pantry Wall")


def test_a_place_that_is_overfull_says_so(p: Pantry) -> None:
    places.change(p, "larder", capacity=4)
    line = "3 pint jars peaches, boiling-water canned, larder, minutes=30"
    assert not any("room for" in one for one in putup.put_up(p, putup.read(p, line)).cautions)
    made = putup.put_up(p, putup.read(p, line))
    assert "larder holds 6, which is more than its room for 4." in made.cautions
    other = up(p, "2 pint jars plums, boiling-water canned, shelf two")
    assert any("larder holds 8" in one for one in act.move(p, other, "larder").warnings)
    assert any("larder holds 8" in one for one in places.change(p, "larder", capacity=5).warnings)


def test_what_is_remembered_of_a_place_that_is_gone_still_counts(p: Pantry) -> None:
    """A power cut and a reading are booked for it by its name, and strike what stood there then."""
    places.add(p, "old fridge", "fridge")
    places.add(p, "new fridge", "fridge")
    code = up(p, "6 pint jars stew, cooked meal, old fridge")
    that_day = p.today + timedelta(days=1)
    p.today += timedelta(days=2)
    places.merge(p, "old fridge", "new fridge")
    assert found(p, code).usable
    readings.read(p, "old fridge", 60.0, at=At(that_day, 720))
    assert found(p, code).verdict in UNFIT
    undo.undo(p)
    gone = p.find_place_ever("old fridge")
    start = datetime.combine(that_day, time(9)).astimezone()
    cut = outage.cut_of(p, gone, start, start + timedelta(hours=14), max_temp_f=60.0)
    assert "6 discard" in outage.book(p, gone, cut).message
    assert found(p, code).verdict in UNFIT
    with pytest.raises(BadInput):
        p.find_place_ever("no such place")


def found(p: Pantry, code: str) -> DueRow:
    return next(row for row in view.due(p) if row.code == code)
