"""How the published quality life of a container is spent, span by span."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from itertools import pairwise
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.rules import Rule, last_day
from pantry_tui.core.keeping.warmth import Life
from pantry_tui.core.model import DAY_MIN


class Stretch(NamedTuple):
    """From the minute `start` of the local clock, on `day`, to `end` it lived this life."""

    start: int
    end: int
    day: date
    life: Life


@dataclass(frozen=True, slots=True)
class Spent:
    """A stretch, the day on which life would end if it stayed so, and the part of life that was
    spent before."""

    stretch: Stretch
    day: date
    before: float

    @property
    def rule(self) -> Rule:
        return self.stretch.life.rule


def spending(stretches: Iterable[Stretch]) -> Iterator[Spent]:
    """Stretch by stretch, oldest first. Neighbours under the same figure and warmth are one, so
    that a reading or a move that changes nothing changes no date."""
    spent = 0.0
    for one in _merged(_one_at_a_time(sorted(stretches, key=lambda one: one.start))):
        rule, share = one.life.rule, one.life.share
        assert rule.use is not None
        whole = (last_day(one.day, rule.use, rule.unit) - one.day).days * share
        # From its hour of the day on, once some is spent; what is left ends within a day, which is
        # still good. Of a life that is spent nothing is left.
        hour = min(max(one.start - one.day.toordinal() * DAY_MIN, 0), DAY_MIN - 1) / DAY_MIN
        left = max(0.0, 1 - spent) * whole
        ends = math.floor((hour if spent else 0) + left + 1e-9)
        yield Spent(one, one.day + timedelta(days=ends), spent)
        spent += (one.end - one.start) / DAY_MIN / whole if whole else math.inf


def end_of(stretches: Iterable[Stretch]) -> Spent | None:
    """Where the whole life is spent: what begins after that does not bring it back."""
    last: Spent | None = None
    for one in spending(stretches):
        if one.before >= 1:
            break
        last = one
    return last


def _one_at_a_time(stretches: Sequence[Stretch]) -> Iterator[Stretch]:
    """Where several may have been, the one in which food keeps the shortest."""
    edges = sorted({edge for one in stretches for edge in (one.start, one.end)})
    days = {one.start: one.day for one in reversed(stretches)}
    for start, end in pairwise(edges):
        here = [one for one in stretches if one.start <= start and one.end >= end]
        if here:
            worst = min(here, key=lambda one: one.life.rule.days * one.life.share)
            day = days.get(start) or date.fromordinal(start // DAY_MIN)
            yield Stretch(start, end, day, worst.life)


def _merged(stretches: Iterable[Stretch]) -> Iterator[Stretch]:
    run: Stretch | None = None
    for one in stretches:
        if run is not None and _alike(run.life, one.life) and one.start <= run.end:
            run = run._replace(end=one.end)
            continue
        if run is not None:
            yield run
        run = one
    if run is not None:
        yield run


def _alike(one: Life, other: Life) -> bool:
    return (one.rule.id, one.share) == (other.rule.id, other.share)
