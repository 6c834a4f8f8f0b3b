"""A store made from events alone: brought out of a damaged file, or read from an export."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterable
from contextlib import closing
from pathlib import Path

from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import fold_place
from pantry_tui.store import log, marks, places
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
