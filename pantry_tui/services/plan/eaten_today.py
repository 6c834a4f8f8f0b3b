"""What was eaten today without the week: used by hand, or booked by one that is replanned since.
Today's meals ask for it no more.

A week that is only proposed has nothing booked of its own: a main, a side or fruit that was used
today is that of today's meals. Of an accepted week only what it has itself is meant.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.plan.appetite import days_from
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD
from pantry_tui.core.words import Role
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import beside, role_at_table
from pantry_tui.services.plan.portions import leavings_of
from pantry_tui.services.plan.weekdraft import WeekDraft, days_ahead, fit_on
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.stands import of


class _Used(NamedTuple):
    """What was used today of a container."""

    container: str
    code: str
    food: str
    role: Role
    servings: float


class Asked(NamedTuple):
    """What a week still asks for, and what was eaten of it today by hand: "2A eggs, 3A potatoes",
    "" for nothing."""

    entries: tuple[Entry, ...]
    eaten: str = ""


def still_asked(p: Pantry, draft: WeekDraft, entries: Sequence[Entry]) -> Asked:
    """The entries without those of today that were eaten. What must be eaten within the week and
    gave way to another of its kind comes on a day after, on its last day all the same."""
    todays = [one for one in entries if p.today in days_ahead(p, one) and not beside(p, one)]
    used = list(_used_today(p, draft)) if todays else []
    if not used:
        return Asked(tuple(entries))
    left = [one.servings for one in used]
    named: dict[str, None] = {}
    instead: dict[Entry, Entry | None] = {}

    def covers(entry: Entry, meant: Callable[[_Used], bool]) -> bool:
        """Whether what is `meant` of it makes most of that meal; then it is taken for it."""
        mine = [n for n, one in enumerate(used) if meant(one) and left[n] > CRUMB]
        part = entry.servings / len(entry.days)
        if not mine or 2 * sum(left[n] for n in mine) < part:
            return False
        for n in mine:
            taken = min(left[n], part)
            left[n] -= taken
            part -= taken
            named[f"{used[n].code} {used[n].food}"] = None
        return True

    for entry in todays:
        if not _wished(p, draft, entry) and covers(entry, _same_container(entry)):
            instead[entry] = _without(p, entry)
    if draft.plan is None:
        for alike in (_same_food, _same_role):
            for entry in todays:
                if entry in instead or _wished(p, draft, entry):
                    continue
                later = _later(p, draft, entry)
                if later != entry and covers(entry, alike(p, entry)):
                    instead[entry] = later
    kept = (instead.get(one, one) for one in entries)
    return Asked(tuple(one for one in kept if one is not None), ", ".join(named))


def _used_today(p: Pantry, draft: WeekDraft) -> Iterator[_Used]:
    """But for what the week itself has booked of today."""
    booked = {
        id_
        for entry in draft.plan or ()
        for day, group in entry.booked
        if day == p.today and p.stands(group)
        for id_ in entry.containers
    }
    ready(p)
    for gone in leavings_of(p, past(p).values(), p.today, ("used",)):
        batch, id_ = gone.batch, gone.container
        if gone.end != p.today or id_ in booked:
            continue
        drawn = batch.came_at(gone.at).bulk
        role = role_at_table(p, batch.food, batch.group, batch.method, drawn=drawn)
        yield _Used(id_, batch.code, batch.food, role, gone.servings)


def _same_container(entry: Entry) -> Callable[[_Used], bool]:
    return lambda one: one.container in entry.containers


def _same_food(p: Pantry, entry: Entry) -> Callable[[_Used], bool]:
    food = p.stock.batches[p.stock.containers[entry.containers[0]].batch].food.name
    return lambda one: one.food == food


def _same_role(p: Pantry, entry: Entry) -> Callable[[_Used], bool]:
    """Of a dish nothing stands in for another."""
    container = p.stock.containers[entry.containers[0]]
    batch = p.stock.batches[container.batch]
    role = role_at_table(p, batch.food.name, batch.food.group, batch.method, drawn=container.bulk)
    return lambda one: not entry.dish and role in A_HEAD and one.role is role


def _wished(p: Pantry, draft: WeekDraft, entry: Entry) -> bool:
    """Whether the household itself put it on today."""
    pinned = {id_ for id_, day in draft.wishes.pins if day == p.today}
    asked = bool(entry.dish) and draft.wishes.dishes.get(entry.dish) == p.today
    return asked or not pinned.isdisjoint(entry.containers)


def _without(p: Pantry, entry: Entry) -> Entry | None:
    """It without today; None where it has no other day."""
    days = tuple(day for day in entry.days if day != p.today)
    return entry._replace(days=days) if days else None


def _later(p: Pantry, draft: WeekDraft, entry: Entry) -> Entry | None:
    """It without today: on its other days, or on another where it must be eaten within the week;
    itself where there is none, None where it may wait."""
    if (rest := _without(p, entry)) is not None:
        return rest
    here = [p.stock.containers[id_] for id_ in entry.containers]
    last = min((day for one in here if (day := of(p, one).discard_after)), default=date.max)
    if last > draft.end:
        return None
    for day in days_from(p.today + timedelta(days=1), max(0, (last - p.today).days)):
        at_home = appetite(p).sit(day) and day not in draft.wishes.out
        if at_home and all(fit_on(p, one, day) for one in here):
            return entry._replace(days=(day,))
    return entry
