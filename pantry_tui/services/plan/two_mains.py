"""Why two mains lie on one evening: each has an evening of its own where one is free in time."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.model import Container
from pantry_tui.core.plan.appetite import days_from
from pantry_tui.core.plan.menu import Why
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.words import Role
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.instead import soonest
from pantry_tui.services.plan.weekdraft import WeekDraft, days_at_home, fit_on


class _Main(NamedTuple):
    """A main on its days to come, with the servings of it that one of them has at the most."""

    entry: Entry
    first: Container
    food: str
    days: tuple[date, ...]
    servings: float


def second_mains(
    p: Pantry, draft: WeekDraft, here: Sequence[tuple[Entry, Sequence[Container]]]
) -> Mapping[Entry, str]:
    """For each main of the week that is opened on an evening that has another already, more than is
    eaten on it with both: beside which, and that no other evening is free, or which one is. What
    the household put there itself, and a dish, needs no reason."""
    first = draft.first(p.today)
    mains = [one for entry, left in here for one in _main(p, entry, left, first)]
    by_day: dict[date, list[_Main]] = defaultdict(list)
    for one in mains:
        for day in one.days:
            by_day[day].append(one)
    found: dict[Entry, str] = {}
    for one in mains:
        day = one.days[0]
        heads = appetite(p).sit(day)
        beside = [other for other in by_day[day] if other is not one]
        others = [other for other in beside if other.food != one.food] or beside
        kept = one.entry.dish or one.entry.why == Why.KEPT
        # Of two that are opened on one evening the one that could wait tells it.
        told = any(other.entry in found and other.days[0] == day for other in others)
        enough = sum(min(heads, other.servings) for other in beside)
        if kept or told or not others or enough < heads - CRUMB:
            continue
        free = [d for d in _free(p, draft, one) if not by_day[d]]
        foods = " and ".join(dict.fromkeys(other.food for other in others))
        where = (
            f"it could also come on {dates.say(free[0])}"
            if free
            else "no other evening on which it could come is free"
        )
        found[one.entry] = f"A second main beside {foods} that evening: {where}."
    return found


def _main(p: Pantry, entry: Entry, left: Sequence[Container], first: date) -> Iterator[_Main]:
    batch = p.stock.batches[left[0].batch]
    food = batch.food
    role = role_at_table(p, food.name, food.group, batch.method, drawn=left[0].bulk)
    days = tuple(day for day in days_at_home(p, appetite(p), entry) if day >= first)
    if role is Role.MAIN and days:
        yield _Main(entry, left[0], food.name, days, entry.servings / len(entry.days))


def _free(p: Pantry, draft: WeekDraft, one: _Main) -> Iterator[date]:
    """The evenings of the week on which it could be opened: somebody sits there, it is fit, and
    thawed by then."""
    eats = appetite(p)
    thaws = (one.entry.days[0] - one.entry.thaw_by).days if one.entry.thaw_by else 0
    ready = soonest(p, draft, thaws)
    for day in days_from(ready, (draft.end - ready).days + 1):
        at_home = eats.sit(day) > 0 and day not in draft.wishes.out
        if at_home and eats.takes_out(day, thaws) and fit_on(p, one.first, day):
            yield day
