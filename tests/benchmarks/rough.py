"""The rough world: households unlike the charts, on which the planner's numbers were not chosen.

One to six people; crops that fail or double; meat put up one to four times a year in any week; two
in five absences and guests that nobody announced; meals out; one food in eight that nobody wants
this week, unless it falls due; bookings forgotten; an appetite drawn without a look at the planning
charts. The numbers are choices, no source; each is named where it stands.
"""

from __future__ import annotations

import random
from math import log
from typing import NamedTuple

from tests.benchmarks.world import WEEKS, YEARS, Food, House, Jar


class _Kind(NamedTuple):
    """Weeks that it keeps, at least and at most; days once open; taken by the meal or not."""

    least: int
    most: int
    opened: int
    bulk: bool = False


class _Group(NamedTuple):
    """Servings a person wants a week; how many foods, at least and at most; of which kinds, as
    often as each is named."""

    wanted: float
    least: int
    most: int
    kinds: tuple[str, ...]


_KINDS = {
    "can": _Kind(52, 60, 4),
    "jam": _Kind(52, 52, 30),
    "pickle": _Kind(50, 54, 45),
    "frozen vegetable": _Kind(30, 36, 3),
    "frozen fruit": _Kind(30, 52, 4),
    "frozen meat": _Kind(16, 48, 2),
    "minced": _Kind(10, 16, 1),
    "frozen meal": _Kind(9, 13, 3),
    "frozen fish": _Kind(9, 26, 1),
    "cellar": _Kind(6, 26, 2, bulk=True),
    "dried": _Kind(26, 52, 2, bulk=True),
    "ferment": _Kind(16, 26, 30),
}
_GROUPS = {
    "vegetable": _Group(
        8.0, 4, 10,
        ("can", "can", "frozen vegetable", "frozen vegetable", "cellar", "cellar", "dried",
         "ferment"),
    ),
    "fruit": _Group(5.0, 2, 7, ("can", "can", "frozen fruit", "cellar", "dried")),
    "meat": _Group(4.0, 1, 4, ("frozen meat", "frozen meat", "minced", "can")),
    "fish": _Group(1.2, 0, 2, ("frozen fish",)),
    "meal": _Group(1.5, 0, 3, ("frozen meal", "can")),
    "relish": _Group(2.5, 2, 6, ("jam", "jam", "pickle", "pickle")),
}  # fmt: skip
_HARVESTED = ("vegetable", "fruit", "relish")


def rough(seed: int) -> House:
    """One household with three years of crops, guests and whims."""
    rng = random.Random(seed)
    people = rng.choice((1, 2, 2, 3, 4, 5, 6))
    load = rng.uniform(0.4, 1.2)  # what is put up against what could be eaten
    wanted = {
        name: group.wanted * people * rng.lognormvariate(0, 0.3) for name, group in _GROUPS.items()
    }
    luck = [rng.lognormvariate(0, 0.2) for _ in range(YEARS)]
    foods: list[Food] = []
    jars: list[Jar] = []
    for name, group in _GROUPS.items():
        weights = [rng.lognormvariate(0, 0.6) for _ in range(rng.randint(group.least, group.most))]
        for number, weight in enumerate(weights):
            a_year = load * wanted[name] * 52 * weight / sum(weights)
            food = _food(f"{name} {number}", name, a_year, people, rng)
            foods.append(food)
            jars += _put_up(food, luck, rng)
    here = {food.group for food in foods}
    announced, factors = _calendar(rng)
    refused = [frozenset(food.name for food in foods if rng.random() < 0.12) for _ in range(WEEKS)]
    return House(
        people,
        foods,
        jars,
        {name: most for name, most in wanted.items() if name in here},
        factors,
        announced,
        refused,
        rng.uniform(0, 0.15),
        seed,
    )


def _food(name: str, group: str, a_year: float, people: int, rng: random.Random) -> Food:
    kind = _KINDS[named := rng.choice(_GROUPS[group].kinds)]
    life = rng.randint(kind.least, kind.most)
    size = float(people if kind.bulk else rng.choice((2, 4, 4, 8) if people <= 3 else (4, 4, 8, 8)))
    if group == "relish":
        size *= 2
    most = rng.lognormvariate(log(2.5), 0.25) * people * (1.7 if named == "cellar" else 1.0)
    a_year = min(a_year, 1.2 * most * life)
    if group in _HARVESTED:
        week = rng.randint(8, 16) if rng.random() < 0.5 else rng.randint(22, 34)
        weeks = [week + 52 * year for year in range(YEARS)]
    else:
        times = rng.randint(1, 4)
        weeks = sorted(rng.randrange(52) + 52 * year for year in range(YEARS) for _ in range(times))
    meant = a_year * YEARS / len(weeks)
    liked = rng.lognormvariate(0, 0.7)
    return Food(name, group, life, kind.opened, size, tuple(weeks), meant, most, liked)


def _put_up(food: Food, luck: list[float], rng: random.Random) -> list[Jar]:
    found = []
    for week in food.weeks:
        first, over, crop = week, 1, rng.lognormvariate(-0.03, 0.25)
        if food.group in _HARVESTED:
            first, over = max(0, week + rng.randint(-3, 3)), rng.randint(1, 4)
            crop = _crop(rng) * luck[week // 52]
        number = round(food.meant * crop / food.size)
        for index in range(number):
            made = first + index * over // number
            found.append(Jar(food, made, made + food.life - 1))
    return found


def _crop(rng: random.Random) -> float:
    """A crop against the usual one: it fails (8 in 100), doubles (7 in 100), or is as it is."""
    chance = rng.random()
    return 0.0 if chance < 0.08 else 2.2 if chance < 0.15 else rng.lognormvariate(-0.08, 0.4)


def _calendar(rng: random.Random) -> tuple[list[float], list[float]]:
    """What is announced, and how the weeks turn out: away 5 in 100, guests 8 in 100, two in five of
    either unannounced; one meal in ten eaten out; a week more or less hungry."""
    announced, factors = [], []
    for _ in range(WEEKS):
        by = rng.choices((0.0, 1.5, 1.0), (5, 8, 87))[0]
        announced.append(by if rng.random() < 0.6 else 1.0)
        at_home = sum(rng.random() >= 0.1 for _ in range(7)) / 7
        factors.append(by * at_home * max(0.3, rng.gauss(1, 0.2)))
    return announced, factors
