"""What came of every batch that was ever put up, a row each: what the books and the plan sum up
without folding the log.

Written by the transaction that writes the `lines` of the batch (lines.py). Every row carries a
check value, and all of them are counted and summed under "past" (sums.py).
"""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from typing import NamedTuple

from pantry_tui.store import marks, sums
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged

TABLE = """CREATE TABLE past (
    batch TEXT PRIMARY KEY, code TEXT NOT NULL, food TEXT NOT NULL, food_group TEXT NOT NULL,
    method TEXT NOT NULL, size TEXT NOT NULL, process TEXT NOT NULL, made TEXT NOT NULL,
    born TEXT NOT NULL, last TEXT NOT NULL, rated TEXT NOT NULL, came TEXT NOT NULL,
    ends TEXT NOT NULL, gone TEXT NOT NULL, ids TEXT NOT NULL, hash INTEGER NOT NULL
) STRICT, WITHOUT ROWID"""

_NAME = "past"  # in `sums`


class Row(NamedTuple):
    """One batch; days are ISO, the rest is JSON (services/books/past.py reads and writes it)."""

    batch: str
    code: str = ""  # of what was taken back nothing but its id is kept
    food: str = ""
    food_group: str = ""
    method: str = ""
    size: str = ""
    process: str = ""
    made: str = ""  # the day it was made, "" where nobody knows
    born: str = ""  # the day of its first container
    last: str = ""  # the last day on which anything left it
    rated: str = ""
    came: str = ""
    ends: str = ""
    gone: str = ""
    ids: str = ""  # of its containers, where they are not numbered through


_COLUMNS = ", ".join(Row._fields)
_HOLES = ", ".join("?" * (len(Row._fields) + 1))


def is_ours(db: sqlite3.Connection) -> bool:
    """Whether the table is there as it is made today."""
    names = [name for (name,) in db.execute("SELECT name FROM pragma_table_info('past')")]
    return names == [*Row._fields, "hash"]


def make(db: sqlite3.Connection) -> None:
    """The table, where an older program left none, or another: every batch waits to be put into
    it."""
    if is_ours(db):
        return
    db.execute("DROP TABLE IF EXISTS past")
    db.execute("DELETE FROM sums WHERE what = ?", (_NAME,))
    db.execute(TABLE)
    marks.add(db, ["*"])


def replace(db: sqlite3.Connection, row: Row) -> None:
    """This is what came of a batch up to now."""
    was = db.execute("SELECT hash FROM past WHERE batch = ?", (row.batch,)).fetchone()
    value = check(row)
    db.execute(f"INSERT OR REPLACE INTO past VALUES ({_HOLES})", (*row, value))
    sums.add(db, (_NAME,), value - (was[0] if was else 0), many=0 if was else 1)


def rows(db: sqlite3.Connection) -> list[Row]:
    """All of them, by batch. Raises Damaged where they are not as they were written."""
    found, total = [], 0
    with sums.at_once(db):
        for *row, value in db.execute(f"SELECT {_COLUMNS}, hash FROM past ORDER BY batch"):
            found.append(_whole(row, value))
            total += value
        sums.must_be(db, _NAME, len(found), total, "what is kept of the batches")
    return found


def row(db: sqlite3.Connection, batch: str) -> Row:
    """That of one batch. Raises Damaged where it is not as it was written."""
    sql = f"SELECT {_COLUMNS}, hash FROM past WHERE batch = ?"
    found = db.execute(sql, (batch,)).fetchone()
    if found is None:
        raise Damaged(f"what is kept of the batch {batch} is lost")
    return _whole(found[:-1], found[-1])


def _whole(row: Sequence[str], value: int) -> Row:
    if check(row) != value:
        raise Damaged(f"what is kept of a batch ({row[1]}) is hurt")
    return Row._make(row)


def refuse_hurt(db: sqlite3.Connection) -> None:
    """Raises Damaged where they are not as they were written; of an older program there are
    none."""
    if is_ours(db):
        rows(db)
