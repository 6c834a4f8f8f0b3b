"""Several put-up lines pasted at once: each is shown with its reading, all are booked or none."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import cast

import pytest
from textual.events import Paste
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.services.batchwork.putup import read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

GOOD = "7 pint jars plums, boiling-water canned, larder\n4 bags apples, dried, larder\n"


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 26)) as pantry:
        yield pantry


async def _pasted(empty: Pantry, text: str) -> tuple[str, int]:
    """What is shown after the paste, and how many batches stand after Enter."""
    places.add(empty, "larder", "pantry")
    async with PantryApp(empty).run_test(size=(100, 30)) as pilot:
        await pilot.press("p")
        await pilot.pause()
        pilot.app.screen.query_one("#line").post_message(Paste(text))
        await pilot.pause()
        shown = str(pilot.app.screen.query_one("#reading", Static).visual)
        await pilot.press("enter")
        await pilot.pause()
    return shown, len(empty.stock.batches)


async def test_a_paste_of_lines_that_are_understood_is_booked_by_one_key(empty: Pantry) -> None:
    shown, booked = await _pasted(empty, GOOD)
    assert "2 lines, all understood" in shown
    assert booked == 2


async def test_a_line_to_mend_books_none_and_is_named(empty: Pantry) -> None:
    shown, booked = await _pasted(empty, GOOD + "3 jars mystery\n")
    assert "3 lines, 1 to mend" in shown
    assert booked == 0


async def test_the_example_could_be_booked_as_it_stands(empty: Pantry) -> None:
    places.add(empty, "back porch", "pantry")
    async with PantryApp(empty).run_test(size=(100, 30)) as pilot:
        await pilot.press("p")
        await pilot.pause()
        example = cast(Input, pilot.app.screen.query_one("#line")).placeholder
    assert read(empty, str(example)).place == "back porch"
    assert not read(empty, str(example)).problems
