"""Another file takes the place of a store, at once, and what stood there is kept."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from time import time

from pantry_tui.errors import Refused, StoreError
from pantry_tui.store import codes, damage
from pantry_tui.store.copies import (
    NEWER,
    folder_of,
    free_name,
    made_by_itself,
    newest_sound,
    wrong_with,
)
from pantry_tui.store.files import cannot, made_whole, runs, settle
from pantry_tui.store.soundness import copied, looking
from pantry_tui.store.store import SCHEMA, check_header, connect, held, in_use

#: How long to wait for another program that writes, in milliseconds.
PATIENCE_MS = 5000
#: So old what was made to take the place of a store belongs to no restore that still runs, seconds.
_OLD_S = 3600.0


def refuse_unsound(path: Path, source: Path) -> None:
    """Raises Refused for a file that no store may be replaced by."""
    why = wrong_with(source)
    if not why:
        return
    short = why.partition(": name ")[0].replace(f"{source} ", "it ").rstrip(".")
    raise Refused(f"{source} cannot be restored ({short}): {_instead(path, source)}.")


def _instead(path: Path, source: Path) -> str:
    """What to do next where a file cannot be restored; a store that is sound itself, or that only
    a newer program reads, is never to be replaced on that account."""
    if wrong_with(source) == NEWER:
        return "update the program, which reads it then"
    whole = os.path.lexists(path) and wrong_with(path) in ("", NEWER)
    other = None if whole else newest_sound(path)
    if other is not None:
        again = f"`pantry-tui restore {damage.quoted(other.path)}{damage.named(path)}`"
        return f"bring back the newest sound backup with {again}"
    try:
        check_header(source)
    except StoreError:
        return "name a file that `pantry-tui backup` made, or one kept beside the store"
    saved = f"`pantry-tui verify --salvage NEW.db{damage.named(source)}`"
    return f"name another backup, or save what can be read of it with {saved} and restore that"


def refuse_foreign(path: Path) -> None:
    """Raises StoreError where `path` holds something that never was this store."""
    if not os.path.lexists(path):
        return
    try:
        check_header(path)
    except StoreError:
        ours = path.is_file() and made_by_itself(path, folder_of(path))
        if not ours and not damage.noted(path):
            raise


def replace(path: Path, source: Path, given: int = 0) -> Path | None:
    """A copy of `source`, looked over again, takes the place of `path`, and gives no lid code whose
    number is below `given`. Returns where the file is kept that stood there, None for none. Raises
    Refused, StoreError; then nothing has changed."""
    path = Path(os.path.realpath(path))
    refuse_foreign(path)
    if not os.path.lexists(path):
        with made_whole(path, folder=True) as making:
            _copied(source, making)
        damage.forget(path)
        return None
    sweep(path)
    # Made under its own name first, then moved over the store.
    ready = free_name(path.parent, f"{path.stem}-restoring")
    kept = free_name(path.parent, f"{path.stem}-replaced")
    try:
        with made_whole(ready) as making:
            _copied(source, making)
            _skip_codes(making, given)
        with _alone(path):
            _keep(path, kept)
            os.replace(ready, path)
            settle(path.parent)
    except OSError as error:
        raise cannot(path, error) from error
    finally:
        with suppress(OSError):
            ready.unlink()
    damage.forget(path)
    return kept


def sweep(path: Path) -> None:
    """What a killed restore left beside a store: what it was making, and a second name of the very
    file that still is the store, which is no copy of it."""
    with suppress(OSError), os.scandir(path.parent) as found:
        for one in found:
            with suppress(OSError):
                if _left(path, one):
                    os.unlink(one.path)


def _left(path: Path, one: os.DirEntry[str]) -> bool:
    making, kept = f"{path.stem}-restoring-", f"{path.stem}-replaced-"
    if one.name.startswith(f".{making}"):
        pid = one.name.removesuffix("-journal").removesuffix(".new").rpartition(".")[2]
        return pid.isdigit() and not runs(int(pid))
    if one.name.startswith(making):
        return time() - one.stat(follow_symlinks=False).st_mtime > _OLD_S
    return one.name.startswith(kept) and os.path.samestat(
        one.stat(follow_symlinks=False), path.stat()
    )


def recover(path: Path) -> None:
    """What a killed program left half written is put right, as whoever opens the store next would,
    so that what the journal brings back is there to be compared. A file that is noted as damaged
    is not touched."""
    journal = path.with_name(f"{path.name}-journal")
    if damage.noted(path) or not journal.exists():
        return
    with suppress(sqlite3.Error), closing(connect(path)) as db:
        db.execute("SELECT count(*) FROM sqlite_schema").fetchone()


def _copied(source: Path, making: Path) -> None:
    try:
        copied(source, making)
    except sqlite3.Error as error:
        raise cannot(making, error) from error
    hurt = wrong_with(making)
    if hurt:
        raise Refused(f"{source} cannot be restored ({hurt}): name another backup.")


def codes_given(path: Path) -> int:
    """The number of the first lid code that a store never gave, 0 where it cannot be read."""
    with suppress(sqlite3.Error, ValueError, UnicodeDecodeError), looking(path) as db:
        return codes.next_number(db)
    return 0


def _skip_codes(making: Path, given: int) -> None:
    """A store of an older version counts anew when it is opened, and from its log."""
    with closing(connect(making)) as db:
        if db.execute("PRAGMA user_version").fetchone()[0] == SCHEMA:
            codes.go_on_from(db, given)


@contextmanager
def _alone(path: Path) -> Iterator[None]:
    """Nobody else writes meanwhile, and what a killed program left half written is put right."""
    db = _locked(path)
    try:
        yield
    finally:
        if db is not None:
            db.close()


def _locked(path: Path) -> sqlite3.Connection | None:
    """None for a file that SQLite cannot open: nobody else can either."""
    db = connect(path)
    try:
        db.execute(f"PRAGMA busy_timeout = {PATIENCE_MS}")
        db.execute("BEGIN EXCLUSIVE")
    except sqlite3.Error as error:
        db.close()
        if held(error):
            raise in_use(path) from error
        return None
    return db


def _keep(path: Path, kept: Path) -> None:
    """The file under another name, with the journal that belongs to it: it must never be played
    into the one that comes."""
    give_second_name(path, kept)
    journal = path.with_name(f"{path.name}-journal")
    with suppress(FileNotFoundError):
        os.replace(journal, kept.with_name(f"{kept.name}-journal"))


def give_second_name(path: Path, kept: Path) -> None:
    try:
        os.link(path, kept)
    except FileExistsError:
        raise
    except OSError:
        import shutil

        with made_whole(kept) as making:
            shutil.copyfile(path, making)
