"""What the household really eats of its stores, learned from its log.

Unrecorded use that a round finds counts as eaten: somebody ate it, and nobody wrote it down. It is
spread evenly over the time since the round before, because nobody knows the day. What is
*missing* (none of it was there) does not count: it may be lost. Only recorded uses tell how full a
full week was.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from math import ceil

from pantry_tui.core.words import Group
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.portions import UNRECORDED, Leaving, born, leavings

#: Weeks of use that the log must hold before the appetite is read from it.
LEARNED_AFTER = 8

#: How far back one looks.
_WINDOW = timedelta(days=364)


def eaten_a_week(p: Pantry) -> dict[str, float]:
    """Servings a week of each food, for the whole household, over the weeks of the last year in
    which there was any of it; only foods that were there eight weeks or more since their first use.

    Weeks without any count for nothing: strawberries that are gone by January were not eaten more
    slowly for that.
    """
    return p.once("eaten a week", lambda: _eaten_a_week(p))


def best_weeks(p: Pantry) -> tuple[dict[str, float], dict[Group, float]]:
    """Servings of a full week, for the whole household, by food and by group: the mean of the
    fullest quarter of the weeks since the first recorded use, within the last year.

    Weeks without any are never among them. Only where there are eight weeks of use or more.
    """
    return p.once("best weeks", lambda: _best_weeks(p))


def _eaten_a_week(p: Pantry) -> dict[str, float]:
    since = p.today - _WINDOW
    total: dict[str, float] = defaultdict(float)
    first: dict[str, date] = {}
    for one in leavings(p):
        if one.fate not in ("used", UNRECORDED) or one.end <= since or one.end > p.today:
            continue
        food = p.stock.batches[p.stock.containers[one.container].batch].food.name
        days = max(1, (one.end - one.start).days)
        total[food] += one.servings * min(days, (one.end - since).days) / days
        first[food] = min(first.get(food, one.end), max(one.start, since))
    weeks = _weeks_there(p, first)
    return {food: total[food] / weeks[food] for food in total if weeks[food] >= LEARNED_AFTER}


def _weeks_there(p: Pantry, first: dict[str, date]) -> dict[str, float]:
    """Weeks since `first` in which some of a food stood in store, the week it ran out whole."""
    spans: dict[str, list[tuple[date, date]]] = defaultdict(list)
    for container in p.stock.containers.values():
        batch = p.stock.batches[container.batch]
        since = first.get(batch.food.name)
        if since is None:
            continue
        end = p.today
        if container.ended is not None:
            end = min(p.today, container.ended + timedelta(days=7))
        start = max(since, born(batch, container))
        if start < end:
            spans[batch.food.name].append((start, end))
    return {food: _covered(spans[food]) / 7 for food in first}


def _covered(spans: Iterable[tuple[date, date]]) -> int:
    """Days that lie in at least one span."""
    days, until = 0, date.min
    for start, end in sorted(spans):
        days += max(0, (end - max(start, until)).days)
        until = max(until, end)
    return days


def _best_weeks(p: Pantry) -> tuple[dict[str, float], dict[Group, float]]:
    foods: dict[str, dict[int, float]] = defaultdict(lambda: defaultdict(float))
    groups: dict[Group, dict[int, float]] = defaultdict(lambda: defaultdict(float))
    for one in leavings(p):
        if not _recorded_lately(p, one):
            continue
        food = p.stock.batches[p.stock.containers[one.container].batch].food
        week = (p.today - one.end).days // 7
        foods[food.name][week] += one.servings
        groups[food.group][week] += one.servings
    return (
        {food: full for food, weeks in foods.items() if (full := _full(weeks)) is not None},
        {group: full for group, weeks in groups.items() if (full := _full(weeks)) is not None},
    )


def _recorded_lately(p: Pantry, one: Leaving) -> bool:
    return one.fate == "used" and p.today - _WINDOW < one.end <= p.today


def _full(weeks: dict[int, float]) -> float | None:
    """The mean of the fullest quarter of the weeks; they are numbered back from this one."""
    if len(weeks) < LEARNED_AFTER:
        return None
    quarter = ceil((max(weeks) + 1) / 4)
    fullest: Sequence[float] = sorted(weeks.values(), reverse=True)[:quarter]
    return sum(fullest) / len(fullest)
