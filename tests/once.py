"""Something dear is made once in a whole run, whichever workers ask for it.

Groups of pytest-xdist would put the tests that share a thing on one worker, but the pinned
versions do not keep groups together, and say nothing of it; a lock between the workers does.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

WAIT_S = 600


def shared(factory: pytest.TempPathFactory) -> Path:
    """A folder that all workers of this run have, and no other run."""
    own = factory.getbasetemp()
    return own.parent if os.environ.get("PYTEST_XDIST_WORKER") else own


def once(root: Path, name: str, make: Callable[[Path], None]) -> Path:
    """`root/name`, filled by `make` unless another process of the run has done so already.

    The lock is a database's: the one between processes that the standard library has everywhere.
    A `make` that fails leaves nothing done, and whoever asks next tries again.
    """
    folder = root / name
    with closing(
        sqlite3.connect(root / f"{name}.lock", timeout=WAIT_S, isolation_level=None)
    ) as db:
        db.execute("BEGIN IMMEDIATE")
        db.execute("CREATE TABLE IF NOT EXISTS made (by_process INTEGER)")
        if not made(db):
            folder.mkdir(exist_ok=True)
            make(folder)
            db.execute("INSERT INTO made VALUES (?)", (os.getpid(),))
        db.execute("COMMIT")
    return folder


def made(db: sqlite3.Connection) -> int:
    """How often it was made."""
    (count,) = db.execute("SELECT count(*) FROM made").fetchone()
    return int(count)
