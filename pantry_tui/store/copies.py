"""Copies of a store: where they lie, when one is made by itself, which are kept, the newest sound.

Made by SQLite's own backup, looked over, and only then given their name. In a folder beside the
store (`pantry-backups`), or where the person's settings say.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing, suppress
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from pantry_tui.errors import PantryError, StoreError
from pantry_tui.settings import Backups, read_settings
from pantry_tui.store import damage
from pantry_tui.store.files import cannot, made_whole

#: Of copies that bear a day to come so many are kept.
MOST_AHEAD = 2


class Copy(NamedTuple):
    """A sound copy and how many events its log holds."""

    path: Path
    events: int


def folder_of(path: Path, wish: Backups | None = None) -> Path:
    """Where the copies of a store lie."""
    wish = read_settings().backups if wish is None else wish
    own = f"{path.stem}-backups"
    if wish.folder is None:
        return path.with_name(own if _has_its_stem(path) else f"{path.name}.backups")
    import zlib

    # Two stores of one name in different folders must not thin each other's copies.
    return wish.folder / f"{own}-{zlib.crc32(os.fsencode(os.path.abspath(path))):08x}"


def _has_its_stem(path: Path) -> bool:
    """Whether the folder is called after the name without its ending: `a.db` and `a.store` must not
    thin each other's copies. One that has had that folder to itself keeps it."""
    if path.suffix == ".db":
        return True
    return (
        not path.with_name(f"{path.stem}.db").exists()
        and path.with_name(f"{path.stem}-backups").is_dir()
    )


def made_by_itself(path: Path, folder: Path) -> list[Path]:
    """The copies in the folder that bear a moment, the newest first."""
    try:
        with os.scandir(folder) as found:
            names = [one.name for one in found if moment_of(path, one.name) is not None]
    except OSError:
        return []
    return [folder / name for name in sorted(names, reverse=True)]


def moment_of(path: Path, name: str) -> datetime | None:
    """When a copy of that name was made; None for the name of something else."""
    head, tail = f"{path.stem}-", ".db"
    said = name[len(head) : -len(tail)]
    if not (name.startswith(head) and name.endswith(tail) and len(said) == 17):
        return None
    day, clock = said[:10], said[11:]
    try:  # strptime costs 5 ms to load
        return datetime.fromisoformat(f"{day}T{clock[:2]}:{clock[2:4]}:{clock[4:]}")
    except ValueError:
        return None


def now() -> datetime:
    """Where the person is; names of copies bear it."""
    return datetime.now(UTC).astimezone()


def free_name(folder: Path, head: str) -> Path:
    """A name of this moment that nothing bears: within a second the next one is taken."""
    when = now()
    while True:
        path = folder / f"{head}-{when:%Y-%m-%d-%H%M%S}.db"
        if not os.path.lexists(path):
            return path
        when += timedelta(seconds=1)


def copy(source: sqlite3.Connection, path: Path, to: Path) -> int:
    """A sound copy of the store `path` at `to`; returns its events.

    Never overwrites. Raises Refused; StoreError where it cannot be written, or where the store is
    found damaged: there is no copy then.
    """
    with made_whole(to) as making:
        try:
            with closing(sqlite3.connect(making)) as db:
                db.execute("PRAGMA synchronous = OFF")  # it is settled once it is whole
                source.backup(db)
        except sqlite3.Error as error:
            if damage.is_damage(error):
                damage.note(path, str(error))
                raise damage.broken(path, error) from error
            raise cannot(to, error) from error
        hurt = wrong_with(making)
        if hurt:
            damage.note(path, hurt)
            raise damage.broken(path, hurt)
        return events_in(making)


def backup(path: Path, to: Path | None = None) -> tuple[Path, int]:
    """A copy of a store: at `to`, in the folder `to`, or among those that are made by themselves.
    Returns where and how many events. Raises Refused, StoreError."""
    from pantry_tui.store.store import check_header

    check_header(path)
    damage.refuse_noted(path)
    if to is None:
        to = free_name(folder_of(path), path.stem)
        _private(to.parent)
    elif to.is_dir():
        to = free_name(to, path.stem)
    return to, _copy(path, to)


def _copy(path: Path, to: Path) -> int:
    from pantry_tui.store.store import connect, reading

    with reading(path), closing(connect(path)) as db:
        return copy(db, path, to)


def _private(folder: Path) -> None:
    """The folder is there, and nobody else looks into it."""
    if not folder.exists():
        try:
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        except OSError as error:
            raise cannot(folder, error) from error


def copy_beside(db: sqlite3.Connection, path: Path, why: str) -> Path:
    """A copy beside the store, before something is done to it. Raises StoreError."""
    to = free_name(path.parent, f"{path.stem}-{why}")
    try:
        with made_whole(to) as making, closing(sqlite3.connect(making)) as made:
            made.execute("PRAGMA synchronous = OFF")
            db.backup(made)
    except (PantryError, sqlite3.Error) as error:
        why_not = getattr(error, "message", str(error)).rstrip(".")
        raise StoreError(
            f"No copy of {path} can be made beside it ({why_not}): make room there first."
        ) from error
    return to


