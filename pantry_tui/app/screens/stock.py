"""What every list of stock shows: rows, and a word on the row under the cursor.

A screen of stock says which lines it shows (`build`); what is done to them is in `acting`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import PurePath
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import DataTable, Input, Static

from pantry_tui.app.format import Column, caution, clip, due_columns, row_detail, sentence
from pantry_tui.app.screens.acting import ActingScreen
from pantry_tui.app.screens.page import Page
from pantry_tui.app.texts import months_text
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.rowtable import Line, RowTable
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.lidcode import normal_code
from pantry_tui.services.stock import view

WIDE = 118
PANE = 38


class StockScreen(ActingScreen):
    """A list of stock. Subclasses set `here` (the command table's screen id) and `build`."""

    CSS_PATH: ClassVar[str | PurePath | list[str | PurePath] | None] = "stock.tcss"
    AUTO_FOCUS = "#list"
    here = "due"
    empty = "Nothing is in store yet."

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        with Horizontal(id="middle"):
            yield RowTable()
            with VerticalScroll(id="pane", can_focus=False):
                yield Static(id="detail")
        yield Static(id="word")
        yield Input(id="bar", placeholder="words to find")
        yield SaidLine()
        yield KeyLine(self.here)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        """The lines to show now."""
        raise NotImplementedError

    def start(self, lines: Sequence[Line]) -> int:
        """Where the cursor stands at first."""
        return 0

    def columns(self, width: int) -> tuple[Column, ...]:
        return due_columns(width)

    def headline(self) -> str:
        """What stands after the rooms on the top line."""
        return self.host.day_text

    # -- showing ---------------------------------------------------------------------------------

    def on_screen_resume(self) -> None:
        self.host.pantry.catch_up()
        self.reload()

    def on_resize(self) -> None:
        self.reload()

    def reload(self) -> None:
        """Read the list again; the cursor stays on its line."""
        wide = self.size.width >= WIDE
        self.query_one("#pane").display = wide
        columns = self.columns(self.size.width - (PANE if wide else 0))
        lines = [_with_mark(one, self.marked, columns) for one in self.build(columns)]
        self.table.fill(columns, lines, self.start(lines), top=self.searching)
        self.query_one(RoomLine).show(self.headline())
        self.say_word()

    @on(DataTable.RowHighlighted)
    def highlighted(self) -> None:
        self.say_word()

    def say_word(self) -> None:
        """A sentence on the line under the cursor: why, and the caution where food can hurt."""
        line = self.table.current
        row = line.row if line else None
        word = line.word if line else ""
        if row is not None:
            why = sentence(clip(row.reasons[0], 300)) if row.reasons else ""
            word = caution(row) or word or why
        elif not self.table.lines:
            word = "Nothing matches these words; Esc shows all." if self.sought else self.empty
        self.query_one("#word", Static).update(Content(word))
        self.show_detail(row_detail(row) if row else "")

    def show_detail(self, text: str) -> None:
        """The pane beside a wide list."""
        self.query_one("#detail", Static).update(Content(text))

    # -- looking closer --------------------------------------------------------------------------

    @on(DataTable.RowSelected)
    def selected(self) -> None:
        self.action_detail()

    def action_detail(self) -> None:
        """Enter: what was typed in the field stands, or the line is looked at."""
        if self.focused is self.bar:
            self.settle()
        else:
            self.look()

    def action_months(self) -> None:
        longest = max(4, min(40, self.size.width - 28))  # the page's edges, the month, the count
        self.app.push_screen(Page(months_text(view.months(self.host.pantry), longest)))

    def say_code(self, typed: str) -> None:
        batch = self.host.pantry.batch(normal_code(typed.partition("/")[0]))
        said = f"{batch.code} {batch.food.name}: Enter shows it." if batch else ""
        self.query_one("#word", Static).update(Content(clip(said, 200)))

    def look(self) -> None:
        """Show the whole batch of the line."""
        line = self.table.current
        if line is not None and line.ref:
            self.host.show_batch(line.ref)


def _with_mark(line: Line, marked: set[str], columns: Sequence[Column]) -> Line:
    """A marked line says so with a star, where colour may be missing."""
    if line.key not in marked:
        return line
    at = next((i for i, one in enumerate(columns) if one.field in ("food", "what")), 0)
    cells = list(line.cells)
    cells[at] = Text(clip(f"* {cells[at].plain}", columns[at].width - 1), "bold")
    return replace(line, cells=tuple(cells))
