"""Looking a store file over without changing it: is every row what was written?

`glance` reads check values, counts and sums; `examine` also reads every event and compares what
stands beside the log with it. Neither needs the file to open as a store.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing, contextmanager, suppress
from datetime import date, datetime
from pathlib import Path
from typing import NamedTuple

from pantry_tui.core.log.codec import read
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import PutUp, Redo, Relabelled, Undo, place_of, touches
from pantry_tui.core.log.references import unknown
from pantry_tui.errors import BadInput, StoreError
from pantry_tui.store import lines, log, marks, past, places, sums
from pantry_tui.store.check import check
from pantry_tui.store.store import SCHEMA, WAIT_S, held, in_use

#: What makes an event unreadable although its check value holds: it was never written like that.
SENSELESS = (ValueError, LookupError, TypeError, AttributeError, BadInput, RecursionError)

#: What SQLite says of a page that is hurt; its own words may be bytes of that page.
UNREADABLE = (sqlite3.Error, UnicodeDecodeError)

Row = tuple[str, str, str, int | None, str, str, str, int]


class Hurt(NamedTuple):
    """Something that is not as it was written: the event ("" for none), what is wrong with it,
    and the ids of the batches and places that it speaks of."""

    event: str
    what: str
    batches: tuple[str, ...] = ()
    places: tuple[str, ...] = ()


@contextmanager
def looking(path: Path) -> Iterator[sqlite3.Connection]:
    """A connection that cannot write; all that is read through it is of one moment, whoever books
    meanwhile. Raises sqlite3.Error."""
    if os.path.exists(f"{os.path.realpath(path)}-journal"):
        _take_back_half_written(path)
    with closing(_opened(path, "ro")) as db:
        # Text that is no UTF-8 any more is damage to be named, not an error on the way to it, nor
        # when it is looked for elsewhere in the store or written down.
        db.text_factory = lambda raw: raw.decode("utf-8", "backslashreplace")
        db.execute("PRAGMA query_only = ON")
        db.execute("BEGIN")
        yield db


def _take_back_half_written(path: Path) -> None:
    """A program that was killed while it wrote leaves its journal, without which the file cannot
    be read: the store is as it was before once anything that may write has read from it."""
    with suppress(sqlite3.Error), closing(_opened(path, "rw")) as db:
        db.execute("SELECT count(*) FROM sqlite_schema").fetchone()


def _opened(path: Path, mode: str) -> sqlite3.Connection:
    from urllib.parse import quote

    uri = f"file:{quote(os.fsencode(os.path.abspath(path)))}?mode={mode}"
    return sqlite3.connect(uri, uri=True, isolation_level=None, timeout=WAIT_S)


def look(path: Path) -> tuple[list[Event], list[Hurt]]:
    """The events of a store that can be read, and all that is hurt. Raises StoreError for a store
    of an older or a newer version, and for one that cannot be looked at now: that is no damage."""
    try:
        with looking(path) as db:
            number = db.execute("PRAGMA user_version").fetchone()[0]
            if number < SCHEMA:
                raise StoreError(f"{path} is of an older version: open it once with this one.")
            if number > SCHEMA:
                raise StoreError(f"{path} was written by a newer version: update the program.")
            return [one for one in events_of(db) if isinstance(one, Event)], list(examine(db))
    except UNREADABLE as error:
        if isinstance(error, sqlite3.Error):
            _refuse_for_now(path, error)
        return [], [Hurt("", f"it cannot be opened ({error})")]


def _refuse_for_now(path: Path, error: sqlite3.Error) -> None:
    """Raises StoreError where another program holds the file, or what a killed one left in it
    cannot be taken back since it may not be written."""
    if held(error):
        raise in_use(path) from error
    code = getattr(error, "sqlite_errorcode", None)
    if code is not None and code & 0xFF == sqlite3.SQLITE_READONLY:
        raise StoreError(
            f"{path} cannot be looked over now: a program was ended while it wrote, and that is "
            "taken back only where the file may be written. Allow writing, then try again."
        ) from error


def copied(path: Path, to: Path) -> None:
    """A store as it is, sound or not, at `to`. Raises sqlite3.Error."""
    with looking(path) as db, closing(sqlite3.connect(to)) as made:
        made.execute("PRAGMA synchronous = OFF")
        db.backup(made)


def glance(db: sqlite3.Connection) -> Iterator[Hurt]:
    """What is hurt, by check values, counts and sums alone."""
    yield from structure(db)
    count, amount = 0, 0
    for row in _rows(db):
        if isinstance(row, Hurt):
            yield row
        else:
            count, amount = count + 1, amount + row[-1]
    yield from _guarded("the log", lambda: sums.must_be(db, "log", count, amount, "events"))
    yield from _guarded("the places", lambda: places.all_of(db))
    yield from _guarded("the stock tables", lambda: _lines(db))


def structure(db: sqlite3.Connection) -> Iterator[Hurt]:
    """What SQLite itself finds wrong with the file."""
    try:
        found = [str(row[0]) for row in db.execute("PRAGMA integrity_check(5)")]
    except UNREADABLE as error:
        found = [str(error)]
    for words in found:
        if words != "ok":
            yield Hurt("", f"the structure of the file: {' '.join(words.split())[:120]}")


def _guarded(of: str, look: object) -> Iterator[Hurt]:
    try:
        look()  # type: ignore[operator]
    except UNREADABLE as error:
        yield Hurt("", f"{of} cannot be read: {error}")
    except SENSELESS as error:
        yield Hurt("", f"{of}: {error}")


def _lines(db: sqlite3.Connection) -> None:
    lines.rows(db, "2000-01-01")
    lines.refuse_hurt(db)
    past.refuse_hurt(db)
    for (food,) in db.execute("SELECT DISTINCT +food FROM lines NOT INDEXED").fetchall():
        lines.refuse_food(db, food)


def _rows(db: sqlite3.Connection) -> Iterator[Row | Hurt]:
    """Every row of the log whose check value holds, in the order of ids; the others as hurt."""
    try:
        for row in db.execute(f"SELECT {log.COLUMNS} FROM log ORDER BY id"):
            if check(row[:-1]) == row[-1]:
                yield row
            else:
                yield _hurt_row(db, row)
    except UNREADABLE as error:
        yield Hurt("", f"part of the log cannot be read: {error}")


def _hurt_row(db: sqlite3.Connection, row: Row) -> Hurt:
    """Of whom it speaks is read from beside it: what it says itself cannot be trusted."""
    id_ = str(row[0])
    try:
        batches = [
            one for (one,) in db.execute("SELECT batch FROM of_batch WHERE event = ?", (id_,))
        ]
        where = [one for (one,) in db.execute("SELECT place FROM of_place WHERE event = ?", (id_,))]
    except UNREADABLE:
        batches, where = [], []
    return Hurt(id_, "its check value does not hold", tuple(batches), tuple(where))


def event_of(row: Row) -> Event:
    """An event from its row. Raises what SENSELESS names."""
    id_, recorded, day, at, did, together, payload, _ = row
    datetime.fromisoformat(recorded)
    return Event(id_, recorded, date.fromisoformat(day), read(did, payload), at, together)


def events_of(db: sqlite3.Connection) -> Iterator[Event | Hurt]:
    """Every event that can be read, and the rows that cannot."""
    for row in _rows(db):
        if isinstance(row, Hurt):
            yield row
            continue
        try:
            yield event_of(row)
        except SENSELESS as error:
            yield Hurt(row[0], f"it makes no sense ({error})")


def examine(db: sqlite3.Connection) -> Iterator[Hurt]:
    """All that is hurt; the judge is not asked (services.safekeeping.verify does)."""
    yield from structure(db)
    events: list[Event] = []
    for one in events_of(db):
        if isinstance(one, Hurt):
            yield one
        else:
            events.append(one)
    for event, what in unknown(events):
        yield hurt_event(event, what)
    yield from _beside(db, events)
    yield from _guarded("the log", lambda: log.everything(db))
    yield from _guarded("the tables", lambda: _counted(db, beside(events)))
    yield from _guarded("the places", lambda: places.all_of(db))
    yield from _guarded("the stock tables", lambda: _lines(db))


def hurt_event(event: Event, what: str) -> Hurt:
    where = place_of(event.payload)
    return Hurt(event.id, what, touches(event.payload), (where,) if where else ())


class Beside(NamedTuple):
    """What the log says should stand in the tables that lead into it."""

    of_batch: set[tuple[str, str]]
    of_place: set[tuple[str, str]]
    undone: set[tuple[str]]
    codes: set[tuple[str, str]]


def beside(events: Sequence[Event]) -> Beside:
    """It, from all events in their order."""
    of_batch: dict[str, list[str]] = {}
    of_place: dict[str, list[str]] = {}
    undone: set[str] = set()
    codes: dict[str, str] = {}
    for event in events:
        payload = event.payload
        if isinstance(payload, Undo | Redo):
            for table in (of_batch, of_place):
                names = [name for id_ in payload.events for name in table.get(id_, ())]
                table[event.id] = list(dict.fromkeys(names))
            if isinstance(payload, Redo):
                undone.add(payload.undo)
                undone.difference_update(payload.events)
            else:
                undone.update(payload.events)
            continue
        of_batch[event.id] = list(touches(payload))
        where = place_of(payload)
        # What is of neither is of the household, which has no name.
        of_place[event.id] = [where] if where or not of_batch[event.id] else []
        if isinstance(payload, PutUp):
            codes.setdefault(payload.code, payload.batch)
        if isinstance(payload, Relabelled):
            codes |= {payload.was: payload.other, payload.code: payload.batch}
    return Beside(
        {(name, id_) for id_, names in of_batch.items() for name in names},
        {(name, id_) for id_, names in of_place.items() for name in names},
        {(id_,) for id_ in undone},
        set(codes.items()),
    )


def _beside(db: sqlite3.Connection, events: Sequence[Event]) -> Iterator[Hurt]:
    wanted = beside(events)
    known = {event.id: event for event in events}
    for table, columns in (
        ("of_batch", "batch, event"),
        ("of_place", "place, event"),
        ("undone", "event"),
        ("codes", "code, batch"),
    ):
        try:
            found = set(db.execute(f"SELECT {columns} FROM {table}"))
        except UNREADABLE as error:
            yield Hurt("", f"{table} cannot be read: {error}")
            continue
        should: set[tuple[str, ...]] = set(getattr(wanted, table))
        for row in sorted(should - found, key=repr):
            yield _astray(known, row, f"{table} does not lead to it")
        for row in sorted(found - should, key=repr):
            yield _astray(known, row, f"{table} leads to it wrongly")


def _counted(db: sqlite3.Connection, led: Beside) -> None:
    """Whatever is read by part is counted by part. Raises Damaged."""
    for batch in {batch for batch, _ in led.of_batch}:
        log.of_batch(db, batch)
    for place in {place for place, _ in led.of_place}:
        log.of_place(db, place)
    for table, columns in (("codes", "code, batch"), ("undone", "event")):
        sums.all_of(db, table, columns)
    stood = (
        "SELECT place FROM stood UNION SELECT substr(what, 7) FROM sums WHERE what GLOB 'stood:*'"
    )
    for (place,) in db.execute(stood).fetchall():
        marks.stood_in(db, place)
    marks.refuse_lost(db)


def _astray(known: dict[str, Event], row: Sequence[str], what: str) -> Hurt:
    event = known.get(str(row[-1]))
    return hurt_event(event, what) if event else Hurt("", f"{what} ({' '.join(map(repr, row))})")


def first(found: Iterable[Hurt]) -> str:
    """The first thing that is hurt in a few words, "" for none."""
    for one in found:
        return f"{'event ' + one.event + ': ' if one.event else ''}{one.what}"
    return ""
