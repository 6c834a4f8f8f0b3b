"""Which containers to open this week, so that the fewest servings pass their date.

Ask of every food: how many weeks can it still wait? Take its dates one by one. Until a date there
are so many weeks (days away do not count, guests count more); what falls due by then takes so
many weeks to eat, at the most the household eats of that food in a week. What is left over are
*weeks to spare*, and the date with the fewest speaks for the food. Thirty servings of beans due
in twelve weeks, at three a week, have two weeks to spare; two of peas due in six have more than
five: the beans come first though the peas are older. Strict earliest-date-first does not see
that, and is left with a pile that nobody can eat in time.

The food with the fewest weeks to spare gives a container, the next to be eaten; its pile is
smaller then, so another food may be next; and the more of it is on the table this week, the
longer it waits, so that the week is not beans only. Where nothing presses, a food comes sooner by
the weeks that it is behind its pace, and later by those that it is ahead (shares.py): half a
jar a week comes every other week. So it goes on until the week is full; where nothing presses, only
until each group has its share, at which it lasts until more comes.

A container is opened only if it can be finished in time: one that keeps three days may be begun at
the end of the week, so a third of it has to find room this week and the rest in the next. Not a
big jar on the day before leaving, then, unless it would be past its date on the return.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import accumulate
from math import inf
from typing import NamedTuple

#: A pile counts for two thirds of the weeks that it takes: where there is too much of everything,
#: nearer dates must not wait for a pile that cannot be saved. Found by trial on made-up households
#: (tests/benchmarks), where anything from one half to four fifths does nearly as well.
WEIGHT = 2 / 3
#: Weeks that a food waits when a week's fill of it is on the table already; for variety.
AGAIN = 3.0
#: Foods with more weeks to spare than this can wait, to make their group last.
CALM = 4.0
#: A food is never further behind its pace, or ahead of it, than so many weeks.
MOST_OWED = 12.0
#: Where nothing hurries a food, it counts as due in two years.
FAR = 104
_CRUMB = 1e-9


@dataclass(frozen=True, slots=True)
class Lot:
    """One container: servings of one food that are good through week `last` (0 is this week); None:
    nothing hurries them. `days`: how many days an opened one keeps."""

    food: str
    group: str
    servings: float
    last: int | None
    days: int = 3

    @property
    def share(self) -> float:
        """The least part that must be eaten in the week in which it is opened: a jar that keeps
        three days may be opened on the last of them, and two thirds are for the next week."""
        return 1 / max(2, self.days)


@dataclass(frozen=True, slots=True)
class Credit:
    """Servings that a food has saved at its pace of `rate` servings a week; below 0, more of it was
    eaten than that."""

    saved: float
    rate: float

    def weeks(self, eaten: float = 0.0) -> float:
        """Weeks behind its pace (below 0: ahead) when so many servings of it are eaten."""
        if self.rate <= 0:
            return 0.0
        return max(-MOST_OWED, min(MOST_OWED, (self.saved - eaten) / self.rate))


@dataclass(frozen=True, slots=True)
class Ceilings:
    """Servings a week, at most: of a food and of a group. A missing one has no ceiling."""

    food: Mapping[str, float]
    group: Mapping[str, float]

    def of_food(self, name: str) -> float:
        return self.food.get(name, inf)

    def of_group(self, name: str) -> float:
        return self.group.get(name, inf)


@dataclass(slots=True)
class _Table:
    """One week: its ceilings times `factor`, less what is on the table."""

    ceilings: Ceilings
    factor: float
    food: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    group: dict[str, float] = field(default_factory=lambda: defaultdict(float))

    def free(self, lot: Lot) -> float:
        """Servings of it that still have room."""
        if self.factor <= 0:
            return 0.0
        of_food = self.ceilings.of_food(lot.food) * self.factor - self.food[lot.food]
        of_group = self.ceilings.of_group(lot.group) * self.factor - self.group[lot.group]
        return max(0.0, min(of_food, of_group))

    def usual(self, lot: Lot) -> float:
        """Servings of it that a usual week has room for."""
        return min(self.ceilings.of_food(lot.food), self.ceilings.of_group(lot.group))

    def eat(self, lot: Lot, servings: float) -> float:
        """Puts them on the table as far as there is room; how many that is."""
        taken = min(servings, self.free(lot))
        self.food[lot.food] += taken
        self.group[lot.group] += taken
        return taken


class Opening(NamedTuple):
    """A container to open, as its place in the lots, and the weeks its food had to spare."""

    lot: int
    spare: float


def choose(
    lots: Sequence[Lot],
    ceilings: Ceilings,
    coming: Sequence[float] = (),
    already: Sequence[Lot] = (),
    shares: Mapping[str, float] | None = None,
    credits: Mapping[str, Credit] | None = None,
) -> list[Opening]:
    """The containers to open this week, the most pressing first; of one food in the order given,
    which is the order of eating, unless one would be lost by it. What is past its last week is
    passed over.

    `coming` is what the household knows of this week and the next ones as a multiple of its usual
    table: 0 away, 1.5 guests; weeks beyond are usual ones. `already` is on the table in any case
    and takes its room: what is open, thawed or pinned. `shares` are the servings that a group gives
    this week while nothing presses; a group without one gives what there is room for. `credits`
    say how far each food is behind its pace.
    """
    table = _Table(ceilings, coming[0] if coming else 1.0)
    after = _Table(ceilings, coming[1] if len(coming) > 1 else 1.0)
    clock = list(accumulate([*coming, *[1.0] * (FAR + 1)][: FAR + 1]))
    for lot in already:
        after.eat(lot, lot.servings - table.eat(lot, lot.servings))
    piles: dict[str, list[int]] = defaultdict(list)
    dated: dict[str, list[int]] = {}
    for i, lot in enumerate(lots):
        if _due(lot) >= 0 and ceilings.of_food(lot.food) > 0:
            piles[lot.food].append(i)
    for food, pile in piles.items():
        dated[food] = sorted(pile, key=lambda i: (_due(lots[i]), lots[i].servings))
    share, saved = shares or {}, credits or {}

    def turn(food: str) -> tuple[float, str]:
        weeks = waits(food)
        if weeks > CALM and food in saved:
            weeks = max(CALM, weeks - saved[food].weeks(table.food[food]))
        return weeks, food

    def waits(food: str) -> float:
        return spare[food] + AGAIN * table.food[food] / ceilings.of_food(food)

    def spares(food: str, weight: float) -> float:
        pile = [lots[i] for i in dated[food]]
        return _spare(pile, clock, ceilings.of_food(food), weight)

    def next_of(food: str) -> int | None:
        def first(pile: Iterable[int]) -> int | None:
            return next((i for i in pile if _opens(lots[i], table, after)), None)

        one = first(piles[food])
        if one is None or one == dated[food][0]:
            return one
        taken = (table.food[food] + lots[one].servings) / ceilings.of_food(food)
        return one if taken <= spares(food, 1.0) else first(dated[food])

    def enough(lot: Lot) -> bool:
        return table.group[lot.group] + lot.servings / 2 > share.get(lot.group, inf) + _CRUMB

    chosen: list[Opening] = []
    spare = {food: spares(food, WEIGHT) for food in piles}
    while spare:
        food = min(spare, key=turn)
        one = next_of(food)
        if one is None or (waits(food) > CALM and enough(lots[one])):
            del spare[food]
            continue
        chosen.append(Opening(one, spare[food]))
        piles[food].remove(one)
        dated[food].remove(one)
        after.eat(lots[one], lots[one].servings - table.eat(lots[one], lots[one].servings))
        spare[food] = spares(food, WEIGHT)
    return chosen


def _due(lot: Lot) -> int:
    return FAR if lot.last is None else min(lot.last, FAR)


def _spare(pile: Iterable[Lot], clock: Sequence[float], ceiling: float, weight: float) -> float:
    """Weeks to spare of a food, all of it, by date; an empty pile has no end of them. With a weight
    of 1 they are those after which some of it is lost at its ceiling."""
    due, least = 0.0, inf
    for lot in pile:
        due += lot.servings
        least = min(least, clock[_due(lot)] - weight * due / ceiling)
    return least


def _opens(lot: Lot, table: _Table, after: _Table) -> bool:
    """Whether its share has room this week, and the rest in time (or else all of it is lost).
    What is bigger than two usual weeks could finish comes when nothing of its food is on the table:
    it will not get better."""
    free = table.free(lot)
    if lot.servings > 2 * table.usual(lot):
        return free > _CRUMB and not table.food[lot.food]
    if free < lot.servings * lot.share - _CRUMB or free <= _CRUMB:
        return False
    rest = lot.servings - free
    return rest <= after.free(lot) + _CRUMB or lot.last == 0 or lot.days >= 14
