"""Whether the stock tables may be read as they lie: asked before anything is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.reference.compiled import rules_fingerprint
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry


def ready(p: Pantry) -> None:
    """Before anything is read off the tables: what is marked is judged, and what lies in them is
    as it was written. Cheap when nothing has changed."""
    p.settle()
    if p.ready_for == _moment(p):
        return
    if not p.store.writing:
        p.catch_up()
    with reading(p.path):
        now, day = p.clock.minute_now, p.today.isoformat()
        if not table.as_they_lie(p.store.db, rules_fingerprint(), now, day):
            from pantry_tui.services.stock.tables import put_right

            put_right(p)
    p.ready_for = _moment(p)


def _moment(p: Pantry) -> tuple[object, ...]:
    """What was written, and the minute: two hours in the warm run out while a list is open."""
    return p.store.version(), p.today, p.clock.minute_now


def run_out(p: Pantry) -> bool:
    """Whether something that was shown stood in the warm until its hours ran out by this minute."""
    sql = "SELECT 1 FROM main.lines WHERE again_at <= ? LIMIT 1"
    with reading(p.path):
        return p.store.db.execute(sql, (p.clock.minute_now,)).fetchone() is not None
