"""Where things lie on this machine. Every start comes through here, so that pathlib (3 ms) is
loaded only by who asks for a Path."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path


def data_folder() -> str:
    """The reference tables: inside the installed package, else beside it in a checkout."""
    package = os.path.dirname(os.path.abspath(__file__))
    packaged = os.path.join(package, "data")
    return packaged if os.path.isdir(packaged) else os.path.join(os.path.dirname(package), "data")


def data_dir() -> Path:
    """The same as a Path."""
    from pathlib import Path

    return Path(data_folder())


def cache_folder() -> str | None:
    """pantry-tui in XDG_CACHE_HOME, else in ~/.cache; None where neither is an absolute path (the
    XDG Base Directory Specification passes over a relative one). What lies there may be deleted
    at any time."""
    named = os.environ.get("XDG_CACHE_HOME", "")
    base = named if os.path.isabs(named) else os.path.join(os.path.expanduser("~"), ".cache")
    return os.path.join(base, "pantry-tui") if os.path.isabs(base) else None


def default_store() -> Path:
    """PANTRY_STORE, else pantry-tui/pantry.db in the person's data folder."""
    from pathlib import Path

    named = os.environ.get("PANTRY_STORE")
    if named:
        return Path(os.path.expanduser(named))
    base = os.environ.get("XDG_DATA_HOME")
    folder = Path(base) if base else Path.home() / ".local" / "share"
    return folder / "pantry-tui" / "pantry.db"


def typed_path(text: str) -> Path:
    """A path as it was typed, from the folder one is in, `~` being the person's home; whole, so
    that an answer says where the file lies. Raises BadInput."""
    from pathlib import Path

    from pantry_tui.errors import BadInput

    if not text.strip() or "\0" in text:
        raise BadInput("Name a file.")
    return Path(os.path.abspath(os.path.expanduser(text)))
