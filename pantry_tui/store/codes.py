"""Lid codes: which batch each was given to."""

from __future__ import annotations

import sqlite3

from pantry_tui.store import sums
from pantry_tui.store.damage import Damaged


def batch_of(db: sqlite3.Connection, code: str) -> str:
    """The batch of a lid code, "" where it was never given. Raises Damaged where it may have
    been."""
    row = db.execute("SELECT batch FROM codes WHERE code = ?", (code,)).fetchone()
    if row is None:
        sums.all_of(db, "codes", "code, batch")
        return ""
    return str(row[0])


def refuse_other(asked: str, found: str) -> None:
    """Raises Damaged where a code leads to a batch that has another one."""
    if asked != found:
        raise Damaged(f"lid code {asked} leads to {found}")
