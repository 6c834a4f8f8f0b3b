"""What is to be judged again: "batch:ID", "place:ID", "*" for all. Kept in `marked`, counted and
summed, so that no mark is lost or changed unnoticed."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable

from pantry_tui.store import sums
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged


def add(db: sqlite3.Connection, marks: Iterable[str]) -> None:
    new = db.execute(
        "INSERT OR IGNORE INTO marked SELECT value FROM json_each(?) WHERE true RETURNING what",
        (json.dumps(list(marks)),),
    ).fetchall()
    _changed(db, new, 1)


def take(db: sqlite3.Connection, marks: Iterable[str]) -> None:
    """These are judged."""
    gone = db.execute(
        "DELETE FROM marked WHERE what IN (SELECT value FROM json_each(?)) RETURNING what",
        (json.dumps(list(marks)),),
    ).fetchall()
    _changed(db, gone, -1)


def _changed(db: sqlite3.Connection, rows: list[tuple[str]], sign: int) -> None:
    if rows:
        sums.add(db, ("marked",), sum(map(check, rows)), sign, many=len(rows))


def batches(db: sqlite3.Connection, most: int) -> list[str]:
    """The ids of the batches that are marked, `most` at most; marks of places, or of all, become
    marks of batches. Raises Damaged where one was lost, or names what is not there."""
    _refuse_fewer(db)
    every = db.execute("SELECT what FROM marked WHERE what = '*'").fetchall()
    places = db.execute("SELECT what FROM marked WHERE what GLOB 'place:*'").fetchall()
    if every or places:
        _spread(db, [what for (what,) in places], every=bool(every))
    rows = db.execute("SELECT what FROM marked LIMIT ?", (most,)).fetchall()
    strange = [what for (what,) in rows if not what.startswith("batch:")]
    if strange:
        raise Damaged(f"what is to be judged again is hurt ({strange[0]})")
    return [what.removeprefix("batch:") for (what,) in rows]


def _spread(db: sqlite3.Connection, places: list[str], *, every: bool) -> None:
    """Marks of places, or of all, as marks of the batches that stood there."""
    found: set[str] = set()
    if every:
        found.update(batch for _, batch in sums.all_of(db, "codes", "code, batch"))
    for place in places:
        found.update(stood_in(db, place.removeprefix("place:")))
    take(db, ["*", *places])
    add(db, (f"batch:{batch}" for batch in found))


def stood_in(db: sqlite3.Connection, place: str) -> list[str]:
    """The batches with containers still here that ever stood in a place. Raises Damaged."""
    with sums.at_once(db):
        rows = db.execute("SELECT place, batch FROM stood WHERE place = ?", (place,)).fetchall()
        amount = sum(map(check, rows))
        sums.must_be(db, f"stood:{place}", len(rows), amount, "what stood in a place")
    return [batch for _, batch in rows]


def refuse_lost(db: sqlite3.Connection) -> None:
    """Raises Damaged where they are not those that were made. Of many that takes a while: whoever
    shows a list asks when all are judged."""
    sums.all_of(db, "marked", "what")


def _refuse_fewer(db: sqlite3.Connection) -> None:
    """The same by their count alone: their sum is asked once all of them are judged."""
    sql = "SELECT count FROM sums WHERE what = 'marked'"
    with sums.at_once(db):
        (count,) = db.execute("SELECT count(*) FROM marked").fetchone()
        (written,) = db.execute(sql).fetchone() or (0,)
    if count != written:
        raise Damaged("what is to be judged again is lost")


def any_left(db: sqlite3.Connection) -> bool:
    return db.execute("SELECT 1 FROM marked LIMIT 1").fetchone() is not None
