"""What came of every batch that was ever put up, a row each: what the books and the plan sum up
without folding the log.

Written by the transaction that writes the `lines` of the batch (store/lines.py). Every row carries
a check value; `meta` holds their sum and the newest event that speaks of a batch, so that a row
that was flipped, lost or left behind by another program is noticed by whoever reads them.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from typing import NamedTuple

from pantry_tui.store.check import check

TABLE = """CREATE TABLE IF NOT EXISTS past (
    batch TEXT PRIMARY KEY, code TEXT NOT NULL, food TEXT NOT NULL, food_group TEXT NOT NULL,
    method TEXT NOT NULL, size TEXT NOT NULL, process TEXT NOT NULL, made TEXT NOT NULL,
    born TEXT NOT NULL, last TEXT NOT NULL, rated TEXT NOT NULL, came TEXT NOT NULL,
    ends TEXT NOT NULL, gone TEXT NOT NULL, ids TEXT NOT NULL, hash INTEGER NOT NULL
) STRICT, WITHOUT ROWID"""

_NAME = "past"  # in `meta`


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


def make(db: sqlite3.Connection) -> None:
    """The table, where it is not there: a file of an older program has none, or another."""
    if not _is_ours(db):
        clear(db)


def clear(db: sqlite3.Connection) -> None:
    """No rows at all."""
    db.execute("DROP TABLE IF EXISTS past")
    db.execute("DELETE FROM meta WHERE name = ?", (_NAME,))
    db.execute(TABLE)


def _is_ours(db: sqlite3.Connection) -> bool:
    names = [name for (name,) in db.execute("SELECT name FROM pragma_table_info('past')")]
    return names == [*Row._fields, "hash"]


def replace(db: sqlite3.Connection, row: Row) -> None:
    """This is what came of a batch up to now."""
    sum_, newest = _kept(db)
    was = db.execute("SELECT hash FROM past WHERE batch = ?", (row.batch,)).fetchone()
    sql = "SELECT max(event) FROM of_batch WHERE batch = ?"
    last = db.execute(sql, (row.batch,)).fetchone()[0] or ""
    hash_ = check(row)
    db.execute(f"INSERT OR REPLACE INTO past VALUES ({_HOLES})", (*row, hash_))
    kept = f"{sum_ + hash_ - (was[0] if was else 0)} {max(newest, last)}"
    db.execute("INSERT OR REPLACE INTO meta VALUES (?, ?)", (_NAME, kept))


def _kept(db: sqlite3.Connection) -> tuple[int, str]:
    """The sum of the check values, and the newest event that was heeded."""
    row = db.execute("SELECT value FROM meta WHERE name = ?", (_NAME,)).fetchone()
    sum_, _, newest = (row[0] if row else "0").partition(" ")
    return int(sum_), newest


def whole(db: sqlite3.Connection) -> bool:
    """Whether there is a row for every batch, as it was written, and none has had an event
    since."""
    if not _is_ours(db):
        return False
    found = db.execute(
        "SELECT (SELECT count(*) FROM past), (SELECT count(DISTINCT batch) FROM codes), "
        "(SELECT ifnull(sum(hash), 0) FROM past), (SELECT ifnull(max(event), '') FROM of_batch)"
    ).fetchone()
    return found[0] == found[1] and (found[2], found[3]) == _kept(db)


def rows(db: sqlite3.Connection) -> Iterable[Row]:
    """All of them, by batch. Raises ValueError for one that is not as it was written."""
    for *row, hash_ in db.execute(f"SELECT {_COLUMNS}, hash FROM past ORDER BY batch"):
        if check(row) != hash_:
            raise ValueError(f"what is kept of a batch ({row[1]}) is hurt")
        yield Row._make(row)
