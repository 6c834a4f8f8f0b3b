"""Files that are whole or not there: made under another name beside their own, then given it.

All are readable by their owner alone, and none is ever written through a link.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from pantry_tui.errors import BadInput, Refused, StoreError

#: Only the owner reads and writes.
PRIVATE = 0o600


@contextmanager
def made_whole(path: Path, *, folder: bool = False) -> Iterator[Path]:
    """An empty file to fill; it becomes `path` when all went well and is gone otherwise.

    With `folder` the one it lies in is made too. Never overwrites and never follows a link: raises
    Refused where something is there, StoreError where nothing can be written.
    """
    if os.path.lexists(path):
        raise taken(path)
    making = path.with_name(f".{path.name[:100]}.{os.getpid()}.new")
    try:
        if folder:
            path.parent.mkdir(parents=True, exist_ok=True)
        _sweep(path)
        with suppress(FileNotFoundError):
            making.unlink()
        # Exclusive: a link that somebody laid there is not followed.
        os.close(os.open(making, os.O_CREAT | os.O_EXCL | os.O_RDWR, PRIVATE))
    except (OSError, ValueError) as error:
        raise cannot(path, error) from error
    try:
        yield making
        settle(making)
        give_name(making, path)
    except FileExistsError:
        raise taken(path) from None
    except OSError as error:
        raise cannot(path, error) from error
    finally:
        with suppress(OSError):
            making.unlink()


def refuse_unreadable(path: Path, most: int) -> None:
    """Raises BadInput for what is no file of at most so many bytes: a pipe would be waited for,
    and a device never ends."""
    try:
        found = os.stat(path)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise BadInput(f"{path} cannot be read ({why}): name another file.") from error
    if not stat.S_ISREG(found.st_mode):
        raise BadInput(f"{path} is no file that can be read to its end: name a file.")
    if found.st_size > most:
        raise BadInput(f"{path} is over {most // 1_000_000:,} MB: name a smaller file.")


def taken(path: Path) -> Refused:
    return Refused(f"{path} is already there: name another file, or use that one.")


def cannot(path: Path, error: BaseException) -> StoreError:
    why = getattr(error, "strerror", None) or str(error)
    return StoreError(f"{path} cannot be written ({why}): choose another folder.")


def give_name(making: Path, path: Path) -> None:
    """The name is taken at once and never from another file. Raises FileExistsError, OSError."""
    try:
        os.link(making, path)
    except FileExistsError:
        raise
    except OSError:
        # A card or stick whose file system knows no second name: hold the name, then take it.
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, PRIVATE))
        os.replace(making, path)
    settle(path.parent)


def settle(path: Path) -> None:
    """What was written, a file or the names in a folder, outlives a power cut. A file system that
    cannot promise it is let be."""
    with suppress(OSError):
        handle = os.open(path, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _sweep(path: Path) -> None:
    """What a killed program left half made beside `path` is removed; that of one that runs is
    not."""
    head, tail = f".{path.name[:100]}.", ".new"
    with os.scandir(path.parent) as found:
        names = [one.name for one in found if one.name.startswith(head) and one.name.endswith(tail)]
    for name in names:
        pid = name[len(head) : -len(tail)]
        if pid.isdigit() and not runs(int(pid)):
            with suppress(OSError):
                (path.parent / name).unlink()
            with suppress(OSError):
                (path.parent / f"{name}-journal").unlink()


def runs(pid: int) -> bool:
    """Whether a program of that number runs."""
    if os.name == "nt":  # a signal of 0 would end it there
        return True
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    except (OSError, OverflowError):
        return True
    return True
