"""The year of a food, and what was lost: the two books from which next year's plan is made.

A food's year runs from its first batch to the next year's first batch:
opening + made - given - lost - unrecorded - closing = eaten, in containers.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date

from pantry_tui.core.events import Did
from pantry_tui.core.ledger import standing
from pantry_tui.core.model import Batch, Container
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import FoodYear, Loss, LossView
from pantry_tui.services.servings import servings

#: Fates as the year counts them; "used" is what is left over, so it is checked, not counted.
_GIVEN, _LOST, _UNRECORDED = ("given",), ("discarded", "lost"), ("unrecorded use", "missing")
#: Reasons that say there was too much of it, not that it was made badly.
TOO_MUCH = ("past its date", "nobody would eat it")
SEASONS = ("winter", "spring", "summer", "autumn")


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
    born = {c.id: _born(batch, c) for batch in batches for c in p.containers_of(batch)}
    containers = [c for batch in batches for c in p.containers_of(batch)]
    firsts: dict[int, date] = {}
    for day in born.values():
        firsts[day.year] = min(firsts.get(day.year, day), day)
    starts = sorted(firsts.values())
    found = []
    for index, start in enumerate(starts):
        end = starts[index + 1] if index + 1 < len(starts) else None
        found.append(_year(name, containers, born, start, end))
    return found


def _born(batch: Batch, container: Container) -> date:
    return batch.made or container.stays[0].since


def _year(
    name: str, containers: Sequence[Container], born: dict[str, date], start: date, end: date | None
) -> FoodYear:
    last = end or date.max

    def stood(container: Container, on: date) -> bool:
        return born[container.id] < on and (container.ended is None or container.ended >= on)

    def left(container: Container, fates: tuple[str, ...]) -> bool:
        ended = container.ended
        return ended is not None and start <= ended < last and container.fate in fates

    opening = sum(stood(c, start) for c in containers)
    made = sum(start <= born[c.id] < last for c in containers)
    closing = sum(stood(c, last) for c in containers)
    given, lost, unrecorded = (
        sum(left(c, fates) for c in containers) for fates in (_GIVEN, _LOST, _UNRECORDED)
    )
    eaten = opening + made - given - lost - unrecorded - closing
    return FoodYear(name, start, end, opening, made, given, lost, unrecorded, closing, eaten)


def losses(p: Pantry, since: date | None = None) -> LossView:
    """What was discarded and why, most servings first, and the two changes that would save most."""
    groups: dict[tuple[str, str, str], list[tuple[float, date]]] = defaultdict(list)
    for event in standing(p.events):
        if event.did is not Did.DISCARD or (since is not None and event.day < since):
            continue
        batch = p.stock.batches[event.batch]
        key = (batch.food.name, batch.method.value, event.data.get("why", ""))
        groups[key] += [(servings(p, p.stock.containers[id_]), event.day)
                        for id_ in event.containers]  # fmt: skip
    rows = [_loss(key, parts) for key, parts in groups.items()]
    rows.sort(key=lambda row: (-row.servings, row.food, row.why))
    total = sum(row.servings for row in rows)
    born = (
        servings(p, c) for c in p.stock.containers.values()
        if since is None or _born(p.stock.batches[c.batch], c) >= since
    )  # fmt: skip
    made = sum(born)
    share = total / made if made else 0.0
    return LossView(tuple(rows), round(total, 1), round(share, 3), tuple(_changes(rows)))


def _loss(key: tuple[str, str, str], parts: Sequence[tuple[float, date]]) -> Loss:
    food, method, why = key
    seasons: dict[str, float] = defaultdict(float)
    for amount, day in parts:
        seasons[SEASONS[day.month % 12 // 3]] += amount
    whole = sum(amount for amount, _ in parts)
    return Loss(food, method, why, len(parts), round(whole, 1), dict(seasons))


def _changes(rows: Sequence[Loss]) -> list[str]:
    """Fewer of what was too much, another look at what was made badly: the two worst."""
    too_many: dict[tuple[str, str], int] = defaultdict(int)
    badly: dict[tuple[str, str], int] = defaultdict(int)
    weight: dict[tuple[bool, str, str], float] = defaultdict(float)
    for row in rows:
        much = row.why in TOO_MUCH
        (too_many if much else badly)[row.food, row.method] += row.containers
        weight[much, row.food, row.method] += row.servings
    said = []
    for much, food, method in sorted(weight, key=lambda key: -weight[key])[:2]:
        if much:
            number = too_many[food, method]
            said.append(f"Put up {number} fewer of {food} ({method}), or begin on it earlier.")
        else:
            number = badly[food, method]
            why = next(r.why for r in rows if (r.food, r.method) == (food, method)
                       and r.why not in TOO_MUCH)  # fmt: skip
            said.append(f"Look into {food} ({method}): {number} went for {why!r}.")
    return said
