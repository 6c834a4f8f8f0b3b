"""What was booked while the clock of the computer was ahead: when it may really have happened.

A clock that ran ahead shows by what is booked next, under a lower hour. What was booked in between
happened after what was booked before it and before what was booked next; told days and hours were
perhaps reckoned from the wrong clock, so each counts as told, or as long before that as it was
before the clock: the earliest of these, to the latest, is when it may have been, and whoever judges
takes the worst of it. That day of the wrong clock comes, and changes nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import NamedTuple

from pantry_tui.core.log.events import Event
from pantry_tui.core.log.moments import hour_told, moment, some_time, when
from pantry_tui.core.log.payloads import ClockAhead
from pantry_tui.core.model import DAY_MIN, Ahead, When

#: Clocks differ by so many minutes without any of them having the wrong day. Our own choice, no
#: more than two computers may differ by: one that was days ahead and is right again just as its
#: wrong hour comes cannot be told from them.
SLIGHT = 30
#: Where nothing was booked before it: before anything that any household has put up.
LONG_AGO = date(1900, 1, 1).toordinal() * DAY_MIN


class Window(NamedTuple):
    """Something was booked between these two moments; `since` None: nothing was booked before."""

    since: When | None
    until: When

    @property
    def first(self) -> int:
        """The earliest minute at which it may have been booked."""
        return LONG_AGO if self.since is None else self.since.first


def windows(events: Iterable[Event]) -> dict[str, Window]:
    """By the id of each event that was booked by a clock that was ahead, between which moments it
    was booked. Of two words on one of them the later end and the earlier beginning hold less."""
    found: dict[str, Window] = {}
    for event in events:
        payload = event.payload
        if not isinstance(payload, ClockAhead):
            continue
        new = Window(moment(payload.since) if payload.since else None, moment(payload.until))
        for id_ in payload.events:
            found[id_] = _both(found[id_], new) if id_ in found else new
    return found


def _both(one: Window, other: Window) -> Window:
    since = None
    if one.since is not None and other.since is not None:
        since = min(one.since, other.since)
    return Window(since, min(one.until, other.until))


def clock_of(event: Event) -> When:
    """What the clock said when it was booked: any minute of a day that was only named."""
    then = datetime.fromisoformat(event.recorded)
    if event.at is not None and event.at < 0:
        return some_time(event.day, then)
    if not hour_told(event.recorded):
        return some_time(then.date(), then)
    if event.day > then.date():
        return some_time(event.day, then)
    return moment(event.recorded)


def clipped(told: When, event: Event, window: Window) -> When:
    """A moment that an event tells of, where its clock was ahead."""
    before = max(0, clock_of(event).first - told.first)
    last = min(told.last, window.until.last)
    first = min(told.first, window.first - before, last)
    return When(first, last, told.day_of(first), told.zone)


class Clocks:
    """By which clocks the events of a batch or a place were booked."""

    def __init__(self, events: Iterable[Event] = ()) -> None:
        self.within = windows(events)

    def when(self, event: Event) -> When:
        """When it may have happened."""
        window = self.within.get(event.id)
        return when(event) if window is None else clipped(when(event), event, window)

    def second(self, event: Event) -> tuple[int, int]:
        """The earliest and the latest second at which it was booked, counted as `When` counts
        minutes."""
        window, then = self.within.get(event.id), clock_of(event)
        if window is not None:
            return window.first * 60, window.until.last * 60 + 59
        if then.known and hour_told(event.recorded):
            at = then.first * 60 + datetime.fromisoformat(event.recorded).second
            return at, at
        return then.first * 60, then.last * 60 + 59

    def shown(self, event: Event) -> int:
        """The second that the clock showed when it was booked, right or wrong; the first of a day
        that was only named."""
        return clock_of(event).first * 60

    def soonest(self, event: Event) -> date:
        """The earliest day that it may be."""
        return self.when(event).day if event.id in self.within else event.day

    def day(self, event: Event) -> date:
        """The day of it; by which it was booked at last, where its clock was ahead."""
        window = self.within.get(event.id)
        return event.day if window is None else min(event.day, window.until.day)

    def made(self, told: date | None, event: Event) -> date | None:
        """The day made that an event tells of: the earliest that it may be. Where nothing was
        booked before, a day before that of the booking counts as it was told, and else none."""
        window = self.within.get(event.id)
        if told is None or window is None:
            return told
        before = max(timedelta(), clock_of(event).day - told)
        if window.since is None:
            return told if before and told <= window.until.day else None
        return min(told, window.since.day - before, window.until.day)

    def began(self, event: Event, made: date | None) -> When:
        """When what was put up by a clock that was ahead may have come: from the day made on. Where
        that is unknown, since nothing was booked before, that counts for more."""
        window, began = self.within[event.id], self.when(event)
        if window.since is None:
            began = window.until
        if made is None or made >= began.day:
            return began
        since = some_time(made, datetime.fromisoformat(event.recorded), event.day)
        return began._replace(first=min(since.first, began.first), day=made)

    def ahead(self, event: Event) -> Ahead | None:
        """What is said of it where its clock was ahead: nothing of minutes of one day."""
        window = self.within.get(event.id)
        if window is None:
            return None
        then, said = clock_of(event).last, clock_of(event).day
        since = None if window.since is None else window.since.day
        if since == said and then - window.first <= SLIGHT:
            return None
        return Ahead(event.id, event.containers, said, since, window.until.day)
