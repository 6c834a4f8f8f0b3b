"""Made-up households: what they put up, how much they eat, and a plain week by week simulation.

Everything is drawn from a seed. A household has foods in five groups; each comes once a year in
its own week, in a quantity that varies from year to year, in containers of its own size, and
keeps as long as its method lets it. Appetite has a ceiling for each group and each food, which
varies with guests and days away.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field

YEARS = 3
WEEKS = 52 * YEARS
#: Weeks that the methods keep, as in the tables: canned, frozen, dried, cellar, ferment, pickle.
LIVES = {
    "vegetable": (52, 35, 26, 17, 12, 9),
    "fruit": (52, 52, 35, 26, 9),
    "meat": (52, 26, 17, 13, 9),
    "meal": (52, 13, 9),
    "relish": (52, 52, 17, 9),
}
FOODS = {"vegetable": 9, "fruit": 7, "meat": 4, "meal": 3, "relish": 3}
#: Gardens give more than is meant: a tenth too much, on the whole.
OVERFLOW = 1.1
#: More of one food in a week than so many times its share, and the table is tired of it.
TIRED = 3.0
#: Servings a person eats of a group from the stores in a week.
APPETITE = {"vegetable": 7.0, "fruit": 5.0, "meat": 3.0, "meal": 2.0, "relish": 2.0}


@dataclass(frozen=True, slots=True)
class Food:
    name: str
    group: str
    share: float  # servings a week it is meant to give
    life: int
    harvest: int  # week of the year
    size: float  # servings a container
    liked: float


@dataclass(slots=True)
class Jar:
    food: Food
    made: int
    last: int


@dataclass(frozen=True, slots=True)
class Week:
    """What may be eaten in a week: the ceilings as they turned out."""

    food: dict[str, float]
    group: dict[str, float]


@dataclass(slots=True)
class House:
    foods: list[Food]
    jars: list[Jar]
    weeks: list[Week]
    usual: Week
    random: random.Random = field(default_factory=random.Random)


def household(seed: int) -> House:
    """One household with three years of harvests and appetites."""
    rng = random.Random(seed)
    people = rng.randint(2, 5)
    foods: list[Food] = []
    for group, number in FOODS.items():
        weights = [rng.lognormvariate(0, 0.5) for _ in range(number)]
        for i, weight in enumerate(weights):
            share = APPETITE[group] * people * weight / sum(weights)
            foods.append(
                Food(
                    f"{group} {i}", group, share, rng.choice(LIVES[group]), rng.randrange(52),
                    float(rng.choice((4, 4, 8))), rng.lognormvariate(0, 0.7),
                )
            )  # fmt: skip
    usual = Week(
        {food.name: max(food.share * TIRED, food.size / 2) for food in foods},
        {group: APPETITE[group] * people for group in FOODS},
    )
    jars = [jar for food in foods for jar in _harvests(food, rng)]
    weeks = [_scaled(usual, _factor(rng)) for _ in range(WEEKS)]
    return House(foods, jars, weeks, usual, random.Random(seed + 1))


def covered(food: Food) -> float:
    """Weeks that a crop is meant for: to the next one, or somewhat longer than it keeps."""
    return min(52.0, food.life * 1.2) * OVERFLOW


def _harvests(food: Food, rng: random.Random) -> list[Jar]:
    """A crop a year, as much as it is meant to give in its life, half more or half less."""
    found: list[Jar] = []
    for year in range(YEARS):
        week = year * 52 + food.harvest
        servings = food.share * covered(food) * rng.lognormvariate(0, 0.5)
        for _ in range(round(servings / food.size)):
            made = week + rng.randrange(3)
            found.append(Jar(food, made, made + food.life))
    return found


def _factor(rng: random.Random) -> float:
    """Days away, guests, or a week like any other."""
    dice = rng.random()
    if dice < 0.06:
        return 0.0
    return 1.5 if dice < 0.16 else rng.uniform(0.85, 1.15)


def _scaled(usual: Week, by: float) -> Week:
    return Week(
        {name: most * by for name, most in usual.food.items()},
        {name: most * by for name, most in usual.group.items()},
    )


@dataclass(slots=True)
class Outcome:
    """Servings lost and eaten; weeks in which a group gave less than half of what was wanted;
    distinct foods eaten, summed over the weeks."""

    lost: float = 0.0
    eaten: float = 0.0
    short: int = 0
    foods: int = 0


#: A policy sees the house, the week, the jars that stand and this week's ceilings, and returns
#: the jars in the order in which it would open them.
Policy = Callable[[House, int, list[Jar], Week], list[Jar]]


def simulate(house: House, policy: Policy) -> Outcome:
    """Three years. An opened container is finished this week or next, or its rest is lost."""
    outcome = Outcome()
    stock: list[Jar] = []
    opened: dict[str, float] = {}
    groups = {food.name: food.group for food in house.foods}
    arriving: dict[int, list[Jar]] = defaultdict(list)
    for jar in house.jars:
        arriving[jar.made].append(jar)
    for week in range(WEEKS):
        stock += arriving[week]
        room = Week(dict(house.weeks[week].food), dict(house.weeks[week].group))
        eaten: dict[str, float] = defaultdict(float)

        def eat(
            name: str, servings: float, room: Week = room, eaten: dict[str, float] = eaten
        ) -> float:
            taken = min(servings, room.food[name], room.group[groups[name]])
            room.food[name] -= taken
            room.group[groups[name]] -= taken
            eaten[name] += taken
            return taken

        for name, left in opened.items():
            outcome.lost += left - eat(name, left)
        opened = {}
        for jar in policy(house, week, stock, room):
            food = jar.food
            free = min(room.food[food.name], room.group[food.group])
            if free < food.size / 2 or food.name in opened:
                continue
            stock.remove(jar)
            rest = food.size - eat(food.name, food.size)
            if rest > 1e-9:
                opened[food.name] = rest
        outcome.eaten += sum(eaten.values())
        outcome.foods += sum(servings > 0 for servings in eaten.values())
        outcome.short += _short(house.weeks[week], eaten, groups)
        outcome.lost += sum(jar.food.size for jar in stock if jar.last <= week)
        stock = [jar for jar in stock if jar.last > week]
    return outcome


def _short(week: Week, eaten: dict[str, float], groups: dict[str, str]) -> int:
    given: dict[str, float] = defaultdict(float)
    for name, servings in eaten.items():
        given[groups[name]] += servings
    return sum(given[group] < wanted / 2 for group, wanted in week.group.items() if wanted > 0)
