"""What each screen can do, and two windows on one store."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from importlib import import_module
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.screen import Screen
from textual.widgets import Input

from pantry_tui.app.bindings import keymap
from pantry_tui.app.commands import COMMANDS, SCREENS, of
from pantry_tui.app.host import saw
from pantry_tui.app.main import LOOKS_EVERY, ROOMS, PantryApp
from pantry_tui.app.screens.ask import Choose
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.screens.due import DueScreen
from pantry_tui.app.screens.importing import ImportScreen
from pantry_tui.app.screens.pictures import (
    MonthsPicture,
    ShelfPicture,
    UnderwayPicture,
    YearPicture,
)
from pantry_tui.app.screens.weekgrid import WeekGrid
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.words import Verdict
from pantry_tui.errors import StoreError
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import act, places, readings, view
from pantry_tui.services.stock.ready import UPDATED
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.store import log
from tests.app.screens import painted, table
from tests.services.stock.test_updated import judged_by_another

TODAY = date(2026, 11, 25)


def screen_class(here: str) -> type[Screen[None]]:
    kinds: dict[str, Any] = {"due": DueScreen, "batch": BatchScreen, "grid": WeekGrid}
    kinds["import"] = ImportScreen
    drawn = (ShelfPicture, MonthsPicture, YearPicture, UnderwayPicture)
    kinds |= {one.here: one for one in drawn}
    if here in ROOMS:
        module, name = ROOMS[here]
        kinds[here] = getattr(import_module(f"pantry_tui.app.screens.{module}"), name)
    kind: type[Screen[None]] = kinds[here]
    return kind


def actions_of(kind: type[Screen[None]]) -> set[str]:
    """The actions that our own classes give a screen."""
    ours = [one for one in kind.__mro__ if one.__module__.startswith("pantry_tui.")]
    return {
        name.removeprefix("action_")
        for one in ours
        for name in vars(one)
        if name.startswith("action_")
    }


@pytest.mark.parametrize("here", list(SCREENS))
def test_a_screen_can_do_what_its_keys_say_and_nothing_else(here: str) -> None:
    wanted = {one.action.partition("(")[0] for one in of(here) if not one.action.startswith("app.")}
    assert actions_of(screen_class(here)) == wanted


def test_no_two_commands_have_one_id() -> None:
    ids = [command.id for command in COMMANDS]
    assert len(ids) == len(set(ids))


def test_a_key_of_ones_own_must_be_free_on_every_screen_of_its_command() -> None:
    assert keymap({"pin": "ctrl+o"}) == ({"pin": "ctrl+o"}, [])
    assert keymap({"reserve": "b"})[0] == {"reserve": "b"}, "the week alone has that key"
    good, wrong = keymap({"use": "k"})
    assert not good
    assert "already reserve" in wrong[0] or "already pin" in wrong[0]
    good, wrong = keymap({"use": "ctrl+o", "open": "ctrl+o"})
    assert good == {"use": "ctrl+o"}
    assert "already use" in wrong[0]
    assert keymap({"open": "u", "use": "ctrl+o"})[0] == {"open": "u", "use": "ctrl+o"}, (
        "u is free then"
    )
    assert keymap({"use": "o", "open": "u"})[0] == {"use": "o", "open": "u"}, "two may change"
    assert "cursor" in keymap({"use": "down"})[1][0]
    assert "jump" in keymap({"use": "7"})[1][0]
    assert "digit" in keymap({"book": "7"})[1][0]


def test_settings_that_name_a_command_by_its_old_word_still_hold() -> None:
    assert keymap({"lose": "ctrl+l", "round": "ctrl+r"}) == (
        {"missing": "ctrl+l", "count": "ctrl+r"},
        [],
    )


# -- what a screen saw ----------------------------------------------------------------------------


def test_a_service_that_asks_is_told_what_the_screen_showed() -> None:
    class Row:
        stamp = "7C as it was"

    def asks(_p: object, _ref: str, saw: str = "") -> str:
        return saw

    def does_not(_p: object, ref: str) -> str:
        return ref

    row: Any = Row()
    assert asks(None, "7C", **saw(row, asks)) == "7C as it was"
    assert saw(row, does_not) == {}
    assert saw(None, asks) == {}


async def test_what_a_question_is_about_is_settled_when_it_is_asked(demo: Pantry) -> None:
    """The list may change under it: the answer is for the line that was named."""
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        row = shown_row(pilot)
        await pilot.press("d")
        pilot.app.screen_stack[0].query_one(LineList).move_cursor(9)
        await pilot.press("9")
        assert demo.stock.batches[demo.events[-1].batch].code == row.code


def shown_row(pilot: Pilot[None]) -> DueRow:
    line = table(pilot).current
    assert line is not None
    assert line.row is not None
    return line.row


# -- another window -------------------------------------------------------------------------------


async def until(pilot: Pilot[None], come: Callable[[], bool]) -> None:
    """Looks again and again; gives up after many looks."""
    for _ in range(1000):
        if come():
            return
        await pilot.pause()
    raise AssertionError("it never came")


@pytest.mark.parametrize("key", [*"uotmdsgflGTPvyzSWcORLp", "space", "slash", "2", "enter"])
async def test_no_key_ends_an_app_that_was_left_open_across_an_update(
    demo: Pantry, key: str
) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        length = len(demo.events)
        judged_by_another(demo.path)
        pilot.app.look_around()  # type: ignore[attr-defined]
        await pilot.press(key)
        await pilot.press("1", "enter")
        assert pilot.app.is_running
        assert len(log.select(demo.store.db)) == length


@pytest.mark.parametrize("keys", ["", "S", "W", "L", "O", "enter"])
async def test_an_open_screen_shows_what_another_window_writes(demo: Pantry, keys: str) -> None:
    """Nothing is pressed and nothing is called: the app looks by itself, twice in two seconds."""
    assert LOOKS_EVERY <= 1
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        row = shown_row(pilot)
        await pilot.press(*([keys] if keys else []))
        was = painted(pilot)
        with open_pantry(demo.path, TODAY) as other:
            # Of every food something, so that whatever part of its list a screen shows is struck.
            usable = [one for one in view.due(other) if one.usable and one.code != row.code]
            for name in (*row.container_ids, *(one.container_ids[0] for one in usable)):
                act.use(other, name, "all")
        await until(pilot, lambda: painted(pilot) != was)


async def test_another_window_s_act_is_counted_on_the_due_list(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        row = shown_row(pilot)
        with open_pantry(demo.path, TODAY) as other:
            act.use(other, row.container_ids[0])
            shown = f"{sum(one.count for one in view.due(other))} in store"
        await until(pilot, lambda: shown in str(pilot.app.screen.query_one("#rooms").content))  # type: ignore[attr-defined]


async def test_an_app_left_open_across_an_update_says_so_and_books_nothing(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(120, 40)) as pilot:
        length = len(demo.events)
        judged_by_another(demo.path)
        pilot.app.look_around()  # type: ignore[attr-defined]
        await pilot.pause()
        assert not table(pilot).source.total, "no line that was judged by other rules"
        assert UPDATED in painted(pilot)
        await pilot.press("u")
        assert UPDATED in painted(pilot)
        await pilot.press("p")
        pilot.app.screen.query_one(Input).value = "2 jars strawberry jam, jam, shelf 1"
        await pilot.press("enter")
        assert UPDATED in painted(pilot)
        assert "strawberry" in painted(pilot), "what was typed is still there"
        assert len(log.select(demo.store.db)) == length


async def test_what_another_window_booked_during_an_act_was_not_done_here(
    demo: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Only the events that this app wrote are its own, not the newest one at the time."""
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        several = act.several

        def then_another(*args: Any) -> Any:
            done = several(*args)
            with open_pantry(demo.path, TODAY) as other:
                places.add(other, "shed", "room")
            return done

        monkeypatch.setattr(act, "several", then_another)
        await pilot.press("u", "z")
        assert isinstance(pilot.app.screen, Choose)
        assert "shed" in pilot.app.screen._title


