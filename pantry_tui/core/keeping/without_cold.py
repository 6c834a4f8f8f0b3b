"""Time without cold that a container spent in several places: it adds up, wherever it stood.

In each place it counts for as long as the container stood there without power. Cuts are joined as
those of one place are (core.keeping.power): within a day of each other, unless where it stood
meanwhile was read cold. What it was out of the cold for otherwise joins a cut from which it is no
more than four hours away, in which what was as warm as a room is to be cold again (FDA Food Code
3-501.14(B), from memory). Hours in a freezer and hours in a refrigerator each use up their share
of what the shut door of that one is promised to hold; that they are put together so is a choice of
this program, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from pantry_tui.core.keeping.power import (
    AIR_MIN,
    GAP_MIN,
    Blackout,
    Off,
    Struck,
    apart,
    blackouts_of,
    read_cold,
)
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.warm import Warm
from pantry_tui.core.model import Place, Read, When
from pantry_tui.core.safety.outage import hold_hours
from pantry_tui.core.words import Climate

COOLS_MIN = 4 * 60


class _Stay(NamedTuple):
    """A cut of one place while the container stood there."""

    off: Off
    place: str
    climate: Climate


def across(
    spans: Sequence[Span], places: Mapping[str, Place], now: When, warm: Sequence[Warm]
) -> Iterator[Struck]:
    """Every stretch without cold that no single place tells of, for each climate that it met."""
    stays = sorted(_stays(spans, places, now), key=lambda one: str(one.off))
    if not stays:
        return
    out = apart((one.start, min(one.end, now.last)) for one in warm if one.start < now.last)
    for chain in _chains(stays, _cold(spans, places)):
        near = [one for one in out if any(_near(one, stay.off) for stay in chain)]
        if near or len({one.place for one in chain}) > 1:
            yield from _judged(chain, near, spans)


def _stays(spans: Sequence[Span], places: Mapping[str, Place], now: When) -> Iterator[_Stay]:
    cold = [one for one in spans if one.climate.is_cold]
    for place, climate in dict.fromkeys((one.place, one.climate) for one in cold):
        blackouts = blackouts_of(place, places, now)
        if not blackouts:
            continue
        mine = [one for one in cold if (one.place, one.climate) == (place, climate)]
        day = min(one.day for one in mine)
        for begins, ends in apart((one.start, one.end) for one in mine):
            for piece in (one for blackout in blackouts for one in blackout.pieces):
                start, end = max(begins, piece.start), min(ends, piece.end)
                if start < end:
                    off = Off(
                        start, end, min(piece.length, end - start), max(piece.day, day), piece.cut
                    )
                    yield _Stay(off, place, climate)


def _cold(spans: Sequence[Span], places: Mapping[str, Place]) -> list[Read]:
    """When it surely stood in a place that was read cold."""
    found = []
    for name in dict.fromkeys(one.place for one in spans if one.place in places):
        for fact in read_cold(places[name].facts):
            then = [
                one.place
                for one in spans
                if one.start <= fact.when.last and one.end >= fact.when.first
            ]
            if then and set(then) == {name}:
                found.append(fact)
    return found


def _chains(stays: Sequence[_Stay], cold: Sequence[Read]) -> list[list[_Stay]]:
    chains: list[list[_Stay]] = []
    for stay in stays:
        if chains and _goes_on(max(one.off.end for one in chains[-1]), stay.off.start, cold):
            chains[-1].append(stay)
        else:
            chains.append([stay])
    return chains


def _goes_on(end: int, start: int, cold: Sequence[Read]) -> bool:
    between = any(end + AIR_MIN < one.when.first and one.when.last < start for one in cold)
    return start - end <= GAP_MIN and not between


def _near(warm: tuple[int, int], off: Off) -> bool:
    return warm[0] - off.end <= COOLS_MIN and off.start - warm[1] <= COOLS_MIN


def _judged(
    chain: Sequence[_Stay], near: Sequence[tuple[int, int]], spans: Sequence[Span]
) -> Iterator[Struck]:
    first = chain[0].off
    # What was out of the cold says nothing of how full, or how warm, the cold place was.
    out = [Off(start, end, end - start, first.day, first.cut) for start, end in near]
    whole = _as_one([one.off for one in chain] + out)
    by_climate = {
        climate: [one.off for one in chain if one.climate is climate]
        for climate in dict.fromkeys(one.climate for one in chain)
    }
    stood = {one.place for one in chain}
    for climate, mine in by_climate.items():
        minutes = float(_minutes([*mine, *out]))
        for other, its in by_climate.items():
            if other is not climate:
                minutes += _minutes(its) * _hold(climate, mine) / _hold(other, its)
        here = tuple(
            one
            for one in spans
            if one.climate is climate
            and one.place in stood
            and one.start < whole.end
            and one.end > whole.start
        )
        length = whole.minutes(whole.start, whole.end)
        stayed = math.ceil(minutes)
        yield Struck(whole, climate, whole.day, length, here, False, stayed, stayed)


def _as_one(pieces: Sequence[Off]) -> Blackout:
    inorder = sorted(pieces, key=lambda one: (one.start, one.end))
    return Blackout(
        tuple(inorder),
        inorder[0].start,
        max(one.end for one in inorder),
        min(one.day for one in inorder),
    )


def _minutes(pieces: Sequence[Off]) -> int:
    one = _as_one(pieces)
    return one.minutes(one.start, one.end)


def _hold(climate: Climate, pieces: Sequence[Off]) -> float:
    return hold_hours(climate, all(one.cut.full is True for one in pieces))
