"""What stood elsewhere while a place had no power, and came in with a place that was merged into
it: two names may have been of one freezer, or of two that hung on one cable."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from pantry_tui.core.model import Container, Cut, Place
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.places_ever import merged_into

#: What is said of an item of which nothing can be told yet.
ASK = "ask about"


def elsewhere(p: Pantry, place: Place, cut: Cut, within: Iterable[str]) -> Mapping[str, str]:
    """Container id -> why it cannot be told what the cut did to it, for what stood in a place that
    was merged into this one since, and of which no cut is booked for that time."""
    came_from = {
        id_: one
        for id_, one in merged_into(p, within).items()
        if one.climate.is_cold and not any(_meet(fact, cut) for fact in one.facts)
    }
    if not came_from:
        return {}
    found = {}
    for container in p.stock.containers.values():
        where = next((came_from[id_] for id_ in _places(container, cut) if id_ in came_from), None)
        if where is not None:
            found[container.id] = (
                f"It stood in {where.name} then, which was merged into {place.name} since. If "
                f"{where.name} had no power either, book that for {where.name} too: nothing that "
                "is said here covers it."
            )
    return found


def _meet(fact: object, cut: Cut) -> bool:
    """Whether a fact of a place is a cut of the same time."""
    if not isinstance(fact, Cut):
        return False
    return fact.start.first <= cut.end.last and cut.start.first <= fact.end.last


def _places(container: Container, cut: Cut) -> list[str]:
    """Where it may have stood while the power was off."""
    ends = [turn.when.last for turn in container.turns[1:]] + [cut.end.last + 1]
    return [
        turn.place
        for turn, end in zip(container.turns, ends, strict=True)
        if turn.place and turn.when.first <= cut.end.last and cut.start.first < end
    ]