async def test_what_was_not_done_here_is_named_before_it_is_taken_back(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("u")
        with open_pantry(demo.path, TODAY) as other:
            places.add(other, "shed", "room")
            before = len(other.events)
        await pilot.press("z")
        assert isinstance(pilot.app.screen, Choose)
        assert "shed" in pilot.app.screen._title
        await pilot.press("2")
        assert len(demo.events) == before, "left as it is"
        await pilot.press("z", "1")
        assert "shed" not in demo.place_paths().values()
        await pilot.press("z")
        assert len(pilot.app.screen_stack) == 1, "what was done here needs no question"
        assert len(demo.events) == before + 2


async def test_what_came_between_the_question_and_the_answer_is_not_taken_back(
    demo: Pantry,
) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("z")
        assert isinstance(pilot.app.screen, Choose)
        with open_pantry(demo.path, TODAY) as other:
            places.add(other, "shed", "room")
        await pilot.press("1")
        assert "shed" in demo.place_paths().values()


async def test_a_store_that_cannot_be_read_just_now_is_said_and_read_later(
    demo: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        look: Callable[[], None] = pilot.app.look_around  # type: ignore[attr-defined]

        def held() -> int:
            raise StoreError("The store is in use by another program.")

        with open_pantry(demo.path, TODAY) as other, monkeypatch.context() as patched:
            patched.setattr(demo.store, "version", held)
            places.add(other, "shed", "room")
            look()
            assert "in use" in str(pilot.app.screen.query_one(SaidLine).content)
        look()
        assert "shed" in demo.place_paths().values()


async def test_words_and_the_cursor_stay_when_another_window_writes(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"beans", "enter", "down")
        row = shown_row(pilot)
        with open_pantry(demo.path, TODAY) as other:
            places.add(other, "shed", "room")
        pilot.app.look_around()  # type: ignore[attr-defined]
        assert shown_row(pilot) == row
        assert pilot.app.screen.query_one(Input).value == "beans"


# -- built once -----------------------------------------------------------------------------------


@pytest.mark.parametrize(("here", "key"), [("due", ""), ("shelves", "S"), ("log", "l")])
@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
async def test_a_list_is_filled_once_when_it_is_first_shown(
    larder: Pantry, monkeypatch: pytest.MonkeyPatch, here: str, key: str, size: tuple[int, int]
) -> None:
    kind: Any = screen_class(here)
    fill, filled = kind.source, []

    def counted(screen: Any, columns: Any) -> Any:
        filled.append(columns)
        return fill(screen, columns)

    monkeypatch.setattr(kind, "source", counted)
    async with PantryApp(larder).run_test(size=size) as pilot:
        await pilot.press(*key)
        assert pilot.app.screen.here == here  # type: ignore[attr-defined]
        assert len(filled) == 1


async def test_what_the_places_cost_is_reckoned_when_the_list_stands(
    demo: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    readings.read(demo, "larder", 95)
    painted: list[int] = []
    reckon = readings.notices

    def noted(p: Pantry) -> list[str]:
        painted.append(app.screen.query_one(LineList).size.height)
        return reckon(p)

    monkeypatch.setattr(readings, "notices", noted)
    app = PantryApp(demo)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("down", "up")
        assert len(painted) == 1, "once"
        assert painted[0] > 0, "and not before the list is laid out"
        first = table(pilot).source.lines(0, 1)[0]
        assert first.row is None
        assert first.cells[0][0].startswith("! ")
        row = shown_row(pilot)
        assert row.verdict not in (Verdict.DISCARD, Verdict.DO_NOT_TASTE), "the cursor stayed"
