"""What is opened beside the days: a relish and a spread, one at a time of each.

While one is open the next of its kind waits, also when that is past its best; only what may not be
eaten after this week does not wait. Not everybody books the last spoonful: after as many weeks as
its pace has it, an open one is asked about.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date, timedelta

from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.lots import discarded_by
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.roles import BESIDE
from pantry_tui.core.plan.schedule import Opening
from pantry_tui.core.words import Role

#: An open one is eaten up within so many days, at least and at most. Common practice, no source.
_SOONEST, _LATEST = 7, 42


def open_beside(table: Iterable[Candidate]) -> frozenset[Role]:
    """The kinds of which one of `table` is open, or is to be opened."""
    return frozenset(one.at_table for one in table if one.at_table in BESIDE)


def eaten_up(one: Candidate, start: date, paces: Mapping[str, Credit]) -> bool:
    """Whether what is open beside the days should be eaten up by `start`, as its pace has it."""
    if one.since is None or one.at_table not in BESIDE:
        return False
    pace = paces.get(one.food)
    weeks = one.servings / pace.rate if pace is not None and pace.rate > 0 else 0.0
    days = max(_SOONEST, min(_LATEST, 7 * weeks))
    return one.since + timedelta(days=days) <= start


def one_beside(
    week: Sequence[Opening], lots: Sequence[Candidate], table: Table, here: Collection[Role]
) -> tuple[list[Opening], list[Opening]]:
    """Of what would be opened beside the days, the first of each kind that is not `here` and what
    may not be eaten after the week; the others, and what does not keep for as long as it takes to
    eat half of it (a pound of butter from the freezer, for one). `lots` are what the openings
    number."""
    kept: list[Opening] = []
    held: list[Opening] = []
    seen = set(here)
    for opening in week:
        one = lots[opening.lot]
        role = one.at_table
        if not discarded_by(one, table.end) and (role in seen or _spoils(one, table)):
            held.append(opening)
        else:
            seen |= {role} & BESIDE
            kept.append(opening)
    return kept, held


def _spoils(one: Candidate, table: Table) -> bool:
    """Whether more than half of what is opened beside the days would have to be discarded."""
    if one.at_table not in BESIDE or one.must or one.bulk:
        return False
    return table.wasted(one, table.earliest(one)) > one.servings / 2
