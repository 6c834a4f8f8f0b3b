"""The minutes in which food that keeps in the cold was not in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from itertools import pairwise
from typing import NamedTuple

from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import EVER, Container, When
from pantry_tui.core.safety.outage import OutageRule

#: Above this a minute counts twice: perishable food may be out of the cold for two hours in all, in
#: such heat for one (USDA FSIS, freezing and food safety).
WARM_MIN, HOT_MIN, HOT_F = 120, 60, 90.0
_ROOM_F = 70.0


class Warm(NamedTuple):
    """Minutes in which food that keeps in the cold was not in it."""

    start: int
    end: int
    day: date
    temperature_f: float
    rule: Rule | OutageRule | None
    where: str


def _stretches(warm: Iterable[Warm]) -> Iterator[tuple[int, int, Warm, int]]:
    """The minutes in which it was warm, each once, in order: from, until, what speaks for them, and
    how often each counts."""
    waiting = sorted(warm, key=lambda one: one[:4], reverse=True)
    met: list[Warm] = []
    for start, end in pairwise(sorted({edge for one in waiting for edge in (one.start, one.end)})):
        met = [one for one in met if one.end > start]
        while waiting and waiting[-1].start <= start:
            met += [one for one in [waiting.pop()] if one.end > start]
        if met:
            yield start, end, met[0], 2 if any(one.temperature_f > HOT_F for one in met) else 1


def made_with(used: int, spans: Sequence[Span]) -> list[Warm]:
    """The minutes that what it was made from had been out of the cold, as if just before."""
    if not used or not spans:
        return []
    start, where = spans[0].start, "Out of the cold before it was packed, and since"
    return [Warm(start - used, start, spans[0].day, _ROOM_F, None, where)]


def charged(warm: Iterable[Warm]) -> int:
    """How many minutes of the two hours they take."""
    return sum(counts * (end - start) for start, end, _, counts in _stretches(warm))


def passed(warm: Iterable[Warm], most: int) -> tuple[Warm, int] | None:
    """The one in which they come to more than `most`, and the minute until which they did not."""
    left = most
    for start, end, one, counts in _stretches(warm):
        if counts * (end - start) > left:
            return one, start + left // counts
        left -= counts * (end - start)
    return None


def westmost(container: Container, now: When) -> When:
    """Now, by the westmost clock by which its life was told: a day on which it was lost comes no
    later because a person travels, or another machine books in another zone."""
    zones = (turn.when.zone for turn in container.turns if turn.when.first > EVER.first)
    return now._replace(zone=min((now.zone, *zones)))
