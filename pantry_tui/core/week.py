"""What to eat this week: opened first, then what must be begun, then the nearest dates, within
the household's appetite. Pure; a candidate is one container.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from pantry_tui.core.schedule import Ceilings, Lot, pressing
from pantry_tui.core.words import Group

#: Servings a person eats of a group from the stores in a week, the ceiling. Common practice,
#: no source; about one serving a day of vegetables and fruit, relishes rationed.
CEILING = {
    Group.VEGETABLE: 7.0, Group.FRUIT: 7.0, Group.MEAT: 4.0, Group.FISH: 2.0, Group.EGG: 4.0,
    Group.DAIRY: 4.0, Group.GRAIN: 7.0, Group.HERB: 2.0, Group.RELISH: 3.0, Group.MEAL: 3.0,
    Group.DRINK: 3.0, Group.FAT: 3.0,
}  # fmt: skip

#: And of one food, so that the week is not five jars of beans.
FOOD_CEILING = 3.0


@dataclass(frozen=True, slots=True)
class Appetite:
    """Ceilings in servings a person a week where the household changed them; 0 is never eaten."""

    people: int
    groups: Mapping[str, float] = field(default_factory=dict)
    foods: Mapping[str, float] = field(default_factory=dict)

    def of_group(self, group: Group) -> float:
        """For the whole household."""
        return self.groups.get(group.value, CEILING[group]) * self.people

    def of_food(self, food: str) -> float:
        """For the whole household."""
        return self.foods.get(food, FOOD_CEILING) * self.people


@dataclass(frozen=True, slots=True)
class Candidate:
    """One container that may be eaten, in eating order. `last` is its nearer date."""

    container: str
    food: str
    group: Group
    servings: float
    last: date | None
    must: bool  # opened or thawed: its clock runs
    safe_until: date | None
    frozen: bool
    thaw_days: int


@dataclass(frozen=True, slots=True)
class Pick:
    """A container for a day; `thaw_by` the day to move it to the fridge, never before `start`."""

    candidate: Candidate
    day: date
    thaw_by: date | None


def begun_first(
    candidates: Sequence[Candidate], appetite: Appetite, start: date
) -> list[Candidate]:
    """The same candidates, those before the rest that must be begun now though others fall due
    sooner: big piles under a ceiling (core/schedule.py). Opened ones stay in front."""
    lots: dict[tuple[str, str, int], float] = defaultdict(float)
    for one in candidates:
        if one.last is not None:
            week = max(0, (one.last - start).days // 7)
            lots[one.food, one.group, week] += one.servings
    ceilings = Ceilings(
        {one.food: appetite.of_food(one.food) for one in candidates},
        {group: appetite.of_group(group) for group in Group},
    )
    wanted = pressing(
        [Lot(food, group, servings, week) for (food, group, week), servings in lots.items()],
        ceilings,
    )
    ranked: list[tuple[int, Candidate]] = []
    for one in candidates:
        begun = one.last is not None and wanted.get(one.food, 0.0) > 1e-9
        if begun:
            wanted[one.food] -= one.servings
        ranked.append((0 if one.must else 1 if begun else 2, one))
    return [one for _, one in sorted(ranked, key=lambda pair: pair[0])]


def plan(candidates: Sequence[Candidate], appetite: Appetite, start: date) -> list[Pick]:
    """Seven days from `start`. Candidates come in eating order; what the
    household does not eat is left out.

    An opened or thawed container is taken even above the ceiling: it would be lost.
    """
    by_group: dict[Group, float] = {}
    by_food: dict[str, float] = {}
    chosen: list[Candidate] = []
    for one in candidates:
        if appetite.of_food(one.food) <= 0 or appetite.of_group(one.group) <= 0:
            continue
        room = appetite.of_group(one.group) - by_group.get(one.group, 0.0)
        taste = appetite.of_food(one.food) - by_food.get(one.food, 0.0)
        first = one.food not in by_food and room > 0
        if not one.must and not (first or (one.servings <= room and one.servings <= taste)):
            continue
        chosen.append(one)
        by_group[one.group] = by_group.get(one.group, 0.0) + one.servings
        by_food[one.food] = by_food.get(one.food, 0.0) + one.servings
    return _spread(chosen, start)


def _spread(chosen: Sequence[Candidate], start: date) -> list[Pick]:
    """The nearest dates on the first days; frozen food not before it can be thawed."""
    load = [0.0] * 7
    picks = []
    for one in chosen:
        latest = 6 if one.last is None else min(6, (one.last - start).days)
        earliest = min(one.thaw_days, 6) if one.frozen else 0
        if one.safe_until is not None and one.safe_until < start + timedelta(days=earliest):
            continue  # it cannot be thawed and eaten before its discard date
        days = range(earliest, max(earliest, latest) + 1)
        day = min(days, key=lambda d: (load[d], d))
        load[day] += one.servings
        eaten = start + timedelta(days=day)
        thaw = eaten - timedelta(days=one.thaw_days) if one.frozen and one.thaw_days else None
        picks.append(Pick(one, eaten, thaw))
    return sorted(picks, key=lambda pick: (pick.day, pick.candidate.food))
