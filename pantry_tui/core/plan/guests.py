"""What is big for the usual table, a whole bird or a family pack: it waits for a day on which many
sit there, and is measured by the heads of that day. Beside it those many get what fills and what is
green, which no other evening of the week has to go without."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date, timedelta
from math import inf

from pantry_tui.core.plan.appetite import STAPLES
from pantry_tui.core.plan.days import BIG, MANY, Table
from pantry_tui.core.plan.lots import discarded_by, last_week
from pantry_tui.core.plan.menu import Candidate, Menu
from pantry_tui.core.plan.pace import CRUMB, FAR
from pantry_tui.core.plan.plate import GREENS, is_garden, is_green
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.schedule import SOON
from pantry_tui.core.words import Role

_MAIN = {Role.MAIN}
#: So far ahead guests are looked at, from the week after on: for what is too big for the usual
#: table, and for what that could eat.
_KNOWN, _SOON = timedelta(weeks=5), timedelta(days=6)


def too_big(
    free: Mapping[int, Candidate], table: Table, chosen: Iterable[Candidate]
) -> dict[int, Candidate]:
    """What is too big for this week's table waits for guests, and one that is big for it where they
    come soon after; when its date is near it comes. Of what leaves the usual table a meal or more
    one comes in a week, and none beside one that is `chosen`, but what would be lost."""
    big = {n: one for n, one in free.items() if table.outsized(one)}
    big |= _for_next_week(free, big, table)
    waits = {
        n: one
        for n, one in free.items()
        if (n in big or table.feast(one)) and not discarded_by(one, table.end)
    }
    if any(map(table.feast, chosen)):
        return waits
    last = {n: last_week(one.last, table) for n, one in waits.items() if not awaited(one, table)}
    near = [n for n in last if n not in big or _is_near(last[n])]
    if near:
        del waits[min(near, key=lambda n: (last[n] or 0 if _is_near(last[n]) else FAR, n))]
    return waits


def _is_near(week: int | None) -> bool:
    return week is not None and week <= SOON


def second(one: Candidate, day: date, table: Table, chosen: Iterable[Candidate]) -> bool:
    """Whether it would leave a meal or more to the usual table of that day beside another that
    does, and is not lost by waiting."""
    if not table.feast(one) or discarded_by(one, table.end):
        return False
    return not table.for_many(one, table.appetite.sit(day)) and any(map(table.feast, chosen))


def awaited(one: Candidate, table: Table) -> bool:
    """Whether so many as it serves sit there in the weeks after this one, before its date."""
    return any(_for(one, heads, day, table) for day, heads in _guests_ahead(table))


def _guests_ahead(table: Table) -> list[tuple[date, int]]:
    """The days after this week on which more sit there than usual."""
    usual, last = table.appetite.people, table.next_week + _KNOWN
    sits = sorted(table.appetite.table.items())
    return [(day, sit) for day, sit in sits if table.next_week <= day <= last and sit > usual]


def _for(one: Candidate, heads: int, day: date, table: Table) -> bool:
    """Whether it can wait for so many on a day after this week."""
    if one.last is not None and day > one.last:
        return False
    if one.servings <= BIG * table.appetite.people and day > table.next_week + _SOON:
        return False
    return one.servings <= BIG * heads and not one.must and table.for_many(one, heads)


def _rank(one: Candidate, heads: int, table: Table) -> tuple[bool, bool]:
    """What no usual table could eat first, then what feeds all of them."""
    return one.servings <= BIG * table.appetite.people, one.servings < heads


def _for_next_week(
    free: Mapping[int, Candidate], big: Mapping[int, Candidate], table: Table
) -> dict[int, Candidate]:
    """One for each day of guests soon after this week for which nothing `big` waits."""
    found: dict[int, Candidate] = {}
    taken: set[int] = set()
    for day, heads in _guests_ahead(table):
        ways = [(_rank(one, heads, table), n) for n, one in free.items() if n not in taken]
        fits = [(rank, n) for rank, n in ways if _for(free[n], heads, day, table)]
        if fits:
            _, first = min(fits)
            taken.add(first)
            if first not in big:
                found[first] = free[first]
    return found


def for_guests(
    day: date,
    free: Mapping[int, Candidate],
    table: Table,
    laid: Menu,
    enough: Callable[[Candidate], bool] = lambda _: False,
) -> tuple[int, Candidate] | None:
    """The main that is too big for the usual table, or big for it, and not for the guests of that
    day, of those alike the next in the order of eating, thawing in time from a day on which
    somebody is there; None where none can, a main is `laid` for them already, or what must be
    discarded by the end of the week needs that day. `enough` says of which the household wants no
    more."""
    sit = table.appetite.sit(day)
    if sit <= table.appetite.people or laid.laid(day, _MAIN) >= sit / 2:
        return None
    many = ((n, one) for n, one in free.items() if table.for_many(one, sit))
    birds = ((n, one) for n, one in many if not one.must and not enough(one))
    ready = [(n, _taken_out(one, day, table)) for n, one in birds]
    ready.sort(key=lambda item: (_left_over(item[1], day, table), *_rank(item[1], sit, table)))
    fits = ((n, one) for n, one in ready if table.serves(one, day) and one.may_open)
    found = next(fits, None)
    if found is None:
        return None
    others = [other for other in table.days if other != day]
    room = sum(max(0.0, table.appetite.sit(other) - laid.laid(other, _MAIN)) for other in others)
    lost = (one for n, one in free.items() if n != found[0] and discarded_by(one, table.end))
    need = sum(one.servings for one in lost if one.at_table is Role.MAIN and table.possible(one))
    return found if need <= room else None


def _left_over(one: Candidate, day: date, table: Table) -> bool:
    """Whether a meal of it is lost when it comes on that day: all are away on the next."""
    return table.wasted(one, day) + CRUMB >= table.appetite.people


def beside_it(
    day: date, order: Sequence[str], free: Mapping[int, Candidate], table: Table, laid: Menu
) -> set[int]:
    """Of what stands what all who sit there on a day of many eat beside the main and what is `laid`
    for them: a serving a head that fills, and of what is green as much as makes a meal. Foods come
    in that `order`, and of none more than half: there are other evenings."""
    sit = table.appetite.sit(day)
    if sit < MANY * table.appetite.people:
        return set()
    taken: set[int] = set()
    on = [(pick.candidate, pick.on(day)) for pick in laid.picks if day in pick.days]
    for suits, a_head in ((_fills, 1.0), (_is_side, GREENS), (is_garden, GREENS)):
        need = a_head * sit - sum(n / one.a_head for one, n in on if suits(one))
        for food in order:
            mine = ((n, one) for n, one in free.items() if one.food == food and suits(one))
            some = [(n, one) for n, one in mine if n not in taken]
            most = sum(one.servings for _, one in some) / 2
            for number, one in some:
                if need <= CRUMB or one.servings > most + CRUMB:
                    break
                if one.may_open and table.serves(one, day):
                    taken.add(number)
                    on.append((one, one.servings))
                    need -= one.servings
                    most -= one.servings
    return taken


def _fills(one: Candidate) -> bool:
    return one.at_table is Role.SIDE and one.food in STAPLES


def _is_side(one: Candidate) -> bool:
    return one.at_table is Role.SIDE and is_green(one)


def may_come(one: Candidate, day: date, table: Table) -> bool:
    """Whether what is too big may be the main of that day where nothing smaller stands: most sit
    there, no more of it is left than at a usual table, and it waits for no guests."""
    open_days = one.open_days
    usual = inf if open_days is None else table.appetite.people * (open_days + 1)
    left = max(0.0, one.servings - usual)
    fits = day in table.fullest(one) and table.wasted(one, day) <= left + CRUMB
    return fits and not awaited(one, table)


def _taken_out(one: Candidate, day: date, table: Table) -> Candidate:
    """The same, taken out as many days sooner as nobody is there for it, while it keeps so long
    once it is thawed: then it keeps so much less."""
    if not one.frozen or table.appetite.takes_out(day, one.thaw_days):
        return one
    for sooner in range(1, (one.open_days or 0) + 1):
        thaws = one.thaw_days + sooner
        if table.appetite.takes_out(day, thaws):
            return one._replace(thaw_days=thaws, opened=keeps((one.open_days or 0) - sooner))
    return one
