"""How a household may decide what to open: the plan's benchmark compares these."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from itertools import accumulate
from math import inf

from pantry_tui.core.plan.appetite import CEILING, FOOD_CEILING, Appetite, full_week
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.shares import Harvest, PutUp, expected, needs
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group
from tests.benchmarks.catalogue import START
from tests.benchmarks.world import Food, Jar, Policy, Seen

YEAR = 52
#: Weeks of the log in which a food gathers credit, as in the program.
_CREDIT_WEEKS = 12


def reacting(seen: Seen) -> list[Jar]:
    """What falls due within four weeks, then what it likes, the jar that stands in front: the one
    that was put there last."""
    due = sorted((jar for jar in seen.stock if jar.last - seen.week <= 4), key=lambda jar: jar.last)
    fancy = {food.name: seen.random.random() ** (1 / food.liked) for food in seen.house.foods}
    rest = [jar for jar in seen.stock if jar.last - seen.week > 4]
    rest.sort(key=lambda jar: (-fancy[jar.food.name], -jar.made))
    return [*due, *rest]


def earliest(seen: Seen) -> list[Jar]:
    """Strictly the earliest date first."""
    return sorted(seen.stock, key=lambda jar: (jar.last, jar.made))


def slack(seen: Seen) -> list[Jar]:
    """One line: the food with the fewest weeks to spare, at the chart's appetite."""
    clock = _clock(seen)
    piles: dict[str, list[Jar]] = defaultdict(list)
    for jar in earliest(seen):
        piles[jar.food.name].append(jar)
    most = FOOD_CEILING * seen.house.people

    def spare(pile: Sequence[Jar]) -> float:
        due, least = 0.0, inf
        for jar in pile:
            due += jar.food.size
            least = min(least, clock[jar.last - seen.week] - due / most)
        return least

    order = []
    left = {name: spare(pile) for name, pile in piles.items()}
    while left:
        name = min(left, key=lambda one: (left[one], one))
        order.append(piles[name].pop(0))
        left[name] = spare(piles[name])
        if not piles[name]:
            del left[name]
    return order


def paced(seen: Seen) -> list[Jar]:
    """Plain pace, to the full: the food that is furthest behind eating it evenly until its last
    date, by what was eaten of it since it came."""
    piles: dict[str, list[Jar]] = defaultdict(list)
    for jar in earliest(seen):
        piles[jar.food.name].append(jar)

    def behind(name: str) -> float:
        pile = piles[name]
        whole = sum(jar.food.size for jar in pile)
        rate = whole / max(1, pile[-1].last - seen.week + 1)
        since = [week.eaten.get(name, 0.0) for week in seen.log[min(j.made for j in pile) :]]
        return sum(rate - eaten for eaten in since[-_CREDIT_WEEKS:]) / rate

    weeks = {name: behind(name) for name in piles}
    each = {name: len(pile) / max(1, pile[-1].last - seen.week + 1) for name, pile in piles.items()}
    order = []
    while weeks:
        name = max(weeks, key=lambda one: (weeks[one], one))
        order.append(piles[name].pop(0))
        weeks[name] -= 1 / each[name]
        if not piles[name]:
            del weeks[name]
    return order


def ours(seen: Seen) -> list[Jar]:
    """The week as the program plans it, then on along its list, which is made anew when it is
    through, but for what it keeps; appetite learned from the books."""
    return _planned(seen, _learned(seen, {}))


def told(seen: Seen) -> list[Jar]:
    """The same, told what the household eats of each food."""
    house = seen.house
    return _planned(seen, {food.name: food.most / house.people for food in house.foods})


def misjudged(by: Mapping[str, float], *, learns: bool) -> Policy:
    """The same with a wrong idea of every food to begin with, so many times the truth; one that
    `learns` takes what its log shows where that is more, as it does with the charts."""

    def policy(seen: Seen) -> list[Jar]:
        house = seen.house
        wrong = {f.name: by[f.name] * f.most / house.people for f in house.foods}
        return _planned(seen, _learned(seen, wrong) if learns else wrong)

    return policy


