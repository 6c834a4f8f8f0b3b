"""What stands in store as what the week is chosen from: meals, weeks, kinds."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date
from math import ceil, inf

from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD, BESIDE
from pantry_tui.core.plan.room import Lot, keeps
from pantry_tui.core.words import Role

#: Days of a week that are most of it.
_MOST = 4
#: Of these nobody wants the same food every day.
_VARIED = frozenset({Role.SIDE, Role.FRUIT})
_LAID = frozenset({*A_HEAD, *BESIDE})
#: A meal of bulk is taken from it for one day or the next.
_A_MEAL = keeps(2)


def parts(one: Candidate, people: float) -> Sequence[Candidate]:
    """Bulk as as many meals as are in it; less than half of one goes with the last."""
    meal = one.meal(people)
    meals = max(1, ceil(one.servings / meal - 0.5))
    rest = one.servings - (meals - 1) * meal
    return [one._replace(servings=meal if n < meals - 1 else rest) for n in range(meals)]


def due_by(one: Candidate, end: date) -> bool:
    return one.last is not None and one.last <= end


def discarded_by(one: Candidate, end: date) -> bool:
    """Whether the rest of it must be discarded after that day, and is not only past its best."""
    return one.safe_until is not None and one.safe_until <= end


def by_itself(
    free: Iterable[tuple[int, Candidate]], begun: Collection[str], end: date
) -> list[int]:
    """What comes at table, or beside the days, or is open with a last safe day (cheese); else only
    what must be used up by that day, once a vessel, and not of those `begun` for it."""
    seen = set(begun)
    found = []
    for number, one in free:
        role = one.role or one.at_table
        runs = one.must and one.safe_until is not None and role is Role.INGREDIENT
        if role not in _LAID and not runs:
            if one.container in seen or not due_by(one, end):
                continue
            seen.add(one.container)
        found.append(number)
    return found


def in_parts(numbers: Sequence[int], free: Mapping[int, Candidate], table: Table) -> Sequence[int]:
    """Of open vessels the meals that this week takes, where their last day is after it: as many as
    leave none for that day; one, where they have none."""
    meals: dict[str, list[int]] = defaultdict(list)
    for number in numbers:
        meals[free[number].container].append(number)
    found = []
    for some in meals.values():
        last = free[some[0]].safe_until or free[some[0]].last
        days = inf if last is None else max(table.length, (last - table.start).days + 1)
        part = table.length / days
        found += some[: max(1, ceil(len(some) * part - CRUMB))]
    return found


def in_turn(
    coming: Iterable[tuple[Candidate, bool]],
) -> tuple[tuple[Candidate, ...], tuple[Candidate, ...]]:
    """The first meal of each vessel, in order: what comes next, and what is kept, as is said of
    each."""
    more: dict[str, Candidate] = {}
    kept: dict[str, Candidate] = {}
    for one, keeps_it in coming:
        if one.container not in more:
            (kept if keeps_it else more).setdefault(one.container, one)
    return tuple(more.values()), tuple(kept.values())


def lots_of(some: Iterable[Candidate], table: Table) -> list[Lot]:
    """Of thousands that fall due on few days each day is reckoned once."""
    weeks: dict[date | None, int | None] = {}
    found = []
    for one in some:
        last = one.last
        if last not in weeks:
            weeks[last] = last_week(last, table)
        opened = _A_MEAL if one.bulk else one.opened
        role = one.role or one.at_table
        meals = 0.0
        if role in _VARIED:
            meals = 1.0 if one.bulk else max(1.0, one.servings / table.appetite.people)
        softens = one.bulk and role is Role.FRUIT and not table.appetite.said(one.food, one.group)
        lot = Lot(one.food, one.group, one.servings, weeks[last], opened, role, meals, softens)
        found.append(lot)
    return found


def last_week(day: date | None, table: Table) -> int | None:
    """The number of the last week, counted from this one, that has most of its days up to a
    day: what is due on the first of a week is for the week before, or else all of it is eaten
    on one day."""
    if day is None:
        return None
    return max(0, ((day - table.next_week).days + _MOST) // 7)
