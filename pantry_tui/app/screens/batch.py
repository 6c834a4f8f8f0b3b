"""One batch whole: its containers, dates, why, sources, history."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import PurePath
from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip, hang
from pantry_tui.app.lines import due_lines
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.texts import batch_text
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.rowtable import Line, RowTable
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.errors import PantryError
from pantry_tui.services.stock import view


class BatchScreen(StockScreen):
    """Its rows above, to act on; everything else below, to read."""

    CSS_PATH: ClassVar[str | PurePath | list[str | PurePath] | None] = ["stock.tcss", "batch.tcss"]
    here = "batch"
    BINDINGS = bindings("batch")
    empty = "Nothing of this batch is left; Esc goes back."

    def __init__(self, code: str) -> None:
        super().__init__()
        self.code = code

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        yield Static(id="batchname")
        yield RowTable()
        yield Static(id="word")
        with VerticalScroll(id="whole"):
            yield Static(id="text")
        yield Input(id="bar")
        yield SaidLine()
        yield KeyLine(self.here)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        try:
            found = view.show(self.host.pantry, self.code)
        except PantryError:  # undone just now: the batch is no more
            self.call_after_refresh(self.action_back)
            return ()
        self.query_one("#batchname", Static).update(
            Content(clip(f"{found.code}  {found.food}, {found.method}", self.size.width - 2))
        )
        self.query_one("#text", Static).update(
            Content(hang(batch_text(found), self.size.width - 4))
        )
        self.table.styles.height = min(len(found.rows) + 1, max(3, self.size.height // 3))
        return due_lines([row for row in found.rows if self._fits(row.place)], columns)

    @property
    def tasted_ref(self) -> str:
        """This batch, also when nothing of it is left."""
        return self.code

    def _fits(self, text: str) -> bool:
        return all(word in text.lower() for word in self.sought.lower().split())

    def reload(self) -> None:
        """As every list of stock, without a pane beside it."""
        self.table.fill(columns := self.columns(self.size.width), self.build(columns))
        self.query_one(RoomLine).show(self.headline())
        self.say_word()

    def show_detail(self, text: str) -> None:
        """The text below says it all."""

    def look(self) -> None:
        self.set_focus(self.query_one("#whole"))

    def action_back(self) -> None:
        if self.bar.display:
            super().action_back()
        elif self.is_current:
            self.dismiss()
