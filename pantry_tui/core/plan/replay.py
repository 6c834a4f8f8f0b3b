"""How sure an outlook is: the household's own weeks, drawn again and again (a bootstrap).

Each replay draws a past week for every week to come, and eats of the stock what was eaten in that
week, the earliest date first. The draws are the same ones every time and for every food, so that a
week of guests is one for all of them and nothing flickers from look to look.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Sequence
from datetime import date, timedelta
from functools import lru_cache
from itertools import accumulate
from math import ceil
from random import Random

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.plan.pace import CRUMB, NOTHING, Portion, gone_by

#: So many replays, and of their results in order the first and the last one told: nine in ten at
#: either end. Common practice, no source.
REPLAYS = 40
_LOW, _HIGH = REPLAYS // 10, REPLAYS - 1 - REPLAYS // 10
_SEED = 20_240


@dataclass(frozen=True, slots=True)
class Replayed:
    """What came out, replay by replay: servings lost, and the day it ran out (None: it lasted)."""

    lost: tuple[float, ...]
    runs_out: tuple[date | None, ...]

    @property
    def lost_range(self) -> tuple[float, float]:
        """Between these, nine times of ten at either end."""
        return band(self.lost)

    @property
    def runs_out_range(self) -> tuple[date | None, date | None]:
        days = sorted(day or date.max for day in self.runs_out)
        first, last = days[_LOW], days[_HIGH]
        return (None if first == date.max else first, None if last == date.max else last)


def band(lost: Sequence[float]) -> tuple[float, float]:
    """The lower and the upper of so many results."""
    in_order = sorted(lost)
    return in_order[_LOW], in_order[_HIGH]


def replayed(
    portions: Sequence[Portion],
    harvest: date,
    today: date,
    own: Sequence[float],
    rate: float,
    factors: Sequence[float] = (),
    planned: Portion = NOTHING,
) -> Replayed:
    """`own` are servings of past weeks, drawn so that their mean is `rate`; `factors` how much is
    eaten in each week to come against a usual one, and what is `planned`, as `outlook.ahead` has
    them."""
    days = (harvest - today).days
    weeks = max(1, ceil(days / 7))
    by_day: dict[int | None, float] = defaultdict(float)
    for one in sorted(portions, key=lambda one: one.by or date.max):
        last = min(7 * weeks - 1, max(6, (one.by - today).days)) if one.by else None
        by_day[last] += 0.0 if one.missed else one.servings
    stock = list(by_day.items())
    missed = sum(one.servings for one in portions if one.missed)
    mean = sum(own) / len(own)
    scale = rate / mean if mean > CRUMB else 0.0
    weights = [scale * factor for factor in _padded(factors, weeks)]
    last_day = gone_by([*portions, planned], date.max, today)
    lost: list[float] = []
    ended: list[date | None] = []
    for numbers in draws(len(own), weeks):
        wanted = [own[number] * weight for number, weight in zip(numbers, weights, strict=True)]
        wanted[0] = max(0.0, wanted[0] - planned.servings)
        gone, week = _eat(stock, list(accumulate(wanted)))
        lost.append(gone + missed)
        over = week is None or (week + 1) * 7 >= days
        ended.append(None if over else min(last_day, today + timedelta(days=7 * (week or 0) + 6)))
    return Replayed(tuple(lost), tuple(ended))


def _eat(
    stock: Sequence[tuple[int | None, float]], wanted: Sequence[float]
) -> tuple[float, int | None]:
    """(servings lost, the week in which the last is gone or None) of (last day, servings) in the
    order of their dates; `wanted` grows week by week. All of it stands from the beginning, so what
    was eaten by a day is what was wanted by then."""
    last = len(wanted) - 1
    eaten = lost = left = 0.0
    emptied = 0
    for day, servings in stock:
        by = None if day is None else day // 7
        room = wanted[last if by is None else by] - eaten
        if day is not None and by and by < last:
            late = 6 - day % 7  # of its week's days, those after its date
            room -= (wanted[by] - wanted[by - 1]) * late / 7
        taken = min(servings, max(0.0, room))
        eaten += taken
        rest = servings - taken
        if rest <= CRUMB:
            continue
        if by is not None and by < last:
            lost += rest
            emptied = max(emptied, by + 1)
        else:
            left += rest
    if left:
        return lost, None
    return lost, max(emptied, min(last, bisect_left(wanted, eaten - CRUMB)))


@lru_cache(maxsize=512)
def draws(kinds: int, weeks: int) -> tuple[tuple[int, ...], ...]:
    """For each replay the number of a past week (of so many) for every week to come. The draw of a
    week is one for all foods: of twice as many past weeks about twice as far."""
    return tuple(tuple(int(at * kinds) for at in row[:weeks]) for row in _rows(weeks))


@lru_cache(maxsize=64)
def _rows(weeks: int) -> tuple[tuple[float, ...], ...]:
    dice = [Random(_SEED + number) for number in range(REPLAYS)]
    return tuple(tuple(one.random() for _ in range(weeks)) for one in dice)


def _padded(factors: Sequence[float], weeks: int) -> Sequence[float]:
    return [*factors[:weeks], *[1.0] * (weeks - len(factors))]
