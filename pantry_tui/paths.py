"""Where things lie on this machine."""

from __future__ import annotations

import os
from pathlib import Path


def data_dir() -> Path:
    """The reference tables: inside the installed package, else beside it in a checkout."""
    packaged = Path(__file__).parent / "data"
    return packaged if packaged.is_dir() else Path(__file__).parent.parent / "data"


def default_store() -> Path:
    """PANTRY_STORE, else pantry-tui/pantry.db in the person's data folder."""
    named = os.environ.get("PANTRY_STORE")
    if named:
        return Path(named)
    base = os.environ.get("XDG_DATA_HOME")
    folder = Path(base) if base else Path.home() / ".local" / "share"
    return folder / "pantry-tui" / "pantry.db"
