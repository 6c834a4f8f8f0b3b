"""From a store of an earlier version to today's, all in the caller's transaction."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator
from datetime import UTC, date, datetime

from pantry_tui.core.log.events import Event, new_id, standing
from pantry_tui.core.log.fold_place import fold_place
from pantry_tui.core.log.older import of_settings, of_week, read_event, settle
from pantry_tui.store import log, places


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
    for (place,) in db.execute("SELECT DISTINCT place FROM of_place").fetchall():
        places.save(db, place, fold_place(standing(log.of_place(db, place))))
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
