"""The year of a food, from which next year's plan is made.

A food's year runs from its first batch to the next year's first batch:
opening + made - given - lost - unrecorded - closing = eaten, in containers.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
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
    days = {c.id: born(batch, c) for batch in batches for c in p.containers_of(batch)}
    containers = [c for batch in batches for c in p.containers_of(batch)]
    firsts: dict[int, date] = {}
    for day in days.values():
        firsts[day.year] = min(firsts.get(day.year, day), day)
    starts = sorted(firsts.values())
    found = []
    for index, start in enumerate(starts):
        end = starts[index + 1] if index + 1 < len(starts) else None
        year = _year(name, containers, days, start, end)
        ids = {c.batch for c in containers if start <= days[c.id] < (end or date.max)}
        tasted = tuple(beside(batch) for batch in batches if batch.id in ids and batch.tasted)
        found.append(replace(year, tasted=tasted))
    return found


def _year(
    name: str, containers: Sequence[Container], days: dict[str, date], start: date, end: date | None
) -> FoodYear:
    last = end or date.max

    def stood(container: Container, on: date) -> bool:
        return days[container.id] < on and (container.ended is None or container.ended >= on)

    def left(container: Container, fates: tuple[str, ...]) -> bool:
        ended = container.ended
        return ended is not None and start <= ended < last and container.fate in fates

    opening = sum(stood(c, start) for c in containers)
    made = sum(start <= days[c.id] < last for c in containers)
    closing = sum(stood(c, last) for c in containers)
    given, lost, unrecorded = (
        sum(left(c, fates) for c in containers) for fates in (_GIVEN, _LOST, _UNRECORDED)
    )
    eaten = opening + made - given - lost - unrecorded - closing
    kept = 0 if end else sum(c.here and bool(c.reserved) for c in containers)
    return FoodYear(
        name, start, end, opening, made, given, lost, unrecorded, closing, eaten, reserved=kept
    )
