"""A list of rows that never loses its place: the cursor follows the row's key."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from rich.text import Text
from textual.widgets import DataTable

from pantry_tui.app.format import Column
from pantry_tui.services.rows import DueRow

LIMIT = 1000  # DataTable is slow beyond; the words to find narrow the rest


@dataclass(frozen=True, slots=True)
class Line:
    """One line: what is shown, and what it stands for. `ref` is what a service is given."""

    key: str
    cells: tuple[Text, ...]
    ref: str = ""
    row: DueRow | None = None
    number: int = 0  # how many a round expects
    word: str = ""  # what to say of a line that is no row of stock


class RowTable(DataTable[Text]):
    """Cells are `rich.Text`, so that brackets in names stay text."""

    def __init__(self, id: str = "list") -> None:
        super().__init__(id=id, cursor_type="row", zebra_stripes=False, cell_padding=0)
        self._shown_columns: tuple[Column, ...] = ()
        self.lines: tuple[Line, ...] = ()

    @property
    def current(self) -> Line | None:
        """The line under the cursor."""
        return self.lines[self.cursor_row] if 0 <= self.cursor_row < len(self.lines) else None

    def go_to(self, wanted: Callable[[Line], bool]) -> bool:
        """Put the cursor on the first line that is wanted, unless it stands on one already."""
        current = self.current
        if current is not None and wanted(current):
            return True
        at = next((i for i, line in enumerate(self.lines) if wanted(line)), None)
        if at is not None:
            self.move_cursor(row=at, animate=False)
        return at is not None

    def fill(
        self,
        columns: tuple[Column, ...],
        lines: Sequence[Line],
        start: int = 0,
        *,
        top: bool = False,
    ) -> None:
        """Show `lines`; the cursor stays on its key, else where it was (with `top` on the first),
        in the beginning on `start`."""
        fresh = tuple(lines[:LIMIT])
        same = columns == self._shown_columns and [one.key for one in fresh] == [
            one.key for one in self.lines
        ]
        with self.app.batch_update():
            if same:
                self._renew(fresh)
            else:
                self._refill(columns, fresh, start, top)

    def _renew(self, lines: tuple[Line, ...]) -> None:
        for number, (old, new) in enumerate(zip(self.lines, lines, strict=True)):
            for column, (before, after) in enumerate(zip(old.cells, new.cells, strict=True)):
                if before != after:
                    self.update_cell_at((number, column), after)  # type: ignore[arg-type]
        self.lines = lines

    def _refill(
        self, columns: tuple[Column, ...], lines: tuple[Line, ...], start: int, top: bool
    ) -> None:
        current = self.current
        index = start if not self.lines else 0 if top else self.cursor_row
        wanted = self._place_of(current.key if current else "", index, lines)
        self.clear(columns=True)
        for column in columns:
            self.add_column(Text(column.label), width=column.width, key=column.field)
        for line in lines:
            self.add_row(*line.cells, key=line.key)
        self._shown_columns, self.lines = columns, lines
        if lines:
            self.move_cursor(row=wanted, animate=False)
            self.call_after_refresh(self._show_cursor)

    def _show_cursor(self) -> None:
        """Scroll to wherever the cursor is by now: a key may have moved it since."""
        self.move_cursor(row=self.cursor_row, animate=False, scroll=True)

    @staticmethod
    def _place_of(key: str, index: int, lines: tuple[Line, ...]) -> int:
        for number, line in enumerate(lines):
            if line.key == key:
                return number
        return max(0, min(index, len(lines) - 1))

    def action_select_cursor(self) -> None:
        """Enter: done at once, so that a key that follows fast finds the cursor where it goes."""
        enter: Callable[[], None] = getattr(
            self.screen, "action_detail", super().action_select_cursor
        )
        enter()

    def action_scroll_home(self) -> None:
        """The first line: the cursor is on whole lines, so there is no first column to go to."""
        self.action_scroll_top()

    def action_scroll_end(self) -> None:
        """The last line."""
        self.action_scroll_bottom()
