"""Which containers to open this week, so that the fewest servings pass their date.

Ask of every food: how many weeks can it still wait? Take its dates one by one. Until a date there
are so many weeks (days away do not count, guests count more); what falls due by then takes so
many weeks to eat, at the most the household eats of that food in a week. What is left over are
*weeks to spare*, and the date with the fewest speaks for the food. Thirty servings of beans due
in twelve weeks, at three a week, have two weeks to spare; two of peas due in six have more than
five: the beans come first though the peas are older. Strict earliest-date-first does not see
that, and is left with a pile that nobody can eat in time.

The food with the fewest weeks to spare gives a container, the earliest date first; its pile is
smaller then, so another food may be next; and the more of it is on the table this week, the
longer it waits, so that the week is not beans only. So it goes on until the week is full; or, where
a group would be gone before more of it comes, until the week has the share at which it lasts.

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

#: A pile counts for two thirds of the weeks that it takes: where there is too much of everything,
#: nearer dates must not wait for a pile that cannot be saved. Found by trial on made-up households
#: (tests/benchmarks), where anything from one half to four fifths does nearly as well.
WEIGHT = 2 / 3
#: Weeks that a food waits when a week's fill of it is on the table already; for variety.
AGAIN = 3.0
#: Foods with more weeks to spare than this can be kept back to make a group last ...
CALM = 4.0
#: ... but a week always gets this part of a full one: going hungry now saves nothing.
LEAST = 0.6
#: A good year bears so many times what is expected; no stock is kept back that would be in its way.
GOOD_YEAR = 1.5
#: Where nothing hurries a food, it counts as due in two years.
FAR = 104
_CRUMB = 1e-9


@dataclass(frozen=True, slots=True)
class Lot:
    """Servings of one food that are good through week `last` (0 is this week) and are there from
    week `first` on: one container, or a pile of the same date where a function says so. `last`
    None: nothing hurries them. `days`: how many days an opened one keeps."""

    food: str
    group: str
    servings: float
    last: int | None
    first: int = 0
    days: int = 3

    @property
    def share(self) -> float:
        """The least part that must be eaten in the week in which it is opened: a jar that keeps
        three days may be opened on the last of them, and two thirds are for the next week."""
        return 1 / max(2, self.days)


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

    def eat(self, lot: Lot, servings: float) -> float:
        """Puts them on the table as far as there is room; how many that is."""
        taken = min(servings, self.free(lot))
        self.food[lot.food] += taken
        self.group[lot.group] += taken
        return taken


def _clock(coming: Sequence[float]) -> list[float]:
    """Weeks at this household's usual table until the end of week 0, 1, 2 ... FAR."""
    return list(accumulate([*coming, *[1.0] * (FAR + 1)][: FAR + 1]))


def _due(last: int | None) -> int:
    return FAR if last is None else min(last, FAR)


def _spare(pile: Iterable[tuple[int, float]], clock: Sequence[float], table: _Table, food: str
) -> float:  # fmt: skip
    """Weeks to spare of a food. The pile holds (last week, servings) by date."""
    ceiling = table.ceilings.of_food(food)
    due, least = 0.0, inf
    for last, servings in pile:
        due += servings
        least = min(least, clock[last] - WEIGHT * due / ceiling)
    return least + AGAIN * table.food[food] / ceiling


def choose(
    lots: Sequence[Lot],
    ceilings: Ceilings,
    coming: Sequence[float] = (),
    already: Sequence[Lot] = (),
    expected: Sequence[Lot] = (),
) -> list[int]:
    """The containers to open this week, as places in `lots`, the most pressing first.

    Each lot is one container; those that are not there yet or past their last week are passed
    over. `coming` is what the household knows of this week and the next ones as a multiple of its
    usual table: 0 away, 1.5 guests; weeks beyond are usual ones. `already` is on the table in any
    case and takes its room: what is open, thawed or pinned. `expected` are the next harvests
    (`first` the week, `servings` as usual); without them nothing is kept back.
    """
    table = _Table(ceilings, coming[0] if coming else 1.0)
    after = _Table(ceilings, coming[1] if len(coming) > 1 else 1.0)
    clock = _clock(coming)
    for lot in already:
        after.eat(lot, lot.servings - table.eat(lot, lot.servings))
    piles: dict[str, list[int]] = defaultdict(list)
    for i in sorted(range(len(lots)), key=lambda i: (_due(lots[i].last), lots[i].servings)):
        if _here(lots[i], 0) and ceilings.of_food(lots[i].food) > 0:
            piles[lots[i].food].append(i)
    lasting = _lasting([*(lots[i] for pile in piles.values() for i in pile), *already],
                       expected, clock)  # fmt: skip

    def spare(food: str) -> float:
        pile = ((_due(lots[i].last), lots[i].servings) for i in piles[food])
        return _spare(pile, clock, table, food)

    def enough(group: str) -> bool:
        share = max(lasting.get(group, inf), LEAST * ceilings.of_group(group))
        return table.group[group] >= share * table.factor - _CRUMB

    chosen: list[int] = []
    waits = {food: spare(food) for food in piles}
    while waits:
        food = min(waits, key=lambda name: (waits[name], name))
        one = next((i for i in piles[food] if _opens(lots[i], table, after)), None)
        if one is None or (waits[food] > CALM and enough(lots[one].group)):
            del waits[food]
            continue
        chosen.append(one)
        piles[food].remove(one)
        after.eat(lots[one], lots[one].servings - table.eat(lots[one], lots[one].servings))
        waits[food] = spare(food)
    return chosen


