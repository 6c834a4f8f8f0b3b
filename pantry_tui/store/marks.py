"""What is to be judged again: "batch:ID", "place:ID", "*" for all. Kept in `marked`, and counted,
so that no mark is lost unnoticed."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable

from pantry_tui.store import sums
from pantry_tui.store.damage import Damaged


def add(db: sqlite3.Connection, marks: Iterable[str]) -> None:
    db.executemany("INSERT OR IGNORE INTO marked VALUES (?)", [(mark,) for mark in marks])
    _count(db)


def take(db: sqlite3.Connection, marks: Iterable[str]) -> None:
    """These are judged."""
    db.executemany("DELETE FROM marked WHERE what = ?", [(mark,) for mark in marks])
    _count(db)


def batches(db: sqlite3.Connection) -> list[str]:
    """The ids of the batches that are marked, all marks made into marks of batches. Raises Damaged
    where one was lost, or names what is not there."""
    refuse_lost(db)
    marked = {what for (what,) in db.execute("SELECT what FROM marked")}
    places = {what for what in marked if what.startswith("place:")}
    if "*" in marked or places:
        _spread(db, places, every="*" in marked)
        marked = {what for (what,) in db.execute("SELECT what FROM marked")}
    strange = [what for what in marked if not what.startswith("batch:")]
    if strange:
        raise Damaged(f"what is to be judged again is hurt ({strange[0]})")
    return sorted(what.removeprefix("batch:") for what in marked)


def _spread(db: sqlite3.Connection, places: Iterable[str], *, every: bool) -> None:
    """Marks of places, or of all, as marks of the batches that stood there."""
    found: set[str] = set()
    if every:
        found.update(batch for _, batch in sums.all_of(db, "codes", "code, batch"))
    wanted = {one.removeprefix("place:") for one in places}
    if wanted:
        stood = sums.all_of(db, "stood", "place, batch")
        found.update(batch for place, batch in stood if place in wanted)
    db.executemany("DELETE FROM marked WHERE what = ?", [("*",), *((one,) for one in places)])
    add(db, (f"batch:{batch}" for batch in found))


def refuse_lost(db: sqlite3.Connection) -> None:
    """Raises Damaged where there are not as many as were made."""
    sums.must_be(db, "marked", _many(db), 0, "what is to be judged again")


def any_left(db: sqlite3.Connection) -> bool:
    return db.execute("SELECT 1 FROM marked LIMIT 1").fetchone() is not None


def _many(db: sqlite3.Connection) -> int:
    return int(db.execute("SELECT count(*) FROM marked").fetchone()[0])


def _count(db: sqlite3.Connection) -> None:
    sums.put(db, "marked", _many(db), 0)
