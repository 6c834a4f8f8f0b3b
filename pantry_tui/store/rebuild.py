"""A store made from events alone: brought out of a damaged file, or read from an export."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterable
from contextlib import closing
from pathlib import Path

from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold_place import fold_place
from pantry_tui.store import log, marks, past, places
from pantry_tui.store.files import cannot, made_whole


def fill(db: sqlite3.Connection, events: Iterable[Event]) -> int:
    """Append events, in the order of their ids, to a log that has none of them, with all that
    stands beside it. Returns how many. In the caller's transaction."""
    count = 0
    for event in sorted(events, key=lambda one: one.id):
        log.append(db, event)
        count += 1
    beside(db)
    return count


def add(db: sqlite3.Connection, events: Iterable[Event]) -> None:
    """Events that another log has and this one has not, each at its place in the order; what
    stands beside the log is made from it again. In the caller's transaction."""
    for event in events:
        log.insert(db, event)
    lead_anew(db)


def start_anew(db: sqlite3.Connection, events: Iterable[Event]) -> None:
    """The log of a store in which nothing was done yet becomes another one."""
    db.execute("DELETE FROM log")
    add(db, events)


def lead_anew(db: sqlite3.Connection) -> None:
    """All that stands beside the log, from the log. Raises Damaged where it is hurt."""
    events = log.with_values(db)
    past.make(db)
    for table in (
        "of_batch", "of_place", "undone", "codes", "places", "stood", "lines", "totals", "past",
        "sums", "marked",
    ):  # fmt: skip
        db.execute(f"DELETE FROM main.{table}")
    for event, value in events:
        log.lead_to(db, event, value)
    beside(db)


def beside(db: sqlite3.Connection) -> None:
    """The places as the log leaves them; every line of stock is to be judged again."""
    for (place,) in db.execute("SELECT DISTINCT place FROM of_place").fetchall():
        if place:
            places.save(db, place, fold_place(standing(log.of_place(db, place))))
    marks.add(db, ["*"])


def new_store(path: Path, fill_it: Callable[[sqlite3.Connection], int]) -> int:
    """A new store, whole or not there, filled in one transaction. Never overwrites. Returns what
    `fill_it` does; raises Refused, StoreError."""
    with made_whole(path) as making:
        from pantry_tui.store.store import connect, lay_out

        try:
            lay_out(making)
            with closing(connect(making)) as db:
                db.execute("BEGIN IMMEDIATE")
                count = fill_it(db)
                db.execute("COMMIT")
        except sqlite3.Error as error:
            raise cannot(path, error) from error
    return count
