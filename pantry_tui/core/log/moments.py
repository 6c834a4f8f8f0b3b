"""From what an event says of its time to the moments at which it may have happened.

Moments are minutes of one clock: local time with its offset taken out, so that an hour that comes
twice in autumn comes in its order. The day stays the local one.
"""

from __future__ import annotations

from datetime import date, datetime

from pantry_tui.core.log.events import Event
from pantry_tui.core.model import DAY_MIN, When

#: What is booked on a day of which no hour is known happens from 23:00 on, a minute apart: after
#: all that is told of it by the hour, and in the order in which it was booked.
_LATE = 23 * 60 - 1


def when(event: Event) -> When:
    """A fact booked on its own day without an hour happened when it was booked; one booked for
    another day may have happened at any hour of it."""
    booked = datetime.fromisoformat(event.recorded)
    if event.at is not None and event.at < 0:
        # Booked on a day that was only named: at its end, each after the one before.
        return _minute(event.day, min(DAY_MIN - 1, _LATE - event.at), booked)
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
    zone = _offset(like)
    start = day.toordinal() * DAY_MIN - zone
    return When(start, start + DAY_MIN - 1, day, zone)


def _minute(day: date, minute: int, like: datetime) -> When:
    zone = _offset(like)
    then = day.toordinal() * DAY_MIN + minute - zone
    return When(then, then, day, zone)


def _offset(like: datetime) -> int:
    gap = like.utcoffset()
    return int(gap.total_seconds() // 60) if gap is not None else 0
