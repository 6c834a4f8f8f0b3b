"""What of an accepted week was eaten on which of its days, and what was only opened or set to
thaw."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import Entry
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.at_table import beside
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.store import log

#: What was done with it on that day, in the order in which it is told.
EATEN, OPENED, THAWED = "", "opened", "set to thaw"
NOTHING = "nothing yet"


def was_eaten(p: Pantry, draft: WeekDraft) -> Iterable[tuple[date, str]]:
    """Day by day; a booking that was taken back is none."""
    found: dict[date, dict[str, list[str]]] = {}
    booked: dict[str, list[Event]] = {}
    for entry in draft.plan or ():
        for day, group in entry.booked:
            if not p.stands(group):
                continue
            if group not in booked:
                booked[group] = log.together(p.store.db, group)
            of_day = found.setdefault(day, {EATEN: [], OPENED: [], THAWED: []})
            for id_ in entry.containers:
                batch = p.stock.batches[p.stock.containers[id_].batch]
                names = of_day[_what(p, entry, id_, day, booked[group])]
                name = f"{batch.code} {batch.food.name}"
                names += [] if name in names else [name]
    for day in sorted(found):
        yield day, _told(found[day])


def _what(p: Pantry, entry: Entry, container: str, day: date, events: Sequence[Event]) -> str:
    """What began to thaw on a day before was eaten on this one, as what was opened for a meal was;
    a relish beside the meals is only opened."""
    mine = [one for one in events if container in getattr(one.payload, "containers", ())]
    if any(isinstance(one.payload, said.Use) for one in mine):
        return EATEN
    if any(isinstance(one.payload, said.Thaw) and one.day >= day for one in mine):
        return THAWED
    opened = any(isinstance(one.payload, said.Open) for one in mine)
    return OPENED if opened and beside(p, entry) else EATEN


def _told(found: dict[str, list[str]]) -> str:
    """ "5K chicken stock; set to thaw: 6C strawberries"."""
    parts = [", ".join(found[EATEN]) or NOTHING]
    parts += [f"{what}: {', '.join(found[what])}" for what in (OPENED, THAWED) if found[what]]
    return "; ".join(parts)
