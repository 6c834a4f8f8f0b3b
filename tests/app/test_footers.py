"""A person who reads only the foot of a screen can do every job of an evening, and what was said
there does not outlive what it was about."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from pantry_tui.app.commands import SCREENS, of
from pantry_tui.app.footers import footer
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.screens.page import keys_of
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import view
from tests.app.screens import painted, table
from tests.furnished import furnished

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(
        tmp_path,
        TODAY,
        lines=(
            "4 pint jars peaches, boiling-water canned, larder",
            "12 pint jars runner beans, pressure canned, larder",
        ),
    ) as pantry:
        yield pantry


def foot(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("KeyLine").content).replace("\u00a0", " ")  # type: ignore[attr-defined]


def words(screen: str, room: int, lines: int) -> list[str]:
    return [
        "  ".join(f"{o.typed(screen)} {o.word}" for o in line)
        for line in footer(screen, room, lines)
    ]


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize(("room", "lines"), [(78, 2), (38, 2), (38, 1), (118, 2), (198, 2)])
def test_the_foot_of_a_screen_fits_and_leads_to_every_key(
    screen: str, room: int, lines: int
) -> None:
    found = words(screen, room, lines)
    assert len(found) <= lines
    assert all(len(line) <= room for line in found), found
    more = "F1 guides" if screen == "putup" else "? more keys"
    assert room == 38 or more in "  ".join(found)
    assert "quit" in found[-1]
    listed = keys_of(screen)
    assert all(command.keys in listed for command in of(screen))


@pytest.mark.parametrize(
    ("screen", "keys"),
    [
        ("due", ["u use", "o open", "m move", "d discard", "f ready", "0-9 lid code", "/ find"]),
        ("shelves", ["u use", "m move", "r reading", "x power cut", "a add place"]),
        ("week", ["a accept", "e eaten", "+ later", "x skip", "r swap"]),
        ("count", ["Enter agrees", "0-9 count", "f book", "+ unlisted"]),
        ("putup", ["Enter books it", "Ctrl+U clear", "Ctrl+Z undo"]),
        ("batch", ["u use", "d discard", "f ready", "h rate"]),
    ],
)
def test_what_an_evening_needs_stands_there_at_80_columns(screen: str, keys: list[str]) -> None:
    line = "  ".join(words(screen, 78, 2))
    assert [key for key in keys if key not in line] == []


@pytest.mark.parametrize("size", [(80, 24), (40, 20), (120, 40), (80, 12)])
async def test_the_keys_are_painted_whole_and_more_of_them_one_key_away(
    p: Pantry, size: tuple[int, int]
) -> None:
    async with PantryApp(p).run_test(size=size) as pilot:
        await pilot.pause()
        for line in foot(pilot).split("\n"):
            assert line in painted(pilot).replace("\u00a0", " ")
        assert "? more keys" in foot(pilot)
        await pilot.press("question_mark")
        assert "Set one apart" in str(pilot.app.screen.query_one("#words Static").content)  # type: ignore[attr-defined]
        assert "closes this" in painted(pilot)


# -- dialogs --------------------------------------------------------------------------------------


@pytest.mark.parametrize("keys", [("d",), ("g",), ("s",), ("m",)])
async def test_under_a_question_the_keys_of_the_room_are_not_lit(
    p: Pantry, keys: tuple[str, ...]
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        lines = foot(pilot).split("\n")
        await pilot.press(*keys)
        await pilot.pause()
        shown = painted(pilot).replace("\u00a0", " ")
        assert not any(line in shown for line in lines)
        assert "Esc" in shown.split("\n")[-1] or "Esc" in shown


async def test_a_sign_shows_how_to_record_it_however_long_its_meaning_is(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("s", "1", "1")
        await pilot.pause()
        shown = painted(pilot)
        assert "Enter records this" in shown
        assert "Esc leaves it unrecorded" in shown


async def test_enter_alone_takes_back_nothing_that_was_done_before_this_sitting(p: Pantry) -> None:
    booked = len(p.events)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("z", "e", "r", "enter")
        assert len(p.events) == booked
        await pilot.press("down", "enter")
        assert len(p.events) == booked + 1


# -- what was said --------------------------------------------------------------------------------


async def test_what_was_said_of_an_act_is_gone_when_it_was_undone_elsewhere(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("u")
        assert "Used" in painted(pilot)
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, BatchScreen)
        await pilot.press("z", "escape")
        await pilot.pause()
        assert "Used" not in painted(pilot)


async def test_what_was_said_of_words_that_found_nothing_goes_with_them(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"zzz", "enter")
        assert "zzz" in painted(pilot)
        await pilot.press("escape")
        await pilot.pause()
        assert "zzz" not in painted(pilot)
        assert table(pilot).source.total > 0


async def test_a_line_that_was_not_booked_says_so_when_one_comes_back_to_it(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        line = pilot.app.screen.query_one("#line", Input)
        line.value = "3 jars zzyzx"
        await pilot.press("enter", "escape", "p")
        await pilot.pause()
        assert "not booked yet" in painted(pilot)
        assert line.value == "3 jars zzyzx"
        await pilot.press("ctrl+u")
        await pilot.pause()
        assert line.value == ""
        assert "not booked yet" not in painted(pilot)
        assert view.due(p)


async def test_while_words_are_typed_the_foot_names_no_key_that_is_a_letter(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        assert "discard" in foot(pilot)
        await pilot.press("slash", *"bea")
        await pilot.pause()
        assert "Esc" in foot(pilot)
        assert "discard" not in foot(pilot)
        await pilot.press("enter")
        await pilot.pause()
        assert "discard" in foot(pilot)
        await pilot.press("slash", "escape")
        await pilot.pause()
        assert "discard" in foot(pilot)
