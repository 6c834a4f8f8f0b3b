"""The outlook: will it last to the next harvest, what will pass its date, how much to put up.

Week by week the earliest date is eaten first, at a steady rate of servings a week. Estimates all:
servings in a jar and appetites differ from house to house.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import ceil

from pantry_tui.core.pace import Pace, Portion, pace, weeks_until


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
) -> Ahead:
    """Simulates from `today` to `harvest`. What is past its date when its week comes is lost."""
    found = pace(portions, harvest, today)
    rate = rate_of(found, eaten, ceiling)
    stock = sorted(portions, key=lambda one: one.by or date.max)
    left = [one.servings for one in stock]
    lost = 0.0
    supply: list[float] = []
    runs_out: date | None = None
    week = today
    while week < harvest:
        hungry = rate
        for index, one in enumerate(stock):
            # A date already past is for this week; one that passes later is lost with its day.
            if one.by is not None and one.by < week and week > today:
                lost += left[index]
                left[index] = 0.0
            taken = min(left[index], hungry)
            left[index] -= taken
            hungry -= taken
        supply.append(sum(left))
        if runs_out is None and sum(left) < 1e-9 and week + timedelta(days=7) < harvest:
            runs_out = week + timedelta(days=6)
        week += timedelta(days=7)
    return Ahead(found, rate, lost, sum(left), runs_out, tuple(supply))


def to_put_up(
    servings_a_week: float,
    weeks: float,
    people: int,
    servings_per_container: float,
    left_over: float = 0.0,
) -> int:
    """Containers to put up: servings a week, times weeks, times people, over servings in one,
    less what is left over. Extension planning charts reckon so."""
    wanted = servings_a_week * weeks * people - left_over
    return max(0, ceil(wanted / servings_per_container - 1e-9))


def quarts(servings_a_week: float, weeks: float, people: int, cups_a_serving: float) -> float:
    """Quarts that a plan of so many servings a week asks for: four cups to a quart."""
    return servings_a_week * weeks * people * cups_a_serving / 4


def weeks_between(start: date, end: date) -> float:
    """Weeks to cover from one harvest to the next."""
    return weeks_until(end, start)
