"""When a crop comes in: by the household's own batches of several years, before that by the table.

The table has the months of the northern half of the world; for a household of the southern half,
which says so (`household --half south`) or has put up its crops half a year later, they are turned
by six.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from statistics import median
from typing import NamedTuple

from pantry_tui.core.plan.pace import next_harvest
from pantry_tui.core.words import Method
from pantry_tui.services.books.past import by_food
from pantry_tui.services.pantry import Pantry

#: So many of the last years with a harvest are looked at.
_YEARS = 3
#: A household that never said in which half of the world it gardens is taken for a southern one
#: where crops came in there in so many months, and of all crops so large a part. A whole shelf that
#: is booked on one winter's day says nothing. Common practice, no source.
_MONTHS, _PART = 3, 0.75
#: A crop comes in no more than so long before the month in which it is looked for. Common practice,
#: no source.
_EARLY = timedelta(days=60)
#: What is made of these may come from anywhere at any time of the year.
_NO_CROP = frozenset({Method.BOUGHT, Method.MEAL, Method.INFUSION})
_YEAR = 365.25


class Harvest(NamedTuple):
    """A week of harvest ahead; `own` where the household's own batches say so, else it is the
    first of the month of the table."""

    food: str
    first: date
    own: bool


def month_of(p: Pantry, food: str) -> int | None:
    """The month (1 to 12) in which its harvest begins, None for what has none."""
    day = _own_day(p, food)
    return _charted(p, food) if day is None else day.month


def next_of(p: Pantry, food: str, start: date) -> date:
    """The first day of the month of its next harvest; a year from `start` for what has none. What
    was put up shortly before that day was that harvest, come early."""
    month = month_of(p, food)
    first = next_harvest(month, start)
    came = max((day for day in _days(p).get(food, ()) if day <= start), default=None)
    if month is not None and came is not None and first - came < _EARLY:
        return next_harvest(month, first)
    return first


def comes(p: Pantry, food: str) -> bool:
    """Whether it is a crop that was put up here: what was bought, and meat, has no harvest."""
    return food in _days(p)


def ahead(p: Pantry) -> list[Harvest]:
    """The next harvest of each crop that was put up here, the nearest first."""
    found = []
    for food in sorted(_days(p)):
        day = _own_day(p, food)
        if day is not None:
            found.append(Harvest(food, _coming(day, p.today), own=True))
        elif (month := _charted(p, food)) is not None:
            found.append(Harvest(food, next_harvest(month, p.today), own=False))
    return sorted(found, key=lambda one: (one.first, one.food))


def middle(days: Iterable[date]) -> date:
    """The day of the year in the middle of these, in the year of the last: each year by its median,
    then the median of the years. What lies about New Year lies together."""
    by_year: dict[int, list[int]] = defaultdict(list)
    last = max(days := list(days))
    for day in days:
        back = round((last - day).days / _YEAR)  # a season ago, two ...
        by_year[back].append(round((day - last).days + back * _YEAR))
    years = [median(by_year[back]) for back in sorted(by_year)[:_YEARS]]
    return last + timedelta(days=round(median(years)))


def _own_day(p: Pantry, food: str) -> date | None:
    """The day by its own batches; None where they say no more than the table."""
    known: dict[str, date | None] = p.once("own harvest", dict)
    if food not in known:
        known[food] = _found(_charted(p, food), _days(p).get(food, ()))
    return known[food]


def _found(charted: int | None, days: Sequence[date]) -> date | None:
    if charted is None or not days:
        return None
    last = max(days)
    seasons = {round((last - one).days / _YEAR) for one in days}
    return middle(days) if len(seasons) > 1 else None


def _days(p: Pantry) -> Mapping[str, Sequence[date]]:
    """The days on which crops of each food were put up, not what was bought or made of others."""

    def find() -> dict[str, list[date]]:
        crops = {
            food: [one.born for one in batches if one.method not in _NO_CROP]
            for food, batches in by_food(p).items()
            if _northern(p, food) is not None
        }
        return {food: days for food, days in crops.items() if days}

    return p.once("harvest days", find)


def _charted(p: Pantry, food: str) -> int | None:
    """The month of the table, in this half of the world."""
    month = _northern(p, food)
    return _turned(month) if month is not None and _south(p) else month


def _northern(p: Pantry, food: str) -> int | None:
    known: dict[str, int | None] = p.once("months of the table", dict)
    if food not in known:  # asked of every batch, and a name takes long to find
        facts = p.tables.index.find(food)
        known[food] = facts.harvest_month if facts else None
    return known[food]


def _turned(month: int) -> int:
    """The same month of the year in the other half of the world."""
    return (month + 5) % 12 + 1


def _south(p: Pantry) -> bool:
    """Whether it gardens in the southern half: as it said, else as its crops came in."""
    return p.once("south", lambda: p.south if p.home.half else _looks_south(p))


def _looks_south(p: Pantry) -> bool:
    crops, south = 0, []
    for food, days in _days(p).items():
        month, came = _northern(p, food), middle(days).month
        assert month is not None
        crops += 1
        if _apart(came, _turned(month)) < _apart(came, month):
            south.append(came)
    return len(set(south)) >= _MONTHS and len(south) >= _PART * crops


def _apart(one: int, other: int) -> int:
    return min((one - other) % 12, (other - one) % 12)


def _coming(day: date, today: date) -> date:
    """The next time that this day of the year comes, today or later."""
    for year in (today.year - 1, today.year, today.year + 1):
        then = day.replace(year=year, day=min(day.day, 28))
        if then >= today:
            return then
    raise AssertionError("a day of the next year lies ahead")
