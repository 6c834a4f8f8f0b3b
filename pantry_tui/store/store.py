"""One household's store file: opening it, one way to write, and what is kept in it.

Day-to-day work speaks plain sqlite3; sqlite-utils is loaded for a new file and for a migration.
"""

from __future__ import annotations

import json
import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from time import monotonic, sleep
from typing import Any

from pantry_tui.errors import BadInput, Refused, StoreError

#: "Pant" as the file's application id, so that a foreign SQLite file is known at once.
APPLICATION_ID = 0x50616E74
#: The number of the schema that this program writes (`PRAGMA user_version`).
SCHEMA = 3
_HEADER = b"SQLite format 3\x00"
#: How long to wait for another program that holds the file, in seconds; to write, and to read.
WRITE_WAIT_S = 60.0
WAIT_S = 20.0
#: Seconds after which the lock is asked for again.
_AGAIN_S = 0.004


def connect(path: Path) -> sqlite3.Connection:
    """A connection without hidden transactions; the caller begins and ends them."""
    db = sqlite3.connect(path, timeout=WAIT_S, isolation_level=None)
    db.execute("PRAGMA foreign_keys = ON")
    return db


def held(error: sqlite3.Error) -> bool:
    """Whether another program holds the file just now: it is whole, and only waiting helps."""
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


@contextmanager
def reading(path: Path) -> Iterator[None]:
    """What goes wrong while a file's content is read, as one sentence. Raises StoreError."""
    try:
        yield
    except sqlite3.Error as error:
        if held(error):
            raise StoreError(
                f"{path} is in use by another program: let that finish or close it, then try again."
            ) from error
        raise StoreError(f"{path} is broken ({error}): restore a backup copy of it.") from error
    except (ValueError, LookupError, TypeError, AttributeError, BadInput) as error:
        raise StoreError(f"{path} is broken ({error}): restore a backup copy of it.") from error


def create_store(path: Path) -> None:
    """A new, empty store at `path`. Never overwrites: raises Refused."""
    if path.exists():
        raise Refused(f"{path} is already there: name another file, or use that one.")
    from sqlite_utils import Database

    from pantry_tui.store.schema import migrations

    # Made whole beside its name and then given it, so that a killed start leaves nothing there.
    making = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        making.unlink(missing_ok=True)
        db = Database(connect(making), execute_plugins=False)
        try:
            db.conn.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            migrations.apply(db)
            db.conn.execute(f"PRAGMA user_version = {SCHEMA}")
        finally:
            db.close()
        making.chmod(0o600)
        os.link(making, path)
    except FileExistsError:
        raise Refused(f"{path} is already there: name another file, or use that one.") from None
    except (OSError, sqlite3.Error) as error:
        raise StoreError(f"{path} cannot be written ({error}): choose another folder.") from error
    finally:
        making.unlink(missing_ok=True)


