"""The pace of the week: how far each food is behind its own, and the share of each group.

The pace of a food is what it needs or can give, whichever is more (core/plan/pace.py), never above
its ceiling. Week by week it gathers credit at that pace, and what is eaten is taken off. The credit
is a number of weeks, too: four servings saved at half a serving a week are eight weeks' worth. By
so many weeks the food comes sooner (schedule.py), so that half a jar a week comes every other
week, and what was eaten faster rests.

A group has a share: as many servings a week as it can give and not be gone before more comes. It
gathers credit in the same way. Harvests are expected as they were in the year before. Where much of
a group was lost in that year there is more than is eaten, or it comes as nobody foresees: to keep
any of it back would only lose more, and it has no share. Staples are no part of it: that a sack of
potatoes is eaten day by day is no reason to go without peas.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from itertools import accumulate, zip_longest
from math import inf

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.plan.appetite import STAPLES, Appetite
from pantry_tui.core.plan.menu import Candidate, Needs
from pantry_tui.core.plan.pace import Credit, Portion, next_harvest, pace
from pantry_tui.core.words import Group

#: A good year bears so many times what is expected; no stock is kept back that would be in its way.
GOOD_YEAR = 1.5
#: A week always gets this part of what a year's stores give a week: going hungry now saves nothing.
LEAST = 0.5
#: A group of which more than this part of a year's harvest was lost has no share. Our own choice.
STAND_BACK = 0.03
#: A year's stores are what stands, and what comes within so many weeks.
YEAR = 52
#: Weeks ahead whose days away and guests are looked at.
KNOWN = 5


@dataclass(frozen=True, slots=True)
class PutUp:
    """Servings of a food that were put up on a day."""

    food: str
    group: Group
    servings: float
    made: date


@dataclass(frozen=True, slots=True)
class Harvest:
    """Servings that a group gets in so many weeks."""

    group: str
    week: int
    servings: float


def saved(rate: float, eaten: Iterable[float]) -> float:
    """Servings saved at `rate` a week over the weeks before, of which `eaten` gives the servings
    taken. Below 0: more was eaten than the pace."""
    return sum(rate - taken for taken in eaten)


def rates(
    candidates: Iterable[Candidate],
    appetite: Appetite,
    start: date,
    harvests: Mapping[str, date],
) -> dict[str, float]:
    """Servings a usual week of each food; what has no harvest of its own lasts a year."""
    piles: dict[str, dict[date | None, float]] = defaultdict(lambda: defaultdict(float))
    for one in candidates:
        piles[one.food][one.last] += one.servings
    found = {}
    for food, pile in piles.items():
        parts = [Portion(servings, last) for last, servings in pile.items()]
        its = pace(parts, harvests.get(food) or next_harvest(None, start), start)
        found[food] = min(max(its.needs, its.can), appetite.of_food(food))
    return found


def expected(
    put_up: Iterable[PutUp],
    candidates: Iterable[Candidate],
    start: date,
    harvests: Mapping[str, date],
) -> list[Harvest]:
    """The next harvests, as the year before `start` gave them. A food that stands and was not put
    up in that year lasts until its next harvest, which may bring nothing."""
    found, again = [], set()
    for one in put_up:
        week = YEAR - (start - one.made).days // 7
        if 0 < week <= YEAR and one.food not in STAPLES:
            again.add(one.food)
            found.append(Harvest(one.group, week, one.servings))
    others = {one.food: one.group for one in candidates if one.food not in again | STAPLES}
    for food, group in others.items():
        harvest = harvests.get(food) or next_harvest(None, start)
        found.append(Harvest(group, max(1, (harvest - start).days // 7), 0.0))
    return found


def shares(
    standing: Mapping[str, float],
    harvests: Iterable[Harvest],
    coming: Sequence[float] = (),
    lost: Mapping[str, float] | None = None,
) -> dict[str, float]:
    """Servings a usual week of each group at which what stands and what comes is never gone before
    more comes, and no less than LEAST of a year's average. `coming` as in schedule.py; `lost` are
    the servings of each that got too old in the year before. A group that expects nothing, or lost
    much, has no share."""
    clock = list(accumulate([*coming, *[1.0] * YEAR]))
    supply = defaultdict(float, standing)
    brought: dict[str, float] = defaultdict(float)
    found: dict[str, float] = {}
    for one in sorted(harvests, key=lambda one: one.week):
        if 0 < one.week <= YEAR:
            share = supply[one.group] / max(1.0, clock[one.week - 1])
            found[one.group] = min(found.get(one.group, inf), share)
            supply[one.group] += GOOD_YEAR * one.servings
            brought[one.group] += one.servings
    return {
        group: max(share, LEAST * (standing.get(group, 0.0) + brought[group]) / YEAR)
        for group, share in found.items()
        if (lost or {}).get(group, 0.0) <= STAND_BACK * brought[group]
    }


def _weeks(start: date, harvest: date | None) -> int:
    return ((harvest or next_harvest(None, start)) - start).days // 7


def needs(
    candidates: Sequence[Candidate],
    appetite: Appetite,
    start: date,
    harvests: Mapping[str, date],
    eaten: Mapping[str, Sequence[float]],
    coming: Iterable[Harvest] = (),
    length: int = 7,
    lost: Mapping[str, float] | None = None,
) -> Needs:
    """What the `length` days from `start` have to heed. `eaten` are servings of a food in the weeks
    before, the oldest first, since the oldest of what stands was there; `harvests` the next one of
    each food, `coming` what they should bring; `lost` as for `shares`."""
    foods: dict[Group, set[str]] = defaultdict(set)
    standing: dict[str, float] = defaultdict(float)
    for one in candidates:
        if one.food not in STAPLES:
            foods[one.group].add(one.food)
            standing[one.group] += one.servings
    paces = rates(candidates, appetite, start, harvests)
    credits = {
        food: Credit(saved(rate, eaten.get(food, ())), rate, _weeks(start, harvests.get(food)))
        for food, rate in paces.items()
    }
    factor = appetite.factor(start, length)
    known = [factor, *appetite.coming(start + timedelta(days=length), KNOWN)]
    given = {}
    for group, rate in shares(standing, coming, known, lost).items():
        names = foods.get(Group(group), set())
        logs = [list(reversed(eaten.get(food, ()))) for food in names]
        together = [sum(week) for week in zip_longest(*logs, fillvalue=0.0)]
        given[group] = rate * factor + saved(rate, reversed(together))
    return Needs(credits, given)
