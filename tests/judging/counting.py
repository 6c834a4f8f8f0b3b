"""What a count finds of what had left: which life it may have had.

A container that was used, given away, missing or discarded is in no other place; found again by a
count it is itself, and where fewer are found than left it may be any of them, so that it is no
better than the worst (house law 7.1: the strictest that the facts allow counts). It comes back as
what it was when it left, and no clock stood still meanwhile.

lax: meanwhile it stood where it had stood, and since the count where it was found; only what left
from that place is thought of, if anything did; a day without an hour is a day before the count for
the container itself, and none for the others.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tests.judging.world import DAY, Counted, Drawn, Fact, Left, Moved, PutUp


def lives_found(
    facts: Sequence[Fact], batch: Fact, container: str, now: int
) -> list[tuple[Fact, ...]]:
    """The facts of each life it may have had, where a count found it; none where none did."""
    p = batch.what
    assert isinstance(p, PutUp)
    counts = sorted(
        (f for f in facts if isinstance(f.what, Counted) and f.what.batch == p.batch),
        key=lambda f: f.at,
    )
    for count in counts:
        w, at = count.what, min(_first(count), now)
        assert isinstance(w, Counted)
        # a moment after now counts as now (law 7.1), also that of what left
        if not any(_ends(f, container) and min(_first(f), now) <= at for f in facts):
            continue
        gone = [c for c in p.containers if any(_ends(f, c) and _last(f) < at for f in facts)]
        left = [
            c for c in p.containers if any(_ends(f, c) and min(_first(f), now) <= at for f in facts)
        ]
        there = [c for c in p.containers if c not in left and _place(facts, p, c, at) == w.place]
        more = w.n - len(there)
        if more <= 0:
            continue
        here = [c for c in gone if _place(facts, p, c, at) == w.place] or gone
        others = here if len(here) > more else []
        rest = tuple(f for f in facts if f is not count)
        return [_life(rest, one, container, (at, now), w.place) for one in {*others, container}]
    return []


def _first(f: Fact) -> int:
    return f.day * DAY if f.late else f.at


def _last(f: Fact) -> int:
    return f.day * DAY + DAY - 1 if f.late else f.at


def _ends(f: Fact, container: str) -> bool:
    w = f.what
    return (isinstance(w, Left) or (isinstance(w, Drawn) and w.part >= 1)) and (
        w.container == container
    )


def _place(facts: Sequence[Fact], p: PutUp, container: str, at: int) -> str:
    """Where it stood last."""
    moves = [
        (_last(f), f.what.place)
        for f in facts
        if isinstance(f.what, Moved) and f.what.container == container and _last(f) <= at
    ]
    return max(moves)[1] if moves else p.place


def _life(
    facts: Sequence[Fact], was: str, container: str, when: tuple[int, int], place: str
) -> tuple[Fact, ...]:
    """As if `was` had never left and were `container` since the count."""
    (at, now), told = when, []
    for f in facts:
        own = getattr(f.what, "container", None)
        if own == was and min(_first(f), now) <= at:
            if not _ends(f, was):
                told.append(replace(f, what=replace(f.what, container=container)))  # type: ignore[arg-type]
        elif own != container or min(_first(f), now) > at:
            told.append(f)
    back = Fact("found", at // DAY, at % DAY, at, Moved(container, place))
    return (*told, back)
