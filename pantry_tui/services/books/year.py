"""The year of a food, from which next year's plan is made.

A food's year runs from its first batch to the next year's first batch:
opening + made - given - lost - unrecorded - repacked - closing = eaten, in containers, a begun one
by the part that is left of it; in pounds or pieces where a food is drawn from by them alone.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from pantry_tui.core.log.payloads import Fate
from pantry_tui.core.model import Batch, Container
from pantry_tui.errors import BadInput
from pantry_tui.services.books.rating import beside
from pantry_tui.services.books.rows import FoodYear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import MISSING, UNRECORDED, born, leavings

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
        year = _year(p, name, containers, days, start, end)
        ids = {c.batch for c in containers if start <= days[c.id] < (end or date.max)}
        tasted = tuple(beside(batch) for batch in batches if batch.id in ids and batch.rated)
        found.append(replace(year, tasted=tasted))
    return found


def _year(
    p: Pantry,
    name: str,
    containers: Sequence[Container],
    days: dict[str, date],
    start: date,
    end: date | None,
) -> FoodYear:
    last = end or date.max
    unit = unit_of(containers)
    gone = _gone(p)

    def size(container: Container) -> float:
        return float(container.first.number) if unit and container.first else 1.0

    def stood(container: Container, on: date) -> float:
        if days[container.id] >= on:
            return 0.0
        parts = gone.get(container.id, ())
        return size(container) * (1.0 - min(1.0, sum(share for day, _, share in parts if day < on)))

    def left(*fates: str) -> float:
        return sum(
            size(c) * share
            for c in containers
            for day, fate, share in gone.get(c.id, ())
            if start <= day < last and fate in fates
        )

    opening = sum(stood(c, start) for c in containers)
    made = sum(size(c) for c in containers if start <= days[c.id] < last)
    closing = sum(stood(c, last) for c in containers)
    given, lost, unrecorded = left(*_GIVEN), left(*_LOST), left(*_UNRECORDED)
    repacked = left(Fate.REPACKED)
    eaten = opening + made - given - lost - unrecorded - repacked - closing
    kept = 0 if end else sum(c.here and bool(c.reserved) for c in containers)
    return FoodYear(
        name,
        start,
        end,
        _tidy(opening),
        _tidy(made),
        _tidy(given),
        _tidy(lost),
        _tidy(unrecorded),
        _tidy(closing),
        _tidy(eaten),
        reserved=kept,
        repacked=_tidy(repacked),
        unit=unit,
    )


def unit_of(containers: Sequence[Container]) -> str:
    """What a food is counted in: its containers (""), or the unit in which all of them are drawn
    from ("lb", "pieces")."""
    units = {c.first.unit or "pieces" for c in containers if c.bulk and c.first}
    return units.pop() if len(units) == 1 and all(c.bulk for c in containers) else ""


def _gone(p: Pantry) -> Mapping[str, Sequence[tuple[date, str, float]]]:
    """What left each container: when, how, and which part of what it held at first."""

    def find() -> dict[str, list[tuple[date, str, float]]]:
        found: dict[str, list[tuple[date, str, float]]] = defaultdict(list)
        for one in leavings(p):
            found[one.container].append((one.end, one.fate, one.share))
        return found

    return p.once("gone by container", find)


def _tidy(number: float) -> float:
    """A whole number as one; else two decimals."""
    near = round(number, 2)
    return int(near) if near == int(near) else near
