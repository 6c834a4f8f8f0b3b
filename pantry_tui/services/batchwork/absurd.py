"""A count that no household puts up at once: most likely a slip of the fingers, so it is asked
about before it is booked."""

from __future__ import annotations

from pantry_tui.errors import PantryError
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUpReading

#: More containers than this are not put up in one go. Our own choice.
MANY = 200
#: Nor more than so many times what the place has room for.
_OVER = 2


def absurd_count(p: Pantry, reading: PutUpReading) -> str:
    """What is to be asked of the count of a put-up line, "" where it may be."""
    vessel = " ".join(f"{reading.size} {reading.container}".split()) or "containers"
    what = f"{reading.count} {vessel} {reading.food}".strip()
    room = _room(p, reading.place)
    if room is not None and reading.count > _OVER * room:
        return f"{what} at once, and {reading.place} has room for {room}: is that the count?"
    if reading.count > MANY:
        return f"{what} at once are a lot for one household: is that the count?"
    return ""


def _room(p: Pantry, path: str) -> int | None:
    """How many containers the place holds, where that was said."""
    if not path:
        return None
    try:
        return p.find_place(path).capacity
    except PantryError:  # it is still to be made
        return None
