"""On which day of the week each chosen container is opened, and until when it is eaten.

The nearest dates come on the first days, past its best-by day only what would be too much on one,
or would take the room of what must be discarded sooner; each role at table, each food and each
group on the days that have the least of it, but a little of a main where more of it lies; what is
big when most sit there, and never when its rest would spoil while all are away. From bulk a day
takes what its heads eat. Frozen food waits until it can be thawed; a dish keeps its containers
together.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from datetime import date, timedelta
from functools import cached_property
from math import inf

from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.plan.appetite import Appetite, days_from
from pantry_tui.core.plan.laid import Hurried, Laid, evenings_of, over_two
from pantry_tui.core.plan.menu import Candidate, Menu, Pick, Why
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.words import Role

#: What is no more than so many servings a head is not too big for any table.
BIG = 4.0
#: What a usual table eats for more than so many meals is better for guests, where so many times as
#: many sit there. Our own choice.
_MEALS, MANY = 2.0, 1.5


@dataclass(slots=True)
class Chosen:
    """A container of the week; `day` where it must lie on that day."""

    candidate: Candidate
    why: Why
    day: date | None = None
    dish: str = ""


@dataclass(frozen=True)
class Table:
    """`length` days from `start`, of which `days` are those on which somebody eats at home. Asked
    of every container, so what it says of itself is reckoned once."""

    appetite: Appetite
    start: date
    out: frozenset[date]
    length: int = 7

    @cached_property
    def end(self) -> date:
        return self.start + timedelta(days=self.length - 1)

    @cached_property
    def next_week(self) -> date:
        return self.start + timedelta(days=self.length)

    @cached_property
    def days(self) -> list[date]:
        days = days_from(self.start, self.length)
        return [d for d in days if self.appetite.sit(d) > 0 and d not in self.out]

    @cached_property
    def factor(self) -> float:
        """How much is eaten, against a usual week."""
        return sum(map(self.appetite.sit, self.days)) / (7 * self.appetite.people)

    def at_home(self, one: Candidate) -> Candidate:
        """With the last of its days on which anybody is there to eat it: what has its last safe day
        while all are away has to go before they leave."""
        last = one.safe_until
        if last is None or self.appetite.sit(last) > 0:
            return one
        while last > self.start and self.appetite.sit(last) == 0:
            last -= timedelta(days=1)
        return one._replace(safe_until=last, last=min(one.last or last, last))

    def earliest(self, one: Candidate) -> date:
        """Frozen food not before it can be thawed, thawing food not before it is."""
        first = self.start
        if one.frozen and one.thaw_days:
            first += timedelta(days=one.thaw_days)
        return max(first, one.ready or first)

    def latest(self, one: Candidate) -> date:
        """The last day for it in this week."""
        return max(min(self.end, one.last or self.end), self.earliest(one))

    def wasted(self, one: Candidate, day: date) -> float:
        """Servings of it that cannot be finished when it is opened on that day."""
        return picked(Chosen(one, Why.PACE), day, self).spare

    def shared(self, one: Candidate) -> float:
        """Servings of it that a usual table leaves whenever it is opened, up to half of it."""
        open_days = one.open_days
        eaten = inf if open_days is None else self.appetite.people * (open_days + 1)
        return max(0.0, min(one.servings / 2, one.servings - eaten))

    def outsized(self, one: Candidate) -> bool:
        """Whether on no day of this week more than half of it could be finished once open."""
        if one.bulk or one.servings <= BIG * self.appetite.people:
            return False
        days = self.possible(one)
        return bool(days) and all(self.wasted(one, day) > one.servings / 2 for day in days)

    def feast(self, one: Candidate) -> bool:
        """Whether it is a main so big, or so long to thaw, that a usual table has a meal of it left
        when it keeps no longer, though guests of this week may finish it. Of what is open or thawed
        whether its rest is more than a few meals."""
        usual = self.appetite.people
        big = one.servings > BIG * usual or one.thaw_days > 1
        if not (big or one.must) or one.bulk or one.at_table is not Role.MAIN:
            return False
        if one.must:
            return one.servings > _MEALS * usual
        return self.shared(one) >= usual

    def serves(self, one: Candidate, day: date) -> bool:
        """Whether it can be opened on that day, and is a meal for those who sit there, or half of
        it can be finished."""
        if day not in self.possible(one):
            return False
        heads = self.appetite.sit(day)
        return one.servings <= BIG * heads or self.wasted(one, day) <= one.servings / 2

    def for_many(self, one: Candidate, heads: int) -> bool:
        """Whether it is a main for so many rather than for the usual table."""
        usual = self.appetite.people
        if one.bulk or one.at_table is not Role.MAIN or one.servings <= _MEALS * usual:
            return False
        return heads > usual and (one.servings > BIG * usual or heads >= MANY * usual)

    def possible(self, one: Candidate) -> list[date]:
        """The days it may be opened on; none when it cannot be eaten before it must go. What has
        to thaw is moved to the fridge by somebody who is there on that day."""
        first, last = self.earliest(one), min(self.end, one.safe_until or self.end)
        thaws = one.thaw_days if one.frozen else 0
        return [
            day
            for day in self.days
            if first <= day <= last and one.fit_on(day) and self.appetite.takes_out(day, thaws)
        ]

    def waits(self, one: Candidate) -> bool:
        """Whether it may not be opened any more by the end of this week, for want of a hand, or
        nothing hurries it out of its tin."""
        return one.stands_by or (one.care_from is not None and one.care_from <= self.end)

    def fullest(self, one: Candidate) -> list[date]:
        """Of those days the ones on which most sit there: a bird waits for the guests."""
        days = self.possible(one)
        most = max(map(self.appetite.sit, days), default=0)
        return [day for day in days if self.appetite.sit(day) == most]


def _parts(servings: float, days: Sequence[date], heads: Callable[[date], int]) -> Iterator[float]:
    """What of it is eaten on each of its days: so many are fed as sit there."""
    each = min(1.0, servings / max(1, sum(map(heads, days))))
    return (each * max(1, heads(day)) for day in days)


def spread(chosen: Sequence[Chosen], table: Table) -> Menu:
    """Every container on its day, and those that cannot be eaten before they must go. What takes
    more evenings than meals come from the stores has the rest lie beside it, if no more is lost."""
    found, meals = _spread(chosen, table, frozenset()), table.appetite.meals
    evenings, lies = evenings_of(found.picks, meals) if meals < table.length else ((), {})
    if not evenings:
        return found
    there = [replace(one, day=one.day or lies.get(one.candidate.container)) for one in chosen]
    fewer = _spread(there, table, evenings)
    return fewer if _lost(fewer) <= _lost(found) + CRUMB else found


def _lost(menu: Menu) -> float:
    return sum(pick.spare for pick in menu.picks) + sum(one.servings for one in menu.missed)


def _spread(chosen: Sequence[Chosen], table: Table, evenings: Collection[date]) -> Menu:
    """On those `evenings` where there are any, as far as its dates allow."""
    laid = Laid()
    drawn: dict[str, list[date]] = defaultdict(list)
    left: dict[str, float] = defaultdict(float)
    for_guests: dict[tuple[date | None, str], float] = defaultdict(float)
    lies: dict[tuple[date, str], float] = defaultdict(float)
    hurried = Hurried(table.end, table.days, table.appetite.sit)
    for one in chosen:
        left[one.candidate.container] += one.candidate.servings
        if one.why is Why.GUESTS:
            for_guests[one.day, one.candidate.container] += one.candidate.servings
        hurried.add(one.candidate, one.candidate.servings)
    picks: list[Pick] = []
    missed: list[Candidate] = []
    for one in sorted(chosen, key=lambda c: _first(c, table)):
        food = one.candidate
        hurried.add(food, -food.servings)
        long = food.at_table is Role.MAIN and _several(food, table) > 0

        def full(day: date, food: Candidate = food, long: bool = long) -> tuple[float, ...]:
            heads = max(1, table.appetite.sit(day))
            big = food.servings > 1.5 * table.appetite.people
            pick = picked(Chosen(food, Why.PACE), day, table)
            over, there = laid.beside(pick, table.appetite.sit)
            if 2 * food.servings <= heads and food.at_table is Role.MAIN:
                there = -laid.of[day, food.food]  # so little is a meal with more of the same
            return (
                not (table.for_many(food, heads) and pick.spare <= food.servings / 2),
                round(pick.spare, 6),
                over,
                round(hurried.crowded(food, day, laid), 6),
                day > table.latest(food),
                -heads * big,
                # One after the other: an evening between two of them is too few for a third.
                day.toordinal() if long else 0,
                there,
                laid.of[day, food.food],
                laid.of[day, food.group],
                laid.all[day],
                day.toordinal(),
            )

        days = _days(one, table, evenings or {pick.day for pick in picks})
        days = [day for day in days if while_open(food, day, drawn[food.container])]
        if food.a_head < 1 and not _must(one):  # a small one, once a day
            days = [day for day in days if not laid.of[day, food.food]]
            if not days:
                continue
        if not days:
            missed.append(food)
            continue
        day = min(days, key=full)
        if food.bulk:  # a meal for those who sit there
            enough = food.meal(table.appetite.sit(day))
            if one.why is Why.GUESTS:  # all of theirs at once
                enough = min(enough, for_guests.pop((day, food.container), 0.0))
            elif one.why not in (Why.MUST, Why.DUE) and not one.dish:
                enough -= lies[day, food.container]
            meal = min(left[food.container], enough)
            if meal <= CRUMB or (drawn[food.container] and meal < enough / 2 and not _must(one)):
                continue  # so little is no dish; it stays in its crate
            food = food._replace(servings=meal)
            left[food.container] -= meal
        pick = picked(replace(one, candidate=food), day, table)
        pick = over_two(pick, laid, table.days, table.appetite.sit, _finish_by(food, day))
        picks.append(pick)
        drawn[food.container].append(pick.day)
        lies[pick.day, food.container] += 0.0 if one.dish else food.servings
        laid.put(pick)
    _not_finished(picks, left, table.end)
    picks.sort(key=lambda pick: (pick.day, pick.dish == "", pick.dish, pick.candidate.food))
    planned = {pick.candidate.container for pick in picks}
    order = dict.fromkeys(one.candidate.container for one in chosen)
    return Menu(tuple(picks), tuple(missed), tuple(name for name in order if name in planned))


def _not_finished(picks: list[Pick], left: Mapping[str, float], end: date) -> None:
    """The first meal out of a vessel says how much of it is too much by its last safe day."""
    latest_first = sorted(enumerate(picks), key=lambda one: one[1].day, reverse=True)
    first = {pick.candidate.container: n for n, pick in latest_first if pick.candidate.bulk}
    for container, n in first.items():
        until = picks[n].candidate.safe_until
        if until is not None and until <= end and left[container] > CRUMB:
            picks[n] = replace(picks[n], spare=left[container])


def _first(one: Chosen, table: Table) -> tuple[bool, date, date, float]:
    """What lies on a day already, then the nearest date, of fruit also one beyond the week; then
    what needs several days on end."""
    food = one.candidate
    ripest = food.last if food.at_table is Role.FRUIT and food.last else date.max
    return one.day is None, table.latest(food), ripest, -_several(food, table)


def _several(food: Candidate, table: Table) -> float:
    """Servings of it that are for the days after its first."""
    return 0.0 if food.bulk else max(0.0, food.servings - table.appetite.people)


def _must(one: Chosen) -> bool:
    """Whether what is not eaten of it this week is lost, or missed by whoever asked for it."""
    return one.why in (Why.MUST, Why.DUE, Why.KEPT) or bool(one.dish)


def _days(one: Chosen, table: Table, meals: Collection[date]) -> list[date]:
    """The day it must lie on, else those in time, on as few days as meals come from the stores."""
    days = table.possible(one.candidate) if one.candidate.may_open else []
    if one.day is not None:
        return [day for day in days if day == one.day] or days
    # Past its best it is still safe: better a day late than all on one.
    full = len(meals) >= table.appetite.meals
    return (full and [day for day in days if day in meals]) or days


def while_open(food: Candidate, day: date, drawn: Sequence[date]) -> bool:
    """Whether a meal out of a closed vessel lies within the days that it keeps from its first."""
    if not food.bulk or food.open_days is None:
        return True
    return (max([day, *drawn]) - min([day, *drawn])).days <= food.open_days


def begun_on(food: Candidate, menu: Menu) -> list[date]:
    """The days on which a meal of the same vessel, once open, lies already."""
    if not food.bulk or food.open_days is None:
        return []
    return [pick.day for pick in menu.picks if pick.candidate.container == food.container]


def picked(one: Chosen, day: date, table: Table) -> Pick:
    """Opened on `day` and eaten day by day, a serving a person, until it is finished."""
    food = one.candidate
    last = _finish_by(food, day)
    days, left = [], food.servings
    for meal in (d for d in table.days if day <= d <= last):
        days.append(meal)
        left -= table.appetite.sit(meal)
        if left <= CRUMB:
            break
    rest = 0.0 if food.bulk else max(0.0, left)
    later = min(rest, _next_week(table, last, rest))
    thaw = day - timedelta(days=food.thaw_days) if food.frozen and food.thaw_days else None
    until = None if last == date.max else last
    parts = tuple(_parts(food.servings, days, table.appetite.sit))
    return Pick(food, tuple(days), parts, one.why, thaw, one.dish, rest - later, later, until)


def _next_week(table: Table, last: date, rest: float) -> float:
    """Servings that are eaten after this week's end up to `last`; more than `rest` is not asked."""
    if last == date.max:
        return rest
    return float(sum(map(table.appetite.sit, days_from(table.next_week, (last - table.end).days))))


def _finish_by(one: Candidate, day: date) -> date:
    """Its last day once it is open: the one running, or the one that opening begins."""
    if one.bulk:
        return day
    last = one.safe_until or date.max
    if one.must or one.open_days is None:
        return last
    return min(last, day + timedelta(days=one.open_days))
