"""What is opened goes into the refrigerator: said first where that was read too warm; in the week a
key opens what the cursor is on."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot

from pantry_tui.app.main import PantryApp
from pantry_tui.core.words import State
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import places, readings, view
from tests.app.screens import painted, table

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge"):
            places.add_line(pantry, line)
        for line in (
            "6 half-pint jars plum jam, larder, 2025-10-01",
            "6 pint jars applesauce, boiling-water canned, larder, minutes=20, 2026-01-01",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def opened(p: Pantry) -> list[str]:
    return [row.food for row in view.due(p) if row.state is State.OPEN]


def on(pilot: Pilot[None], food: str) -> None:
    """The cursor on the last line of that food: below the days."""
    source = table(pilot).source
    lines = source.lines(0, source.total)
    at = max(i for i, one in enumerate(lines) if one.row is not None and one.row.food == food)
    table(pilot).move_cursor(at)


async def test_e_opens_beside_the_meals_what_the_cursor_is_on_and_nothing_else(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        assert [one.food for one in weeks.week(p).beside] == ["plum jam"]
        on(pilot, "plum jam")
        await pilot.press("e")
        await pilot.pause()
        assert opened(p) == ["plum jam"]
        assert sum(row.count for row in view.due(p)) == 12, "nothing else was eaten"


async def test_the_warm_fridge_is_said_before_it_is_opened(p: Pantry) -> None:
    readings.read_typed(p, "fridge", "52F", since="1h")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        on(pilot, "plum jam")
        await pilot.press("e")
        await pilot.pause()
        said = " ".join(painted(pilot).split())
        assert "Opened it goes into fridge, which measured 52 \N{DEGREE SIGN}F" in said
        await pilot.press("enter", "escape")
        assert not opened(p)
        await pilot.press("e", "1")
        assert opened(p) == ["plum jam"]


async def test_a_day_that_is_eaten_opens_nothing_beside_it_into_a_warm_fridge(p: Pantry) -> None:
    readings.read_typed(p, "fridge", "52F", since="1h")
    weeks.accept(p)
    with pytest.raises(Refused, match="measured 52 F"):
        weeks.eaten(p, TODAY)
    assert not opened(p)


async def test_a_cold_fridge_asks_nothing(p: Pantry) -> None:
    readings.read_typed(p, "fridge", "38F")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("o")
        assert len(opened(p)) == 1
