"""What must be taken out in this week for guests of the next: a whole bird thaws for days."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.thawing import MOST_DAYS
from pantry_tui.core.plan.appetite import at_table, days_from
from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.guests import for_guests
from pantry_tui.core.plan.menu import Menu
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import unasked
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.stock.pick import name_of

_NOTHING_LAID = Menu((), ())


def take_out_ahead(p: Pantry, draft: WeekDraft, planned: Collection[str]) -> Iterator[str]:
    """The bird for each day of guests soon after this week, where it must begin to thaw within it,
    but for what is `planned` already."""
    eats = appetite(p)
    first, after = draft.first(p.today), draft.end + timedelta(days=1)
    days = [day for day in days_from(after, MOST_DAYS) if eats.sit(day) > eats.people]
    if not days:
        return
    left_out = draft.wishes.left_out
    stand = [
        one
        for one in unasked(p, first)
        if one.container not in planned
        and one.food not in left_out
        and eats.eats(one.food, one.group)
    ]
    for day in days:
        table = Table(eats, first, frozenset(), (day - first).days + 1)
        found = for_guests(day, dict(enumerate(stand)), table, _NOTHING_LAID)
        if found is None or not found[1].thaw_days:
            continue
        one = found[1]
        del stand[found[0]]
        out = day - timedelta(days=one.thaw_days)
        if first <= out <= draft.end:
            container = p.stock.containers[one.container]
            yield (
                f"For {dates.say(day)}, {at_table(eats.sit(day))}: {name_of(p, container)} "
                f"{one.food} could be the main; move it from {p.where(container)} to the fridge on "
                f"{dates.say(out)} to thaw."
            )
