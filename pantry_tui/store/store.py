"""One household's store file: opening it, one way to write, and what is kept in it.

Day-to-day work speaks plain sqlite3; sqlite-utils is loaded for a new file and for a migration.
"""

from __future__ import annotations

import json
import os
import sqlite3
import stat
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from time import monotonic, sleep
from typing import Any

from pantry_tui.errors import BadInput, StoreError
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged, broken, is_damage, note, refuse_noted

#: "Pant" as the file's application id, so that a foreign SQLite file is known at once.
APPLICATION_ID = 0x50616E74
#: The number of the schema that this program writes (`PRAGMA user_version`).
SCHEMA = 4
_HEADER = b"SQLite format 3\x00"
#: How long to wait for another program that holds the file, in seconds; to write, and to read.
WRITE_WAIT_S = 60.0
WAIT_S = 20.0
#: The stores into which this process has booked, and committed.
BOOKED_IN: set[Path] = set()
#: Seconds after which the lock is asked for again.
_AGAIN_S = 0.004
NO_TEXT = "What was typed holds bytes that are no text: type it again."


_SYSTEM = (
    sqlite3.SQLITE_FULL,
    sqlite3.SQLITE_READONLY,
    sqlite3.SQLITE_IOERR,
    sqlite3.SQLITE_CANTOPEN,
    sqlite3.SQLITE_PERM,
    sqlite3.SQLITE_NOMEM,
)


def connect(path: Path) -> sqlite3.Connection:
    """A connection without hidden transactions; the caller begins and ends them."""
    db = sqlite3.connect(path, timeout=WAIT_S, isolation_level=None)
    db.execute("PRAGMA foreign_keys = ON")
    return db


def held(error: sqlite3.Error) -> bool:
    """Whether another program holds the file just now: it is whole, and only waiting helps."""
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


def refused_by_system(error: sqlite3.Error) -> bool:
    """Whether the disk is full, fails, or may not be written: of the file itself that says
    nothing."""
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in _SYSTEM


@contextmanager
def reading(path: Path) -> Iterator[None]:
    """What goes wrong while a file's content is read, as one sentence. Raises StoreError."""
    try:
        yield
    except UnicodeEncodeError as error:
        raise BadInput(NO_TEXT) from error
    except sqlite3.Error as error:
        if held(error):
            raise in_use(path) from error
        if refused_by_system(error):
            raise StoreError(
                f"{path} cannot be used now ({error}): make room or allow writing, then try again."
            ) from error
        raise found_broken(path, error) from error
    except (ValueError, LookupError, TypeError, AttributeError, BadInput) as error:
        raise found_broken(path, error) from error


def in_use(path: Path) -> StoreError:
    return StoreError(
        f"{path} is in use by another program: let that finish or close it, then try again."
    )


def found_broken(path: Path, error: BaseException) -> StoreError:
    """What is wrong and what helps; damage is noted beside the file, so that nothing writes to
    it."""
    if is_damage(error):
        note(path, str(error))
    return broken(path, error)


def create_store(path: Path, fill: Callable[[Path], None] = lambda _: None) -> None:
    """A new store at `path`, whole or not there: `fill` is given it under another name first.
    Never overwrites: raises Refused; StoreError where it cannot be written."""
    from pantry_tui.store.files import cannot, made_whole

    with made_whole(path, folder=True) as making:
        try:
            lay_out(making)
        except sqlite3.Error as error:
            raise cannot(path, error) from error
        fill(making)


def lay_out(path: Path) -> None:
    """The tables of a store in an empty file."""
    from sqlite_utils import Database

    from pantry_tui.store.schema import migrations

    db = Database(connect(path), execute_plugins=False)
    try:
        # Whoever makes a file whole settles it once, at the end (files.made_whole).
        db.conn.execute("PRAGMA synchronous = OFF")
        db.conn.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        migrations.apply(db)
        db.conn.execute(f"PRAGMA user_version = {SCHEMA}")
    finally:
        db.close()


def check_header(path: Path) -> tuple[int, int]:
    """Which file a store is, whatever its name is given to later. Raises StoreError for what is
    no store of ours, without waiting for a pipe."""
    try:
        found = os.stat(path)
    except (FileNotFoundError, NotADirectoryError):
        from shlex import quote  # only for a refusal

        made = f"pantry-tui init --store {quote(str(path))}"
        raise StoreError(f"There is no store at {path}: make one with `{made}`.") from None
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise StoreError(f"{path} cannot be read ({why}): name a store file.") from error
    if not stat.S_ISREG(found.st_mode):
        raise StoreError(f"{path} is no file: name a store file with --store.")
    try:
        with path.open("rb") as handle:
            header = handle.read(72)
    except OSError as error:
        raise StoreError(f"{path} cannot be read: name a store file.") from error
    if not header.startswith(_HEADER):
        raise StoreError(f"{path} is not a store file: name another with --store.")
    if int.from_bytes(header[68:72], "big") != APPLICATION_ID:
        raise StoreError(f"{path} belongs to another program: name a store of your own.")
    return found.st_dev, found.st_ino


