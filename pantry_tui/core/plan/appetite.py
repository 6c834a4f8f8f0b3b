"""What a household eats of its stores in a week, at most, and how many sit at the table on a day.

Defaults for fruit, vegetables, meat, soups and relishes follow the frequencies of two extension
planning charts; what the household says itself goes first, then what its log shows.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from math import inf

from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.plan.roles import A_HEAD
from pantry_tui.core.plan.room import Ceilings
from pantry_tui.core.words import Group, Role

#: Servings a person a week. One-year canned-food supply on the USDA Daily Food Guide basis (from a
#: reprint): 28 of fruit and vegetables together, here halved between them; 4 of meat,
#: poultry and seafood; 2 of soup. Annual Preserving Plan (reprint): 2 of jelly, 2 of preserves and
#: 1 of pickles, together 5 of relish. The rest: common practice, no source.
CEILING = {
    Group.VEGETABLE: 14.0, Group.FRUIT: 14.0, Group.MEAT: 4.0, Group.MEAL: 2.0, Group.RELISH: 5.0,
    Group.FISH: 2.0, Group.EGG: 4.0, Group.DAIRY: 4.0, Group.GRAIN: 7.0, Group.HERB: 2.0,
    Group.DRINK: 3.0, Group.FAT: 3.0, Group.NUT: 3.0, Group.SWEET: 3.0,
}  # fmt: skip
CHARTED = frozenset({Group.VEGETABLE, Group.FRUIT, Group.MEAT, Group.MEAL, Group.RELISH})

#: And of one food, so that the week is not five jars of beans: the highest frequency of any one
#: food in the Annual Preserving Plan (tomatoes, 4 servings a week) is above it; most have 2 or 3.
FOOD_CEILING = 3.0
#: But what a kitchen lives on may be on the table once a day: common practice, no source.
STAPLE_CEILING = 7.0
STAPLES = frozenset(
    {
        "potatoes", "sweet potatoes", "yams", "cassava", "taro", "plantains", "breadfruit", "rice",
        "brown rice", "pasta", "noodles", "egg noodles", "bread", "pita bread", "oats", "polenta",
        "couscous", "bulgur", "millet", "barley", "quinoa",
    }
)  # fmt: skip

#: Main meals a week that are cooked from the stores.
MEALS = 7

_A_YEAR = 365

#: So many weeks in which a food was eaten must be there before anything is learned of it.
LEARNED_AFTER = 8


#: A food, its group, and servings of it.
Servings = tuple[str, Group, float]


@dataclass(frozen=True, slots=True)
class Appetite:
    """Ceilings in servings a person a week: the household's own words (`groups`, `foods`; 0 is
    never eaten), then what the log shows (`learned`, by group or food), then the charts.

    `meals` are main meals a week from the stores. `table` holds the days on which another number
    sits at the table: 0 on days away, more with guests.
    """

    people: int
    groups: Mapping[str, float] = field(default_factory=dict)
    foods: Mapping[str, float] = field(default_factory=dict)
    learned: Mapping[str, float] = field(default_factory=dict)
    meals: int = MEALS
    table: Mapping[date, int] = field(default_factory=dict)

    def group_ceiling(self, group: Group) -> float:
        """Servings a person a week."""
        own = self.groups.get(group.value, self.learned.get(group.value))
        return CEILING[group] * self.meals / MEALS if own is None else own

    def food_ceiling(self, food: str) -> float:
        """Servings a person a week."""
        own = self.foods.get(food, self.learned.get(food))
        return usual_ceiling(food) if own is None else own

    def of_group(self, group: Group) -> float:
        """Servings a usual week, for the whole household."""
        return self.group_ceiling(group) * self.people

    def of_food(self, food: str) -> float:
        """Servings a usual week, for the whole household."""
        return self.food_ceiling(food) * self.people

    def room(self, food: str, group: Group, role: Role) -> float:
        """Servings of it that a usual week has room for: its own ceiling, that of its group, and
        what is eaten of its kind at table. The week (schedule.py) and the outlook heed the same."""
        of_role = A_HEAD[role] * self.meals_a_week if role in A_HEAD else inf
        return min(self.of_food(food), self.of_group(group), of_role)

    @property
    def meals_a_week(self) -> float:
        """Meals that are eaten in a usual week, one a head."""
        return float(self.people * self.meals)

    def eats(self, food: str, group: Group) -> bool:
        return self.food_ceiling(food) > 0 and self.group_ceiling(group) > 0

    def said(self, food: str, group: Group) -> bool:
        """Whether the household itself said how much of it it eats."""
        return food in self.foods or group in self.groups

    def said_enough(self, one: Servings, laid: Sequence[Servings], factor: float) -> bool:
        """Whether half of `one` is more than the household itself said that it eats of that food or
        group, beside what is `laid`, where it eats `factor` times as much as usual."""
        food, group, servings = one
        said = (
            (food in self.foods, self.of_food(food), lambda c: c[0] == food),
            (group in self.groups, self.of_group(group), lambda c: c[1] is group),
        )
        return any(
            told and sum(c[2] for c in laid if same(c)) + servings / 2 > most * factor
            for told, most, same in said
        )

    def sit(self, day: date) -> int:
        """How many eat on that day."""
        return self.table.get(day, self.people)

    def takes_out(self, day: date, days: int) -> bool:
        """Whether somebody is there to move to the fridge what takes so many days to thaw for that
        day; of what need not thaw, always."""
        return not days or self.sit(day - timedelta(days=days)) > 0

    def thaws_by(self, start: date, days: int) -> date:
        """The first day on which what takes so many days to thaw is thawed: somebody who is there
        moves it to the fridge. With nobody there for a year, that year on."""
        there = (day for day in days_from(start, _A_YEAR) if self.sit(day) > 0)
        return next(there, start + timedelta(days=_A_YEAR)) + timedelta(days=days)

    def ceilings(self, foods: Iterable[str]) -> Ceilings:
        """Servings of each food, group and role that a usual week has room for."""
        return Ceilings(
            {food: self.of_food(food) for food in set(foods)},
            {group: self.of_group(group) for group in Group},
            {role: a_head * self.meals_a_week for role, a_head in A_HEAD.items()},
        )

    def factor(self, start: date, length: int = 7) -> float:
        """How much is eaten in the days from `start`, against a usual week."""
        return sum(self.sit(day) for day in days_from(start, length)) / (7 * self.people)

    def coming(self, start: date, weeks: int) -> list[float]:
        """`factor` of that many weeks from `start` on."""
        return [self.factor(start + timedelta(days=7 * week)) for week in range(weeks)]


def usual_ceiling(food: str) -> float:
    """Servings of one food a person a week, before anybody says or the log shows otherwise."""
    return STAPLE_CEILING if food in STAPLES else FOOD_CEILING


def full_week(eaten: Sequence[float]) -> float | None:
    """Servings of a full week: the upper quartile of the weeks in which any was eaten; None before
    there are eight of them. A week without says nothing: perhaps none was offered."""
    weeks = sorted((servings for servings in eaten if servings > 0), reverse=True)
    return weeks[len(weeks) // 4] if len(weeks) >= LEARNED_AFTER else None


def days_from(start: date, length: int = 7) -> Iterable[date]:
    """That many days, the first is `start`."""
    return (start + timedelta(days=number) for number in range(length))


def at_table(people: int) -> str:
    """ "6 at the table", "nobody at home"."""
    return f"{people} at the table" if people else "nobody at home"
