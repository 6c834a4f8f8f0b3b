"""From when to when a power cut lasted, as flags say it."""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta

from pantry_tui.errors import BadInput

_TIME = re.compile(r"(?:(\d{4}-\d{2}-\d{2})[T ])?(\d{1,2}):(\d{2})")
_NOBODY_KNOWS = frozenset({"unknown", "?", "nobody knows"})


def read_time(text: str, today: date) -> datetime:
    """("2026-11-24 18:00" or "18:00", today) -> that minute. Raises BadInput."""
    match = _TIME.fullmatch(text.strip())
    try:
        if match is None:
            raise ValueError
        day = date.fromisoformat(match[1]) if match[1] else today
        return datetime.combine(day, time(int(match[2]), int(match[3])))
    except ValueError:
        raise BadInput(f"{text[:40]!r} is no time: write 18:00 or 2026-11-24 18:00.") from None


def times(start: str, end: str, today: date) -> tuple[datetime | None, datetime]:
    """From when to when it was off; a bare start later than the end was the evening before, None
    since nobody knows when ("unknown"). Raises BadInput."""
    last = read_time(end, today)
    if start.strip().casefold() in _NOBODY_KNOWS:
        return None, last
    first = read_time(start, today)
    if first > last and "-" not in start:
        first -= timedelta(days=1)
    if first > last:
        raise BadInput("The power cut ends before it begins: mend --from or --to.")
    return first, last
