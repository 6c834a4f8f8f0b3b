"""How many servings are lost: `python -m tests.benchmarks.plan` (with a number: so many
development households, seeds 0, 1, 2 ..., on which the planner's few numbers were chosen).

(a) a household that eats what falls due within four weeks, and otherwise what it likes; (b) strict
earliest date first; (c) ours (core/plan/week.py, the whole of the week's plan); (d) a
linear-programming bound with perfect hindsight, for which containers may be divided at will and
every crop and guest is known years ahead. Thirty households, three years each, seeds fixed and
used for nothing but this table. All play by the same rules (household.py).
"""

from __future__ import annotations

import sys
from collections import defaultdict
from collections.abc import Iterable
from datetime import timedelta

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.shares import Harvest, needs
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group
from tests.benchmarks.catalogue import START
from tests.benchmarks.household import (
    CEILING,
    WEEKS,
    House,
    Jar,
    Opened,
    Outcome,
    Policy,
    household,
    simulate,
)

SEEDS = range(3000, 3030)


def reacting(house: House, week: int, stock: list[Jar], _opened: list[Opened]) -> list[Jar]:
    """What falls due within four weeks, then what it likes, the jar that stands in front: the one
    that was put there last."""
    due = sorted((jar for jar in stock if jar.last - week <= 4), key=lambda jar: jar.last)
    fancy = {food.name: house.random.random() ** (1 / food.liked) for food in house.foods}
    rest = [jar for jar in stock if jar.last - week > 4]
    rest.sort(key=lambda jar: (-fancy[jar.food.name], -jar.made))
    return [*due, *rest]


def earliest(_house: House, _week: int, stock: list[Jar], _opened: list[Opened]) -> list[Jar]:
    """Strictly the earliest date first."""
    return sorted(stock, key=lambda jar: (jar.last, jar.made))


def ours(house: House, week: int, stock: list[Jar], opened: list[Opened]) -> list[Jar]:
    """The week as the program plans it (core/plan/week.py), days away and guests as announced."""
    start = START + timedelta(weeks=week)
    jars = {str(n): jar for n, jar in enumerate(stock)}
    candidates = [
        Candidate(
            name,
            jar.food.name,
            Group(jar.food.group),
            jar.food.size,
            START + timedelta(weeks=jar.last, days=6),
            open_days=jar.food.opened,
        )
        for name, jar in sorted(jars.items(), key=lambda pair: (pair[1].last, pair[1].made))
    ]
    candidates += [
        Candidate(
            f"open {n}",
            one.food.name,
            Group(one.food.group),
            one.rest,
            START + timedelta(weeks=one.until, days=6),
            must=True,
        )
        for n, one in enumerate(opened)
        if one.rest > 0
    ]
    table = {
        start + timedelta(weeks=ahead, days=day): number
        for ahead, factor in enumerate(house.calendar(week))
        for day, number in enumerate(_seats(house.people, factor))
    }
    appetite = Appetite(
        house.people, {group.value: most for group, most in CEILING.items()}, table=table
    )
    harvests = {
        food.name: START + timedelta(weeks=min((w for w in food.weeks if w > week), default=WEEKS))
        for food in house.foods
    }
    since = {food.name: week for food in house.foods}
    for jar in stock:
        since[jar.food.name] = min(since[jar.food.name], jar.made)
    eaten = {
        food.name: [log.get(food.name, 0.0) for log in house.log[max(0, since[food.name]) :][-12:]]
        for food in house.foods
    }
    wanted = needs(candidates, appetite, start, harvests, eaten, _expected(house, week))
    menu = plan(candidates, appetite, start, wanted)
    return [jars[name] for name in menu.order if name in jars]


def _seats(people: int, factor: float) -> list[int]:
    """How many sit at the table on each day of a week of which so much is eaten."""
    meals = round(7 * people * factor)
    return [meals * (day + 1) // 7 - meals * day // 7 for day in range(7)]


def _expected(house: House, week: int) -> list[Harvest]:
    """What is usually put up in the next year, as much as was meant."""
    return [
        Harvest(food.group, when - week, food.meant)
        for food in house.foods
        for when in food.weeks
        if week < when <= week + 52
    ]


def bound(house: House) -> float:
    """Servings that must be lost even with perfect hindsight: a linear programme."""
    import numpy as np
    from scipy.optimize import linprog
    from scipy.sparse import coo_matrix

    lots: dict[tuple[str, int, int], float] = defaultdict(float)
    groups = {food.name: food.group for food in house.foods}
    rooms = [house.room(week) for week in range(WEEKS)]
    for jar in house.jars:
        if jar.made < WEEKS:
            lots[jar.food.name, jar.made, jar.last] += jar.food.size
    rows: list[int] = []
    columns: list[int] = []
    limits: list[float] = []
    index: dict[tuple[str, str, int], int] = {}

    def row(key: tuple[str, str, int], limit: float) -> int:
        if key not in index:
            index[key] = len(limits)
            limits.append(limit)
        return index[key]

    worth: list[float] = []
    due = 0.0
    for number, ((name, made, last), servings) in enumerate(sorted(lots.items())):
        counts = last < WEEKS
        due += servings if counts else 0.0
        for week in range(made, min(last + 1, WEEKS)):
            column = len(worth)
            worth.append(-1.0 if counts else 0.0)
            for key, limit in (
                (("lot", "", number), servings),
                (("food", name, week), rooms[week].food[name]),
                (("group", groups[name], week), rooms[week].group[groups[name]]),
            ):
                rows.append(row(key, limit))
                columns.append(column)
    matrix = coo_matrix((np.ones(len(rows)), (rows, columns)), shape=(len(limits), len(worth)))
    found = linprog(worth, A_ub=matrix.tocsr(), b_ub=limits, method="highs")
    return due + float(found.fun)


def run(seeds: Iterable[int]) -> dict[str, Outcome]:
    """All policies over all households, summed; (d) holds the bound in `lost`."""
    total = {name: Outcome() for name in ("a", "b", "c", "d")}
    for seed in seeds:
        policies: dict[str, Policy] = {"a": reacting, "b": earliest, "c": ours}
        for name, policy in policies.items():
            one = simulate(household(seed), policy)
            total[name].lost += one.lost
            total[name].eaten += one.eaten
            total[name].short += one.short
            total[name].foods += one.foods
        total["d"].lost += bound(household(seed))
    return total


def table(total: dict[str, Outcome], weeks: int) -> str:
    """A line a policy, with the ratios of ours."""
    lines = ["policy                         lost   of ours  short weeks  foods a week"]
    words = {
        "a": "reacts to four weeks",
        "b": "earliest date first",
        "c": "ours",
        "d": "hindsight bound",
    }
    ours = total["c"].lost
    for name, one in total.items():
        rest = "" if name == "d" else f"{one.short:>11}  {one.foods / weeks:>12.2f}"
        lines.append(
            f"({name}) {words[name]:<22} {one.lost:>8.0f}   {ours / one.lost:>6.2f}  {rest}"
        )
    return "\n".join(lines)


if __name__ == "__main__":
    seeds = range(int(sys.argv[1])) if len(sys.argv) > 1 else SEEDS
    print(table(run(seeds), WEEKS * len(seeds)))
