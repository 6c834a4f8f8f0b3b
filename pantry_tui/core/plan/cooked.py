"""A dish of the household's own out of what is chosen for the week and what stands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from pantry_tui.core.dataclass import replace
from pantry_tui.core.plan.days import Chosen, Table
from pantry_tui.core.plan.menu import Candidate, Dish

_CRUMB = 1e-9


#: What a dish takes: of what is chosen, of what stands by its number, and its day.
_Taken = tuple[list[Chosen], list[int], date]


def for_all(
    dish: Dish,
    day: date | None,
    chosen: Sequence[Chosen],
    free: Mapping[int, Candidate],
    table: Table,
) -> _Taken | None:
    """As `_gathered`, and for guests so much more of everything; where that does not stand, as much
    as it takes on a usual day."""
    found = _gathered(dish, day, chosen, free, table)
    if found is None:
        return None
    heads, usual = table.appetite.sit(found[2]), table.appetite.people
    if heads <= usual:
        return found
    more = replace(dish, takes=tuple((food, much * heads / usual) for food, much in dish.takes))
    return _gathered(more, found[2], chosen, free, table) or found


def _gathered(
    dish: Dish,
    day: date | None,
    chosen: Sequence[Chosen],
    free: Mapping[int, Candidate],
    table: Table,
) -> _Taken | None:
    """What it takes of what is `chosen` and lies on no other day nor in a dish, what besides by its
    number in `free`, and its day: the one asked for, else the first with no dish in time. None
    where something is lacking, or where its parts have no day in common."""
    loose: list[Chosen] = []
    fresh: list[int] = []
    for food, wanted in dish.takes:
        need = wanted
        for part in _loose(food, day, chosen):
            if need > _CRUMB:
                loose.append(part)
                need -= part.candidate.servings
        for number in [n for n, one in free.items() if one.food == food]:
            if need > _CRUMB and free[number].may_open:
                fresh.append(number)
                need -= free[number].servings
        if need > _CRUMB:
            return None
    parts = [*(part.candidate for part in loose), *(free[number] for number in fresh)]
    when = _day_for(parts, day, chosen, table)
    return None if when is None else (loose, fresh, when)


def _loose(food: str, day: date | None, chosen: Sequence[Chosen]) -> list[Chosen]:
    """What is chosen already, is in no dish, and lies on no day yet or on that one."""
    mine = (one for one in chosen if one.candidate.food == food and not one.dish)
    return [one for one in mine if one.day in (None, day)]


def _day_for(
    parts: Sequence[Candidate], day: date | None, chosen: Sequence[Chosen], table: Table
) -> date | None:
    """The day asked for, else the first on which all can be eaten and no dish is planned."""
    cooked = {one.day for one in chosen if one.dish}
    days = [d for d in table.days if all(d in table.possible(one) for one in parts)]
    if day is not None:
        return day if day in days else None
    last = min(table.latest(one) for one in parts)
    return next((d for d in days if d not in cooked and d <= last), None)
