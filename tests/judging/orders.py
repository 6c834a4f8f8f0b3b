"""The moments that facts allow: unknown hours are tried at every hour that could matter.

A fact booked on its own day without an hour happened when it was booked; one booked later for an
earlier day may have happened at any hour of it; a moment after now counts as now (house law 7.1).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from tests.judging.world import DAY, CorrectedMade, Fact, Moved, PlaceOpened, PutUp

#: More orders than this are not tried; leaving some out only makes the bound laxer.
MOST_ORDERS = 1500


def about(facts: Sequence[Fact], batch: Fact, container: str) -> tuple[Fact, ...]:
    """The facts that can touch it: its own, its batch's, its sisters' signs, its places'."""
    p = batch.what
    assert isinstance(p, PutUp)
    places = with_above(
        facts,
        {p.place}
        | {
            f.what.place
            for f in facts
            if isinstance(f.what, Moved) and f.what.container in p.containers
        },
    )
    return tuple(
        f
        for f in facts
        if f is batch
        or getattr(f.what, "container", None) in p.containers
        or getattr(f.what, "batch", None) == p.batch
        or (getattr(f.what, "place", None) in places and not isinstance(f.what, Moved | PutUp))
    )


def with_above(facts: Sequence[Fact], places: set[str]) -> set[str]:
    """The places and all that they stand in."""
    above = {w.place: w.parent for f in facts if isinstance(w := f.what, PlaceOpened)}
    found: set[str] = set()
    for name in places:
        one: str | None = name
        while one is not None and one not in found:
            found.add(one)
            one = above.get(one)
    return found


def orders(
    facts: Sequence[Fact], batch: Fact, container: str, now: int
) -> Iterator[dict[str, int]]:
    """Every choice of moments that the facts allow; a moment after now counts as now."""
    fixed = {f.id: min(f.at, now) for f in facts if not f.late}
    loose = [f for f in facts if f.late and _matters(f, batch, container)]
    for f in facts:
        if f.late and f not in loose:
            fixed[f.id] = min(f.day * DAY, now)
    slots = [_slots(f, set(fixed.values()), now) for f in loose]
    born_first = 0
    for n, choice in enumerate(product(*slots)):
        if n >= MOST_ORDERS:
            break
        at = fixed | {f.id: t for f, t in zip(loose, choice, strict=True)}
        if _possible(facts, batch, container, at):
            born_first += 1
            yield at
    if not born_first:
        yield fixed | {f.id: min(f.day * DAY, now) for f in loose}


def _matters(f: Fact, batch: Fact, container: str) -> bool:
    own = getattr(f.what, "container", container)
    return own == container and not isinstance(f.what, CorrectedMade)


def _slots(f: Fact, fixed: set[int], now: int) -> list[int]:
    """The hours of its day that can make a difference: about each known moment, and the ends."""
    first, last = f.day * DAY, f.day * DAY + DAY - 1
    near = {t + d for t in fixed for d in (-1, 1) if first <= t <= last}
    spread = {first, first + 8 * 60, first + 16 * 60, last}
    days = {t for t in near | spread if first <= t <= last}
    return sorted({min(t, now) for t in days})


def _possible(facts: Sequence[Fact], batch: Fact, container: str, at: dict[str, int]) -> bool:
    """Nothing is done to a jar, on the day it was filled, before it was filled."""
    born = at[batch.id]
    return all(
        at[f.id] >= born or f.day != batch.day
        for f in facts
        if getattr(f.what, "container", None) == container
    )
