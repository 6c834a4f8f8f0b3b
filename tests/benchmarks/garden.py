"""The first world: made-up households with a garden.

What a household keeps is drawn from a catalogue (catalogue.py), everything else from a seed. Each
choice stands here with its reason.

* Foods, their groups, months of harvest and servings a pint come from data/foods.csv; how long a
  container keeps, sealed and after opening, is what the program itself says of a fresh one in its
  usual climate (core.limits.judge). The methods and climates are those that such a household
  uses for that food. So most jars keep a year, freezer bags eight months, roots in the cellar
  five weeks to five months, minced meat and cooked meals in the freezer two.
* Servings a person means to eat of a food in a week: from a planning chart (the "annual
  preserving plan" that extension services reprint: beans 2, peas 1, apples 2, cherries two in
  three weeks, soups 2 ...) where it has the food; elsewhere common practice, no source.
* At the table sit 2 to 5 people, who eat so many servings of a group a person a week at most, and
  so many of one food (CEILING, FOOD_CEILING). Foods are drawn until what is to be
  put up of a group in a year comes to what the household means to eat of it in a year: between
  three quarters and all of the most it could. It reckons by the year, as the charts do, so that
  autumn has more on the shelves than it can eat and spring less.
* Put up is what a planning chart would say: servings a week x weeks x people, where the weeks run
  to the next harvest or, where it does not keep so long, to its date. Gardeners sow for that, and
  crops turn out as they will: half as much again or two thirds, on the average as planned, a good
  year being good for many foods at once (spread 0.35 a food and 0.15 a year, in logarithms;
  gardens vary so, common practice, no source).
* A crop for the cellar is laid in from October on: late sorts keep, early ones do not. Another
  crop comes in its month, up to three weeks later, in pickings over two to five weeks, which
  is why a batch has many dates. Meat, fish and cooked meals have no harvest: they are put up
  again when the last lot is to be gone, at least twice a year. These, and relishes, come in the
  amounts that are meant (spread 0.15): nobody boils more jam because the bed bore well.
* Jars are those of the trade: the smallest that serves the table once, or as often the next one
  up, where the table can finish it in a week. The freezer is packed as extension services
  advise, in amounts for one meal. What is kept loose (roots in sand, apples on trays, dried
  food) is taken out a meal at a time, too.
* Weeks differ: a whole week away now and then (6 in 100), guests (10 in 100, half as much again),
  and otherwise up to 15 in 100 more or less, which nobody can foresee. Days away and guests are
  in the household's calendar four weeks ahead; a policy may look at it.
* It starts on the first of April with empty stores, before the first harvest.
* Of its bookings it forgets 0 to 15 in 100.
"""

from __future__ import annotations

import random

from pantry_tui.core.words import Group
from tests.benchmarks.catalogue import Kind, catalogue
from tests.benchmarks.world import WEEKS, YEARS, Food, House, Jar

#: Servings a person eats of the stores in a week, at most, of a group and of one food: one a day of
#: vegetables and of fruit, four of meat, two of fish. Common practice, no source.
CEILING = {
    Group.VEGETABLE: 7.0, Group.FRUIT: 7.0, Group.MEAT: 4.0, Group.FISH: 2.0, Group.RELISH: 3.0,
    Group.MEAL: 3.0,
}  # fmt: skip
FOOD_CEILING = 3.0
GROUPS = (Group.VEGETABLE, Group.FRUIT, Group.MEAT, Group.FISH, Group.RELISH, Group.MEAL)


def garden(seed: int) -> House:
    """One household with three years of harvests and appetites."""
    rng = random.Random(seed)
    people = rng.randint(2, 5)
    foods = [_food(kind, people, rng) for group in GROUPS for kind in _drawn(group, rng)]
    years = [_spread(0.15, rng) for _ in range(YEARS)]
    jars = [jar for food in foods for jar in _put_up(food, years, rng)]
    announced = [rng.choices((1.0, 0.0, 1.5), (84, 6, 10))[0] for _ in range(WEEKS)]
    factors = [by * rng.uniform(0.85, 1.15) for by in announced]
    most = {group.value: CEILING[group] * people for group in GROUPS}
    forgets = random.Random(seed + 1).uniform(0, 0.15)
    never = [frozenset[str]()] * WEEKS
    return House(people, foods, jars, most, factors, announced, never, forgets, seed)


def _drawn(group: Group, rng: random.Random) -> list[Kind]:
    """Foods of a group, until a year's put-up fills what is meant to be eaten in a year."""
    kinds = [kind for kind in catalogue() if kind.group == group.value]
    rng.shuffle(kinds)
    left = CEILING[group] * rng.uniform(0.75, 1.0)
    found: list[Kind] = []
    for kind in kinds:
        average = kind.share * (min(52, kind.life) / 52 if kind.harvest is not None else 1.0)
        if average <= left:
            found.append(kind)
            left -= average
    return found


def _food(kind: Kind, people: int, rng: random.Random) -> Food:
    every = 52 if kind.harvest is not None else min(26, kind.life)
    start = kind.harvest + rng.randrange(4) if kind.harvest is not None else rng.randrange(every)
    return Food(
        kind.food,
        kind.group,
        kind.life,
        kind.opened,
        size=_size(kind, people, rng),
        weeks=tuple(range(start, WEEKS, every)),
        meant=kind.share * people * min(every, kind.life),
        most=FOOD_CEILING * people,
        liked=rng.lognormvariate(0, 0.7),
    )


def _size(kind: Kind, people: int, rng: random.Random) -> float:
    """The smallest trade size that serves the table once, or the next one if it can be finished
    in time; frozen and loose food by the meal."""
    if kind.by_meal:
        return float(people)
    sizes = [kind.pint * pints for pints in (0.5, 1, 2, 4)]
    first = next(i for i, size in enumerate(sizes) if size >= people)
    bigger = sizes[min(first + 1, 3)]
    fits = bigger <= FOOD_CEILING * people
    return bigger if fits and rng.random() < 0.5 else sizes[first]


def _put_up(food: Food, years: list[float], rng: random.Random) -> list[Jar]:
    """All containers of three years."""
    found: list[Jar] = []
    yearly = len(food.weeks) <= YEARS
    for week in food.weeks:
        pickings = rng.randint(2, 5) if yearly else 1
        first = max(0, week + rng.randint(-1, 1)) if yearly else week
        crop = years[week // 52] * _spread(0.35, rng)
        if not yearly or food.group == Group.RELISH:
            crop = _spread(0.15, rng)
        number = round(food.meant * crop / food.size)
        for index in range(number):
            made = first + index * pickings // number
            found.append(Jar(food, made, made + food.life - 1))
    return found


def _spread(by: float, rng: random.Random) -> float:
    """A factor that is 1 on the average and lies so far apart in logarithms."""
    return rng.lognormvariate(-by * by / 2, by)
