"""The first screen: everything in store, what must be eaten or thrown away first on top."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column
from pantry_tui.app.lines import PartKey, Window, headings, part_heading
from pantry_tui.app.screens.acts import Acts, Rates
from pantry_tui.app.screens.stock import LOOKED, StockList
from pantry_tui.app.widgets.line import Line, Source
from pantry_tui.errors import PantryError
from pantry_tui.services.stock.lines import ORDERS, Part, lines, parts

#: So many lines that are only later are folded away; fewer are shown.
FOLDED_FROM = 12

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.tending import JobRow
    from pantry_tui.services.batchwork.timer import TimerRow

#: Seconds after which the minutes of a timed process are shown anew.
_TIMER_EVERY = 15.0


class DueScreen(Acts, Rates, StockList):
    """What must go, then what is open or thawed, then by date."""

    here = "due"
    BINDINGS = bindings("due")
    empty = (
        "Nothing is in store yet. Press S and then a to add a place, then p to put up "
        "the first batch, for example: 7 pint jars runner beans, pressure canned, shelf 2."
    )

    order = ORDERS[0]
    folded = True  # what is only later is counted and not listed
    _folds = False
    _all = 0
    _costs: Sequence[str] = ()
    _jobs: Sequence[JobRow] = ()
    _timed: Sequence[TimerRow] = ()
    _ticking = False

    def source(self, columns: tuple[Column, ...]) -> Source:
        pantry, text = self.host.pantry, self.sought
        known = parts(pantry, text=text)
        self._count = sum(one.containers for one in known)
        if not text:
            self._all = self._count
        top = [
            line for one in self._costs for line in headings(f"! {self.host.said(one)}", columns, 2)
        ]
        if (self._jobs or self._timed) and not text:
            from pantry_tui.app.screens import jobs

            top += [*jobs.timer_lines(self._timed), *jobs.lines(self._jobs)]
        # What the places cost is reckoned when the list is on the screen: it takes longer.
        self.call_after_refresh(self._reckon)
        everyday = self.order == ORDERS[0]
        later = next((one.rows for one in known if one.word == "later"), 0)
        self._folds = everyday and not text and later >= FOLDED_FROM
        folded = self._folds and self.folded
        found = lines(pantry, order=self.order, text=text, folded=folded)
        return Window(
            found,
            columns,
            top=[] if text else top,
            heads=self._heads(known, columns, found.total) if everyday else (),
            marked=self.marked,
        )

    def _reckon(self) -> None:
        """A notice on top for every place that is out of its range, and the small jobs."""
        from pantry_tui.services.batchwork import tending, timer
        from pantry_tui.services.stock import readings

        pantry = self.host.pantry
        try:
            costs = pantry.once("notices", lambda: readings.notices(pantry))
            jobs = pantry.once(f"jobs {pantry.today}", lambda: tending.jobs(pantry))
            timed = timer.running(pantry)
        except PantryError as error:
            self.say(error.message)
            return
        if timed and not self._ticking:
            self._ticking = True
            self.set_timer(_TIMER_EVERY, self._tick)
        now = (tuple(costs), jobs, timed)
        if now != (tuple(self._costs), self._jobs, self._timed) and not self.sought:
            self._costs, self._jobs, self._timed = now
            self.reload()

    def _tick(self) -> None:
        self._ticking = False
        self._reckon()

    def action_ready(self) -> None:
        """A small job on its line; else what is done fermenting, curing or drying."""
        from pantry_tui.app.screens.jobs import JobKey, do

        key = self.table.current.key if self.table.current else None
        if not isinstance(key, JobKey):
            super().action_ready()
        elif not key.job:
            self.acting.timer(key.code)
        else:
            self.host.attempt(lambda: do(self.host, key.code, key.food, key.job))
            self.settle_list()

    def start(self) -> int:
        """At first the cursor stands on what may be eaten, not on what must go or is a gift."""
        if self.sought and self.order != ORDERS[0] and (found := self.oldest_found()) is not None:
            return found
        source, step = self.table.source, max(self.app.size.height, 1)
        for at in range(0, min(source.total, LOOKED), step):
            for number, line in enumerate(source.lines(at, at + step)):
                if _fits(line):
                    return at + number
        return next((n for n, line in enumerate(source.lines(0, step)) if line.row), 0)

    def action_sort(self) -> None:
        """By any column; the cursor stays on its line."""
        from pantry_tui.app.screens.ask import Choose, given

        title = f"Sort by what? Now: {self.order}."
        self.host.push_screen(Choose(title, ORDERS), given(self._sort))

    def _sort(self, order: str) -> None:
        self.order = order
        self.host.tell(f"Sorted by {order}.")
        self.reload()

    def look(self) -> None:
        """Enter: the batch of the line, also of a small job; or what is later is shown or folded
        away."""
        from pantry_tui.app.screens.jobs import JobKey

        line = self.table.current
        if line is not None and isinstance(line.key, JobKey) and line.key.code:
            self.host.show_batch(line.key.code)
        elif line is not None and line.key == PartKey("later") and self._folds:
            self.folded = not self.folded
            self.reload()
        else:
            super().look()

    def find_line(self, ref: str) -> int | None:
        """What is folded away is unfolded for a lid code that is in it."""
        at = super().find_line(ref)
        if at is None and self._folds and self.folded:
            self.folded = False
            self.reload()
            at = super().find_line(ref)
            if at is None:
                self.folded = True
                self.reload()
        return at

    def _heads(
        self, known: Sequence[Part], columns: Sequence[Column], total: int
    ) -> list[tuple[Line, int]]:
        """The heading of each part, and how many rows stand under it, of a `total` shown."""
        found = []
        for one in known:
            folds = self._folds and one.word == "later"
            folded = folds and self.folded
            shown = total - sum(other.rows for other in known if other is not one)
            rows = shown if folded else one.rows
            head = part_heading(one, columns, folds=folds, folded=folded, near=folded and rows > 0)
            found.append((head, rows))
        return found

    def headline(self) -> str:
        if self.sought:
            return f"{self._count} of {self._all}"
        count = f"{self._count} in store"
        return count if self.app.size.width < 60 else f"{self.host.day_text}, {count}"


def _fits(line: Line) -> bool:
    row = line.row
    return row is not None and row.usable and not row.reserved
