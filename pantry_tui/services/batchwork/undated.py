"""A row of a household's list that says no day on which it was made.

Where nothing that runs from that day can hurt, it counts as made today, as a line that is typed
does; where a safety limit runs from it, today would give the food days that it may not have, so it
stands as one whose day nobody knows. Either is said, never done in silence.
"""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUpReading

TODAY = "no day: counted as made today"
UNKNOWN = "no day: made unknown, so judged strictly"
#: Said once, under the rows.
OTHERWISE = "A column Made with the day of each, or unknown, says it otherwise."


def dated(
    p: Pantry, reading: PutUpReading, undated: Callable[[], PutUpReading]
) -> tuple[PutUpReading, str]:
    """The reading to book, and what is said of its day, "" where the row says one; `undated` reads
    the row as one of an unknown day. Raises as `putup.preview`, of a row that cannot be booked."""
    if reading.problems or reading.unread or reading.made != p.today or reading.sources:
        return reading, ""
    other = undated()
    if other.made is not None or other.problems or other.unread:
        return reading, ""  # two days: the row says one
    now = putup.preview(p, reading)
    if now.verdict in UNFIT or (now.discard_after and now.discard_after == reading.printed):
        return reading, TODAY  # nothing that ends it runs from the day it was made
    if putup.preview(p, other).verdict not in UNFIT:
        return reading, TODAY
    return other, UNKNOWN
