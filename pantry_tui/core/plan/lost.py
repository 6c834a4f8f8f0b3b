"""What must be discarded by the end of the week: it goes before all else, by its last safe day.

No ceiling and no best-by day keeps it from the table, for what is not eaten of it is lost: there is
room for as much of its kind as those at table can eat up to its day. Where that is too little for
all of it, what must go first goes first.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from math import inf

from pantry_tui.core.plan.days import Chosen, Table
from pantry_tui.core.plan.lots import discarded_by
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD, FILLS
from pantry_tui.core.words import Role


def eaten_in_time(lost: Mapping[int, Candidate], laid: Iterable[Chosen], table: Table) -> list[int]:
    """Of `lost` what can be eaten in time beside what is `laid`, the earliest last safe day first,
    of one day in the order given. What is laid and keeps longer than the week makes room."""
    room = _Room(table)
    hurries = (one for one in laid if one.day or discarded_by(one.candidate, table.end))
    for lies in sorted(hurries, key=lambda one: (one.day is None, _last(one.candidate, table))):
        possible = table.possible(lies.candidate)
        room.eat(lies.candidate, [lies.day] if lies.day in possible else possible, 0.0)
    found: list[int] = []
    over: list[int] = []
    for number, one in sorted(lost.items(), key=lambda item: _last(item[1], table)):
        days = table.possible(one)
        if not days:
            found.append(number)  # it is missed, and said to be
            continue
        half = min(one.servings, one.meal(table.appetite.people)) / 2
        (found if room.eat(one, days, half) else over).append(number)
    room.fills = FILLS
    return [*found, *(n for n in over if room.eat(lost[n], table.possible(lost[n])))]


def _last(one: Candidate, table: Table) -> tuple[date, date]:
    """Its last day on which anybody is there to eat it, then the one on which it spoils: before all
    leave the mince goes before the eggs."""
    last = min(one.safe_until or table.end, table.end)
    return last, one.spoils or last


class _Room:
    """What those at table can still eat of each kind, day by day; of what is opened beside the days
    or used up in the kitchen nobody counts heads."""

    def __init__(self, table: Table) -> None:
        self.table, self.fills = table, 1.0
        self.taken: dict[tuple[Role, date], float] = defaultdict(float)

    def _free(self, role: Role, day: date) -> float:
        enough = self.fills * A_HEAD.get(role, inf) * self.table.appetite.sit(day)
        return max(0.0, enough - self.taken[role, day])

    def eat(self, one: Candidate, days: Sequence[date], least: float | None = None) -> bool:
        """Whether there is room for so many servings of it (without a number, for all) on those
        days, and it may be opened; then it is eaten from the first of them on."""
        role, left = one.at_table, one.servings
        free = sum(self._free(role, day) for day in days)
        if free < (left if least is None else least) - CRUMB or not one.may_open:
            return False
        for day in days:
            part = min(left, self._free(role, day))
            self.taken[role, day] += part
            left -= part
        return True
