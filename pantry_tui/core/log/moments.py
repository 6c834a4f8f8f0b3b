"""From what an event says of its time to the moments at which it may have happened.

Moments are minutes of one clock: local time with its offset taken out, so that an hour that comes
twice in autumn comes in its order. The day stays the local one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta
from typing import NamedTuple

from pantry_tui.core.log.events import Event
from pantry_tui.core.model import DAY_MIN, When

_THURSDAY, _FRIDAY, _SUNDAY = 3, 4, 6
_HOUR = 60


class _Day(NamedTuple):
    """A day of the year on which clocks are changed: the weekday of a month, which of them (-1 the
    last), and how many days before it."""

    month: int
    number: int
    weekday: int = _SUNDAY
    before: int = 0

    def of(self, year: int) -> date:
        if self.number < 0:
            end = date(year + self.month // 12, self.month % 12 + 1, 1) - timedelta(days=1)
            found = end - timedelta(days=(end.weekday() - self.weekday) % 7)
        else:
            start = date(year, self.month, 1)
            ahead = (self.weekday - start.weekday()) % 7 + 7 * (self.number - 1)
            found = start + timedelta(days=ahead)
        return found - timedelta(days=self.before)


#: The days in whose morning clocks are put back, at whose end they are (24:00 is 23:00 again), and
#: on which they are put on. In turn the European Union (directive 2000/84/EC), North America (15
#: USC 260a), Australia and New Zealand (state and national law); Palestine; Lebanon and Greenland,
#: Chile, Egypt (law 24 of 2023); Israel. All from memory. Whoever puts clocks back by another
#: calendar (Morocco before Ramadan) is not among them.
_PUT_BACK = (_Day(10, -1), _Day(11, 1), _Day(4, 1), _Day(10, -1, before=1))
_AT_NIGHT = (
    _Day(10, -1, before=1),
    _Day(4, 1, before=1),
    _Day(4, 2, before=1),
    _Day(10, -1, _THURSDAY),
)
_PUT_ON = (
    _Day(3, -1), _Day(3, 2), _Day(10, 1), _Day(9, -1),
    _Day(9, 1), _Day(9, 2), _Day(4, -1, _FRIDAY), _Day(3, -1, before=2), _Day(3, -1, before=1),
)  # fmt: skip

#: What is booked on a day of which no hour is known happens from 23:00 on, a minute apart: after
#: all that is told of it by the hour, and in the order in which it was booked.
_LATE = 23 * 60 - 1


def when(event: Event) -> When:
    """A fact booked on its own day without an hour happened when it was booked; one booked for
    another day, or by a clock of which only the day was told, may have happened at any hour of
    it."""
    booked = datetime.fromisoformat(event.recorded)
    if event.at is not None and event.at < 0:
        # Booked on a day that was only named: at its end, each after the one before.
        return _minute(event.day, min(DAY_MIN - 1, _LATE - event.at), booked)
    if event.at is not None:
        return _minute(event.day, event.at, booked)
    if booked.date() == event.day and hour_told(event.recorded):
        return _minute(event.day, booked.hour * 60 + booked.minute, booked)
    return some_time(event.day, booked)


def hour_told(recorded: str) -> bool:
    """Whether the moment of booking is known to the second: a clock of which only the day was told
    ("2026-11-25T00:00-05:00") says none."""
    return recorded[16:17] == ":"


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
    back = any(day <= one <= told for one in _changes(day, told, _PUT_BACK))
    nights = list(_changes(day, told, _AT_NIGHT))
    early = _HOUR if back or any(day <= one < told for one in nights) else 0
    on = any(day < one <= told for one in _changes(day, told, _PUT_ON))
    late = _HOUR if on or (day == told and day in nights) else 0
    return When(start - early, start + DAY_MIN - 1 + late, day, zone)


def _changes(day: date, told: date, rules: Iterable[_Day]) -> Iterator[date]:
    """The days of a clock's change from the year of `day` to the one after, which has every kind
    of them; most are asked of a day that is neither in that month nor told later."""
    if day == told and all(day.month != rule.month for rule in rules):
        return
    for year in range(day.year, min(told.year, day.year + 1) + 1):
        yield from (rule.of(year) for rule in rules)


def _minute(day: date, minute: int, like: datetime) -> When:
    zone = _offset(like)
    then = day.toordinal() * DAY_MIN + minute - zone
    return When(then, then, day, zone)


def _offset(like: datetime) -> int:
    gap = like.utcoffset()
    return int(gap.total_seconds() // 60) if gap is not None else 0
