"""What is moved into a freezer is asked about: frozen there now, or only put there."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.core.words import Method
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, freezing, places, view
from tests.app.screens import painted

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in (
            "kitchen, room", "fridge, fridge, in kitchen", "ice chest, freezer, in kitchen",
            "other chest, freezer", "larder, pantry",
        ):  # fmt: skip
            places.add_line(pantry, line)
        yield pantry


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


async def test_what_goes_in_fresh_is_frozen_food_from_today_under_one_code(p: Pantry) -> None:
    code = up(p, "3 1 lb packs pork, fresh, fridge, 2026-11-24")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code, "m", "2", *"ice", "enter")
        assert "Does it go in fresh, to be frozen there now?" in painted(pilot)
        await pilot.press("1")
        said = " ".join(painted(pilot).split())
        assert f"Frozen today: 2 of {code} pork are" in said
    rows = {row.place: row for row in view.due(p)}
    frozen, left = (
        rows["kitchen \N{SINGLE RIGHT-POINTING ANGLE QUOTATION MARK} ice chest"],
        rows["kitchen \N{SINGLE RIGHT-POINTING ANGLE QUOTATION MARK} fridge"],
    )
    assert (frozen.count, frozen.method, frozen.discard_after) == (2, Method.FROZEN, None)
    assert (left.count, left.discard_after) == (1, date(2026, 11, 27))


async def test_what_only_stands_there_keeps_its_days(p: Pantry) -> None:
    code = up(p, "2 packs pork, fresh, fridge, 2026-11-24")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code, "m", *"ice", "enter", "2")
    (last,) = {row.discard_after for row in view.due(p)}
    assert last == date(2026, 11, 27)


@pytest.mark.parametrize(
    "line",
    [
        "2 packs pork, frozen, other chest",
        "12 eggs, fridge, 2026-11-20",
        "2 packs pork, fresh, fridge, 2026-11-01",
    ],
)
async def test_nothing_is_asked_where_a_move_says_all(p: Pantry, line: str) -> None:
    code = up(p, line)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code, "m", *"ice", "enter")
        assert "Does it go in fresh" not in painted(pilot)
    assert any(row.place.endswith("ice chest") for row in view.due(p))


def test_what_was_thawed_is_not_frozen_anew_and_all_of_it_is_one_booking(p: Pantry) -> None:
    code = up(p, "2 packs pork, frozen, other chest")
    act.thaw(p, f"{code}/1")
    assert not freezing.may_freeze(p, f"{code}/1", "ice chest")
    soup = up(p, "2 boxes chicken soup, cooked meal, fridge")
    booked = len(p.events)
    done = freezing.freeze(p, [f"{soup}/1", f"{soup}/2", f"{code}/1"], "ice chest")
    assert len({one.together for one in p.events[booked:]}) == 1
    assert "Frozen today: 2 of" in done.message
    assert f"Moved {code}/1" in done.message
