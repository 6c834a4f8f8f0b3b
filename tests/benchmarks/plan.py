"""How much is lost, and how the weeks look: `python -m tests.benchmarks.plan [HOUSEHOLDS [WORLD]]`.

Two worlds of made-up households, three years each (garden.py, rough.py), all under the same rules
(world.py): the plan is followed and topped up by what the table still wants, from the list in its
order; appetite is learned from the books as the program learns it, and bookings are forgotten.

(a) eats what falls due within four weeks, otherwise what it likes; (b) strict earliest date first;
(c) the food with the fewest weeks to spare, one line; (d) plain pace; (e) ours, the whole of the
week's plan (core/plan/week.py); (f) ours, told the true appetite; (g) a linear-programming bound
with perfect hindsight, for which containers may be divided at will; (h) what (c) would lose if they
could be, so that it is seen how much of the way to (g) lies in whole jars. Losses and empty weeks
stand side by side: each alone can be bought with the other. The seeds of the table are used for
nothing else; with a number, so many development households (seeds 0, 1, 2 ...).
"""

from __future__ import annotations

import random
import sys
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, fields, replace

from tests.benchmarks import policies
from tests.benchmarks.garden import garden
from tests.benchmarks.rough import rough
from tests.benchmarks.world import WEEKS, House, Jar, Policy, Told, live

SEEDS = range(5000, 5030)
WORLDS: dict[str, Callable[[int], House]] = {"first": garden, "rough": rough}
POLICIES: dict[str, Policy] = {
    "(a) reacts to four weeks": policies.reacting,
    "(b) earliest date first": policies.earliest,
    "(c) fewest weeks to spare": policies.slack,
    "(d) plain pace": policies.paced,
    "(e) ours": policies.ours,
    "(f) ours, told": policies.told,
}
BASE = "(b) earliest date first"
#: Households in which earliest date first loses so much count as having something to save.
MUCH = 50.0


@dataclass(slots=True)
class Sum:
    """What came of a policy in all households, and its losses in each."""

    total: Told = field(default_factory=Told)
    lost: list[float] = field(default_factory=list)
    first_year: list[float] = field(default_factory=list)

    def add(self, told: Told) -> None:
        for one in fields(Told):
            if one.name != "lost_by_year":
                was, by = getattr(self.total, one.name), getattr(told, one.name)
                setattr(self.total, one.name, was + by)
        self.lost.append(told.lost)
        self.first_year.append(told.lost_by_year[0])


def bound(house: House) -> float:
    """Servings that must be lost even with perfect hindsight: a linear programme."""
    try:
        import numpy as np
        from scipy.optimize import linprog
        from scipy.sparse import coo_matrix
    except ImportError:
        return 0.0

    lots: dict[tuple[str, int, int], float] = defaultdict(float)
    groups = {food.name: food.group for food in house.foods}
    most = {food.name: food.most for food in house.foods}
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
            if name in house.refused[week] and last - week > house.pressing:
                continue
            column = len(worth)
            worth.append(-1.0 if counts else 0.0)
            for key, limit in (
                (("lot", "", number), servings),
                (("food", name, week), most[name] * house.factors[week]),
                (("group", groups[name], week), house.most[groups[name]] * house.factors[week]),
            ):
                rows.append(row(key, limit))
                columns.append(column)
    matrix = coo_matrix((np.ones(len(rows)), (rows, columns)), shape=(len(limits), len(worth)))
    found = linprog(worth, A_ub=matrix.tocsr(), b_ub=limits, method="highs")
    return due + float(found.fun)


def divided(house: House) -> House:
    """The same household, and each container as so many of one serving."""
    foods = {food.name: replace(food, size=1.0) for food in house.foods}
    jars = [
        Jar(foods[jar.food.name], jar.made, jar.last)
        for jar in house.jars
        for _ in range(round(jar.food.size))
    ]
    return replace(house, foods=list(foods.values()), jars=jars)


def run(
    world: Callable[[int], House], seeds: Sequence[int]
) -> tuple[dict[str, Sum], tuple[float, float]]:
    """All policies over all households; what must be lost in hindsight (0 without scipy), and what
    (c) would lose of containers that can be divided."""
    found = {name: Sum() for name in POLICIES}
    least = whole = 0.0
    for seed in seeds:
        for name, policy in POLICIES.items():
            found[name].add(live(world(seed), policy))
        least += bound(world(seed))
        whole += live(divided(world(seed)), policies.slack).lost
    return found, (least, whole)


def misjudged(seeds: Sequence[int], base: float, *, learns: bool) -> tuple[float, float]:
    """Losses against earliest date first (`base`) where the appetite that it begins with is wrong:
    at random by 40 %, and all of it six tenths of what it is; and it learns of its log, or not."""
    wrong = low = 0.0
    for seed in seeds:
        rng = random.Random(seed)
        by = {food.name: rng.uniform(0.6, 1.4) for food in garden(seed).foods}
        less = dict.fromkeys(by, 0.6)
        wrong += live(garden(seed), policies.misjudged(by, learns=learns)).lost
        low += live(garden(seed), policies.misjudged(less, learns=learns)).lost
    return _part(wrong, base), _part(low, base)


def table(found: dict[str, Sum], bounds: tuple[float, float]) -> str:
    """A line a policy: servings lost, and every figure against earliest date first."""
    base = found[BASE]
    heads = "/date  empty  short  foods   idle uneven better worst"
    lines = [f"{'policy':<28} {'lost':>7}  {heads}"]
    for name, one in found.items():
        figures = (
            _part(getattr(one.total, what), getattr(base.total, what))
            for what in ("lost", "empty", "short", "foods", "idle", "uneven")
        )
        much = [(a, b) for a, b in zip(one.lost, base.lost, strict=True) if b >= MUCH]
        better = _part(sum(a < b for a, b in much), len(much))
        worst = max((a / b for a, b in much), default=0.0)
        numbers = " ".join(f"{figure:>6.2f}" for figure in figures)
        lines.append(f"{name:<28} {one.total.lost:>7.0f} {numbers} {better:>6.2f} {worst:>5.2f}")
    for name, lost in zip(("(g) hindsight", "(h) (c), jars divided"), bounds, strict=True):
        lines.append(f"{name:<28} {lost:>7.0f} {_part(lost, base.total.lost):>6.2f}")
    return "\n".join(lines)


def _part(one: float, of: float) -> float:
    return one / of if of else 0.0


def main(words: Sequence[str]) -> None:
    """Print both tables, or the one asked for."""
    seeds = range(int(words[0])) if words else SEEDS
    for name in words[1:2] or WORLDS:
        found, bounds = run(WORLDS[name], seeds)
        print(f"{name} world, {len(seeds)} households of {WEEKS} weeks\n{table(found, bounds)}")
        if name == "first":
            for learns, how in ((True, "and learned from then on"), (False, "and never learned")):
                wrong, low = misjudged(seeds, found[BASE].total.lost, learns=learns)
                print(f"appetite wrong {how}: by 40 % at random {wrong:.2f}; all at 0.6 {low:.2f}")
            extra = sum(found["(e) ours"].first_year) - sum(found[BASE].first_year)
            print(f"first year, servings a household above date first: {extra / len(seeds):.1f}")
        print(flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
