"""The outlook: will it last to the next harvest, what will pass its date, how much to put up.

Week by week the earliest date is eaten first, at a steady rate of servings a week. Estimates all:
servings in a jar and appetites differ from house to house.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from itertools import zip_longest
from math import ceil

from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.plan.pace import CRUMB, NOTHING, Pace, Portion, gone_by, pace

#: Weeks from one harvest to the next.
YEAR_WEEKS = 52


@dataclass(frozen=True, slots=True)
class Ahead:
    """One food to its next harvest, in servings. `supply` is what is left at each week's end."""

    pace: Pace
    rate: float
    lost: float
    left: float
    runs_out: date | None
    supply: tuple[float, ...]


def rate_of(found: Pace, eaten: float | None, ceiling: float) -> float:
    """Servings a week: as eaten so far where that is known, else what it needs or can give,
    whichever is more, and never above the ceiling."""
    wanted = eaten if eaten is not None else max(found.needs, found.can)
    return min(wanted, ceiling)


def ahead(
    portions: Sequence[Portion],
    harvest: date,
    today: date,
    *,
    eaten: float | None = None,
    ceiling: float = float("inf"),
    factors: Sequence[float] = (),
    planned: Portion = NOTHING,
    asks: Pace | None = None,
) -> Ahead:
    """Simulates from `today` to `harvest`. What is not eaten on its date is lost; of a week in
    which a date passes so much is eaten by then as of its days are over, but for the first, since
    what presses comes first in it, and the last. `factors` say how much is eaten in each week to
    come against a usual one; () as usual. More servings are `planned`: they stand, are eaten in the
    first week, the last of them on their day, and press nobody. `asks` is its pace where known."""
    found = asks or pace(portions, harvest, today, planned)
    rate = rate_of(found, eaten, ceiling)
    stock = sorted((one for one in portions if not one.missed), key=lambda o: o.by or date.max)
    left = [one.servings for one in stock]
    lost = sum((one.servings for one in portions if one.missed), 0.0)
    next_ = 0  # all before it is gone
    supply: list[float] = []
    runs_out: date | None = None
    week = today
    while week < harvest:
        hungry = rate * factors[len(supply)] if len(supply) < len(factors) else rate
        hungry = whole = hungry if supply else max(0.0, hungry - planned.servings)
        before_last = today < week < harvest - timedelta(days=7)
        for index in range(next_, len(stock)):
            # A date already past is for this week; one that passes later is lost with its day.
            by = stock[index].by
            if by is not None and by < week and week > today:
                lost += left[index]
                left[index] = 0.0
            late = 0.0  # of this week's days, those after its date
            if by is not None and before_last and week <= by < week + timedelta(days=6):
                late = whole * (6 - (by - week).days) / 7
            taken = min(left[index], max(0.0, hungry - late))
            left[index] -= taken
            hungry -= taken
            if late:
                lost += left[index]
                left[index] = 0.0
            elif left[index]:
                break  # the later dates wait, and none of them has passed
            if not left[index] and next_ == index:
                next_ = index + 1
        stands = sum(left[next_:], 0.0)
        supply.append(stands)
        if runs_out is None and stands < CRUMB and week + timedelta(days=7) < harvest:
            runs_out = gone_by([*portions, planned], week + timedelta(days=6), today)
        week += timedelta(days=7)
    return Ahead(found, rate, lost, sum(left), runs_out, tuple(supply))


def together(
    foods: Sequence[tuple[Ahead, date]],
    portions: Sequence[Portion],
    today: date,
    ceiling: float = float("inf"),
    factors: Sequence[float] = (),
    planned: Portion = NOTHING,
) -> Ahead:
    """Several foods as one, a group or the household: each with its own harvest.

    It *needs* what all their dates together ask for, and *can give* what the foods can give, each
    to its own harvest. It loses what the foods lose, or what all of it loses when no more than the
    `ceiling` is eaten, whichever is more. It runs out when the last of it does, if no food has had
    its harvest before.
    """
    end = max((harvest for _, harvest in foods), default=today)
    can = sum(one.pace.can for one, _ in foods)
    joint = replace(pace(portions, end, today, planned), can=can)
    rate = min(sum(one.rate for one, _ in foods), ceiling)
    crowded = ahead(portions, end, today, eaten=rate, factors=factors, planned=planned).lost
    gone = [one.runs_out for one, _ in foods if one.runs_out is not None]
    first = min((harvest for _, harvest in foods), default=today)
    empty = len(gone) == len(foods) and gone and max(gone) < first
    weeks = zip_longest(*(one.supply for one, _ in foods), fillvalue=0.0)
    return Ahead(
        joint,
        rate,
        max(sum(one.lost for one, _ in foods), crowded),
        sum(one.left for one, _ in foods),
        max(gone) if empty else None,
        tuple(sum(week) for week in weeks),
    )


def to_put_up(
    servings_a_week: float,
    weeks: float,
    people: int,
    servings_per_container: float,
    left_over: float = 0.0,
    *,
    given: float = 0.0,
    spoiled: float = 0.0,
    margin: float = 0.0,
) -> int:
    """Containers to put up: servings a week, times weeks, times people, over servings in one.
    Extension planning charts reckon so.

    Corrected by what the last year taught: `given` servings go to others, `spoiled` is the share
    (0 to 1) that came to nothing, `left_over` servings are still there; `margin` is a share on top.
    """
    wanted = (servings_a_week * weeks * people + given) * (1 + margin)
    wanted = wanted / (1 - min(spoiled, 0.9)) - left_over
    return max(0, ceil(wanted / servings_per_container - CRUMB))


def cover(years: int, life_days: int | None) -> float:
    """Weeks that one putting-up may cover: so many years, never beyond what the food keeps. Where
    no life is published, one year and no more."""
    if life_days is None:
        return float(YEAR_WEEKS)
    return min(float(YEAR_WEEKS * years), life_days / 7)


def shared(missing: float, paces: Mapping[str, float]) -> dict[str, float]:
    """Servings that each substitute takes over, by its pace; in equal parts where none has one."""
    whole = sum(paces.values())
    if whole <= 0:
        return {food: missing / len(paces) for food in paces}
    return {food: missing * (pace / whole) for food, pace in paces.items()}


def quarts(servings_a_week: float, weeks: float, people: int, cups_a_serving: float) -> float:
    """Quarts that a plan of so many servings a week asks for: four cups to a quart."""
    return servings_a_week * weeks * people * cups_a_serving / 4
