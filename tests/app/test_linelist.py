"""The list: it asks for what it paints, keeps its place, and is painted without colours too."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

import pytest
from textual.app import App, ComposeResult
from textual.pilot import Pilot

from pantry_tui.app.lines import PlaceKey, RowKey, Window, heading
from pantry_tui.app.rowtext import due_columns
from pantry_tui.app.widgets.line import Line
from pantry_tui.app.widgets.linelist import MARGIN, LineList
from pantry_tui.core.words import Method, State, Verdict
from pantry_tui.services.stock.rows import DueRow
from tests.app.held import Held

COLUMNS = due_columns(80)
SIZE = (80, 20)
PAINTED = SIZE[1] - 1  # the heads take one line


def row(number: int, place: str = "larder", count: int = 2, food: str = "peaches") -> DueRow:
    """A row of batch 2<number>."""
    code = f"2{number}"
    return DueRow(
        code,
        tuple(f"{code}/{n}" for n in range(1, count + 1)),
        food,
        Method.BOILING_WATER,
        place,
        count,
        State.SEALED,
        Verdict.SOUND,
        date(2027, 1, 1),
        None,
        40,
        ("Best by Fri 1 Jan 2027.",),
    )


class Asked(Held):
    """Rows that remember what was asked of them."""

    def __init__(self, rows: Sequence[DueRow]) -> None:
        super().__init__(rows, "date")
        self.asked: list[tuple[int, int]] = []

    def rows(self, start: int, stop: int) -> Sequence[DueRow]:
        self.asked.append((start, stop))
        return super().rows(start, stop)


class Shown(App[None]):
    """One list and nothing else."""

    CSS = "LineList { height: 100%; }"

    def __init__(self, window: Window) -> None:
        super().__init__()
        self.window = window

    def compose(self) -> ComposeResult:
        yield LineList()

    def on_mount(self) -> None:
        self.query_one(LineList).focus()
        self.show(self.window)

    def show(self, window: Window, *, top: bool = False) -> None:
        self.query_one(LineList).show(COLUMNS, window, top=top)


def listed(pilot: Pilot[None]) -> LineList:
    return pilot.app.query_one(LineList)


def painted(pilot: Pilot[None]) -> list[str]:
    strips = pilot.app.screen._compositor.render_strips()
    return ["".join(segment.text for segment in strip).rstrip() for strip in strips]


def code(pilot: Pilot[None]) -> str:
    line = listed(pilot).current
    assert line is not None
    assert line.row is not None
    return line.row.code


async def test_it_asks_for_no_more_rows_than_it_paints_and_a_margin() -> None:
    found = Asked([row(n) for n in range(20_000)])
    async with Shown(Window(found, COLUMNS)).run_test(size=SIZE) as pilot:
        for key in ("down", "pagedown", "end", "up", "pageup", "home"):
            await pilot.press(key)
        assert painted(pilot)[1].startswith("›+ 20 ")
        assert max(stop - start for start, stop in found.asked) <= PAINTED + 2 * MARGIN + 1
        before = len(found.asked)
        await pilot.press("down", "up", "down")
        assert len(found.asked) == before, "what is on the screen is not asked for again"


async def test_keys_wheel_and_mouse_move_the_cursor_and_the_lines() -> None:
    found = Asked([row(n) for n in range(100)])
    async with Shown(Window(found, COLUMNS)).run_test(size=SIZE) as pilot:
        table = listed(pilot)
        await pilot.press("pagedown")
        assert table.cursor_row == PAINTED - 1
        await pilot.press("ctrl+end")
        assert (table.cursor_row, code(pilot)) == (99, "299")
        assert painted(pilot)[-1].split()[1] == "299"
        await pilot.press("down")
        assert table.cursor_row == 99, "the last line is the last"
        await pilot.press("home")
        assert (table.cursor_row, painted(pilot)[1].split()[1]) == (0, "20")
        await pilot.click(LineList, offset=(5, 4))
        assert table.cursor_row == 3
        await pilot.click(LineList, offset=(5, 0))
        assert table.cursor_row == 3, "the heads are no line"
        await pilot._post_mouse_events([_wheel()], LineList, offset=(5, 5))
        await pilot.pause()
        assert table.scroll_offset.y > 0
        assert table.cursor_row == 3


def _wheel() -> type:
    from textual.events import MouseScrollDown

    return MouseScrollDown


async def test_the_cursor_stays_with_what_stands_there() -> None:
    rows = [row(n) for n in range(60)]
    app = Shown(Window(Held(rows, "date"), COLUMNS))
    async with app.run_test(size=SIZE) as pilot:
        listed(pilot).move_cursor(30)
        app.show(Window(Held(rows[5:], "date"), COLUMNS))
        assert (listed(pilot).cursor_row, code(pilot)) == (25, "230")
        fewer = rows[30]._replace(container_ids=("230/2",), count=1)
        app.show(Window(Held([*rows[:30], fewer, *rows[31:]], "date"), COLUMNS))
        assert code(pilot) == "230", "one of them was taken, the rest stands there"
        opened = fewer._replace(state=State.OPEN)
        app.show(Window(Held([opened, *rows[:30], *rows[31:]], "date"), COLUMNS))
        assert (listed(pilot).cursor_row, code(pilot)) == (0, "230"), "it goes with the container"
        app.show(Window(Held(rows[:30], "date"), COLUMNS))
        assert listed(pilot).cursor_row == 0, "what is gone leaves the cursor where it was"
        await pilot.pause()
        assert painted(pilot)[1].split()[1] == "20"


async def test_a_list_that_shrinks_keeps_a_line_under_the_cursor() -> None:
    app = Shown(Window(Held([row(n) for n in range(60)], "date"), COLUMNS))
    async with app.run_test(size=SIZE) as pilot:
        await pilot.press("end")
        app.show(Window(Held([row(n) for n in range(100, 103)], "date"), COLUMNS))
        await pilot.pause()
        assert (listed(pilot).cursor_row, code(pilot)) == (2, "2102")
        assert len([line for line in painted(pilot) if "peaches" in line]) == 3
        app.show(Window(Held([], "date"), COLUMNS))
        await pilot.pause()
        assert listed(pilot).current is None
        await pilot.press("down", "end", "pageup")
        assert listed(pilot).current is None


async def test_rows_that_vanish_between_two_questions_leave_blank_lines() -> None:
    """Another window may take rows away after the length of the list was asked."""

    class Shrinks(Held):
        def rows(self, start: int, stop: int) -> Sequence[DueRow]:
            return super().rows(start, min(stop, 3))

    app = Shown(Window(Shrinks([row(n) for n in range(50)], "date"), COLUMNS))
    async with app.run_test(size=SIZE) as pilot:
        await pilot.press("end")
        assert listed(pilot).current is None


async def test_without_colours_the_whole_list_is_painted(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    rows = [row(1, food="[bold]peaches[/]"), row(2, food="🫙 مرحبا"), row(3, food="\x1b[31mred")]
    async with Shown(Window(Held(rows, "date"), COLUMNS)).run_test(size=SIZE) as pilot:
        await pilot.pause()
        lines = painted(pilot)
        assert "[bold]peaches[/]" in lines[1]
        assert "\x1b" not in "".join(lines)
        assert all(line[1:].startswith("+ 2") for line in lines[1:4])


async def test_the_cursor_is_seen_with_and_without_the_keys() -> None:
    app = Shown(Window(Held([row(n) for n in range(5)], "date"), COLUMNS))

    def grounds() -> list[object]:
        strips = app.screen._compositor.render_strips()
        return [next(iter(strip)).style.bgcolor for strip in strips[1:4]]  # type: ignore[union-attr]

    async with app.run_test(size=SIZE) as pilot:
        await pilot.pause()
        cursor, second, third = grounds()
        assert cursor != second == third
        app.screen.set_focus(None)
        await pilot.pause()
        assert cursor != grounds()[0] != second
        await pilot.press("tab", "down")
        assert grounds() == [second, cursor, third]


# -- heads and notices among the rows -------------------------------------------------------------


def keys(lines: Sequence[Line]) -> list[str]:
    return [line.row.code if line.row else line.cells[0][0] for line in lines]


def shelved() -> Window:
    """Two notices; an empty place, three rows, an empty place, two rows, an empty place."""
    rows = [row(1, "a"), row(2, "a"), row(3, "a"), row(4, "b"), row(5, "b")]
    heads = [
        (heading(PlaceKey(name), name), n) for name, n in zip("0a1b2", (0, 3, 0, 2, 0), strict=True)
    ]
    top = [heading(PlaceKey(name), name) for name in ("x", "y")]
    return Window(Held(rows, "place"), COLUMNS, top=top, heads=heads)


WHOLE = ["x", "y", "0", "a", "21", "22", "23", "1", "b", "24", "25", "2"]


def test_every_part_of_a_headed_list_is_what_the_whole_has_there() -> None:
    window = shelved()
    assert window.total == len(WHOLE)
    for start in range(-1, len(WHOLE) + 1):
        for stop in range(start, len(WHOLE) + 2):
            assert keys(window.lines(start, stop)) == WHOLE[max(start, 0) : max(stop, 0)]


def test_every_line_of_a_headed_list_is_found_again() -> None:
    window = shelved()
    for at, line in enumerate(window.lines(0, window.total)):
        assert window.where(line.key) == at
        if line.row is not None:
            assert window.find(line.row.code) == window.find(line.ref) == at
    assert window.find("9Z") is None
    assert window.where(RowKey("9Z", "a", State.SEALED, "9Z/1", "9Z/1")) is None
    assert window.where(PlaceKey("nowhere")) is None