def _lasting(
    stock: Sequence[Lot], expected: Sequence[Lot], clock: Sequence[float]
) -> dict[str, float]:
    """Servings a week of each group at which it is never gone before more comes; groups that
    expect nothing are left out."""
    supply: dict[str, float] = defaultdict(float)
    for lot in stock:
        supply[lot.group] += lot.servings
    found: dict[str, float] = {}
    for lot in sorted(expected, key=lambda lot: lot.first):
        if 0 < lot.first <= FAR:
            share = supply[lot.group] / max(1.0, clock[lot.first - 1])
            found[lot.group] = min(found.get(lot.group, inf), share)
            supply[lot.group] += GOOD_YEAR * lot.servings
    return found


def _here(lot: Lot, week: int) -> bool:
    return lot.first <= week and (lot.last is None or lot.last >= week)


def _opens(lot: Lot, table: _Table, after: _Table) -> bool:
    """Whether its share has room this week, and the rest in time (or else all of it is lost)."""
    free = table.free(lot)
    if free < lot.servings * lot.share - _CRUMB or free <= _CRUMB:
        return False
    rest = lot.servings - free
    return rest <= after.free(lot) + _CRUMB or lot.last == 0 or lot.days >= 14


def schedule(
    lots: Sequence[Lot], ceilings: Ceilings, horizon: int = 60, coming: Sequence[float] = ()
) -> tuple[list[dict[str, float]], float]:
    """Servings of each food by week when every week is chosen so, and the servings that pass
    their date within the horizon. Lots are piles here, divided as one likes."""
    left = [lot.servings for lot in lots]
    by_date = sorted(range(len(lots)), key=lambda i: _due(lots[i].last))
    weeks: list[dict[str, float]] = []
    for week in range(horizon):
        known = coming[week:]
        table = _Table(ceilings, known[0] if known else 1.0)
        clock = _clock(known)
        piles: dict[str, list[int]] = defaultdict(list)
        for i in by_date:
            if _here(lots[i], week) and left[i] > _CRUMB and ceilings.of_food(lots[i].food) > 0:
                piles[lots[i].food].append(i)
        _pour(lots, left, piles, table, clock, week)
        weeks.append({food: servings for food, servings in table.food.items() if servings > 0})
    past = (n for lot, n in zip(lots, left, strict=True) if _due(lot.last) < min(horizon, FAR))
    return weeks, sum(n for n in past if n > _CRUMB)


def _pour(
    lots: Sequence[Lot],
    left: list[float],
    piles: dict[str, list[int]],
    table: _Table,
    clock: Sequence[float],
    week: int,
) -> None:
    """Fills one week serving by serving."""

    def spare(food: str) -> float:
        pile = ((_due(lots[i].last) - week, left[i]) for i in piles[food])
        return _spare(pile, clock, table, food)

    waits = {food: spare(food) for food in piles}
    while waits:
        food = min(waits, key=lambda name: (waits[name], name))
        one = piles[food][0]
        taken = table.eat(lots[one], min(1.0, left[one]))
        left[one] -= taken
        if left[one] <= _CRUMB:
            piles[food].pop(0)
        if taken <= _CRUMB or not piles[food]:
            del waits[food]
        else:
            waits[food] = spare(food)


def pressing(
    lots: Sequence[Lot], ceilings: Ceilings, horizon: int = 1, coming: Sequence[float] = ()
) -> dict[str, float]:
    """Servings of each food that should be eaten in the first weeks, whatever stands before them
    by date. Lots are piles here; for whole containers ask `choose`."""
    found: dict[str, float] = defaultdict(float)
    for week in schedule(lots, ceilings, horizon, coming)[0]:
        for food, servings in week.items():
            found[food] += servings
    return dict(found)
