"""Events as rows of the log, and which batches and places each speaks of."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from pantry_tui.core.log.codec import read, write
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import NAME_OF, Payload, PutUp, Redo, Undo, place_of, touches
from pantry_tui.store.check import check

_COLUMNS = "id, recorded, day, at, did, together, payload, hash"
_Row = tuple[str, str, str, int | None, str, str, str, int]


def append(db: sqlite3.Connection, event: Event) -> None:
    """One event, with what it speaks of."""
    day = event.day.isoformat()
    kind = NAME_OF[type(event.payload)]
    row = (event.id, event.recorded, day, event.at, kind, event.together, write(event.payload))
    db.execute("INSERT INTO log VALUES (?, ?, ?, ?, ?, ?, ?, ?)", (*row, check(row)))
    payload = event.payload
    if isinstance(payload, Undo | Redo):
        _take_back(db, event.id, payload)
        return
    _speaks_of(db, event.id, payload)
    if isinstance(payload, PutUp):
        db.execute("INSERT OR IGNORE INTO codes VALUES (?, ?)", (payload.code, payload.batch))


def _speaks_of(db: sqlite3.Connection, id_: str, payload: Payload) -> None:
    """The event of that id speaks of all that `payload` speaks of."""
    about = [(batch, id_) for batch in touches(payload)]
    db.executemany("INSERT OR IGNORE INTO of_batch VALUES (?, ?)", about)
    if place := place_of(payload):
        db.execute("INSERT OR IGNORE INTO of_place VALUES (?, ?)", (place, id_))


def _take_back(db: sqlite3.Connection, event: str, payload: Undo | Redo) -> None:
    """An undo or redo speaks of all that its events spoke of; an undo that was redone is spent."""
    if isinstance(payload, Redo):
        db.execute("INSERT OR IGNORE INTO undone VALUES (?)", (payload.undo,))
    for id_ in payload.events:
        if isinstance(payload, Undo):
            db.execute("INSERT OR IGNORE INTO undone VALUES (?)", (id_,))
        else:
            db.execute("DELETE FROM undone WHERE event = ?", (id_,))
        for one in select(db, "WHERE id = ?", (id_,)):
            _speaks_of(db, event, one.payload)


def select(db: sqlite3.Connection, where: str = "", values: Sequence[object] = ()) -> list[Event]:
    """The events of a condition, in recorded order. Raises ValueError, KeyError or TypeError for
    a line that is hurt."""
    sql = f"SELECT {_COLUMNS} FROM log {where} ORDER BY id"
    return list(_events(db.execute(sql, values)))


def _events(rows: Iterable[_Row]) -> Iterator[Event]:
    for row in rows:
        id_, recorded, day, at, did, together, payload, hash_ = row
        if check(row[:-1]) != hash_:
            raise ValueError(f"line {id_} of the log is hurt")
        yield Event(id_, recorded, date.fromisoformat(day), read(did, payload), at, together)


def of_batch(db: sqlite3.Connection, batch: str) -> list[Event]:
    """All that speaks of a batch, undos and redos too."""
    return select(db, "WHERE id IN (SELECT event FROM of_batch WHERE batch = ?)", (batch,))


def of_place(db: sqlite3.Connection, place: str) -> list[Event]:
    """All that speaks of a place itself, undos and redos too."""
    return select(db, "WHERE id IN (SELECT event FROM of_place WHERE place = ?)", (place,))


def of_kinds(db: sqlite3.Connection, kinds: Sequence[str]) -> list[Event]:
    """All standing events of some kinds."""
    holes = ", ".join("?" * len(kinds))
    return select(
        db, f"WHERE did IN ({holes}) AND id NOT IN (SELECT event FROM undone)", tuple(kinds)
    )


def booked_in_turn(db: sqlite3.Connection, day: date) -> int:
    """How many things were booked on a day of which no hour is known."""
    sql = "SELECT min(at) FROM log WHERE day = ? AND at < 0"
    return -(db.execute(sql, (day.isoformat(),)).fetchone()[0] or 0)


def last_id(db: sqlite3.Connection) -> str:
    """The id of the newest event, "" for an empty log."""
    row = db.execute("SELECT max(id) FROM log").fetchone()
    return row[0] or ""


def newest(db: sqlite3.Connection, *, undone: bool = False) -> str:
    """The id of the newest event that stands (or, with `undone`, of the newest undo that nothing
    was booked after), "" when there is none."""
    if undone:
        row = db.execute(
            "SELECT id, did FROM log WHERE did <> 'redo' "
            "AND id NOT IN (SELECT event FROM undone) ORDER BY id DESC LIMIT 1"
        ).fetchone()
        return row[0] if row and row[1] == "undo" else ""
    row = db.execute(
        "SELECT id FROM log WHERE did NOT IN ('undo', 'redo') "
        "AND id NOT IN (SELECT event FROM undone) ORDER BY id DESC LIMIT 1"
    ).fetchone()
    return row[0] if row else ""


def together(db: sqlite3.Connection, group: str) -> list[Event]:
    """The standing events that were booked as one."""
    # The index is of those that were booked as one, and has to be told so.
    where = "WHERE together = ? AND together <> '' AND id NOT IN (SELECT event FROM undone)"
    return select(db, where, (group,))
