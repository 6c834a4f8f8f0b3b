"""What was eaten of each food, week by week, as the log has it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from pantry_tui.core.appetite import CEILING, FOOD_CEILING
from pantry_tui.core.events import Did, Event
from pantry_tui.core.ledger import standing
from pantry_tui.core.words import Group
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.servings import in_amount, servings

#: Weeks looked back on, and weeks of use that must be there before anything is learned.
YEAR = 52
LEARNED_AFTER = 8


def by_week(p: Pantry) -> Mapping[str, Sequence[float]]:
    """Servings of each food in each of the last 52 weeks, the oldest first; the last is the seven
    days up to today."""
    return p.once("eaten by week", lambda: _by_week(p))


def _by_week(p: Pantry) -> dict[str, list[float]]:
    found: dict[str, list[float]] = defaultdict(lambda: [0.0] * YEAR)
    for event in standing(p.events):
        back = (p.today - event.day).days // 7
        batch = p.stock.batches.get(event.batch)
        if event.did is Did.USE and batch is not None and 0 <= back < YEAR:
            found[batch.food.name][YEAR - 1 - back] += _servings(p, event)
    return dict(found)


def _servings(p: Pantry, event: Event) -> float:
    amount = event.data.get("amount")
    if amount:
        return in_amount(p, p.stock.batches[event.batch], amount)
    return sum(servings(p, p.stock.containers[id_]) for id_ in event.containers)


def learned(p: Pantry) -> dict[str, float]:
    """Ceilings that the log shows, servings a person a week, by group and by food: the mean of the
    fullest quarter of the weeks since it was first eaten, once that is eight weeks ago.

    Never below half of the usual ceiling: what was seldom proposed must not vanish.
    """
    foods = by_week(p)
    found: dict[str, float] = {}
    groups: dict[Group, list[float]] = defaultdict(lambda: [0.0] * YEAR)
    for name, weeks in foods.items():
        facts = p.facts(name)
        if facts is not None:
            groups[facts.group] = [a + b for a, b in zip(groups[facts.group], weeks, strict=True)]
        best = _fullest(weeks)
        if best is not None:
            found[name] = max(best / p.people, FOOD_CEILING / 2)
    for group, weeks in groups.items():
        best = _fullest(weeks)
        if best is not None:
            found[group.value] = max(best / p.people, CEILING[group] / 2)
    return found


def _fullest(weeks: Sequence[float]) -> float | None:
    first = next((i for i, servings in enumerate(weeks) if servings > 0), len(weeks))
    since = sorted(weeks[first:], reverse=True)
    if len(since) < LEARNED_AFTER:
        return None
    quarter = since[: max(1, len(since) // 4)]
    return sum(quarter) / len(quarter)
