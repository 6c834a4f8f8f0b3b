"""One batch whole: its containers, dates, why, sources, history."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip, hang
from pantry_tui.app.lines import due_lines
from pantry_tui.app.rowtext import due_columns
from pantry_tui.app.screens.acts import Acts, Rates
from pantry_tui.app.screens.stock import RowWords, longest_place
from pantry_tui.app.texts import batch_text
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.line import Listed, Source
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.app.widgets.more import More
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.wordline import WordLine
from pantry_tui.errors import PantryError
from pantry_tui.services.stock import one_batch


class BatchScreen(Acts, Rates, RowWords):
    """Its rows above, to act on; everything else below, to read."""

    CSS_PATH = "batch.tcss"
    here = "batch"
    BINDINGS = bindings("batch")
    empty = "Nothing of this batch is left; Esc goes back."

    def __init__(self, code: str, ref: str = "") -> None:
        """`ref`: the container that was asked for, whose row the keys are for at first."""
        super().__init__()
        self.code, self._ref = code, ref or code

    def on_mount(self) -> None:
        super().on_mount()
        self.show_line(self._ref)

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        yield Static(id="batchname")
        yield LineList()
        yield WordLine()
        with VerticalScroll(id="whole") as text:
            yield Static(id="text")
        yield More(text, "Enter, then Down or Page Down")
        yield KeyLine(self.here)

    def columns(self, width: int) -> tuple[Column, ...]:
        longest, named = self.host.pantry.longest_code, longest_place(self.host)
        return due_columns(width, longest=longest, named=named)

    def source(self, columns: tuple[Column, ...]) -> Source:
        try:
            found = one_batch.show(self.host.pantry, self.code)
        except PantryError:  # undone just now: the batch is no more
            self.call_after_refresh(self.leave)
            return Listed(())
        width, height = self.app.size
        name = clip(f"{found.code}  {found.food}, {found.method}", width - 2)
        self.query_one("#batchname", Static).update(Content(name))
        self.query_one("#text", Static).update(
            Content(hang(self.host.said(batch_text(self.host.units.rows(found))), width - 4))
        )
        self.table.styles.height = min(len(found.rows) + 1, max(3, height // 3))
        words = self.sought.lower().split()
        rows = [row for row in found.rows if all(word in row.place.lower() for word in words)]
        return Listed(due_lines(rows, columns, self.marked))

    @property
    def rated_ref(self) -> str:
        """This batch, also when nothing of it is left."""
        return self.code

    def look(self) -> None:
        self.set_focus(self.query_one("#whole"))

    def leave(self) -> None:
        if self.is_current:
            self.dismiss()
