"""What stands in store as what the week is chosen from: meals, weeks, kinds."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from math import ceil

from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.roles import BESIDE
from pantry_tui.core.plan.schedule import Lot, Opening, keeps
from pantry_tui.core.words import Role

#: Days of a week that are most of it.
_MOST = 4
#: A meal of bulk is taken from it for one day or the next.
_A_MEAL = keeps(2)


def parts(one: Candidate, people: float) -> Sequence[Candidate]:
    """Bulk as as many meals as are in it; less than half of one goes with the last."""
    if not one.bulk:
        return (one,)
    meal = float(people)
    meals = max(1, ceil(one.servings / meal - 0.5))
    rest = one.servings - (meals - 1) * meal
    return [one._replace(servings=meal if n < meals - 1 else rest) for n in range(meals)]


def due_by(one: Candidate, end: date) -> bool:
    return one.last is not None and one.last <= end


def lot_of(one: Candidate, table: Table) -> Lot:
    opened = _A_MEAL if one.bulk else one.opened
    return Lot(one.food, one.group, one.servings, last_week(one.last, table), opened, one.at_table)


def last_week(day: date | None, table: Table) -> int | None:
    """The number of the last week, counted from this one, that has most of its days up to a
    day: what is due on the first of a week is for the week before, or else all of it is eaten
    on one day."""
    if day is None:
        return None
    return max(0, ((day - table.next_week).days + _MOST) // 7)


def one_beside(
    week: Sequence[Opening], lots: Sequence[Candidate], end: date
) -> tuple[list[Opening], list[Opening]]:
    """Of what is opened beside the days, the first of a kind and what falls due by `end`; the
    others. `lots` are what the openings number."""
    kept: list[Opening] = []
    held: list[Opening] = []
    seen: set[Role] = set()
    for opening in week:
        one = lots[opening.lot]
        role = one.at_table
        if role in BESIDE and role in seen and not due_by(one, end):
            held.append(opening)
        else:
            seen.add(role)
            kept.append(opening)
    return kept, held
