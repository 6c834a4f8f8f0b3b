"""How many servings a container held when it was put up, what left it and when.

All are estimates (services/servings.py). An amount drawn from a crate counts as that part of the
crate; an opened jar counts once, on the day it is used up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from pantry_tui.core.amounts import read_amount
from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.log.fold import FATES, standing
from pantry_tui.core.model import Batch, Container
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.servings import container_size, in_amount

#: The fates of what nobody saw leave, as a round books them.
UNRECORDED, MISSING = "unrecorded use", "missing"

#: How far back an unrecorded use is spread at most, in days.
_YEAR = 365


@dataclass(frozen=True, slots=True)
class Leaving:
    """Servings that left a container: used, discarded, given, lost, unrecorded use or missing.

    `start` and `end` are the same day, but for what a round found gone: that left at some time
    since the round before it.
    """

    container: str
    fate: str
    servings: float
    start: date
    end: date
    why: str = ""


def born(batch: Batch, container: Container) -> date:
    """The day made; where nobody knows it, the day it came into the store."""
    return batch.made or container.stays[0].since


def whole(p: Pantry, container: Container) -> float:
    """Servings in the container when it was put up: by its amount or weight, else by its size."""
    known: dict[tuple[str, str], float] = p.once("servings", dict)
    key = (container.batch, _at_first(p).get(container.id, ""))
    if key not in known:
        batch = p.stock.batches[container.batch]
        known[key] = in_amount(p, batch, key[1]) if key[1] else container_size(p, batch)
    return known[key]


def left_in(p: Pantry, container: Container) -> float:
    """Servings in it now."""
    first = _at_first(p).get(container.id, "")
    return whole(p, container) * (_part(container.amount, first) if first else 1.0)


def _at_first(p: Pantry) -> dict[str, str]:
    """Container -> the amount it was put up with; only bulk ones."""

    def find() -> dict[str, str]:
        made = (e for e in standing(p.events) if e.did is Did.PUT_UP and e.data.get("amount"))
        return {id_: event.data["amount"] for event in made for id_ in event.containers}

    return p.once("amounts at first", find)


def _part(amount: str, first: str) -> float:
    """("24 lb", "30 lb") -> 0.8. What is left is kept in the unit it was put up in."""
    try:
        return min(1.0, float(read_amount(amount)[0] / read_amount(first)[0]))
    except BadInput:
        return 1.0


def leavings(p: Pantry) -> Sequence[Leaving]:
    """Everything that ever left, in the order it was recorded."""
    return p.once("leavings", lambda: _leavings(p))


def _leavings(p: Pantry) -> list[Leaving]:
    first = _at_first(p)
    part: dict[str, float] = {}  # what is left of a container, as a share of the whole
    unseen: dict[str, Leaving] = {}
    counted: dict[str, date] = {}
    found: list[Leaving] = []
    for event in standing(p.events):
        if event.did in FATES:
            for id_ in event.containers:
                before = part.get(id_, 1.0)
                left = event.data.get("left", "")
                part[id_] = _part(left, first.get(id_, "")) if left else 0.0
                gone = whole(p, p.stock.containers[id_]) * max(0.0, before - part[id_])
                why = event.data.get("why", "")
                found.append(Leaving(id_, FATES[event.did], gone, event.day, event.day, why))
        elif event.did is Did.COUNT:
            place = event.data["place"]
            for id_, fate in event.data.get("gone", {}).items():
                unseen[id_] = _unseen(p, event, id_, fate, counted.get(place), part.get(id_, 1.0))
            for id_ in event.data.get("back", {}):
                unseen.pop(id_, None)  # it was there all the time
            counted[place] = event.day
    return [*found, *unseen.values()]


def _unseen(
    p: Pantry, event: Event, id_: str, fate: str, counted: date | None, part: float
) -> Leaving:
    container = p.stock.containers[id_]
    made = born(p.stock.batches[container.batch], container)
    since = max(counted or made, made, event.day - timedelta(days=_YEAR))
    return Leaving(id_, fate, whole(p, container) * part, min(since, event.day), event.day)
