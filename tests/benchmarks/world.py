"""Made-up households at table, week by week: what all policies of the plan's benchmark play by.

A world (garden.py, rough.py) draws a `House` from a seed: its foods, every container that it will
put up, how each week will turn out, what of it stands in the calendar beforehand, what is refused
when, how often a booking is forgotten. Nothing of that depends on what is eaten.

`live` plays it. A policy sees what the household knows (`Seen`): what stands by its books, what is
open, the calendar, its log. It gives an order. What is open is eaten first, by its date. Then each
container along the order is opened if the week has room for it: one that keeps D days once opened
may be begun on the last day of a week and finished in the next, so the week must have room for a
D-th of it (half at least of what keeps less than three days), and the next week, as the calendar
has it, for the rest, unless it keeps a fortnight or this is its last week anyway. What is left
when its days are over is lost, as is what passes its date on the shelf.

A forgotten booking leaves a container in the books that is gone: whoever goes to fetch it finds
out, and a count every 13 weeks puts all books right. What it finds gone was eaten at some time
since the count before.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

YEARS = 3
WEEKS = 52 * YEARS
#: Weeks ahead that days away and guests stand in the calendar.
ANNOUNCED = 4
#: Weeks from one count to the next.
COUNTED = 13
_CRUMB = 1e-9


@dataclass(frozen=True, slots=True)
class Food:
    """One food kept in one way by one household. `life` in weeks, `opened` in days, `size` servings
    a container; `weeks` of the three years in which it is usually put up, and the servings that
    each is meant to bring; `most` that are eaten of it in a usual week."""

    name: str
    group: str
    life: int
    opened: int
    size: float
    weeks: tuple[int, ...]
    meant: float
    most: float
    liked: float = 1.0
    harvested: bool = True
    bulk: bool = False


@dataclass(slots=True, eq=False)
class Jar:
    """A container: put up in week `made`, good through week `last`."""

    food: Food
    made: int
    last: int


@dataclass(slots=True, eq=False)
class Opened:
    """A container that was begun: its rest, and the last week in which it may be eaten."""

    food: Food
    rest: float
    until: int


@dataclass(slots=True)
class House:
    """`most` servings a usual week of a group; `factors` how much of a usual week each one is, and
    `announced` what is known of it beforehand; `refused` foods nobody wants that week, unless they
    fall due within `pressing` weeks; `forgets` the part of bookings that is not made."""

    people: int
    foods: Sequence[Food]
    jars: Sequence[Jar]
    most: Mapping[str, float]
    factors: Sequence[float]
    announced: Sequence[float]
    refused: Sequence[frozenset[str]]
    forgets: float
    seed: int
    pressing: int = 2

    def coming(self, week: int) -> list[float]:
        """What is known of this week and the next ones."""
        return list(self.announced[week : week + 1 + ANNOUNCED])


@dataclass(slots=True)
class Week:
    """A week by the books: servings eaten of each food, and lost of each group; foods of which some
    stood all week."""

    eaten: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    lost: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    stood: set[str] = field(default_factory=set)


@dataclass(slots=True)
class Seen:
    """What the household knows at the beginning of week `week`."""

    house: House
    week: int
    stock: list[Jar]
    opened: list[Opened]
    log: list[Week]
    random: random.Random


#: The order in which a household would open what stands.
Policy = Callable[[Seen], Sequence[Jar]]


@dataclass(slots=True)
class Told:
    """What came of it, in servings but for: `empty` and `short` weeks of a group (nothing, or less
    than half, of what was wanted, from the second year on), `foods` eaten summed over the weeks,
    `idle` the mean of each food's longest run of weeks in which it stood and was not eaten,
    `uneven` the mean deviation from eating it evenly until more comes or it is over."""

    lost: float = 0.0
    eaten: float = 0.0
    left: float = 0.0
    empty: int = 0
    short: int = 0
    foods: int = 0
    idle: float = 0.0
    uneven: float = 0.0
    lost_by_year: list[float] = field(default_factory=lambda: [0.0] * YEARS)


def live(house: House, policy: Policy) -> Told:
    """Three years, as the module says."""
    return _Life(house, policy).run()


class _Life:
    def __init__(self, house: House, policy: Policy) -> None:
        self.house, self.policy = house, policy
        self.slips = random.Random(house.seed * 7 + 3)
        self.fancy = random.Random(house.seed * 7 + 5)
        self.stock: list[Jar] = []
        self.books: dict[Jar, None] = {}
        self.opened: list[Opened] = []
        self.log: list[Week] = []
        self.unsaid: dict[str, float] = defaultdict(float)
        self.really: list[dict[str, float]] = []
        self.stood: list[dict[str, float]] = []
        self.told = Told()

    def run(self) -> Told:
        arriving: dict[int, list[Jar]] = defaultdict(list)
        for jar in self.house.jars:
            arriving[jar.made].append(jar)
        for week in range(WEEKS):
            self.stock += arriving[week]
            self.books |= dict.fromkeys(arriving[week])
            self._week(week)
            if week % COUNTED == COUNTED - 1:
                self._count()
        self.told.left = sum(jar.food.size for jar in self.stock)
        self.told.left += sum(one.rest for one in self.opened)
        self._looked_back()
        return self.told

    def _week(self, week: int) -> None:
        seen = Seen(self.house, week, list(self.books), list(self.opened), self.log, self.fancy)
        order = self.policy(seen)
        self.now = Week()
        self.meal: dict[str, float] = defaultdict(float)
        self.really.append(self.meal)
        factor = self.house.factors[week]
        self.room = {food.name: food.most * factor for food in self.house.foods}
        self.room |= {f"of {group}": most * factor for group, most in self.house.most.items()}
        here = set(self.stock)
        shelf: dict[str, float] = defaultdict(float)
        for jar in self.stock:
            shelf[jar.food.name] += jar.food.size
        for one in sorted(self.opened, key=lambda one: one.until):
            shelf[one.food.name] += one.rest
            one.rest -= self._eat(one.food, one.rest, booked=True)
        self.stood.append(shelf)
        for jar in order:
            if jar not in here:
                self.books.pop(jar, None)  # nobody wrote it down, and it is not there
            elif self._opens(jar, week):
                here.remove(jar)
                self._open(jar, week)
        self.stock = [jar for jar in self.stock if jar in here]
        self._throw_away(week)
        self.now.stood = {jar.food.name for jar in self.books}
        self.log.append(self.now)
        self._judge(week, factor)

    def _open(self, jar: Jar, week: int) -> None:
        booked = self.slips.random() >= self.house.forgets
        if booked:
            self.books.pop(jar, None)
        rest = jar.food.size - self._eat(jar.food, jar.food.size, booked=booked)
        if rest > _CRUMB:
            until = min(jar.last, week + max(1, jar.food.opened // 7))
            self.opened.append(Opened(jar.food, rest, until))

    def _opens(self, jar: Jar, week: int) -> bool:
        """Whether it may be opened: its share has room now, and the rest in time."""
        food, size = jar.food, jar.food.size
        if food.name in self.house.refused[week] and jar.last - week > self.house.pressing:
            return False
        free = min(self.room[food.name], self.room[f"of {food.group}"])
        if free <= _CRUMB or free < size / max(2, food.opened) - _CRUMB:
            return False
        if size <= free or food.opened >= 14 or jar.last == week:
            return True
        after = self.house.announced[week + 1] if week + 1 < WEEKS else 1.0
        return size - free <= min(food.most, self.house.most[food.group]) * after + _CRUMB

    def _eat(self, food: Food, servings: float, *, booked: bool) -> float:
        group = f"of {food.group}"
        taken = min(servings, self.room[food.name], self.room[group])
        self.room[food.name] -= taken
        self.room[group] -= taken
        self.meal[food.name] += taken
        if booked:
            self.now.eaten[food.name] += taken
        else:
            self.unsaid[food.name] += taken
        return taken

    def _throw_away(self, week: int) -> None:
        over = [(one.food.group, one.rest) for one in self.opened if one.until <= week]
        over += [(jar.food.group, jar.food.size) for jar in self.stock if jar.last <= week]
        for group, servings in over:
            self.now.lost[group] += servings
            self.told.lost += servings
            self.told.lost_by_year[week // 52] += servings
        self.opened = [one for one in self.opened if one.until > week and one.rest > _CRUMB]
        self.stock = [jar for jar in self.stock if jar.last > week]
        self.books = {jar: None for jar in self.books if jar.last > week}

    def _count(self) -> None:
        """The books are right again; what was forgotten is spread over the weeks since the last."""
        here = set(self.stock)
        self.books = {jar: None for jar in self.books if jar in here}
        since = self.log[-COUNTED:]
        for name, servings in self.unsaid.items():
            for one in since:
                one.eaten[name] += servings / len(since)
        self.unsaid.clear()

    def _judge(self, week: int, factor: float) -> None:
        self.told.eaten += sum(self.meal.values())
        self.told.foods += sum(servings > _CRUMB for servings in self.meal.values())
        given: dict[str, float] = defaultdict(float)
        for food in self.house.foods:
            given[food.group] += self.meal[food.name]
        for group, most in self.house.most.items():
            wanted = most * factor
            if week >= 52 and wanted > _CRUMB:
                self.told.empty += given[group] <= _CRUMB
                self.told.short += given[group] < wanted / 2

    def _looked_back(self) -> None:
        longest = [_longest(food.name, self.stood, self.really) for food in self.house.foods]
        self.told.idle = sum(longest) / len(longest)
        self.told.uneven = _uneven(self.house, self.really)


def _longest(
    name: str, stood: Sequence[dict[str, float]], eaten: Sequence[dict[str, float]]
) -> int:
    """The longest run of weeks in which it stood and none of it was eaten."""
    run = longest = 0
    for there, meal in zip(stood, eaten, strict=True):
        idle = there.get(name, 0.0) > _CRUMB and meal.get(name, 0.0) <= _CRUMB
        run = run + 1 if idle else 0
        longest = max(longest, run)
    return longest


def _uneven(house: House, eaten: Sequence[dict[str, float]]) -> float:
    """Of each harvest of a food: the mean over its weeks of how far the part that is eaten lies
    from the part of the weeks that are gone; weighted by the servings that it brought."""
    total = weight = 0.0
    for food in house.foods:
        made = sorted({jar.made for jar in house.jars if jar.food is food and jar.made < WEEKS})
        starts = [week for week in made if not any(week - 6 < other < week for other in made)]
        for number, start in enumerate(starts):
            after = starts[number + 1] if number + 1 < len(starts) else WEEKS
            came = [jar for jar in house.jars if jar.food is food and start <= jar.made < after]
            end = min(after, max(jar.last for jar in came) + 1)
            if end - start < 8:
                continue
            brought = sum(jar.food.size for jar in came)
            gone = off = 0.0
            for week in range(start, end):
                gone += eaten[week].get(food.name, 0.0)
                off += abs(min(1.0, gone / brought) - (week + 1 - start) / (end - start))
            total += brought * off / (end - start)
            weight += brought
    return total / weight if weight else 0.0
