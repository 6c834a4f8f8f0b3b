"""Where a person was when the app was left: the room and the line, for each store, for that day.

A slip of the quit key then costs one start. It is no record of the household: a small file beside
the person's other state, which may be deleted at any time. No textual here.
"""

from __future__ import annotations

import json
import os
from datetime import date
from pathlib import Path
from typing import NamedTuple

#: As many stores as are remembered, the last ones.
_MOST = 20


class Whereabouts(NamedTuple):
    """A room, and the container or lid code of the line under the cursor, "" for none."""

    room: str
    ref: str


def state_file() -> Path:
    """Where it lies (XDG Base Directory Specification), whether or not it is there."""
    base = os.environ.get("XDG_STATE_HOME")
    folder = Path(base) if base else Path.home() / ".local" / "state"
    return folder / "pantry-tui" / "left.json"


def left_at(store: Path, today: date) -> Whereabouts | None:
    """Where the app on that store was left today; None for another day, or a file that is no
    such thing."""
    found = _read().get(str(store.absolute()))
    match found:
        case {"day": str(day), "room": str(room), "ref": str(ref)} if day == today.isoformat():
            return Whereabouts(room, ref)
    return None


def leave(store: Path, today: date, there: Whereabouts) -> None:
    """Remember it; where that cannot be written the next start is at the due list, no more."""
    kept = {key: one for key, one in _read().items() if key != str(store.absolute())}
    kept = dict(list(kept.items())[1 - _MOST :])
    kept[str(store.absolute())] = {"day": today.isoformat(), "room": there.room, "ref": there.ref}
    path = state_file()
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        new = path.with_suffix(".new")
        new.write_text(json.dumps(kept), encoding="utf-8")
        new.replace(path)
    except OSError:
        return


def _read() -> dict[str, object]:
    try:
        found = json.loads(state_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return found if isinstance(found, dict) else {}
