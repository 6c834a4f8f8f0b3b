"""A dish of the household's own out of what is chosen for the week and what stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from pantry_tui.core.plan.days import Chosen, Table
from pantry_tui.core.plan.menu import Candidate, Dish
from pantry_tui.core.plan.pace import CRUMB

#: What a dish takes: of what is chosen, of what stands by its number, and its day.
_Taken = tuple[list[Chosen], list[int], date]


class Kitchen(NamedTuple):
    """What a dish may be cooked of: what is chosen for the week already, what stands besides by its
    number, and the days."""

    chosen: Sequence[Chosen]
    free: Mapping[int, Candidate]
    table: Table

    def takes(self, dish: Dish, day: date | None) -> _Taken | None:
        """What the dish takes, and its day: the one asked for, else the first with no dish in time;
        for guests so much more of everything, or, where that does not stand, as much as on a usual
        day. None where something is lacking, or where its parts have no day in common."""
        found = self._gathered(dish.takes, day)
        if found is None:
            return None
        heads, usual = self.table.appetite.sit(found[2]), self.table.appetite.people
        if heads <= usual:
            return found
        more = tuple((food, much * heads / usual) for food, much in dish.takes)
        return self._gathered(more, found[2]) or found

    def _gathered(self, takes: Iterable[tuple[str, float]], day: date | None) -> _Taken | None:
        """So much of each food: of what is chosen and lies on no other day nor in a dish, then of
        what stands."""
        loose: list[Chosen] = []
        fresh: list[int] = []
        for food, wanted in takes:
            need = wanted
            for part in self._loose(food, day):
                if need > CRUMB:
                    loose.append(part)
                    need -= part.candidate.servings
            for number in [n for n, one in self.free.items() if one.food == food]:
                if need > CRUMB and self.free[number].may_open:
                    fresh.append(number)
                    need -= self.free[number].servings
            if need > CRUMB:
                return None
        parts = [*(part.candidate for part in loose), *(self.free[number] for number in fresh)]
        when = self._day_for(parts, day)
        return None if when is None else (loose, fresh, when)

    def _loose(self, food: str, day: date | None) -> list[Chosen]:
        """What is chosen already, is in no dish, and lies on no day yet or on that one."""
        mine = (one for one in self.chosen if one.candidate.food == food and not one.dish)
        return [one for one in mine if one.day in (None, day)]

    def _day_for(self, parts: Sequence[Candidate], day: date | None) -> date | None:
        """The day asked for, else the first on which all can be eaten and no dish is planned."""
        cooked = {one.day for one in self.chosen if one.dish}
        table = self.table
        days = [d for d in table.days if all(d in table.possible(one) for one in parts)]
        if day is not None:
            return day if day in days else None
        last = min(table.latest(one) for one in parts)
        return next((d for d in days if d not in cooked and d <= last), None)


def worth_cooking(dishes: Iterable[Dish], goes: Mapping[str, float]) -> Iterator[Dish]:
    """Those that take the most of what `goes` this week (servings by food): at least half of what
    they take."""

    def worth(dish: Dish) -> float:
        return sum(min(servings, goes.get(food, 0.0)) for food, servings in dish.takes)

    for dish in sorted(dishes, key=lambda one: (-worth(one), one.name)):
        if worth(dish) >= sum(servings for _, servings in dish.takes) / 2:
            yield dish
