"""What to eat this week, within the household's appetite (core/appetite.py). In this order:

1. what the household itself has put on a day,
2. what is open or thawed: its clock runs, so it goes even above a ceiling,
3. what falls due within the week,
4. dishes of the household's own that take mostly such food,
5. what must be begun now though others fall due sooner: big piles under a ceiling
   (core/schedule.py),
6. foods behind their pace: each gathers credit at its pace, week by week, and comes when the
   credit makes up a container, so that half a container a week comes every other week.

Containers are whole, as opening one ties it up; from bulk a meal's portion is taken. Which day
each comes on: core/spread.py. Pure.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from math import ceil

from pantry_tui.core.appetite import Appetite
from pantry_tui.core.menu import Candidate, Dish, Menu, Needs, Why, Wishes
from pantry_tui.core.spread import Chosen, Table, spread
from pantry_tui.core.words import Group

_Test = Callable[[Candidate], bool]


def credit(rate: float, size: float, eaten: Iterable[float]) -> float:
    """Servings that a food has coming this week: `rate` a week gathered over the weeks before, of
    which `eaten` gives the servings taken, the oldest first, and this week's.

    Never more than a container and this week's (what was neglected does not come all at once: the
    pace itself rises with it), and never less than one owed.
    """
    saved = 0.0
    for taken in eaten:
        saved = max(-size, min(size, saved + rate - taken))
    return saved + rate


def plan(
    candidates: Sequence[Candidate],
    appetite: Appetite,
    start: date,
    needs: Needs,
    wishes: Wishes | None = None,
    dishes: Sequence[Dish] = (),
    length: int = 7,
) -> Menu:
    """`length` days from `start`. Candidates come in eating order; unfit ones are not among
    them."""
    asked = wishes or Wishes()
    table = Table(appetite, start, asked.out, length)
    week = _Week(table, asked, candidates)
    week.kept()
    week.running()
    week.due()
    week.cook(dishes, needs)
    week.begin(needs)
    week.keep_pace(needs)
    return spread(week.chosen, table)


class _Week:
    """What is chosen, step by step, from what stands in `free`."""

    def __init__(self, table: Table, wishes: Wishes, candidates: Sequence[Candidate]) -> None:
        self.table, self.wishes = table, wishes
        self.appetite = table.appetite
        self.free = [part for one in candidates for part in self._parts(one)]
        self.chosen: list[Chosen] = []
        self.by_group: dict[Group, float] = defaultdict(float)
        self.by_food: dict[str, float] = defaultdict(float)

    def _parts(self, one: Candidate) -> list[Candidate]:
        """Bulk as as many meals as are in it, at most a week's."""
        if one.food in self.wishes.left_out or not self.appetite.eats(one.food, one.group):
            return []
        if not one.bulk:
            return [one]
        meal = float(self.appetite.people)
        meals = min(7, ceil(one.servings / meal))
        return [replace(one, servings=min(meal, one.servings - n * meal)) for n in range(meals)]

    def _choose(self, one: Candidate, why: Why, day: date | None = None, dish: str = "") -> None:
        self.free.remove(one)
        self.chosen.append(Chosen(one, why, day, dish))
        self.by_group[one.group] += one.servings
        self.by_food[one.food] += one.servings

    def _fits(self, one: Candidate) -> bool:
        """Within the ceilings; the first container of a food may be more than its ceiling."""
        factor = self.table.factor
        room = self.appetite.of_group(one.group) * factor - self.by_group[one.group]
        if one.food not in self.by_food:
            return room > 0
        taste = self.appetite.of_food(one.food) * factor - self.by_food[one.food]
        return one.servings <= room and one.servings <= taste

    def kept(self) -> None:
        """What the household put on a day, whatever the ceilings say; of bulk, one meal."""
        for container, day in self.wishes.pins:
            for one in [c for c in self.free if c.container == container][:1]:
                self._choose(one, Why.KEPT, day)

    def running(self) -> None:
        """All that is open or thawed: it would be lost."""
        for one in [c for c in self.free if c.must]:
            self._choose(one, Why.MUST)

    def due(self) -> None:
        """What falls due this week, as far as it fits."""
        for one in list(self.free):
            if one.last is not None and one.last <= self.table.end and self._fits(one):
                self._choose(one, Why.DUE)

    def begin(self, needs: Needs) -> None:
        """What must be begun now, whatever its date."""
        self._gather(needs.begin, Why.BEGIN, {})

    def keep_pace(self, needs: Needs) -> None:
        """Foods behind their pace, as far as their group is: who has waited longest first."""
        self._gather(needs.credit, Why.PACE, needs.group)

    def _gather(self, wanted: Mapping[str, float], why: Why, groups: Mapping[Group, float]) -> None:
        """Of each food the containers nearest to the servings wanted, those first that want the
        most for the size of their containers."""
        left = {food: servings - self.by_food.get(food, 0.0) for food, servings in wanted.items()}
        of: dict[str, list[Candidate]] = defaultdict(list)
        for one in self.free:
            if left.get(one.food, 0.0) > 0:
                of[one.food].append(one)
        for food in sorted(of, key=lambda name: (-left[name] / of[name][0].servings, name)):
            for one in of[food]:
                behind = groups.get(one.group, float("inf")) - self.by_group[one.group]
                if min(left[food], behind) < one.servings / 2 or not self._fits(one):
                    break
                left[food] -= one.servings
                self._choose(one, why)

    # -- dishes ----------------------------------------------------------------------------------

    def cook(self, dishes: Sequence[Dish], needs: Needs) -> None:
        """Dishes asked for, then those that take the most of what should go: at least half of
        what they take, one dish a day, each once."""
        asked = [dish for dish in dishes if dish.name in self.wishes.dishes]
        for dish in asked:
            self._cook(dish, self.wishes.dishes[dish.name])
        rest = [dish for dish in dishes if dish not in asked]
        for dish in sorted(rest, key=lambda one: (-self._worth(one, needs), one.name)):
            if self._worth(dish, needs) >= sum(servings for _, servings in dish.takes) / 2:
                self._cook(dish, None)

    def _worth(self, dish: Dish, needs: Needs) -> float:
        """Servings in it that should go this week anyway."""

        def wanted(food: str) -> float:
            chosen = sum(c.candidate.servings for c in self._loose(food))
            return max(needs.begin.get(food, 0.0), needs.credit.get(food, 0.0), chosen)

        return sum(min(servings, wanted(food)) for food, servings in dish.takes)

    def _loose(self, food: str, day: date | None = None) -> list[Chosen]:
        """What is chosen already, is in no dish, and lies on no day yet or on that one."""
        free = (None, day)
        return [c for c in self.chosen
                if c.candidate.food == food and not c.dish and c.day in free]  # fmt: skip

    def _cook(self, dish: Dish, day: date | None) -> None:
        """Take its containers, those chosen already first. Nothing, if one is lacking or they
        have no day in common."""
        parts: list[Chosen] = []
        for food, need in dish.takes:
            for part in (*self._loose(food, day), *self._fresh(food)):
                if need > 1e-9:
                    parts.append(part)
                    need -= part.candidate.servings
            if need > 1e-9:
                return
        when = self._day_for([part.candidate for part in parts], day)
        for part in parts if when is not None else ():
            if any(part is chosen for chosen in self.chosen):
                part.day, part.dish = when, dish.name
            else:
                self._choose(part.candidate, Why.DISH, when, dish.name)

    def _fresh(self, food: str) -> list[Chosen]:
        return [Chosen(c, Why.DISH) for c in self.free if c.food == food]

    def _day_for(self, parts: Sequence[Candidate], day: date | None) -> date | None:
        """The day asked for, else the first on which all can be eaten and no dish is planned."""
        cooked = {chosen.day for chosen in self.chosen if chosen.dish}
        days = [d for d in self.table.days if all(d in self.table.possible(one) for one in parts)]
        if day is not None:
            return day if day in days else None
        last = min(self.table.latest(one) for one in parts)
        return next((d for d in days if d not in cooked and d <= last), None)
