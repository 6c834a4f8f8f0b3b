"""How the published quality life of a container is spent, span by span."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise
from typing import NamedTuple

from pantry_tui.core.keeping.rules import Rule, last_day
from pantry_tui.core.keeping.warmth import Life
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN


class Stretch(NamedTuple):
    """From the minute `start`, on `day`, to `end` it lived this life."""

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
    for one in _merged(_one_at_a_time(sorted(stretches, key=_order))):
        rule, share = one.life.rule, one.life.share
        assert rule.use is not None
        last = last_day(one.day, rule.use, rule.unit)
        whole = (last - one.day).days * share
        if spent == 0 and share == 1:
            day = last
        else:
            # From its hour of the day on; what is left ends within a day, which is still good.
            hour = min(max(one.start - one.day.toordinal() * DAY_MIN, 0), DAY_MIN - 1) / DAY_MIN
            left = max(0.0, 1 - spent) * whole
            day = one.day + timedelta(days=math.floor((hour if spent else 0) + left + 1e-9))
        # What begins after life is spent does not bring it back.
        day = day if spent < 1 else min(day, one.day)
        yield Spent(one, day, spent)
        if one.end < FOREVER:
            spent += (one.end - one.start) / DAY_MIN / whole if whole > 0 else 1.0


def end_of(stretches: Iterable[Stretch]) -> Spent | None:
    """Where the whole life is spent; once that was so in an earlier stretch, that day stands."""
    last: Spent | None = None
    for one in spending(stretches):
        if last is not None and one.before >= 1 and last.day <= one.stretch.day:
            return last
        last = one
    return last


def _order(one: Stretch) -> tuple[int, int, date, str, float]:
    return one.start, one.end, one.day, one.life.rule.id, one.life.share


def _days(life: Life) -> float:
    return life.rule.days * life.share


def _one_at_a_time(stretches: Sequence[Stretch]) -> Iterator[Stretch]:
    """Where several may have been, the one in which food keeps the shortest."""
    reach = -1
    for one in stretches:
        if one.start < reach:
            break
        reach = max(reach, one.end)
    else:
        yield from stretches
        return
    edges = sorted({edge for one in stretches for edge in (one.start, one.end)})
    days = {one.start: one.day for one in reversed(stretches)}
    for start, end in pairwise(edges):
        here = [one for one in stretches if one.start <= start and one.end >= end]
        if here:
            worst = min(here, key=lambda one: (_days(one.life), one.life.rule.id))
            day = days.get(start) or date.fromordinal(max(1, start // DAY_MIN))
            yield Stretch(start, end, day, worst.life)


def _merged(stretches: Iterable[Stretch]) -> Iterator[Stretch]:
    run: Stretch | None = None
    for one in stretches:
        same = run is not None and (run.life.rule.id, run.life.share) == (
            one.life.rule.id,
            one.life.share,
        )
        if run is not None and same and one.start <= run.end:
            run = run._replace(end=max(run.end, one.end))
            continue
        if run is not None:
            yield run
        run = one
    if run is not None:
        yield run
