"""What to eat this week, within the household's appetite (core/plan/appetite.py). In this order:

1. what the household itself has put on a day,
2. what is open or thawed: its clock runs, so it goes even above a ceiling,
3. dishes of the household's own that take mostly what should go,
4. what has the fewest weeks to spare: it falls due, or is so much that it must be begun though
   others fall due sooner; then foods behind their pace (schedule.py, shares.py).

Containers are whole, as opening one ties it up; from bulk a meal's portion is taken. Which day
each comes on: core/plan/days.py. Pure.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from math import ceil

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.days import Chosen, Table, spread
from pantry_tui.core.plan.menu import Candidate, Dish, Menu, Needs, Why, Wishes
from pantry_tui.core.plan.schedule import CALM, Ceilings, Lot, choose
from pantry_tui.core.words import Group

#: Weeks ahead whose days away and guests are looked at.
_KNOWN = 5
#: Days that an opened one is taken to keep where nothing short is published.
_LONG = 30


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
    week = _Week(table, asked, candidates, needs)
    week.kept()
    week.running()
    week.cook(dishes)
    week.fill()
    return spread(week.chosen, table)


class _Week:
    """What is chosen, step by step, from what stands in `free`."""

    def __init__(
        self, table: Table, wishes: Wishes, candidates: Sequence[Candidate], needs: Needs
    ) -> None:
        self.table, self.wishes, self.needs = table, wishes, needs
        self.appetite = table.appetite
        self.free = dict(enumerate(part for one in candidates for part in self._parts(one)))
        self.chosen: list[Chosen] = []

    def _parts(self, one: Candidate) -> list[Candidate]:
        """Bulk as as many meals as are in it."""
        if one.food in self.wishes.left_out or not self.appetite.eats(one.food, one.group):
            return []
        if not one.bulk:
            return [one]
        meal = float(self.appetite.people)
        meals = ceil(one.servings / meal)
        return [replace(one, servings=min(meal, one.servings - n * meal)) for n in range(meals)]

    def _choose(self, number: int, why: Why, day: date | None = None, dish: str = "") -> None:
        self.chosen.append(Chosen(self.free.pop(number), why, day, dish))

    def kept(self) -> None:
        """What the household put on a day, whatever the ceilings say; of bulk, one meal."""
        for container, day in self.wishes.pins:
            for number in [n for n, one in self.free.items() if one.container == container][:1]:
                self._choose(number, Why.KEPT, day)

    def running(self) -> None:
        """All that is open or thawed: it would be lost."""
        for number in [n for n, one in self.free.items() if one.must]:
            self._choose(number, Why.MUST)

    def fill(self) -> None:
        """What should go this week, within the ceilings."""
        for number, spare in self._should_go():
            due = self._due(self.free[number])
            self._choose(number, Why.DUE if due else Why.BEGIN if spare <= CALM else Why.PACE)

    def _due(self, one: Candidate) -> bool:
        return one.last is not None and one.last <= self.table.end

    def _should_go(self) -> list[tuple[int, float]]:
        """What to open next to what is chosen, and the weeks that its food has to spare: first what
        would be lost, as if an open jar that keeps for weeks were not there, then the rest."""
        # What cannot be thawed in the days that are left waits for the next week.
        free = {
            n: one for n, one in self.free.items() if self._due(one) or self.table.possible(one)
        }
        chosen = [one.candidate for one in self.chosen]
        hurry = {n: one for n, one in free.items() if self._due(one)}
        lost = self._fits(hurry, [one for one in chosen if self._due(one) or not one.must])
        first = {number for number, _ in lost}
        rest = {n: one for n, one in free.items() if n not in first}
        return [*lost, *self._fits(rest, [*chosen, *(free[number] for number in first)])]

    def _fits(
        self, free: Mapping[int, Candidate], on_table: Sequence[Candidate]
    ) -> list[tuple[int, float]]:
        """What of `free` has room beside what is on the table."""
        numbers = list(free)
        lots = [self._lot(one) for one in free.values()]
        ceilings = Ceilings(
            {one.food: self.appetite.of_food(one.food) for one in (*free.values(), *on_table)},
            {group: self.appetite.of_group(group) for group in Group},
        )
        coming = [self.table.factor, *self.appetite.coming(self.table.next_week, _KNOWN)]
        already = [self._lot(one) for one in on_table]
        found = choose(lots, ceilings, coming, already, self.needs.shares, self.needs.credits)
        return [(numbers[opening.lot], opening.spare) for opening in found]

    def _lot(self, one: Candidate) -> Lot:
        ahead = None if one.last is None else (one.last - self.table.next_week).days
        last = None if ahead is None else max(0, ahead // 7 + 1)
        days = _LONG if one.open_days is None else one.open_days
        return Lot(one.food, one.group, one.servings, last, days=2 if one.bulk else days)

    # -- dishes ----------------------------------------------------------------------------------

    def cook(self, dishes: Sequence[Dish]) -> None:
        """Dishes asked for, then those that take the most of what should go: at least half of
        what they take, one dish a day, each once."""
        asked = [dish for dish in dishes if dish.name in self.wishes.dishes]
        for dish in asked:
            self._cook(dish, self.wishes.dishes[dish.name])
        rest = [dish for dish in dishes if dish not in asked]
        goes: dict[str, float] = defaultdict(float)
        for one in self._goes_anyway() if rest else ():
            goes[one.food] += one.servings

        def worth(dish: Dish) -> float:
            return sum(min(servings, goes[food]) for food, servings in dish.takes)

        for dish in sorted(rest, key=lambda one: (-worth(one), one.name)):
            if worth(dish) >= sum(servings for _, servings in dish.takes) / 2:
                self._cook(dish, None)

    def _goes_anyway(self) -> list[Candidate]:
        """What goes this week with no dish that takes it."""
        free = [self.free[number] for number, _ in self._should_go()]
        return [*(chosen.candidate for chosen in self.chosen), *free]

    def _loose(self, food: str, day: date | None = None) -> list[Chosen]:
        """What is chosen already, is in no dish, and lies on no day yet or on that one."""
        free = (None, day)
        return [c for c in self.chosen if c.candidate.food == food and not c.dish and c.day in free]

    def _cook(self, dish: Dish, day: date | None) -> None:
        """Take its containers, those chosen already first. Nothing, if one is lacking or they
        have no day in common."""
        loose: list[Chosen] = []
        fresh: list[int] = []
        for food, wanted in dish.takes:
            need = wanted
            for part in self._loose(food, day):
                if need > 1e-9:
                    loose.append(part)
                    need -= part.candidate.servings
            for number in [n for n, one in self.free.items() if one.food == food]:
                if need > 1e-9:
                    fresh.append(number)
                    need -= self.free[number].servings
            if need > 1e-9:
                return
        parts = [*(part.candidate for part in loose), *(self.free[n] for n in fresh)]
        when = self._day_for(parts, day)
        if when is None:
            return
        for part in loose:
            part.day, part.dish = when, dish.name
        for number in fresh:
            self._choose(number, Why.DISH, when, dish.name)

    def _day_for(self, parts: Sequence[Candidate], day: date | None) -> date | None:
        """The day asked for, else the first on which all can be eaten and no dish is planned."""
        cooked = {chosen.day for chosen in self.chosen if chosen.dish}
        days = [d for d in self.table.days if all(d in self.table.possible(one) for one in parts)]
        if day is not None:
            return day if day in days else None
        last = min(self.table.latest(one) for one in parts)
        return next((d for d in days if d not in cooked and d <= last), None)
