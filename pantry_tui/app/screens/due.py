"""The first screen: everything in store, what must be eaten or thrown away first on top."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import UNSAFE, Column
from pantry_tui.app.lines import due_lines, headings
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.widgets.rowtable import LIMIT, Line
from pantry_tui.services.stock import readings, view


class DueScreen(StockScreen):
    """What must go, then what is open or thawed, then by date."""

    here = "due"
    BINDINGS = bindings("due")
    empty = (
        "Nothing is in store yet. Press S and then a to add a place, then p to put up "
        "the first batch, for example: 7 pint jars runner beans, pressure canned, shelf 2."
    )

    order = next(iter(view.ORDERS))

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        pantry = self.host.pantry
        rows = view.find(pantry, self.sought) if self.sought else view.due(pantry)
        rows = sorted(rows, key=view.ORDERS[self.order])
        self._count, self._shown = sum(row.count for row in rows), len(rows)
        costs = [] if self.sought else readings.notices(pantry)
        heads = [
            line for one in costs for line in headings(f"notice|{one}", f"! {one}", columns, 2)
        ]
        return [*heads, *due_lines(rows, columns)]

    def start(self, lines: Sequence[Line]) -> int:
        """At first the cursor stands on what may be eaten, not on what must go or is a gift."""
        fits = (
            i
            for i, one in enumerate(lines)
            if one.row and one.row.verdict not in UNSAFE and not one.row.reserved
        )
        return next(fits, 0)

    def action_sort(self) -> None:
        """The next way to sort; the cursor stays on its line."""
        names = list(view.ORDERS)
        self.order = names[(names.index(self.order) + 1) % len(names)]
        self.host.tell(f"Sorted by {self.order}.")
        self.reload()

    def headline(self) -> str:
        more = f", the first {LIMIT} lines" if self._shown > LIMIT else ""
        return f"{self.host.day_text}, {self._count} in store{more}"
