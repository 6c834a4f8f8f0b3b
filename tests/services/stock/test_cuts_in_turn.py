"""Time without cold adds up over the places where the food stood meanwhile."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, cut_hours, one_batch, outage, places, readings
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 22)
DAY = date(2026, 11, 20)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", Clock(TODAY, 10 * 60)) as pantry:
        for name, climate in (
            ("fridge", "fridge"),
            ("f2", "fridge"),
            ("chest", "freezer"),
            ("c2", "freezer"),
            ("larder", "pantry"),
        ):
            places.add(pantry, name, climate)
        yield pantry


def at(hour: str, day: int = 20) -> At:
    hours, minutes = hour.split(":")
    return At(DAY.replace(day=day), int(hours) * 60 + int(minutes))


def up(p: Pantry, where: str, then: str = "08:00", line: str = "1 pack stew, cooked meal") -> str:
    return putup.put_up(p, putup.read(p, f"{line}, {where}, 2026-11-20"), at=at(then)).code


def cut(p: Pantry, where: str, start: str, end: str) -> None:
    first, last = cut_hours.times(_day(start), _day(end), TODAY)
    place = p.find_place(where)
    outage.book(p, place, outage.cut_of(p, place, first, last))


def _day(typed: str) -> str:
    return typed if typed.startswith("2026") else f"2026-11-20 {typed}"


def said(p: Pantry, code: str) -> tuple[bool, str]:
    (row,) = one_batch.show(p, code).rows
    return row.verdict in UNFIT, " ".join(row.reasons)


@pytest.mark.parametrize(
    ("first", "moved", "second"),
    [
        (("10:00", "13:30"), "13:30", ("13:30", "17:00")),
        (("10:00", "13:30"), "13:30", ("13:31", "17:01")),
        (("10:00", "13:30"), "13:30", ("13:35", "17:05")),
        (("10:00", "13:30"), "13:20", ("13:30", "17:00")),
        (("10:00", "13:30"), "13:30", ("14:30", "18:00")),
        # What came when it was off already is charged for the time that it stood there.
        (("10:00", "13:30"), "13:30", ("12:00", "15:30")),
    ],
)
@pytest.mark.parametrize("turned", [False, True])
def test_two_refrigerators_in_turn_are_one_stretch(
    p: Pantry,
    first: tuple[str, str],
    moved: str,
    second: tuple[str, str],
    turned: bool,
) -> None:
    code = up(p, "fridge")
    act.move(p, code, "f2", at=at(moved))
    told = [("fridge", *first), ("f2", *second)]
    for one in reversed(told) if turned else told:
        cut(p, *one)
    unfit, why = said(p, code)
    assert unfit
    assert "Power cut of " in why


def test_what_the_hours_of_a_shut_door_hold_in_all_is_kept(p: Pantry) -> None:
    code = up(p, "fridge")
    act.move(p, code, "f2", at=at("12:00"))
    cut(p, "fridge", "10:00", "12:00")
    cut(p, "f2", "12:00", "14:00")
    assert not said(p, code)[0]


def test_a_cold_reading_where_it_stood_in_between_parts_them(p: Pantry) -> None:
    code = up(p, "fridge")
    act.move(p, code, "f2", at=at("13:30"))
    readings.read(p, "f2", 38.0, at=at("17:00"))
    cut(p, "fridge", "10:00", "13:30")
    cut(p, "f2", "19:00", "22:30")
    assert not said(p, code)[0]


def test_more_than_a_day_with_power_parts_them(p: Pantry) -> None:
    code = up(p, "fridge", line="1 pack bacon, bought in, use by 2026-12-20")
    act.move(p, code, "f2", at=at("13:30"))
    cut(p, "fridge", "10:00", "13:30")
    cut(p, "f2", "2026-11-21 13:31", "2026-11-21 17:00")
    assert "Power cut" not in said(p, code)[1]


def test_two_freezers_in_turn_are_one_stretch(p: Pantry) -> None:
    code = up(p, "chest", line="1 pack ground beef, frozen")
    act.move(p, code, "c2", at=at("09:00", 21))
    cut(p, "chest", "10:00", "2026-11-21 09:00")
    assert not said(p, code)[0]
    cut(p, "c2", "2026-11-21 09:00", "2026-11-22 08:00")
    unfit, why = said(p, code)
    assert unfit
    assert "Power cut of 46 h" in why


@pytest.mark.parametrize(("start", "gone"), [("2026-11-21 00:00", False), ("12:00", True)])
def test_each_hour_counts_by_the_climate_it_was_spent_in(p: Pantry, start: str, gone: bool) -> None:
    """Nine hours of a freezer's twenty-four and one of a refrigerator's four are less than all of
    one; twenty-one and one are more: this program's own way of putting them together."""
    code = up(p, "chest", line="1 pack ground beef, frozen")
    act.move(p, code, "fridge", at=at("09:00", 21))
    cut(p, "chest", start, "2026-11-21 09:00")
    assert not said(p, code)[0]
    cut(p, "fridge", "2026-11-21 09:00", "2026-11-21 10:00")
    assert said(p, code)[0] is gone


def test_the_shelf_before_a_cut_counts_too(p: Pantry) -> None:
    code = up(p, "fridge")
    act.move(p, code, "larder", at=at("10:00"))
    act.move(p, code, "fridge", at=at("11:55"))
    assert not said(p, code)[0]
    cut(p, "fridge", "11:55", "15:50")
    assert said(p, code)[0]


@pytest.mark.parametrize(("back", "gone"), [("11:00", False), ("11:05", True)])
def test_what_had_four_hours_to_cool_begins_anew(p: Pantry, back: str, gone: bool) -> None:
    code = up(p, "fridge")
    act.move(p, code, "larder", at=at("10:00"))
    act.move(p, code, "fridge", at=at(back))
    cut(p, "fridge", "15:01", "18:55")
    assert said(p, code)[0] is gone
