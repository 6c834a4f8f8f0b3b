"""Events as rows of the log, and which batches and places each speaks of."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from pantry_tui.core.log.codec import read, write
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import (
    NAME_OF,
    Payload,
    PutUp,
    Redo,
    Relabelled,
    Undo,
    place_of,
    touches,
)
from pantry_tui.store import codes, sums
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged

COLUMNS = "id, recorded, day, at, did, together, payload, hash"
_Row = tuple[str, str, str, int | None, str, str, str, int]


def append(db: sqlite3.Connection, event: Event) -> None:
    """One event, with what it speaks of."""
    lead_to(db, event, insert(db, event))


def insert(db: sqlite3.Connection, event: Event) -> int:
    """The row of an event alone; its check value."""
    day = event.day.isoformat()
    kind = NAME_OF[type(event.payload)]
    row = (event.id, event.recorded, day, event.at, kind, event.together, write(event.payload))
    value = check(row)
    db.execute("INSERT INTO log VALUES (?, ?, ?, ?, ?, ?, ?, ?)", (*row, value))
    return value


def lead_to(db: sqlite3.Connection, event: Event, value: int) -> None:
    """What leads to a row of the log with that check value, counted under all that it is of."""
    payload = event.payload
    if isinstance(payload, Undo | Redo):
        named = _take_back(db, event.id, payload)
    else:
        named = _happened(db, event.id, payload)
    sums.add(db, ("log", *named), value)


def _happened(db: sqlite3.Connection, event: str, payload: Payload) -> list[str]:
    """What leads to an event; the names under which it counts."""
    if isinstance(payload, PutUp):
        row = payload.code, payload.batch
        if db.execute("INSERT OR IGNORE INTO codes VALUES (?, ?)", row).rowcount:
            sums.add(db, ("codes",), check(row))
    if isinstance(payload, Relabelled):
        codes.give(db, payload.was, payload.other)
        codes.give(db, payload.code, payload.batch)
    return _speaks_of(db, event, payload)


def _speaks_of(db: sqlite3.Connection, id_: str, payload: Payload) -> list[str]:
    """The event of that id speaks of all that `payload` speaks of; the names of what it did not
    speak of before."""
    batches, place = touches(payload), place_of(payload)
    named = [("batch", batch) for batch in batches]
    if place or not batches:  # of neither batch nor place: of the household
        named.append(("place", place))
    return [
        f"{what}:{name}"
        for what, name in named
        if db.execute(f"INSERT OR IGNORE INTO of_{what} VALUES (?, ?)", (name, id_)).rowcount
    ]


def _take_back(db: sqlite3.Connection, event: str, payload: Undo | Redo) -> list[str]:
    """An undo or redo speaks of all that its events spoke of; an undo that was redone is spent."""
    if isinstance(payload, Redo):
        _undone(db, payload.undo)
    named = []
    for id_ in payload.events:
        if isinstance(payload, Undo):
            _undone(db, id_)
        elif db.execute("DELETE FROM undone WHERE event = ?", (id_,)).rowcount:
            sums.add(db, ("undone",), check((id_,)), -1)
        for one in select(db, "WHERE id = ?", (id_,)):
            named += _speaks_of(db, event, one.payload)
    return named


def _undone(db: sqlite3.Connection, id_: str) -> None:
    if db.execute("INSERT OR IGNORE INTO undone VALUES (?)", (id_,)).rowcount:
        sums.add(db, ("undone",), check((id_,)))


def select(db: sqlite3.Connection, where: str = "", values: Sequence[object] = ()) -> list[Event]:
    """The events of a condition, in recorded order. Raises ValueError (Damaged where a row is
    hurt), KeyError or TypeError for a line that makes no sense."""
    sql = f"SELECT {COLUMNS} FROM log {where} ORDER BY id"
    return [event for event, _ in _events(db.execute(sql, values))]


def with_values(db: sqlite3.Connection) -> list[tuple[Event, int]]:
    """The whole log, each event with its check value; not counted."""
    return list(_events(db.execute(f"SELECT {COLUMNS} FROM log ORDER BY id")))


def _events(rows: Iterable[_Row]) -> Iterator[tuple[Event, int]]:
    """Each with its check value."""
    return map(_event, rows)


def _event(row: _Row) -> tuple[Event, int]:
    id_, recorded, day, at, did, together, payload, hash_ = row
    if check(row[:-1]) != hash_:
        raise Damaged(f"event {id_} of the log is hurt")
    return Event(id_, recorded, date.fromisoformat(day), read(did, payload), at, together), hash_


def _all_of(db: sqlite3.Connection, name: str, words: str, where: str, *of: str) -> list[Event]:
    """The events that count under a name: all of them, or Damaged is raised."""
    sql = f"SELECT {COLUMNS} FROM log {where} ORDER BY id"
    with sums.at_once(db):
        found = list(_events(db.execute(sql, of)))
        sums.must_be(db, name, len(found), sum(value for _, value in found), words)
    return [event for event, _ in found]


def everything(db: sqlite3.Connection) -> list[Event]:
    """The whole log."""
    return _all_of(db, "log", "the log", "")


def of_batch(db: sqlite3.Connection, batch: str) -> list[Event]:
    """All that speaks of a batch, undos and redos too."""
    where = "WHERE id IN (SELECT event FROM of_batch WHERE batch = ?)"
    return _all_of(db, f"batch:{batch}", f"the events of batch {batch}", where, batch)


def of_batches(db: sqlite3.Connection, batches: Sequence[str]) -> dict[str, list[Event]]:
    """The same of several: all that is said of them is read at once."""
    sql = (
        f"SELECT {COLUMNS}, batch FROM of_batch JOIN log ON id = event "
        "WHERE batch IN (SELECT value FROM json_each(?)) ORDER BY id"
    )
    found: dict[str, list[tuple[Event, int]]] = {batch: [] for batch in batches}
    with sums.at_once(db):
        for row in db.execute(sql, (json.dumps(list(batches)),)):
            found[row[-1]].append(_event(row[:-1]))
        for batch, events in found.items():
            amount = sum(value for _, value in events)
            sums.must_be(db, f"batch:{batch}", len(events), amount, f"the events of batch {batch}")
    return {batch: [event for event, _ in events] for batch, events in found.items()}


def of_place(db: sqlite3.Connection, place: str) -> list[Event]:
    """All that speaks of a place itself, undos and redos too."""
    where = "WHERE id IN (SELECT event FROM of_place WHERE place = ?)"
    words = f"the events of place {place}" if place else "what the household said"
    return _all_of(db, f"place:{place}", words, where, place)


def of_household(db: sqlite3.Connection) -> list[Event]:
    """All that speaks of neither batch nor place, undos and redos too."""
    return of_place(db, "")


def of_kinds(db: sqlite3.Connection, kinds: Sequence[str]) -> list[Event]:
    """All standing events of some kinds."""
    holes = ", ".join("?" * len(kinds))
    return select(
        db, f"WHERE did IN ({holes}) AND id NOT IN (SELECT event FROM undone)", tuple(kinds)
    )


def refuse_lost(db: sqlite3.Connection) -> None:
    """The log has as many rows as were written, by an index. Raises Damaged."""
    with sums.at_once(db):
        (count,) = db.execute("SELECT count(*) FROM log").fetchone()
        written = db.execute("SELECT count FROM sums WHERE what = 'log'").fetchone()
    if count != (written or (0,))[0]:
        raise Damaged(f"the log has {count} events, and {(written or (0,))[0]} were written")


def refuse_fewer(found: Sequence[Event], ids: Sequence[str]) -> None:
    """Raises Damaged where an index leads to what is not there."""
    if len(found) != len(ids):
        raise Damaged("events of the log are lost")


def undone(db: sqlite3.Connection) -> set[str]:
    """The ids of the events that do not count."""
    return {id_ for (id_,) in sums.all_of(db, "undone", "event")}


def booked_in_turn(db: sqlite3.Connection, day: date) -> int:
    """How many things were booked on a day of which no hour is known."""
    sql = "SELECT min(at) FROM log WHERE day = ? AND at < 0"
    return -(db.execute(sql, (day.isoformat(),)).fetchone()[0] or 0)


def backwards(db: sqlite3.Connection) -> Iterator[Event]:
    """All events, undone ones too, the newest first."""
    sql = f"SELECT {COLUMNS} FROM log ORDER BY id DESC"
    return (event for event, _ in _events(db.execute(sql)))


def last_id(db: sqlite3.Connection) -> str:
    """The id of the newest event, "" for an empty log."""
    row = db.execute("SELECT max(id) FROM log").fetchone()
    return row[0] or ""


def newest(db: sqlite3.Connection, *, undone: bool = False) -> str:
    """The id of the newest act that stands (or, with `undone`, of the newest undo that nothing
    was booked after), "" when there is none."""
    if undone:
        row = db.execute(
            "SELECT id, did FROM log WHERE did <> 'redo' "
            "AND id NOT IN (SELECT event FROM undone) ORDER BY id DESC LIMIT 1"
        ).fetchone()
        return row[0] if row and row[1] == "undo" else ""
    row = db.execute(
        "SELECT id FROM log WHERE did NOT IN ('undo', 'redo', 'clock_ahead') "
        "AND id NOT IN (SELECT event FROM undone) ORDER BY id DESC LIMIT 1"
    ).fetchone()
    return row[0] if row else ""


def together(db: sqlite3.Connection, group: str) -> list[Event]:
    """The standing events that were booked as one."""
    # The index is of those that were booked as one, and has to be told so.
    where = "together = ? AND together <> '' AND id NOT IN (SELECT event FROM undone)"
    with sums.at_once(db):
        return _together(db, where, group)


def _together(db: sqlite3.Connection, where: str, group: str) -> list[Event]:
    found = select(db, f"WHERE {where}", (group,))
    if found:
        # They were booked in one transaction: what lies between them, and beside, needs no index.
        among = f"SELECT count(*) FROM log NOT INDEXED WHERE id BETWEEN ? AND ? AND {where}"
        ends = _beside(db, found[0].id, found[-1].id)
        if db.execute(among, (*ends, group)).fetchone()[0] != len(found):
            raise Damaged("an index does not lead to all that was booked together")
    return found


def _beside(db: sqlite3.Connection, first: str, last: str) -> tuple[str, str]:
    """The ids before and after these, or they themselves at an end of the log."""
    before, after = db.execute(
        "SELECT (SELECT max(id) FROM log WHERE id < ?), (SELECT min(id) FROM log WHERE id > ?)",
        (first, last),
    ).fetchone()
    return before or first, after or last
