"""From what an event says of its time to the moments at which it may have happened.

Moments are minutes of one clock: local time with its offset taken out, so that an hour that comes
twice in autumn comes in its order. The day stays the local one.
"""

from __future__ import annotations

from datetime import date, datetime

from pantry_tui.core.log.events import Event
from pantry_tui.core.model import DAY_MIN, When


def when(event: Event) -> When:
    """A fact booked on its own day without an hour happened when it was booked; one booked for
    another day may have happened at any hour of it."""
    booked = datetime.fromisoformat(event.recorded)
    if event.at is not None:
        return _minute(event.day, event.at, booked)
    if booked.date() == event.day:
        return _minute(event.day, booked.hour * 60 + booked.minute, booked)
    return some_time(event.day, booked)


def moment(text: str) -> When:
    """("2026-11-25T18:00+01:00") -> that minute. Raises ValueError."""
    then = datetime.fromisoformat(text)
    return _minute(then.date(), then.hour * 60 + then.minute, then)


def some_time(day: date, like: datetime) -> When:
    """At any hour of a day, in the offset of `like`."""
    start = day.toordinal() * DAY_MIN - _offset(like)
    return When(start, start + DAY_MIN - 1, day)


def _minute(day: date, minute: int, like: datetime) -> When:
    then = day.toordinal() * DAY_MIN + minute - _offset(like)
    return When(then, then, day)


def _offset(like: datetime) -> int:
    gap = like.utcoffset()
    return int(gap.total_seconds() // 60) if gap is not None else 0
