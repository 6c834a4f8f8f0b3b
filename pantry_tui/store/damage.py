"""A damaged file is noticed, said, and never written to again until it was looked at.

Who finds a row that is not as it was written leaves a note beside the store; every later start
reads the note first, whatever part of the file it would have read.
"""

from __future__ import annotations

import os
import sqlite3
from contextlib import suppress
from pathlib import Path

from pantry_tui.errors import StoreError

_CORRUPT = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_FORMAT)


class Damaged(ValueError):
    """What was read is not what was written."""


def is_damage(error: BaseException) -> bool:
    """Whether an error shows that the file has changed by itself, and nothing else can be meant."""
    if isinstance(error, sqlite3.Error):
        code = getattr(error, "sqlite_errorcode", None)
        return code is not None and code & 0xFF in _CORRUPT
    # SQLite's own words about a page that is hurt may be bytes of it.
    return isinstance(error, Damaged | UnicodeDecodeError)


def note_of(path: Path) -> Path:
    """Where the note of a store's damage lies."""
    return path.with_name(f"{path.name}.damaged")


def note(path: Path, what: str) -> None:
    """Leave a note, where the folder may be written."""
    with suppress(OSError, ValueError):
        flags = os.O_CREAT | os.O_EXCL | os.O_WRONLY
        handle = os.open(note_of(path), flags, 0o600)
        with os.fdopen(handle, "w", encoding="utf-8", errors="replace") as file:
            file.write(f"{what}\n")


def forget(path: Path) -> None:
    """The file was looked at and is whole, or another one has taken its place."""
    with suppress(OSError):
        note_of(path).unlink()


def noted(path: Path) -> bool:
    return os.path.lexists(note_of(path))


def refuse_noted(path: Path) -> None:
    """Raises StoreError for a file with a note beside it."""
    if noted(path):
        with suppress(OSError), note_of(path).open(encoding="utf-8", errors="replace") as file:
            raise broken(path, file.read(200).strip() or "it was found damaged")
        raise broken(path, "it was found damaged")


def broken(path: Path, why: object) -> StoreError:
    """One sentence: what is wrong, the newest sound backup, the command."""
    from pantry_tui.store.copies import newest_sound

    text = " ".join(str(why).split()).rstrip(".:")[:200]
    try:
        copy = newest_sound(path)
    except Exception:  # the search for help must not hide what is wrong
        copy = None
    if copy is not None:
        return StoreError(
            f"{path} is broken ({text}): nothing is written to it; the newest sound backup is "
            f"{copy.path.name} ({copy.events:,} events); bring it back with "
            f"`pantry-tui restore {quoted(copy.path)}{named(path)}`."
        )
    return StoreError(
        f"{path} is broken ({text}): nothing is written to it, and there is no sound backup; "
        f"save what can be read with `pantry-tui verify --salvage NEW.db{named(path)}`."
    )


def named(path: Path) -> str:
    """The flag that names this store, "" for the usual one."""
    from pantry_tui.paths import default_store

    with suppress(OSError, RuntimeError):
        if path == default_store():
            return ""
    return f" --store {quoted(path)}"


def quoted(path: Path) -> str:
    from shlex import quote

    return quote(str(path))
