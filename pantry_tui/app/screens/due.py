"""The first screen: everything in store, what must be eaten or thrown away first on top."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column
from pantry_tui.app.lines import Window, headings
from pantry_tui.app.screens.acts import Acts, Rates
from pantry_tui.app.screens.stock import StockList
from pantry_tui.app.widgets.line import Line, Source
from pantry_tui.errors import PantryError
from pantry_tui.services.stock.lines import ORDERS, in_store, lines

#: So many lines are looked through for one that may be eaten, a screen at a time.
_LOOKED = 1000


class DueScreen(Acts, Rates, StockList):
    """What must go, then what is open or thawed, then by date."""

    here = "due"
    BINDINGS = bindings("due")
    empty = (
        "Nothing is in store yet. Press S and then a to add a place, then p to put up "
        "the first batch, for example: 7 pint jars runner beans, pressure canned, shelf 2."
    )

    order = ORDERS[0]
    _costs: Sequence[str] = ()

    def source(self, columns: tuple[Column, ...]) -> Source:
        pantry, text = self.host.pantry, self.sought
        self._count = in_store(pantry, text=text)
        top = [line for one in self._costs for line in headings(f"! {one}", columns, 2)]
        # What the places cost is reckoned when the list is on the screen: it takes longer.
        self.call_after_refresh(self._reckon)
        found = lines(pantry, order=self.order, text=text)
        return Window(found, columns, top=[] if text else top, marked=self.marked)

    def _reckon(self) -> None:
        """A notice on top for every place that is out of its range."""
        from pantry_tui.services.stock import readings

        pantry = self.host.pantry
        try:
            costs = pantry.once("notices", lambda: readings.notices(pantry))
        except PantryError as error:
            self.say(error.message)
            return
        if tuple(costs) != tuple(self._costs) and not self.sought:
            self._costs = tuple(costs)
            self.reload()

    def start(self) -> int:
        """At first the cursor stands on what may be eaten, not on what must go or is a gift."""
        source, step = self.table.source, max(self.app.size.height, 1)
        for at in range(0, min(source.total, _LOOKED), step):
            for number, line in enumerate(source.lines(at, at + step)):
                if _fits(line):
                    return at + number
        return 0

    def action_sort(self) -> None:
        """The next way to sort; the cursor stays on its line."""
        self.order = ORDERS[(ORDERS.index(self.order) + 1) % len(ORDERS)]
        self.host.tell(f"Sorted by {self.order}.")
        self.reload()

    def headline(self) -> str:
        return f"{self.host.day_text}, {self._count} in store"


def _fits(line: Line) -> bool:
    row = line.row
    return row is not None and row.usable and not row.reserved
