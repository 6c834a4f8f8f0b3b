"""A picture that is walked with the arrows: rows of spans, a cursor on what they stand for."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style
from textual.binding import Binding
from textual.events import Click
from textual.geometry import Size
from textual.strip import Strip

from pantry_tui.app.draw.spans import Row, joined
from pantry_tui.app.format import Column
from pantry_tui.app.widgets.inunits import in_units
from pantry_tui.app.widgets.line import Line, Listed, Source
from pantry_tui.app.widgets.linelist import LineList


class Drawn(Listed):
    """A picture, and a line for each thing that the cursor can stand on, by the `ref` of its
    spans, in walking order."""

    def __init__(self, rows: Sequence[Row], lines: Mapping[str, Line]) -> None:
        super().__init__(list(lines.values()))
        self.rows = rows
        self.at = {ref: at for at, ref in enumerate(lines)}


class _Spot(NamedTuple):
    """Where something is drawn first."""

    row: int
    left: int
    width: int


class Picture(LineList):
    """In the place of a list: acts, lid codes and marks work on its cells as on lines."""

    BINDINGS = [
        Binding("left", "cursor(-1)", "left", show=False),
        Binding("right", "cursor(1)", "right", show=False),
        Binding("up", "rise(-1)", "up", show=False),
        Binding("down", "rise(1)", "down", show=False),
    ]

    def __init__(self, id: str = "list") -> None:
        super().__init__(id)
        self._rows: Sequence[Row] = ()
        self._at: Mapping[str, int] = {}
        self._spots: dict[int, _Spot] = {}

    def show(
        self,
        columns: tuple[Column, ...],
        source: Source,
        start: Callable[[], int] = int,
        *,
        top: bool = False,
    ) -> None:
        drawn = source if isinstance(source, Drawn) else Drawn((), {})
        self._rows, self._at = [joined(row) for row in drawn.rows], drawn.at
        self._spots = {}
        for y, row in enumerate(self._rows):
            x = 0
            for span in row:
                at = self._at.get(span.ref)
                if at is not None and at not in self._spots:
                    self._spots[at] = _Spot(y, x, cell_len(span.text))
                x += cell_len(span.text)
        super().show(columns, source, start, top=top)

    def _stretch(self) -> None:
        size = Size(0, len(self._rows))
        if size != self.virtual_size:
            self.set_reactive(LineList.virtual_size, size)
            self._scroll_update(size)

    @property
    def top_cell(self) -> int:
        """The cell that is read first: the uppermost, of those the one at the left."""
        return min(self._spots, key=lambda at: self._spots[at][:2], default=0)

    # -- the cursor ------------------------------------------------------------------------------

    def move_cursor(self, row: int) -> None:
        row = max(0, min(row, self.source.total - 1))
        if row != self.cursor_row:
            self.cursor_row = row
            self._to_cursor()
            self.refresh()
            self.post_message(self.Moved())

    @property
    def _tall(self) -> int:
        return max(self.container_size.height, 0)

    def _to_cursor(self) -> None:
        """The cell with what stands over and under it in sight; from the top on where the cell is
        seen from there, since the heads of a picture stand there."""
        spot, tall, top = self._spots.get(self.cursor_row), self._tall, self.scroll_offset.y
        if spot is None or not tall:
            return
        if spot.row + 2 < tall:
            if top:
                self.scroll_to(y=0, animate=False)
        elif spot.row - 2 < top:
            self.scroll_to(y=max(spot.row - 3, 0), animate=False)
        elif spot.row + 1 >= top + tall:
            self.scroll_to(y=spot.row + 2 - tall, animate=False)

    def action_rise(self, by: int) -> None:
        """To the nearest cell in the next row, up or down, that has any."""
        here = self._spots.get(self.cursor_row)
        if here is None:
            return
        rows = sorted({spot.row for spot in self._spots.values()})
        at = rows.index(here.row) + by
        if not 0 <= at < len(rows):
            self.scroll_relative(y=by, animate=False)
            return
        there = {cell: one for cell, one in self._spots.items() if one.row == rows[at]}
        middle = here.left + here.width / 2
        self.move_cursor(min(there, key=lambda c: abs(there[c].left + there[c].width / 2 - middle)))

    def action_page(self, by: int) -> None:
        for _ in range(max(self._tall // 3, 1)):
            self.action_rise(by)

    def on_click(self, event: Click) -> None:
        """A click takes the cursor there; where it stands already the cell is chosen."""
        event.prevent_default()  # a list would take it for a line
        y, x = event.y + self.scroll_offset.y, event.x - 1
        for span in self._rows[y] if 0 <= y < len(self._rows) else ():
            wide = cell_len(span.text)
            at = self._at.get(span.ref)
            if 0 <= x < wide and at is not None:
                event.stop()
                if at == self.cursor_row:
                    self.post_message(self.Chosen())
                self.move_cursor(at)
                return
            x -= wide

    def _repaint_cursor(self) -> None:
        self._styles_used.clear()
        self.refresh()

    # -- painting --------------------------------------------------------------------------------

    def render_line(self, y: int) -> Strip:
        width, base = self.scrollable_content_region.width, self.rich_style
        at = y + self.scroll_offset.y
        if not 0 <= at < len(self._rows):
            return Strip.blank(width, base)
        pieces, left = [Segment(" ", base)], width - 1  # the left edge of every list
        for span in self._rows[at]:
            text = in_units(self, span.text) if not span.ref else span.text
            here = bool(span.ref) and self._at.get(span.ref) == self.cursor_row
            over = Style(reverse=True, bold=True) if here else Style.null()
            pieces.append(Segment(text, base + self._ink(span.role) + over))
            left -= cell_len(text)
        if left > 0:
            pieces.append(Segment(" " * left, base))
        return Strip(pieces).crop(0, width)
