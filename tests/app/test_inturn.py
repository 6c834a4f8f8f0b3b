"""Keys that arrive in one go, as over a slow line, do what they do one by one."""

from __future__ import annotations

from datetime import date

from textual.events import Key
from textual.pilot import Pilot
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.core.log.events import Did
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week
from pantry_tui.services.stock import undo
from pantry_tui.services.stock.pick import name_of
from tests.app.screens import all_lines

TODAY = date(2026, 11, 25)
NAMES = {"/": "slash", "+": "plus", " ": "space"}


async def burst(pilot: Pilot[None], *keys: str) -> None:
    """All of them before the app has looked at the first."""
    driver = pilot.app._driver
    assert driver is not None
    for key in keys:
        character = key if len(key) == 1 else None
        event = Key(NAMES.get(key, key), character)
        event.set_sender(pilot.app)
        driver.send_message(event)
    await pilot.pause()


async def test_discard_and_its_reason(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await burst(pilot, "d", "1")
        last = undo.newest(demo)
        assert last is not None
        assert last.did is Did.DISCARD


async def test_arrows_before_an_act_still_count(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        table = pilot.app.screen.query_one(LineList)
        start = table.cursor_row
        meant = [
            all_lines(pilot)[start + 2].ref,
            all_lines(pilot)[start + 1].ref,
        ]
        await burst(pilot, "down", "down", "d", "1", "z", "up", "d", "1")
        gone = [event.containers for event in demo.events if event.did is Did.DISCARD][-2:]
        assert [name_of(demo, demo.stock.containers[c]) for (c,) in gone] == meant


async def test_words_to_find_then_an_act(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await burst(pilot, "/", *"salmon", "enter", "t")
        last = undo.newest(demo)
        assert last is not None
        assert last.did is Did.THAW


async def test_a_lid_code_in_one_go(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await burst(pilot, *"7C", "enter", "u")
        last = undo.newest(demo)
        assert last is not None
        assert last.did is Did.USE
        assert demo.stock.batches[last.batch].code == "7C"


async def test_a_room_and_its_key(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await burst(pilot, "W", "a", "D")
        assert week.accepted(demo) is not None
        assert getattr(pilot.app.screen, "here", "") == "due"


async def test_a_line_typed_right_after_its_key(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await burst(pilot, "p", *"2 pint jars peaches")
        assert pilot.app.screen.query_one(Input).value == "2 pint jars peaches"


async def test_boxes_one_after_the_other(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await burst(pilot, "d", "escape", "d", "escape", "d", "1", "z")
        last = undo.newest(demo)
        assert last is not None
        assert last.did is not Did.DISCARD
        assert demo.events[-1].did is Did.UNDO
