"""Lid codes: which batch each was given to."""

from __future__ import annotations

import sqlite3

from pantry_tui.store import sums
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged


def batch_of(db: sqlite3.Connection, code: str) -> str:
    """The batch of a lid code, "" where it was never given. Raises Damaged where it may have
    been."""
    row = db.execute("SELECT batch FROM codes WHERE code = ?", (code,)).fetchone()
    if row is None:
        sums.all_of(db, "codes", "code, batch")
        return ""
    return str(row[0])


def next_number(db: sqlite3.Connection) -> int:
    """The number of the code from which on the next one is looked for."""
    row = db.execute("SELECT value FROM meta WHERE name = 'codes'").fetchone()
    return int(row[0]) if row else 0


def go_on_from(db: sqlite3.Connection, number: int) -> None:
    """No code before that number is given any more."""
    if number > next_number(db):
        db.execute("INSERT OR REPLACE INTO meta VALUES ('codes', ?)", (str(number),))


def refuse_other(asked: str, found: str) -> None:
    """Raises Damaged where a code leads to a batch that has another one."""
    if asked != found:
        raise Damaged(f"lid code {asked} leads to {found}")


def give(db: sqlite3.Connection, code: str, batch: str) -> None:
    """The code leads to that batch from now on."""
    gone = db.execute("DELETE FROM codes WHERE code = ? RETURNING code, batch", (code,)).fetchall()
    for row in gone:
        sums.add(db, ("codes",), check(row), -1)
    db.execute("INSERT INTO codes VALUES (?, ?)", (code, batch))
    sums.add(db, ("codes",), check((code, batch)))


def also_written(db: sqlite3.Connection, code: str) -> list[str]:
    """The batches that have another code by now, and on whose lids this one may still stand."""
    from pantry_tui.core.log.payloads import Relabelled
    from pantry_tui.store import log

    found = (event.payload for event in log.select(db, "WHERE did = 'relabelled'"))
    return [one.batch for one in found if isinstance(one, Relabelled) and one.was == code]
