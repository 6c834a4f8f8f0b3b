"""The year of a food, from which next year's plan is made.

A food's year runs from its first batch to the next year's first batch:
opening + made - given - lost - unrecorded - closing = eaten, in containers.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from pantry_tui.core.model import Batch, Container
from pantry_tui.errors import BadInput
from pantry_tui.services.books.rating import beside
from pantry_tui.services.books.rows import FoodYear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import MISSING, UNRECORDED, born

#: Fates as the year counts them; "used" is what is left over, so it is checked, not counted.
_GIVEN, _LOST, _UNRECORDED = ("given",), ("discarded", "lost"), (UNRECORDED, MISSING)


def years(p: Pantry, food: str | None = None) -> list[FoodYear]:
    """Every year of every food (or of one), the last one still running. Raises BadInput."""
    wanted = _name(p, food) if food else None
    by_food: dict[str, list[Batch]] = defaultdict(list)
    for batch in p.batches():
        if wanted is None or batch.food.name == wanted:
            by_food[batch.food.name].append(batch)
    return [year for name in sorted(by_food) for year in _of_food(p, name, by_food[name])]


def _name(p: Pantry, food: str) -> str:
    facts = p.facts(food)
    if facts is None:
        near = ", ".join(p.tables.index.near(food)) or "none"
        raise BadInput(f"{food!r} is no known food; near it: {near}.")
    return facts.name


def _of_food(p: Pantry, name: str, batches: Sequence[Batch]) -> list[FoodYear]:
    """From the first batch of each calendar year to the next one's first."""
    held = [(batch, c, born(batch, c)) for batch in batches for c in p.containers_of(batch)]
    book = _Book([(c, day) for _, c, day in held])
    rated: dict[str, list[date]] = {batch.id: [] for batch in batches if batch.rated}
    firsts: dict[int, date] = {}
    for batch, _, day in held:
        firsts[day.year] = min(firsts.get(day.year, day), day)
        if batch.id in rated:
            rated[batch.id].append(day)
    starts = sorted(firsts.values())
    found = []
    for index, start in enumerate(starts):
        end = starts[index + 1] if index + 1 < len(starts) else None
        year = book.year(name, start, end)
        mine = {
            id_ for id_, days in rated.items() if any(start <= d < (end or date.max) for d in days)
        }
        tasted = tuple(beside(batch) for batch in batches if batch.id in mine)
        found.append(replace(year, tasted=tasted))
    return found


class _Book:
    """When the containers of one food came and left, in order, so that a year is counted by
    looking up its ends."""

    def __init__(self, held: Sequence[tuple[Container, date]]) -> None:
        self.came = sorted(day for _, day in held)
        # A container that left before the day it is said to be made on never stood.
        self.gone = sorted(max(day, c.ended) for c, day in held if c.ended is not None)
        self.kept = sum(c.here and bool(c.reserved) for c, _ in held)
        self._left: dict[str, list[date]] = defaultdict(list)
        for container, _ in held:
            if container.ended is not None:
                self._left[container.fate].append(container.ended)
        for days in self._left.values():
            days.sort()

    def stood(self, on: date) -> int:
        """How many came before a day and had not left before it."""
        return bisect_left(self.came, on) - bisect_left(self.gone, on)

    def left(self, fates: Iterable[str], start: date, last: date) -> int:
        """How many left so from one day to before another."""
        days = (self._left[fate] for fate in fates)
        return sum(bisect_left(one, last) - bisect_left(one, start) for one in days)

    def year(self, name: str, start: date, end: date | None) -> FoodYear:
        last = end or date.max
        opening, closing = self.stood(start), self.stood(last)
        made = bisect_left(self.came, last) - bisect_left(self.came, start)
        given, lost, unrecorded = (
            self.left(fates, start, last) for fates in (_GIVEN, _LOST, _UNRECORDED)
        )
        eaten = opening + made - given - lost - unrecorded - closing
        return FoodYear(
            name,
            start,
            end,
            opening,
            made,
            given,
            lost,
            unrecorded,
            closing,
            eaten,
            reserved=0 if end else self.kept,
        )
