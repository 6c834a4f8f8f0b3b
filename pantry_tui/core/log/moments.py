"""From what an event says of its time to the moments at which it may have happened.

Moments are minutes of one clock: local time with its offset taken out, so that an hour that comes
twice in autumn comes in its order. The day stays the local one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta

from pantry_tui.core.log.events import Event
from pantry_tui.core.model import DAY_MIN, When

_SUNDAY = 6
_HOUR = 60
#: The Sundays on which clocks are put back, and on: month, and which Sunday of it, -1 the last. In
#: turn the European Union (directive 2000/84/EC), North America (15 USC 260a), Australia and New
#: Zealand (state and national law); all from memory.
_PUT_BACK = ((10, -1), (11, 1), (4, 1))
_PUT_ON = ((3, -1), (3, 2), (10, 1), (9, -1))

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


def some_time(day: date, like: datetime, told: date | None = None) -> When:
    """At any hour of a day, in the offset of `like`, which is that of noon on the day `told` (none
    named: on that day). An hour longer where the clock may have been put back or on between them:
    nobody wrote down where the household lives, so it counts as the place with the worse clock."""
    zone = _offset(like)
    start = day.toordinal() * DAY_MIN - zone
    told = told or day
    early = _HOUR if any(day <= one <= told for one in _changes(day, told, _PUT_BACK)) else 0
    late = _HOUR if any(day < one <= told for one in _changes(day, told, _PUT_ON)) else 0
    return When(start - early, start + DAY_MIN - 1 + late, day, zone)


def _changes(day: date, told: date, rules: Iterable[tuple[int, int]]) -> Iterator[date]:
    """The days of a clock's change from the year of `day` to the one after, which has every kind
    of them; most are asked of a day that is neither in that month nor told later."""
    if day == told and (day.weekday() != _SUNDAY or all(day.month != month for month, _ in rules)):
        return
    for year in range(day.year, min(told.year, day.year + 1) + 1):
        yield from (_sunday(year, month, number) for month, number in rules)


def _sunday(year: int, month: int, number: int) -> date:
    if number < 0:
        end = date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)
        return end - timedelta(days=(end.weekday() - _SUNDAY) % 7)
    start = date(year, month, 1)
    return start + timedelta(days=(_SUNDAY - start.weekday()) % 7 + 7 * (number - 1))


def _minute(day: date, minute: int, like: datetime) -> When:
    zone = _offset(like)
    then = day.toordinal() * DAY_MIN + minute - zone
    return When(then, then, day, zone)


def _offset(like: datetime) -> int:
    gap = like.utcoffset()
    return int(gap.total_seconds() // 60) if gap is not None else 0
