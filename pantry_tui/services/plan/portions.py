"""How many servings a container held when it was put up, what left it and when.

All are estimates (plan/servings.py). An amount that is drawn counts as that part of the container;
a jar that was opened and not measured counts once, on the day it is used up.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from datetime import date
from fractions import Fraction
from functools import cache
from typing import NamedTuple

from pantry_tui.core.amounts import exact_amount
from pantry_tui.core.log.fold import ONE
from pantry_tui.core.model import Container
from pantry_tui.core.words import Group, Method
from pantry_tui.services.books.past import Came, Past, past, since_when
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.servings import in_amount
from pantry_tui.services.stock.ready import ready

#: The fates of what nobody saw leave, as a round books them.
UNRECORDED, MISSING = "unrecorded use", "missing"


class Leaving(NamedTuple):
    """Servings that left a container: used, discarded, given, lost, unrecorded use or missing.

    `start` and `end` are the same day, but for what a round found gone: that left at some time
    since the round before it.
    """

    batch: Past
    at: int  # which of its containers
    fate: str
    servings: float
    start: date
    end: date
    why: str
    share: float  # of what it held at first
    number: Fraction  # the same, exactly, in the unit of what it held

    @property
    def container(self) -> str:
        """Its id: few are asked for theirs."""
        return self.batch.id_of(self.at + 1)


def holds(p: Pantry) -> Callable[[str, Group, Method, str], float]:
    """Servings in so much ("3/2 lb") of a food of a group, kept by a method, as `in_amount`; asked
    of many alike."""

    def find() -> Callable[[str, Group, Method, str], float]:
        return cache(
            lambda food, group, method, held: in_amount(p, food, group, method, exact_amount(held))
        )

    return p.once("servings", find)


def whole(p: Pantry, container: Container) -> float:
    """Servings in the container when it was put up."""
    batch = p.stock.batches[container.batch]
    food = batch.food
    return in_amount(p, food.name, food.group, batch.method, container.first or ONE)


def left_in(p: Pantry, container: Container) -> float:
    """Servings in it now."""
    if container.left is None or container.first is None:
        return whole(p, container)
    return whole(p, container) * float(container.left.number / container.first.number)


def leavings(p: Pantry) -> Sequence[Leaving]:
    """Everything that ever left, by the day on which it was gone."""
    ready(p)
    return p.once("leavings", lambda: _in_turn(leavings_of(p, past(p).values(), date.min)))


def _in_turn(found: Iterable[Leaving]) -> list[Leaving]:
    return sorted(found, key=lambda one: one.end)


def leavings_of(
    p: Pantry, batches: Iterable[Past], since: date, fates: Collection[str] = ()
) -> Iterator[Leaving]:
    """What left some batches and was gone on a day or later, batch by batch; with `fates` only what
    left in one of these ways."""
    start, servings, day = since_when(p), holds(p), since.isoformat()
    for batch in batches:
        if not batch.last or batch.last < day:
            continue
        came = batch.came
        only = came[0] if len(came) == 1 else None
        alike: Came | None = None
        for gone in batch.gone:
            at, fate, number, end, why, by = gone
            if end < since or (fates and fate not in fates):
                continue
            one = only or batch.came_at(at)
            if one is not alike:  # most are as the one before
                alike, held = one, one.first.number
                whole = servings(batch.food, batch.group, batch.method, one.held)
            first = start(gone, one.born) if by else end
            if number is None:
                yield Leaving(batch, at, fate, whole, first, end, why, 1.0, held)
            else:
                share = float(number / held)
                yield Leaving(batch, at, fate, whole * share, first, end, why, share, number)
