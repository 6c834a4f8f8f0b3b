"""What is too big for the usual table: a whole bird waits for a day on which many sit there, and is
measured by the heads of that day."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from datetime import date, timedelta
from math import inf

from pantry_tui.core.plan.days import BIG, Table
from pantry_tui.core.plan.lots import discarded_by, last_week
from pantry_tui.core.plan.menu import Candidate, Menu
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.schedule import SOON
from pantry_tui.core.words import Role

_CRUMB = 1e-9
_MAIN = {Role.MAIN}
#: So far ahead guests are looked at, from the week after on.
_KNOWN = timedelta(weeks=5)


def too_big(
    free: Mapping[int, Candidate], table: Table, chosen: Iterable[Candidate]
) -> dict[int, Candidate]:
    """What is too big for this week's table waits for guests; when its date is near it comes, one
    a week."""
    big = {n: one for n, one in free.items() if table.outsized(one)}
    if not any(map(table.outsized, chosen)):
        last = {n: last_week(one.last, table) for n, one in big.items() if not awaited(one, table)}
        near = [n for n, week in last.items() if week is not None and week <= SOON]
        if near:
            del big[min(near, key=lambda n: (last[n] or 0, n))]
    return big


def awaited(one: Candidate, table: Table) -> bool:
    """Whether so many as it serves sit there in the weeks after this one, before its date."""
    last = table.next_week + _KNOWN
    if one.last is not None:
        last = min(last, one.last)
    sits = table.appetite.table.items()
    return any(
        one.servings <= BIG * heads and heads > table.appetite.people
        for day, heads in sits
        if table.next_week <= day <= last
    )


def for_guests(
    day: date,
    free: Mapping[int, Candidate],
    table: Table,
    laid: Menu,
    enough: Callable[[Candidate], bool] = lambda _: False,
) -> tuple[int, Candidate] | None:
    """The next main, in the order of eating, that is too big for the usual table and not for the
    guests of that day, thawing in time from a day on which somebody is there; None where none can,
    a main is `laid` for them already, or what must be discarded by the end of the week needs that
    day. `enough` says of which the household wants no more."""
    sit = table.appetite.sit(day)
    if sit <= table.appetite.people or laid.laid(day, _MAIN) >= sit / 2:
        return None
    birds = ((n, one) for n, one in free.items() if _waits(one, table) and not enough(one))
    ready = ((n, _taken_out(one, day, table)) for n, one in birds)
    fits = ((n, one) for n, one in ready if table.serves(one, day) and one.may_open)
    found = next(fits, None)
    if found is None:
        return None
    others = [other for other in table.days if other != day]
    room = sum(table.appetite.sit(other) - laid.laid(other, _MAIN) for other in others)
    lost = (one for n, one in free.items() if n != found[0] and discarded_by(one, table.end))
    need = sum(one.servings for one in lost if one.at_table is Role.MAIN and table.possible(one))
    return found if need <= room else None


def may_come(one: Candidate, day: date, table: Table) -> bool:
    """Whether what is too big may be the main of that day where nothing smaller stands: most sit
    there, no more of it is left than at a usual table, and it waits for no guests."""
    open_days = one.open_days
    usual = inf if open_days is None else table.appetite.people * (open_days + 1)
    left = max(0.0, one.servings - usual)
    fits = day in table.fullest(one) and table.wasted(one, day) <= left + _CRUMB
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


def _waits(one: Candidate, table: Table) -> bool:
    big = not one.bulk and one.servings > BIG * table.appetite.people
    return big and not one.must and one.at_table is Role.MAIN
