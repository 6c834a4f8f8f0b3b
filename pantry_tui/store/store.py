"""One household's store file: the event log and the settings, through sqlite-utils."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import Any

from sqlite_utils import Database

from pantry_tui.core.log.events import Did, Event
from pantry_tui.errors import BadInput, Refused, StoreError
from pantry_tui.store.schema import APPLICATION_ID, NAMES, migrations

_HEADER = b"SQLite format 3\x00"
#: How long to wait for another program that holds the file, in seconds.
WAIT_S = 5.0


def _database(path: Path) -> Database:
    """A connection that obeys foreign keys and loads no plugin of the person's."""
    db = Database(sqlite3.connect(path, timeout=WAIT_S), execute_plugins=False)
    db.conn.execute("PRAGMA foreign_keys = ON")
    return db


def _held(error: sqlite3.Error) -> bool:
    """Whether another program holds the file just now: it is whole, and only waiting helps."""
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


@contextmanager
def reading(path: Path) -> Iterator[None]:
    """What goes wrong while a file's content is read, as one sentence. Raises StoreError."""
    try:
        yield
    except sqlite3.Error as error:
        if _held(error):
            raise StoreError(
                f"{path} is in use by another program: let that finish or close it, then try again."
            ) from error
        raise StoreError(f"{path} is broken ({error}): restore a backup copy of it.") from error
    except (ValueError, LookupError, TypeError, AttributeError, BadInput) as error:
        raise StoreError(f"{path} is broken: restore a backup copy of it.") from error


def create_store(path: Path, settings: dict[str, str]) -> None:
    """A new, empty store at `path`. Never overwrites: raises Refused."""
    if path.exists():
        raise Refused(f"{path} is already there: name another file, or use that one.")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        db = _database(path)
    except (OSError, sqlite3.Error) as error:
        raise StoreError(f"{path} cannot be written: choose a folder that can.") from error
    try:
        db.conn.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        migrations.apply(db)
        db.table("settings").insert_all(
            {"name": name, "value": value} for name, value in settings.items()
        )
    except sqlite3.Error as error:
        raise StoreError(f"{path} cannot be written ({error}): choose another folder.") from error
    finally:
        db.close()


class Store:
    """An open store. `write` is the only way in; use it as a context manager or `close` it."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._check_header()
        with reading(path):
            self._db = _database(path)
            self._check_schema()

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
        if "_sqlite_migrations" not in self._db.table_names():
            self._db.close()
            raise StoreError(f"{self.path} is broken: restore a backup copy of it.")
        applied = {migration.name for migration in migrations.applied(self._db)}
        if applied - set(NAMES):
            self._db.close()
            raise StoreError(f"{self.path} was written by a newer version: update the program.")
        if set(NAMES) - applied:
            migrations.apply(self._db)

    def close(self) -> None:
        self._db.close()

    @contextmanager
    def write(self) -> Iterator[None]:
        """One immediate transaction: all of it or none. Raises StoreError when it cannot be
        written: another program holds it, it may not be written, the disk is full."""
        try:
            self._db.execute("BEGIN IMMEDIATE")
            try:
                yield
                self._db.commit()
            except BaseException:
                self._db.rollback()
                raise
        except sqlite3.OperationalError as error:
            why = "close other windows" if _held(error) else "make room or allow writing"
            raise StoreError(
                f"{self.path} cannot be written now ({error}): {why}, then try again."
            ) from error

    def append(self, events: Iterable[Event]) -> None:
        """Add events to the log; call inside `write`."""
        self._db.table("events").insert_all([_row(event) for event in events])

    def events(self) -> list[Event]:
        """The whole log in the order it was recorded."""
        sql = "select id, recorded, day, did, batch, containers, data from events order by id"
        with reading(self.path):
            return [_event(row) for row in self._db.query(sql)]

    def draft(self, name: str) -> dict[str, Any] | None:
        """Unbooked work kept under `name`."""
        with reading(self.path):
            for row in self._db.query("select data from drafts where name = ?", [name]):
                found: dict[str, Any] = json.loads(row["data"])
                return found
        return None

    def keep_draft(self, name: str, data: dict[str, Any] | None) -> None:
        """Keep unbooked work, or forget it (None)."""
        with self.write():
            self._db.execute("delete from drafts where name = ?", [name])
            if data is not None:
                self._db.table("drafts").insert({"name": name, "data": json.dumps(data)})

    def settings(self) -> dict[str, str]:
        with reading(self.path):
            return {row["name"]: row["value"] for row in self._db.query("select * from settings")}

    def save_settings(self, settings: Mapping[str, str | None]) -> None:
        """Change some settings; None forgets one."""
        kept = [{"name": name, "value": value} for name, value in settings.items() if value]
        with self.write():
            for name, value in settings.items():
                if not value:
                    self._db.execute("delete from settings where name = ?", [name])
            if kept:
                self._db.table("settings").upsert_all(kept, pk="name")

    def version(self) -> int:
        """Changes when another process has written; cheap to ask."""
        with reading(self.path):
            return int(self._db.conn.execute("PRAGMA data_version").fetchone()[0])


def _row(event: Event) -> dict[str, str]:
    return {
        "id": event.id,
        "recorded": event.recorded,
        "day": event.day.isoformat(),
        "did": event.did.value,
        "batch": event.batch,
        "containers": json.dumps(list(event.containers)),
        "data": json.dumps(event.data, ensure_ascii=False, sort_keys=True),
    }


def _event(row: dict[str, str]) -> Event:
    return Event(
        row["id"],
        row["recorded"],
        date.fromisoformat(row["day"]),
        Did(row["did"]),
        row["batch"],
        tuple(json.loads(row["containers"])),
        json.loads(row["data"]),
    )
