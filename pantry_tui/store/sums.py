"""How many rows belong to something, and the sum of their check values: a row that is lost, or led
to wrongly, is noticed by whoever reads the others.

The names: "log", "batch:ID" and "place:ID" (the events that speak of it; "place:" alone: of the
household), "places", "past", "codes", "undone", "marked", "stood:ID" (in a place), "lines:ID" (of a
batch), "food:NAME" (its lines).
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged

_ADD = (
    "INSERT INTO sums VALUES (?, ?, ?) ON CONFLICT (what) "
    "DO UPDATE SET count = count + excluded.count, sum = sum + excluded.sum"
)


def add(
    db: sqlite3.Connection, named: Iterable[str], value: int, sign: int = 1, *, many: int = 1
) -> None:
    """One more row (or with -1 one less) of that check value belongs to each of these; or `many`
    rows, the sum of whose check values it is."""
    db.executemany(_ADD, [(name, sign * many, sign * value) for name in named])


def put(db: sqlite3.Connection, name: str, count: int, amount: int) -> None:
    """So many are all of it."""
    db.execute("INSERT OR REPLACE INTO sums VALUES (?, ?, ?)", (name, count, amount))


def must_be(db: sqlite3.Connection, name: str, count: int, amount: int, words: str) -> None:
    """Raises Damaged where something else was written; `words` say of what."""
    known = written(db, name)
    if known != (count, amount):
        raise Damaged(f"{words}: {count} rows, and {known[0]} were written")


def written(db: sqlite3.Connection, name: str) -> tuple[int, int]:
    """Count and sum of what is all of it. Raises Damaged where the counts are lost themselves, or
    led to wrongly, so that nothing would agree with nothing: the log is always counted."""
    row: tuple[int, int] | None = db.execute(
        "SELECT count, sum FROM sums WHERE what = ?", (name,)
    ).fetchone()
    if row is None:
        uncounted = "EXISTS (SELECT 1 FROM log) AND NOT EXISTS (SELECT 1 FROM sums WHERE what = ?)"
        if db.execute(f"SELECT {uncounted}", ("log",)).fetchone()[0]:
            raise Damaged("the counts of what was written are lost")
    return row or (0, 0)


@contextmanager
def at_once(db: sqlite3.Connection) -> Iterator[None]:
    """What is read in here is read of one moment: another program that waits to write gets its turn
    afterwards, and not between some rows and how many they should be."""
    outermost = not db.in_transaction
    if outermost:
        db.execute("BEGIN")
    try:
        yield
    finally:
        if outermost and db.in_transaction:  # some errors end it by themselves
            db.execute("ROLLBACK")  # nothing was written


def all_of(db: sqlite3.Connection, table: str, columns: str) -> list[tuple[str, ...]]:
    """All rows of a small table, which is counted under its own name. Raises Damaged."""
    with at_once(db):
        rows = db.execute(f"SELECT {columns} FROM {table}").fetchall()
        must_be(db, table, len(rows), sum(map(check, rows)), f"table {table}")
    return rows
