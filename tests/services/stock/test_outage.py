"""A power cut in a store: every item judged, one booking, one undo."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, one_batch, outage, places, readings, undo, view

TODAY = date(2026, 11, 25)


def then(hour: int) -> datetime:
    """That hour of today, by the local clock."""
    return outage.read_time(f"{hour:02}:00", TODAY)


def at(p: Pantry, hour: float, days: int = 0) -> None:
    """It is that hour, so many days later."""
    p.clock = Clock(TODAY + timedelta(days=days), round(hour * 60))


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """All was put up at six in the morning at the latest; it is six in the evening."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", Clock(TODAY, 6 * 60)) as pantry:
        for name, climate in (
            ("fridge", "fridge"),
            ("cold box", "fridge"),
            ("freezer", "freezer"),
            ("larder", "pantry"),
        ):
            places.add(pantry, name, climate)
        for line in (
            "3 bags ground beef, frozen, freezer, 1 nov",
            "4 bags strawberries, frozen, freezer, 1 nov",
            "2 bags bread, frozen, freezer, 1 nov",
            "1 tub lasagne, cooked meal, fridge",
            "1 jar garlic, in oil, fridge",
            "2 jars strawberry jam, jam, fridge",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        at(pantry, 18)
        yield pantry


def actions(p: Pantry, place: str, hours: float | None, **known: object) -> dict[str, str]:
    where = p.find_place(place)
    cut = outage.cut_of(where, hours, **known)  # type: ignore[arg-type]
    return {row.food: row.action for row in outage.judge_all(p, where, cut)}


def test_within_the_hold_time_everything_keeps(p: Pantry) -> None:
    assert set(actions(p, "fridge", 4).values()) == {"keep"}
    assert set(actions(p, "freezer", 48, full=True).values()) == {"keep"}
    assert set(actions(p, "freezer", 24).values()) == {"keep"}


def test_beyond_it_each_item_is_judged_by_its_own_row(p: Pantry) -> None:
    cold = actions(p, "fridge", 10)
    assert cold["lasagne"] == cold["garlic"] == "discard"
    assert cold["strawberry jam"] == "keep"
    warm = actions(p, "freezer", 60, full=True, ice=False)
    assert warm["ground beef"] == "discard"
    assert warm["bread"] != "discard"
    icy = actions(p, "freezer", 60, full=True, ice=True)
    assert icy["ground beef"] != "discard"


def test_it_is_booked_in_one_go_and_taken_back_in_one(p: Pantry) -> None:
    where = p.find_place("freezer")
    cut = outage.cut_of(where, 60, ice=False)
    before, stock = len(p.events), p.stock.all()
    outage.book(p, where, cut)
    assert len(p.events) == before + 1
    beef = next(row for row in view.due(p) if row.food == "ground beef")
    assert beef.verdict is Verdict.DISCARD
    assert "power cut of 60 h" in " ".join(beef.reasons).lower()
    with pytest.raises(Refused):
        act.use(p, beef.code)
    undo.undo(p)
    assert p.stock.all() == stock
    outage.book(p, where, cut, discard=True)
    assert not any(row.food == "ground beef" for row in view.due(p))
    undo.undo(p)
    assert p.stock.all() == stock, "one undo takes the whole evening back"


def test_what_was_moved_out_first_was_there_all_the_same(p: Pantry) -> None:
    code = next(row.code for row in view.due(p) if row.food == "lasagne")
    act.move(p, code, "cold box")
    assert actions(p, "fridge", 9)["lasagne"] == "discard"
    fridge = p.find_place("fridge")
    outage.book(p, fridge, outage.cut_of(fridge, 9))
    assert one_batch.show(p, code).rows[0].verdict is Verdict.DISCARD


def test_what_came_after_the_cut_is_not_touched_by_it(p: Pantry) -> None:
    late = putup.put_up(p, putup.read(p, "1 tub stew, cooked meal, fridge")).code
    fridge = p.find_place("fridge")
    cut = outage.cut_of(fridge, start=then(7), end=then(16))
    rows = outage.judge_all(p, fridge, cut)
    assert "stew" not in {row.food for row in rows}
    outage.book(p, fridge, cut)
    assert one_batch.show(p, late).rows[0].verdict is not Verdict.DISCARD


def test_two_short_cuts_with_half_an_hour_between_add_up(p: Pantry) -> None:
    fridge = p.find_place("fridge")
    for first in (9, 13):
        end = then(first) + timedelta(hours=3.5)
        told = outage.cut_of(fridge, start=then(first), end=end)
        outage.book(p, fridge, told)
    lasagne = next(row for row in view.due(p) if row.food == "lasagne")
    assert lasagne.verdict is Verdict.DISCARD
    assert "Power cut of 7 h" in lasagne.reasons[0]


def test_a_cut_since_nobody_knows_when_began_after_the_last_cold_reading(p: Pantry) -> None:
    at(p, 11)
    readings.read(p, "fridge", 38)
    at(p, 14)
    first, last = outage.read_times("unknown", "14:00", TODAY)
    fridge = p.find_place("fridge")
    three = outage.judge_all(p, fridge, outage.cut_of(fridge, start=first, end=last))
    assert {row.action for row in three} == {"keep"}
    at(p, 18)
    seven = outage.judge_all(p, fridge, outage.cut_of(fridge))
    assert "discard" in {row.action for row in seven}


def test_a_cut_changes_nothing_on_a_shelf_and_times_must_be_times(p: Pantry) -> None:
    with pytest.raises(Refused):
        outage.cut_of(p.find_place("larder"), 10)
    for hours in (-1.0, float("nan"), 1e9):
        with pytest.raises(BadInput):
            outage.cut_of(p.find_place("fridge"), hours)
    assert outage.hours_between("22:00", "06:00", TODAY) == 8
    assert outage.hours_between("2026-11-24 18:00", "2026-11-25 06:30", TODAY) == 12.5
    for start, end in (("soon", "06:00"), ("25:00", "06:00"), ("2026-11-25 07:00", "06:00")):
        with pytest.raises(BadInput):
            outage.hours_between(start, end, TODAY)
