"""After what is said of a day of the week the cursor is on that day, and guests are not lost by a
slip."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import Choose
from pantry_tui.app.screens.week import WeekScreen
from pantry_tui.app.weeklines import TakeKey
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import appetite
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import places
from tests.app.screens import painted, table

TODAY = date(2026, 11, 29)
GUESTS = "6 guests on wednesday"
WEDNESDAY = TODAY + timedelta(days=3)
LINES = (
    "3 quart jars pears, boiling-water canned, larder, minutes=25, 2 months ago",
    "9 pint jars chicken, pressure canned, larder, minutes=75 psi=11 canner=dial, 2 months ago",
    "20 lb potatoes, cellar-stored, larder, 4 weeks ago",
)


@contextmanager
def pantry(path: Path) -> Iterator[Pantry]:
    create(path, altitude_ft=500, people=2)
    with open_pantry(path, TODAY) as opened:
        places.add_line(opened, "larder, pantry")
        for line in LINES:
            put_up(opened, read(opened, line))
        yield opened


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with pantry(tmp_path / "store.db") as opened:
        yield opened


def lies(p: Pantry) -> dict[str, date]:
    """The day of each whole container of the menu."""
    takes = [take for take in weeks.week(p).take if not take.amount]
    return {name: take.day for take in takes for name in take.containers}


def here(screen: WeekScreen) -> date | None:
    """The day under the cursor."""
    line = screen.table.current
    return screen._days.get(line.key) if line is not None else None


async def test_the_cursor_stays_on_its_day_where_guests_move_its_food(
    p: Pantry, tmp_path: Path
) -> None:
    before = lies(p)
    with pantry(tmp_path / "other.db") as other:
        appetite.read_table(other, GUESTS)
        after = lies(other)
    name, day = next((n, on) for n, on in before.items() if after.get(n, on) != on)
    app = PantryApp(p)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        screen = app.screen
        assert isinstance(screen, WeekScreen)
        at = screen.table.source.where(TakeKey(name, None))
        assert at is not None
        table(pilot).move_cursor(at)
        assert here(screen) == day
        await pilot.press("b")
        app.screen.query_one(Input).value = GUESTS
        await pilot.press("enter")
        assert lies(p)[name] != day
        assert here(screen) == day


async def test_to_eat_out_on_a_day_of_guests_is_asked_first(p: Pantry) -> None:
    appetite.read_table(p, GUESTS)
    app = PantryApp(p)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        screen = app.screen
        assert isinstance(screen, WeekScreen)
        for at in range(20):
            table(pilot).move_cursor(at)
            if here(screen) == WEDNESDAY:
                break
        await pilot.press("h")
        question = app.screen
        assert isinstance(question, Choose)
        assert "8 at the table" in painted(pilot)
        await pilot.press("escape")
        assert WEDNESDAY not in weeks.week(p).bare
        await pilot.press("h", "enter")
        assert WEDNESDAY in weeks.week(p).bare
