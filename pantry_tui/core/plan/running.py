"""How many evenings running one food is the main: no more than two, where another lies in the week
that can change places with it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from itertools import count, groupby, takewhile
from operator import itemgetter

from pantry_tui.core.plan.balance import chosen_as, settle
from pantry_tui.core.plan.days import Chosen, Table, picked, spread
from pantry_tui.core.plan.menu import Candidate, Menu, Pick, Why
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.words import Role

#: So many evenings running may have the same main, where mains can change places; with one more
#: another food comes on the next of them. Our own choice.
IN_A_ROW = 2
_STAYS = frozenset({Why.KEPT, Why.GUESTS})
_MAIN = frozenset({Role.MAIN})
#: What of a week changes places: its mains in the order of their days.
_Order = Sequence[tuple[Pick, tuple[date, ...]]]


def once_more(day: date, some: Mapping[int, Candidate], menu: Menu) -> set[int]:
    """Of `some` those whose food is the only main of more than so many evenings just before that
    day and after it."""
    mains: dict[date, set[str]] = defaultdict(set)
    for pick in _mains(menu):
        for on in pick.days:
            mains[on].add(pick.candidate.food)

    def run(food: str, step: int) -> int:
        days = (day + timedelta(days=step * n) for n in count(1))
        return sum(1 for _ in takewhile(lambda on: mains.get(on) == {food}, days))

    foods = {food for of in mains.values() for food in of}
    again = {food for food in foods if run(food, 1) + run(food, -1) > IN_A_ROW}
    return {number for number, one in some.items() if one.food in again}


def parted(chosen: Sequence[Chosen], table: Table, menu: Menu) -> bool:
    """Mains that may lie on another evening change places, so that fewer evenings running have the
    same; each lies no later than it is wanted and no more of it is wasted. Whether any moved."""
    order: _Order = [(pick, pick.days) for pick in _mains(menu)]
    while many := _evenings_too_many(order, table):
        moved = ((_evenings_too_many(one, table), one) for one in _moved(order, table))
        left, better = min(moved, key=itemgetter(0), default=(many, order))
        if left >= many:
            break
        order = better
    moves = [(pick, days) for pick, days in order if days != pick.days]
    if not moves:
        return False
    lay = [one.day for one in chosen]
    settle(chosen, menu)
    found = [(next(chosen_as(chosen, pick, pick.day)), days[0]) for pick, days in moves]
    for number, day in found:
        chosen[number].day = day
    after = spread(chosen, table)
    half = ((day, table.appetite.sit(day) / 2) for day in table.days)
    if all(after.laid(day, _MAIN) >= min(menu.laid(day, _MAIN), least) for day, least in half):
        return True
    # An evening without enough of a main is worse than one more of the same.
    for one, was in zip(chosen, lay, strict=True):
        one.day = was
    return False


def _mains(menu: Menu) -> list[Pick]:
    return [pick for pick in menu.picks if pick.candidate.at_table is Role.MAIN]


def _evenings_too_many(order: _Order, table: Table) -> int:
    """Those beyond so many of runs in which more than one container of a food is eaten."""
    by_day: dict[date, set[tuple[str, str]]] = {day: set() for day in table.days}
    for pick, days in order:
        for day in days:
            by_day[day].add((pick.candidate.food, pick.candidate.container))
    foods = ((_only(mains), mains) for mains in by_day.values())
    over = 0
    for food, run in groupby(foods, key=lambda one: one[0]):
        evenings = list(run)
        several = len({one for _, mains in evenings for one in mains}) > 1
        over += max(0, len(evenings) - IN_A_ROW) if food and several else 0
    return over


def _only(mains: set[tuple[str, str]]) -> str:
    foods = {food for food, _ in mains}
    return foods.pop() if len(foods) == 1 else ""


def _moved(order: _Order, table: Table) -> Iterator[_Order]:
    """Each order in which one main has moved before or behind another, the evenings of those
    between them dealt out anew."""
    for i, one in enumerate(order):
        for j in range(len(order)):
            first, last = min(i, j), max(i, j)
            some = [*order[first:i], *order[i + 1 : last + 1]]
            some = [*some, one] if j > i else [one, *some]
            if i != j and (dealt := _dealt(order[first : last + 1], some, table)):
                yield [*order[:first], *dealt, *order[last + 1 :]]


def _dealt(was: _Order, order: _Order, table: Table) -> _Order | None:
    """The evenings of `was` in that order; None where one of them cannot lie so."""
    evenings = [day for _, days in was for day in days]
    if len(set(evenings)) < len(evenings) or evenings != sorted(evenings):
        return None  # two mains on one evening have their reason
    found = []
    for pick, days in order:
        mine, evenings = tuple(evenings[: len(days)]), evenings[len(days) :]
        if mine != days and not _may_lie(pick, mine, table):
            return None
        found.append((pick, mine))
    return found


def _may_lie(pick: Pick, days: tuple[date, ...], table: Table) -> bool:
    one, day = pick.candidate, days[0]
    if pick.dish or pick.later or pick.why in _STAYS or (one.bulk and one.open_days is not None):
        return False
    in_time = day in table.possible(one) and day <= max(table.latest(one), pick.day)
    lies = picked(Chosen(one, pick.why), day, table)
    return in_time and lies.days == days and lies.spare <= pick.spare + CRUMB