def daily(path: Path) -> None:
    """The copy of this day, where there is none yet; and those that are no longer wanted go.

    Called after something was booked. Raises StoreError where none can be made.
    """
    wish = read_settings().backups
    if not wish.automatic or os.environ.get("PANTRY_NO_BACKUP"):
        return
    folder = folder_of(path, wish)
    today = f"{path.stem}-{now():%Y-%m-%d}"  # not the newest: a clock may have run ahead
    if any(one.name.startswith(today) for one in made_by_itself(path, folder)):
        return
    _private(folder)
    # Not looked at but through SQLite: a file of ours that is closed while another part of the
    # program writes would free the locks of both.
    _copy(path, free_name(folder, path.stem))
    for old in too_many(path, made_by_itself(path, folder), wish, now().date()):
        with suppress(OSError):
            old.unlink()


def too_many(
    path: Path, copies: Sequence[Path], wish: Backups, today: date | None = None
) -> list[Path]:
    """Those that neither are the newest of one of the last days, weeks or months of which there
    are any, as many of each as are wished; of days after `today` a few are kept beside."""
    named = [(when.date(), one) for one in copies if (when := moment_of(path, one.name))]
    # Those of a clock that ran ahead take no day of another.
    ahead = [one for day, one in named if today and day > today]
    dated = [(day, one) for day, one in named if not today or day <= today]
    wanted: set[Path] = set()
    for many, part in ((wish.days, _day), (wish.weeks, _week), (wish.months, _month)):
        newest: dict[tuple[int, ...], Path] = {}
        for day, one in dated:  # the newest first
            newest.setdefault(part(day), one)
        wanted.update(list(newest.values())[:many])
    return [*ahead[MOST_AHEAD:], *(one for _, one in dated if one not in wanted)]


def _day(day: date) -> tuple[int, ...]:
    return (day.toordinal(),)


def _week(day: date) -> tuple[int, ...]:
    return tuple(day.isocalendar()[:2])


def _month(day: date) -> tuple[int, ...]:
    return day.year, day.month


def newest_sound(path: Path) -> Copy | None:
    """The copy of a store that holds the newest of it and is sound; None where there is none. A
    name says when a clock said it was made: what its log ends with says more."""
    found = made_by_itself(path, folder_of(path))
    with suppress(OSError), os.scandir(path.parent) as beside:
        head = f"{path.stem}-before-"
        found += [
            path.parent / one.name
            for one in beside
            if one.name.startswith(head) and one.name.endswith(".db")
        ]
    return next(_sound(sorted(found, key=_newest, reverse=True)), None)


def _newest(one: Path) -> tuple[str, int, str]:
    """The id of its last event, which is later than that of any before it whatever the clock said;
    how many there are; the moment that ends its name."""
    return last_in(one), events_in(one), one.stem[-17:]


def _sound(copies: Iterable[Path]) -> Iterator[Copy]:
    for one in copies:
        if not wrong_with(one):
            yield Copy(one, events_in(one))


#: What is wrong with a store that only a newer program reads: it is not damaged.
NEWER = "a newer version wrote it"


def wrong_with(path: Path) -> str:
    """What is wrong with a file, in a few words; "" for a sound store of this or an older
    version."""
    from pantry_tui.store.soundness import UNREADABLE, first, glance, looking, structure
    from pantry_tui.store.store import SCHEMA, check_header

    if not os.path.lexists(path):
        return "there is no such file"
    try:
        check_header(path)
        with looking(path) as db:
            number = db.execute("PRAGMA user_version").fetchone()[0]
            if number > SCHEMA:
                return NEWER
            return first(glance(db) if number == SCHEMA else structure(db))
    except PantryError as error:
        return error.message
    except UNREADABLE as error:
        return str(error)


def last_in(path: Path) -> str:
    """The id of the last event that a copy holds; "" where that cannot be read, or is of a version
    whose ids do not sort by time."""
    from pantry_tui.store.soundness import UNREADABLE, looking

    with suppress(PantryError, *UNREADABLE), looking(path) as db:
        found = db.execute("SELECT max(id) FROM log").fetchone()[0]
        return found if isinstance(found, str) else ""
    return ""


def events_in(path: Path) -> int:
    """How many events a store holds, of this or an older version; 0 where that cannot be read."""
    from pantry_tui.store.soundness import looking

    with suppress(sqlite3.Error, UnicodeDecodeError), looking(path) as db:
        names = {row[0] for row in db.execute("SELECT name FROM sqlite_schema")}
        table = "log" if "log" in names else "events"
        return int(db.execute(f"SELECT count(*) FROM {table}").fetchone()[0])
    return 0
