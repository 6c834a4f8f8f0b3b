"""Backups, lists out and in: what would come of it is shown, and done only then."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import TypeLine
from pantry_tui.app.screens.due import DueScreen
from pantry_tui.app.screens.page import Decide
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping import backup
from pantry_tui.services.safekeeping.transfer import export_log
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, places, view

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "pantry.db")
    with open_pantry(tmp_path / "pantry.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        line = "4 pint jars peaches, boiling-water canned minutes=25, larder"
        putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


async def typed(pilot: Pilot[None], text: str) -> None:
    assert isinstance(pilot.app.screen, TypeLine)
    pilot.app.screen.query_one(Input).value = text
    await pilot.press("enter")
    await pilot.pause()


def standing(p: Pantry) -> int:
    return sum(row.count for row in view.due(p))


async def test_a_backup_is_brought_back_once_its_cost_was_shown(p: Pantry) -> None:
    kept = backup.backup(p.path).path
    act.use(p, "2A")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f12", "3", "1")
        await pilot.pause()
        assert isinstance(pilot.app.screen, Decide)
        assert "1 event booked since is lost" in str(
            pilot.app.screen.query_one("#words Static", Static).content
        )
        await pilot.press("escape")
        assert standing(p) == 3, "shown and not done"
        await pilot.press("f12", "3", "1")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, DueScreen)
        assert "is kept" in said(pilot)
        assert standing(p) == 4
        await pilot.press("u")
        assert standing(p) == 3, "and the store that came is the one that is written"
    assert verify(p.path, TODAY).ok
    with open_pantry(kept, TODAY) as untouched:
        assert standing(untouched) == 4


async def test_a_file_that_is_no_backup_stays_to_be_mended(p: Pantry, tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("Dear Rosa")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f12", "3", "1")
        await typed(pilot, str(tmp_path / "letter.txt"))
        assert isinstance(pilot.app.screen, TypeLine)
        assert "cannot be restored" in str(pilot.app.screen.query_one("#wrong", Static).content)


async def test_a_backup_and_lists_are_written_from_the_app(p: Pantry, tmp_path: Path) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f12", "2")
        assert "looked the copy over" in said(pilot)
        assert len(backup.kept(p.path)) == 1
        await pilot.press("f12", "4")
        await typed(pilot, str(tmp_path / "log.json"))
        assert "events to" in said(pilot)
        await pilot.press("f12", "5", "1")
        await typed(pilot, str(tmp_path / "stock.csv"))
        assert "1 row to" in said(pilot)
    assert "peaches" in (tmp_path / "stock.csv").read_text(encoding="utf-8")


async def test_a_log_is_brought_in_once_it_was_shown(p: Pantry, tmp_path: Path) -> None:
    export_log(p, tmp_path / "log.json")
    other = tmp_path / "other.db"
    create(other)
    with open_pantry(other, TODAY) as q:
        places.add(q, "cellar", "cellar")
        async with PantryApp(q).run_test(size=(80, 24)) as pilot:
            await pilot.press("f12", "6")
            await typed(pilot, str(tmp_path / "log.json"))
            assert isinstance(pilot.app.screen, Decide)
            assert standing(q) == 0
            await pilot.press("enter")
            await pilot.pause()
            assert standing(q) == 4
