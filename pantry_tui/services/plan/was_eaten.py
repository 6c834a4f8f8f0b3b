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
NOTHING = "nothing eaten up yet"


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
                what = _what(p, entry, id_, booked[group])
                if what is None:
                    continue
                batch = p.stock.batches[p.stock.containers[id_].batch]
                name = f"{batch.code} {batch.food.name}"
                of_day[what] += [] if name in of_day[what] else [name]
    for day in sorted(found):
        yield day, _told(found[day])


def _what(p: Pantry, entry: Entry, container: str, events: Sequence[Event]) -> str | None:
    """As it was told when it was booked. Of what was open before nothing is booked: on a day of the
    menu it was eaten of, and of a relish beside the meals nobody knows."""
    mine = [one for one in events if container in getattr(one.payload, "containers", ())]
    kinds: tuple[tuple[type, str], ...] = (
        (said.Use, EATEN),
        (said.Thaw, THAWED),
        (said.Open, OPENED),
    )
    for kind, what in kinds:
        if any(isinstance(one.payload, kind) for one in mine):
            return what
    return None if beside(p, entry) else EATEN


def _told(found: dict[str, list[str]]) -> str:
    """ "5K chicken stock; set to thaw: 6C strawberries"."""
    parts = [", ".join(found[EATEN]) or NOTHING]
    parts += [f"{what}: {', '.join(found[what])}" for what in (OPENED, THAWED) if found[what]]
    return "; ".join(parts)