def _clock(seen: Seen) -> list[float]:
    return list(accumulate([*seen.house.coming(seen.week), *[1.0] * 200]))


def _learned(seen: Seen, known: Mapping[str, float]) -> dict[str, float]:
    """As services/plan/eaten.py does it: never below what is `known` of a food, else the chart."""
    people, log = seen.house.people, seen.log[-YEAR:]
    found = dict(known)
    groups: dict[str, list[float]] = defaultdict(lambda: [0.0] * len(log))
    for food in seen.house.foods:
        weeks = [week.eaten.get(food.name, 0.0) for week in log]
        groups[food.group] = [a + b for a, b in zip(groups[food.group], weeks, strict=True)]
        if (most := full_week(weeks)) is not None:
            found[food.name] = max(known.get(food.name, FOOD_CEILING), most / people)
    for group, weeks in groups.items():
        if (most := full_week(weeks)) is not None:
            found[group] = max(CEILING[Group(group)], most / people)
    return found


def _planned(seen: Seen, foods: Mapping[str, float]) -> list[Jar]:
    house, week = seen.house, seen.week
    start = START + timedelta(weeks=week)
    jars = {str(n): jar for n, jar in enumerate(earliest(seen))}
    found = [_candidate(name, jar.food, jar.food.size, jar.last) for name, jar in jars.items()]
    found += [
        _candidate(f"open {n}", one.food, one.rest, one.until, must=True)
        for n, one in enumerate(seen.opened)
        if one.rest > 0
    ]
    table = {
        start + timedelta(weeks=ahead, days=day): heads
        for ahead, factor in enumerate(house.coming(week))
        for day, heads in enumerate(_seats(house.people, factor))
    }
    groups = {name: most for name, most in foods.items() if name in set(Group)}
    eats = Appetite(house.people, groups, foods, table=table)
    since: dict[str, int] = {}
    for jar in seen.stock:
        since[jar.food.name] = min(since.get(jar.food.name, week), jar.made)
    eaten = {
        name: [one.eaten.get(name, 0.0) for one in seen.log[max(0, first) :][-_CREDIT_WEEKS:]]
        for name, first in since.items()
    }
    harvests = {
        food.name: START + timedelta(weeks=min((w for w in food.weeks if w > week), default=999))
        for food in house.foods
    }
    coming = _expected(seen, found, harvests)
    wanted = needs(found, eats, start, harvests, eaten, coming, lost=_lost(seen))
    menu = plan(found, eats, start, wanted)
    kept = {one.food for one in menu.kept}
    more = [one.container for one in menu.more]
    rest = [name for name, jar in jars.items() if jar.food.name not in kept]
    return [jars[name] for name in dict.fromkeys([*menu.order, *more, *rest]) if name in jars]


def _candidate(
    name: str, food: Food, servings: float, last: int, *, must: bool = False
) -> Candidate:
    until = START + timedelta(weeks=last, days=6)
    group = Group(food.group)
    return Candidate(name, food.name, group, servings, until, must, opened=keeps(food.opened))


def _expected(
    seen: Seen, found: Sequence[Candidate], harvests: Mapping[str, date]
) -> list[Harvest]:
    """What the year before gave, once there is one."""
    if seen.week < YEAR:
        return []
    put_up = [
        PutUp(jar.food.name, Group(jar.food.group), jar.food.size, _day(jar.made))
        for jar in seen.house.jars
        if seen.week - YEAR <= jar.made < seen.week
    ]
    return expected(put_up, found, _day(seen.week), harvests)


def _lost(seen: Seen) -> dict[str, float]:
    """Servings of each group that got too old within the year."""
    found: dict[str, float] = defaultdict(float)
    for one in seen.log[-YEAR:]:
        for group, servings in one.lost.items():
            found[group] += servings
    return found


def _day(week: int) -> date:
    return START + timedelta(weeks=week)


def _seats(people: int, factor: float) -> list[int]:
    """How many sit at the table on each day of a week of which so much is eaten."""
    meals = round(7 * people * factor)
    return [meals * (day + 1) // 7 - meals * day // 7 for day in range(7)]