class Store:
    """An open store. `write` is the only way in; use it as a context manager or `close` it.

    `told` are sentences that whoever opened it should pass on (a copy was made).
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.told: tuple[str, ...] = ()
        self.booked = False  # whether an event was appended through this connection
        self._writing = False
        self._file = check_header(path)
        refuse_noted(path)
        with reading(path):
            self.db = connect(path)
            try:
                self._check_schema()
            except BaseException:
                self.db.close()
                raise

    def _check_schema(self) -> None:
        if self._is_older():
            with self.write():
                # Another window may have brought it over while this one waited for the lock.
                if self._is_older():
                    self._upgrade()

    def _is_older(self) -> bool:
        number = int(self.db.execute("PRAGMA user_version").fetchone()[0])
        if number > SCHEMA:
            raise StoreError(f"{self.path} was written by a newer version: update the program.")
        return number < SCHEMA

    def _upgrade(self) -> None:
        """Bring an older file to today's schema, in the caller's transaction; a copy of it is made
        beside it first."""
        from sqlite_utils import Database

        from pantry_tui.store.schema import NAMES, migrations

        db = Database(self.db, execute_plugins=False)
        if "_sqlite_migrations" not in db.table_names():
            raise broken(self.path, "it says of no version that wrote it")
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
        from pantry_tui.store.copies import copy_beside

        # Not through the connection that holds the lock: SQLite copies nothing that is written.
        with closing(connect(self.path)) as db:
            return copy_beside(db, self.path, f"before-{SCHEMA}")

    def close(self) -> None:
        self.db.close()

    def wait_for_no_disk(self) -> None:
        """For a copy that is thrown away in a moment: nothing of it needs to outlive the power."""
        self.db.execute("PRAGMA synchronous = OFF")

    @contextmanager
    def write(self) -> Iterator[None]:
        """One immediate transaction: all of it or none; inside another one, a part of that.

        Raises StoreError when it cannot be written: another program holds it, it may not be
        written, the disk is full.
        """
        if self._writing:
            yield
            return
        refuse_noted(self.path)
        try:
            self._lock()
            self._writing = True
            try:
                self._check_place()
                yield
                self.db.execute("COMMIT")
                if self.booked:
                    BOOKED_IN.add(self.path)
            except BaseException:
                if self.db.in_transaction:
                    self.db.execute("ROLLBACK")
                raise
            finally:
                self._writing = False
        except sqlite3.IntegrityError as error:  # a row is there that its index does not lead to
            raise found_broken(self.path, Damaged(str(error))) from error
        except (UnicodeDecodeError, Damaged) as error:
            raise found_broken(self.path, error) from error
        except sqlite3.DatabaseError as error:
            if is_damage(error):
                raise found_broken(self.path, error) from error
            if not isinstance(error, sqlite3.OperationalError):
                raise
            why = "close other windows" if held(error) else "make room or allow writing"
            raise StoreError(
                f"{self.path} cannot be written now ({error}): {why}, then try again."
            ) from error

    def _check_place(self) -> None:
        """The name still leads to the file that is open here: what would be written to another
        one would be lost to everybody. Raises StoreError."""
        try:
            found = os.stat(self.path)
            same = (found.st_dev, found.st_ino) == self._file
        except OSError:
            same = False
        if not same:
            raise StoreError(
                f"{self.path} was replaced or taken away while it was open here: "
                "nothing is booked; close this window and open the store again."
            )

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
            sql = "SELECT name, data, hash FROM drafts WHERE name = ?"
            found = self.db.execute(sql, (name,)).fetchone()
            if found and check(found[:2]) != found[2]:
                raise Damaged(f"unbooked work ({name}) is hurt")
            kept: dict[str, Any] | None = json.loads(found[1]) if found else None
            return kept

    def keep_draft(self, name: str, data: dict[str, Any] | None) -> None:
        """Keep unbooked work, or forget it (None)."""
        with self.write():
            self.db.execute("DELETE FROM drafts WHERE name = ?", (name,))
            if data is not None:
                row = name, json.dumps(data)
                self.db.execute("INSERT INTO drafts VALUES (?, ?, ?)", (*row, check(row)))
