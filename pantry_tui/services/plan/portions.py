"""How many servings a container held when it was put up, what left it and when.

All are estimates (plan/servings.py). An amount that is drawn counts as that part of the container;
a jar that was opened and not measured counts once, on the day it is used up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.fold import EMPTY, FATE_OF, ONE
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
    share: float = 0.0  # of what it held at first
    number: Fraction = Fraction(0)  # the same, exactly, in the unit of what it held


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
        known[key] = in_amount(p, batch, held) if held else container_size(p, batch)
    return known[key]


def left_in(p: Pantry, container: Container) -> float:
    """Servings in it now."""
    return whole(p, container) * _share(container, _held(container, container.left))


def _held(container: Container, held: Amount | None) -> Fraction:
    return held.number if held is not None and container.here else Fraction(0)


def _share(container: Container, number: Fraction) -> float:
    """So much of it as a part of what it held at first."""
    return float(number / container.first.number) if container.first else 1.0


def leavings(p: Pantry) -> Sequence[Leaving]:
    """Everything that ever left, in the order it was recorded."""
    return p.once("leavings", lambda: _leavings(p))


def _leavings(p: Pantry) -> list[Leaving]:
    p.stock.load_all()
    left: dict[str, Fraction] = {}  # what is in a container at this point of the log
    unseen: dict[str, Leaving] = {}
    counted: dict[str, date] = {}
    found: list[Leaving] = []
    for event in p.standing:
        payload = event.payload
        if isinstance(payload, said.Use | said.Discard | said.Give | said.Missing):
            why = payload.why if isinstance(payload, said.Discard) else ""
            fate = FATE_OF[type(payload)].value
            for id_ in payload.containers:
                gone = _take(p, left, id_, payload.amount)
                found.append(_leaving(p, id_, fate, gone, event.day, event.day, why))
        elif isinstance(payload, said.PutUp):
            for made_of in payload.parts:
                id_ = made_of.container
                if id_ not in p.stock.containers:
                    continue
                gone = _take(p, left, id_, made_of.amount)
                fate = said.Fate.REPACKED.value
                found.append(_leaving(p, id_, fate, gone, event.day, event.day))
        elif isinstance(payload, said.Count):
            for one in payload.gone:
                since = _seen_last(p, event, one.container, counted.get(payload.place))
                gone = _take(p, left, one.container, None)
                fate = one.fate.value
                unseen[one.container] = _leaving(p, one.container, fate, gone, since, event.day)
            for back in payload.back:
                was = unseen.pop(back.container, None)  # it was there all the time
                if was is not None:
                    left[back.container] = was.number
            counted[payload.place] = event.day
    return [*found, *unseen.values()]


def _take(p: Pantry, left: dict[str, Fraction], id_: str, amount: Amount | None) -> Fraction:
    """How much leaves it: the amount, or all that is in it."""
    first = p.stock.containers[id_].first or ONE
    there = left.get(id_, first.number)
    rest = Fraction(0)
    if amount is not None and amount.unit == first.unit and there - amount.number >= EMPTY:
        rest = there - amount.number
    left[id_] = rest
    return there - rest


def _leaving(
    p: Pantry, id_: str, fate: str, number: Fraction, start: date, end: date, why: str = ""
) -> Leaving:
    container = p.stock.containers[id_]
    share = _share(container, number)
    return Leaving(id_, fate, whole(p, container) * share, start, end, why, share, number)


def _seen_last(p: Pantry, event: Event, id_: str, counted: date | None) -> date:
    """Since when what a count did not find may be gone."""
    container = p.stock.containers[id_]
    made = born(p.stock.batches[container.batch], container)
    since = max(counted or made, made, event.day - timedelta(days=_YEAR))
    return min(since, event.day)
