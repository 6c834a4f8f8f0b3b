"""What passes a date in each of the months ahead: its best, or its last safe day."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.view import everything, find

#: What must go, or is in doubt, has no date that anybody should wait for.
UNTRUSTED = frozenset({*UNFIT, Verdict.UNKNOWN})
#: So many months are looked ahead.
AHEAD = 12


class MonthAhead(NamedTuple):
    """Containers whose next date lies in that month: past their best from then (`best`), or not
    to be eaten after it (`last`)."""

    first: date
    best: int
    last: int

    @property
    def name(self) -> str:
        """ "Jan 2027"."""
        return dates.say(self.first).split(" ", 2)[2]

    @property
    def ref(self) -> str:
        """As the field `month:` finds it: "2027-01"."""
        return f"{self.first:%Y-%m}"


def next_date(row: DueRow, today: date) -> date | None:
    """The earlier of its dates that still lies ahead."""
    ahead = [day for day in (row.best_by, row.discard_after) if day and day >= today]
    return min(ahead, default=None)


def months_ahead(p: Pantry, ahead: int = AHEAD, text: str = "") -> list[MonthAhead]:
    """The month that runs and those after it, as many as asked for, of what fits `text`."""
    first = p.today.replace(day=1)
    found = {day: [0, 0] for day in (dates.add(first, n, "months") for n in range(ahead))}
    for row in find(p, text) if text else everything(p):
        day = next_date(row, p.today) if row.verdict not in UNTRUSTED else None
        month = found.get(day.replace(day=1)) if day else None
        if month is not None:
            month[day == row.discard_after] += row.count
    return [MonthAhead(day, best, last) for day, (best, last) in found.items()]
