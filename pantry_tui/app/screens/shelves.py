"""What stands where: every place with its stock, in path order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, due_columns, shelf_title
from pantry_tui.app.lines import due_lines, heading
from pantry_tui.app.screens.powercut import walk_through
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.core.words import Climate
from pantry_tui.services.rows import Shelf
from pantry_tui.services.stock import places, readings, view


class ShelvesScreen(StockScreen):
    """Places as headings, their rows below."""

    here = "shelves"
    BINDINGS = bindings("shelves")
    empty = "There is no place yet: press a and name the first one."

    def columns(self, width: int) -> tuple[Column, ...]:
        return due_columns(width, "method")

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        pantry = self.host.pantry
        fits = {one for row in view.find(pantry, self.sought) for one in row.container_ids}
        lines: list[Line] = []
        for shelf in view.shelves(pantry):
            rows = [row for row in shelf.rows if not self.sought or fits & set(row.container_ids)]
            if rows or not self.sought:
                head = heading(f"place|{shelf.path}", shelf_title(shelf), columns)
                lines.append(replace(head, word=_may_do(shelf)))
                lines += due_lines(rows, columns, shelf.path)
        return lines

    def _place(self) -> str:
        """The place of the line under the cursor."""
        line = self.table.current
        if line is None:
            return ""
        return line.row.place if line.row else line.key.partition("|")[2]

    def action_reading(self) -> None:
        place = self._place()
        if place:
            self._ask_act(
                f"How warm is {place}?",
                "38F or 3C, then % humidity if known",
                lambda typed: readings.read_line(self.host.pantry, place, typed),
            )
        else:
            self.host.tell("Put the cursor on a place first.", refused=True)

    def action_outage(self) -> None:
        place = self._place()
        if place:
            walk_through(self.host, place, self.reload)
        else:
            self.host.tell("Put the cursor on a place first.", refused=True)

    def action_add_place(self) -> None:
        self._ask_act(
            "A new place: name, climate, then if you like: in a place, 55F, room for 40",
            "shelf 3, pantry, in basement, 55F",
            lambda line: places.add_line(self.host.pantry, line),
        )


def _may_do(shelf: Shelf) -> str:
    """What the keys do on a place."""
    cut = " x: the power was off here." if Climate(shelf.climate).is_cold else ""
    stands = "" if shelf.rows else "Nothing stands here itself: p puts something up. "
    return f"{stands}r: read off its warmth.{cut} c: count a place."
