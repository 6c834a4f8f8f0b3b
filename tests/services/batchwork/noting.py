"""Food put up with a note, for the tests of what notes say."""

from __future__ import annotations

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock import places


def cold_places(p: Pantry) -> Pantry:
    """A freezer and a cellar beside what the larder has."""
    for name in ("freezer", "cellar"):
        places.add(p, name, name)
    return p


def as_typed(line: str, note: str = "") -> str:
    """A line with its note."""
    return f'{line}, note="{note}"' if note else line


def tried(p: Pantry, line: str, note: str = "") -> PutUp:
    """What putting it up would answer."""
    return putup.preview(p, putup.read(p, as_typed(line, note)))


def quotes(found: PutUp) -> bool:
    """Whether the note is held against it."""
    return any("Its note says" in one for one in found.reasons)