class Store:
    """An open store. `write` is the only way in; use it as a context manager or `close` it.

    `told` are sentences that whoever opened it should pass on (a copy was made).
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.told: tuple[str, ...] = ()
        self._writing = False
        self._check_header()
        with reading(path):
            self.db = connect(path)
            try:
                self._check_schema()
            except BaseException:
                self.db.close()
                raise

    def _check_header(self) -> None:
        if not self.path.exists():
            raise StoreError(f"There is no store at {self.path}: make one with `pantry-tui init`.")
        try:
            with self.path.open("rb") as handle:
                header = handle.read(72)
        except OSError as error:
            raise StoreError(f"{self.path} cannot be read: name a store file.") from error
        if not header.startswith(_HEADER):
            raise StoreError(f"{self.path} is not a store file: name another with --store.")
        if int.from_bytes(header[68:72], "big") != APPLICATION_ID:
            raise StoreError(f"{self.path} belongs to another program: name a store of your own.")

    def _check_schema(self) -> None:
        number = self.db.execute("PRAGMA user_version").fetchone()[0]
        if number > SCHEMA:
            raise StoreError(f"{self.path} was written by a newer version: update the program.")
        if number < SCHEMA:
            self._upgrade()

    def _upgrade(self) -> None:
        """Bring an older file to today's schema; a copy of it is made beside it first."""
        from sqlite_utils import Database

        from pantry_tui.store.schema import NAMES, migrations

        db = Database(self.db, execute_plugins=False)
        if "_sqlite_migrations" not in db.table_names():
            raise StoreError(f"{self.path} is broken: restore a backup copy of it.")
        applied = {migration.name for migration in migrations.applied(db)}
        if applied - set(NAMES):
            raise StoreError(f"{self.path} was written by a newer version: update the program.")
        if set(NAMES) - applied:
            copy = self._copied()
            self.told = (f"The store has a new shape; as it was, it is kept in {copy}.",)
            migrations.apply(db)
        self.db.execute(f"PRAGMA user_version = {SCHEMA}")

    def _copied(self) -> Path:
        """A copy beside the store, by SQLite's own backup. Raises StoreError."""
        stamp = f"{datetime.now().astimezone():%Y-%m-%d-%H%M%S}"
        copy = self.path.with_name(f"{self.path.stem}-before-{SCHEMA}-{stamp}.db")
        try:
            to = sqlite3.connect(copy)
            try:
                self.db.backup(to)
            finally:
                to.close()
            copy.chmod(0o600)
        except (OSError, sqlite3.Error) as error:
            raise StoreError(
                f"No copy of {self.path} can be made beside it ({error}): make room there first."
            ) from error
        return copy

    def close(self) -> None:
        self.db.close()

    @contextmanager
    def write(self) -> Iterator[None]:
        """One immediate transaction: all of it or none; inside another one, a part of that.

        Raises StoreError when it cannot be written: another program holds it, it may not be
        written, the disk is full.
        """
        if self._writing:
            yield
            return
        try:
            self._lock()
            self._writing = True
            try:
                yield
                self.db.execute("COMMIT")
            except BaseException:
                if self.db.in_transaction:
                    self.db.execute("ROLLBACK")
                raise
            finally:
                self._writing = False
        except sqlite3.OperationalError as error:
            why = "close other windows" if held(error) else "make room or allow writing"
            raise StoreError(
                f"{self.path} cannot be written now ({error}): {why}, then try again."
            ) from error

    def _lock(self) -> None:
        """Waits for the write lock. SQLite itself asks ever more seldom, so that of many people who
        came last goes first and some never do; here all of them ask equally often."""
        until = monotonic() + WRITE_WAIT_S
        self.db.execute("PRAGMA busy_timeout = 0")
        try:
            while True:
                try:
                    self.db.execute("BEGIN IMMEDIATE")
                except sqlite3.OperationalError as error:
                    if not held(error) or monotonic() > until:
                        raise
                    sleep(_AGAIN_S)
                else:
                    return
        finally:
            self.db.execute(f"PRAGMA busy_timeout = {round(WAIT_S * 1000)}")

    @property
    def writing(self) -> bool:
        return self._writing

    def version(self) -> int:
        """Changes when another process has written; cheap to ask."""
        with reading(self.path):
            return int(self.db.execute("PRAGMA data_version").fetchone()[0])

    def meta(self, name: str) -> str:
        """A fact about the stock tables, "" when nobody said."""
        row = self.db.execute("SELECT value FROM meta WHERE name = ?", (name,)).fetchone()
        return row[0] if row else ""

    def set_meta(self, name: str, value: str) -> None:
        self.db.execute("INSERT OR REPLACE INTO meta VALUES (?, ?)", (name, value))

    def draft(self, name: str) -> dict[str, Any] | None:
        """Unbooked work kept under `name`."""
        with reading(self.path):
            found = self.db.execute("SELECT data FROM drafts WHERE name = ?", (name,)).fetchone()
            kept: dict[str, Any] | None = json.loads(found[0]) if found else None
            return kept

    def keep_draft(self, name: str, data: dict[str, Any] | None) -> None:
        """Keep unbooked work, or forget it (None)."""
        with self.write():
            self.db.execute("DELETE FROM drafts WHERE name = ?", (name,))
            if data is not None:
                self.db.execute("INSERT INTO drafts VALUES (?, ?)", (name, json.dumps(data)))
