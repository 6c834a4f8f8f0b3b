"""Which servings must be eaten this week so that the fewest pass their date.

Every food is put as late as its date allows, week by week from the last one back: what a week
cannot hold, because of the ceiling on a food or on its group, moves to the week before. What
comes to lie in the first weeks must be begun now; the rest of the week goes to the earliest
dates. Strict earliest-date-first forgets that a big pile under a ceiling must be begun long
before its date; this does not.

Expected harvests are lots that arrive later: room for them is kept, so that the old stock goes
before the new one comes.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Lot:
    """Servings of one food that are good through week `last` (0 is this week) and are there from
    week `first` on. `last` None: nothing hurries them."""

    food: str
    group: str
    servings: float
    last: int | None
    first: int = 0


@dataclass(frozen=True, slots=True)
class Ceilings:
    """Servings a week, at most: of a food and of a group. A missing one has no ceiling."""

    food: Mapping[str, float]
    group: Mapping[str, float]

    def of_food(self, name: str) -> float:
        return self.food.get(name, float("inf"))

    def of_group(self, name: str) -> float:
        return self.group.get(name, float("inf"))


@dataclass(slots=True)
class _Waiting:
    """A lot that still has to find its week."""

    lot: Lot
    left: float


def schedule(
    lots: Sequence[Lot], ceilings: Ceilings, horizon: int = 60
) -> tuple[list[dict[str, float]], float]:
    """Servings of each food by week, as late as can be, and the servings that no week can hold.

    Lots beyond the horizon, or that nothing hurries, are left out.
    """
    due: dict[int, list[Lot]] = defaultdict(list)
    for lot in lots:
        if lot.last is not None and 0 <= lot.last < horizon:
            due[lot.last].append(lot)
    weeks: list[dict[str, float]] = [{} for _ in range(horizon)]
    waiting: list[_Waiting] = []
    lost = sum(lot.servings for lot in lots if lot.last is not None and lot.last < 0)
    for week in range(horizon - 1, -1, -1):
        waiting += [_Waiting(lot, lot.servings) for lot in due[week]]
        _fill(weeks[week], waiting, ceilings, week)
        lost += sum(one.left for one in waiting if one.lot.first >= week)
        waiting = [one for one in waiting if one.left > 1e-9 and one.lot.first < week]
    return weeks, lost + sum(one.left for one in waiting)


def _fill(
    planned: dict[str, float], waiting: list[_Waiting], ceilings: Ceilings, week: int
) -> None:
    """Puts into a week what cannot move earlier, then the foods with the biggest backlog for
    their ceiling: they have the least room in the weeks before."""
    backlog: dict[str, float] = defaultdict(float)
    for one in waiting:
        backlog[one.lot.food] += one.left
    taken: dict[str, float] = defaultdict(float)

    def pressure(one: _Waiting) -> tuple[bool, float]:
        ceiling = ceilings.of_food(one.lot.food)
        return (one.lot.first < week, -backlog[one.lot.food] / ceiling if ceiling else 0.0)

    for one in sorted(waiting, key=pressure):
        food, group = one.lot.food, one.lot.group
        room = min(
            ceilings.of_food(food) - planned.get(food, 0.0),
            ceilings.of_group(group) - taken[group],
            one.left,
        )
        if room > 0:
            planned[food] = planned.get(food, 0.0) + room
            taken[group] += room
            one.left -= room


#: Weeks of the schedule that are begun now: a little ahead of need, since weeks turn out otherwise
#: than planned (guests, days away) and containers are whole.
AHEAD = 4


def pressing(lots: Sequence[Lot], ceilings: Ceilings, horizon: int = 60) -> dict[str, float]:
    """Servings of each food that should be begun this week, whatever stands before them by date."""
    weeks, _ = schedule(lots, ceilings, horizon)
    found: dict[str, float] = defaultdict(float)
    for planned in weeks[:AHEAD]:
        for food, servings in planned.items():
            found[food] += servings
    return dict(found)
