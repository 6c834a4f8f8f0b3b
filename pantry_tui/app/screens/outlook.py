"""Will it last: pace, losses, what runs out, and how much to put up, food by food."""

from __future__ import annotations

from collections.abc import Sequence

from rich.text import Text

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, outlook_cells, outlook_columns, supply
from pantry_tui.app.lines import heading
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.services.outlook import outlook


class OutlookScreen(StockScreen):
    """Both alarms on top, then every food; the line below shows supply against time."""

    here = "outlook"
    BINDINGS = bindings("outlook")
    empty = "Nothing to look ahead to yet: press p and put something up."

    def columns(self, width: int) -> tuple[Column, ...]:
        return outlook_columns(width)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        found = outlook(self.host.pantry)
        words = self.sought.lower().split()
        lines = [] if words else [heading(f"a|{one}", f"! {one}", columns) for one in found.alarms]
        for one in found.foods:
            if all(word in f"{one.food} {one.group}" for word in words):
                cells = tuple(Text(text) for text in outlook_cells(one, columns))
                said = f"{one.says} Supply by week: {supply(one.supply)}".strip()
                lines.append(Line(f"food|{one.food}", cells, word=said))
        return lines
