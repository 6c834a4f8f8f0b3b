"""From a store of an earlier version to today's, all in the caller's transaction."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator
from datetime import UTC, date, datetime

from pantry_tui.core.log.events import Event, new_id
from pantry_tui.core.log.older import of_settings, of_week, read_event, settle
from pantry_tui.store import log
from pantry_tui.store.check import check
from pantry_tui.store.rebuild import beside, lead_anew


def typed_log(db: sqlite3.Connection) -> None:
    """The untyped log, the settings and the week beside it become typed events; none is lost."""
    older = "SELECT id, recorded, day, did, batch, containers, data FROM events ORDER BY id"
    events = [
        read_event(
            id_, recorded, date.fromisoformat(day), did, batch, json.loads(ids), json.loads(data)
        )
        for id_, recorded, day, did, batch, ids, data in db.execute(older).fetchall()
    ]
    for event in (*_said_beside(db, events[0] if events else None), *settle(events)):
        log.append(db, event)
    beside(db)
    # A count that was begun names lines by their state, which is called otherwise now.
    db.execute("UPDATE drafts SET data = replace(data, '|working\"', '|in progress\"')")
    db.execute("DELETE FROM drafts WHERE name IN ('week', 'asides')")


def _said_beside(db: sqlite3.Connection, first: Event | None) -> Iterator[Event]:
    """Nobody knows when it was said: before all else, so that undo takes back what was booked."""
    now = datetime.now(UTC).astimezone()
    if first is not None:
        now = datetime.fromtimestamp(int(first.id[:13]) / 1000 - 60, UTC)
    payloads = list(of_settings(dict(db.execute("SELECT name, value FROM settings"))))
    for (data,) in db.execute("SELECT data FROM drafts WHERE name = 'week'"):
        week = of_week(json.loads(data))
        payloads += [week] if week is not None else []
    after = ""
    for payload in payloads:
        after = new_id(now, after)
        yield Event(after, now.isoformat(timespec="seconds"), now.date(), payload)


#: All that is made from the log, and had other columns at times.
_BESIDE = ("lines", "totals", "stood", "past", "places", "codes", "marked", "sums")


def counted(db: sqlite3.Connection, tables: Iterable[str]) -> None:
    """Counts and sums of a log that was written without them; what stands beside it is made from
    it again, the log itself is left as it is. Raises Damaged where a check value does not hold.

    `tables` are the statements that make those of today.
    """
    for table in _BESIDE:
        db.execute(f"DROP TABLE IF EXISTS {table}")
    for statement in tables:
        if any(f" {table} (" in statement for table in _BESIDE):
            db.execute(statement)
    lead_anew(db)
    db.execute("ALTER TABLE drafts ADD COLUMN hash INTEGER NOT NULL DEFAULT 0")
    for name, data in db.execute("SELECT name, data FROM drafts").fetchall():
        db.execute("UPDATE drafts SET hash = ? WHERE name = ?", (check((name, data)), name))
