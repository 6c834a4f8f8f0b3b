"""Whether the stock tables may be read as they lie: asked before anything is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.errors import Refused
from pantry_tui.reference.compiled import rules_fingerprint
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry


UPDATED = "pantry-tui was updated: close and open it again."


def refuse_if_updated(p: Pantry) -> None:
    """Whoever opened the store last judges it. A process that has judged by its rules and finds
    those of another program there is the older one of the two: were it to go on, both would judge
    everything again in turn, one of them by rules that are out of date. Raises Refused."""
    if p.has_judged and p.store.meta("rules") not in ("", rules_fingerprint()):
        raise Refused(UPDATED)


def waits(p: Pantry) -> bool:
    """Whether anything is to be judged before the tables may be read."""
    with reading(p.path):
        return table.waits(p.store.db, rules_fingerprint())


def ready(p: Pantry, *, all_of_it: bool = True) -> None:
    """Before anything is read off the tables: what is marked is judged, and what lies in them is
    as it was written. Cheap when nothing has changed. Raises Refused where the program was updated
    meanwhile.

    Not `all_of_it`: for whoever reads the lines of one batch or food, and looks those over."""
    p.settle()
    if _moment(p) in ((p.ready_for,) if all_of_it else (p.ready_for, p.judged_for)):
        return
    if not p.store.writing:
        p.catch_up()
    with reading(p.path):
        refuse_if_updated(p)
        now, day = p.clock.minute_now, p.today.isoformat()
        # All lines are looked at once, and again when another window has written.
        look = all_of_it and p.looked_at != p.store.version()
        if look:
            p.looked_at = p.store.version()
        if not table.as_they_lie(p.store.db, rules_fingerprint(), now, day, look=look):
            from pantry_tui.services.stock.tables import put_right

            put_right(p, look=all_of_it)
        # Not so in a file that may not be written: it is judged in memory, again and again.
        p.has_judged = p.store.meta("rules") == rules_fingerprint()
    p.judged_for = _moment(p)
    if all_of_it:
        p.ready_for = p.judged_for


def _moment(p: Pantry) -> tuple[object, ...]:
    """What was written, and the minute: two hours in the warm run out while a list is open."""
    return p.store.version(), p.today, p.clock.minute_now


def run_out(p: Pantry) -> bool:
    """Whether something that was shown stood in the warm until its hours ran out by this minute."""
    sql = "SELECT 1 FROM main.lines WHERE again_at <= ? LIMIT 1"
    with reading(p.path):
        return p.store.db.execute(sql, (p.clock.minute_now,)).fetchone() is not None
