"""How many servings a container held when it was put up, what left it and when.

All are estimates (plan/servings.py). An amount drawn from a crate counts as that part of the
crate; an opened jar counts once, on the day it is used up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.fold import EMPTY, FATE_OF
from pantry_tui.core.model import Batch, Container
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
    return batch.made or container.turns[0].when.day


def whole(p: Pantry, container: Container) -> float:
    """Servings in the container when it was put up: by its amount or weight, else by its size."""
    known: dict[tuple[str, Amount | None], float] = p.once("servings", dict)
    key = (container.batch, container.first)
    if key not in known:
        batch = p.stock.batches[container.batch]
        held = container.first
        known[key] = in_amount(p, batch, str(held)) if held else container_size(p, batch)
    return known[key]


def left_in(p: Pantry, container: Container) -> float:
    """Servings in it now."""
    return whole(p, container) * _part(container)


def _part(container: Container) -> float:
    """What is left of it, as a share of what it held."""
    if container.left is None or container.first is None:
        return 1.0
    return min(1.0, float(container.left.number / container.first.number))


def leavings(p: Pantry) -> Sequence[Leaving]:
    """Everything that ever left, in the order it was recorded."""
    return p.once("leavings", lambda: _leavings(p))


def _leavings(p: Pantry) -> list[Leaving]:
    p.stock.load_all()
    part: dict[str, float] = {}  # what is left of a container, as a share of the whole
    unseen: dict[str, Leaving] = {}
    counted: dict[str, date] = {}
    found: list[Leaving] = []
    for event in p.standing:
        payload = event.payload
        if isinstance(payload, said.Use | said.Discard | said.Give | said.Missing):
            why = payload.why if isinstance(payload, said.Discard) else ""
            for id_ in payload.containers:
                container = p.stock.containers[id_]
                before = part.get(id_, 1.0)
                part[id_] = _after(container, before, payload.amount)
                gone = whole(p, container) * max(0.0, before - part[id_])
                fate = FATE_OF[type(payload)].value
                found.append(Leaving(id_, fate, gone, event.day, event.day, why))
        elif isinstance(payload, said.Count):
            for one in payload.gone:
                id_, since = one.container, counted.get(payload.place)
                unseen[id_] = _unseen(p, event, id_, one.fate.value, since, part.get(id_, 1.0))
            for back in payload.back:
                unseen.pop(back.container, None)  # it was there all the time
            counted[payload.place] = event.day
    return [*found, *unseen.values()]


def _after(container: Container, before: float, amount: Amount | None) -> float:
    """The share that is left after an amount was drawn, or all of it."""
    if amount is None or container.first is None:
        return 0.0
    left = before - float(amount.number / container.first.number)
    return left if left * float(container.first.number) >= EMPTY else 0.0


def _unseen(
    p: Pantry, event: Event, id_: str, fate: str, counted: date | None, part: float
) -> Leaving:
    container = p.stock.containers[id_]
    made = born(p.stock.batches[container.batch], container)
    since = max(counted or made, made, event.day - timedelta(days=_YEAR))
    return Leaving(id_, fate, whole(p, container) * part, min(since, event.day), event.day)
