"""From when to when a power cut lasted, as flags say it and as it is booked."""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta, timezone

from pantry_tui.core.dates import say
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import DAY_MIN, EVER, Cut, Place
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
    """From when to when it was off; a bare start later than the end was the evening before, a bare
    end later than its start is of the same day; None since nobody knows when ("unknown"). Raises
    BadInput."""
    last = read_time(end, today)
    if start.strip().casefold() in _NOBODY_KNOWS:
        return None, last
    first = read_time(start, today)
    if "-" not in end and (same := datetime.combine(first.date(), last.time())) > first:
        last = min(last, same)
    if first > last and "-" not in start:
        first -= timedelta(days=1)
    if first > last:
        raise BadInput("The power cut ends before it begins: mend --from or --to.")
    return first, last


def iso(then: datetime) -> str:
    """To the minute, with its zone."""
    return then.isoformat(timespec="minutes")


def said_as(cut: Cut) -> str:
    """ "Tue 24 Nov 2026 18:00 to Wed 25 Nov 2026 06:00": as it was read."""
    ends = datetime.fromisoformat(_local(cut.end.last, cut.end.zone))
    last = f"{ends:%H:%M}"
    if cut.start == EVER:
        return f"until {say(ends.date())} {last}"
    begins = datetime.fromisoformat(_local(cut.start.first, cut.start.zone))
    day = "" if begins.date() == ends.date() else f"{say(ends.date())} "
    return f"{say(begins.date())} {begins:%H:%M} to {day}{last}"


def as_booked(place: Place, cut: Cut) -> said.Outage:
    """The cut of a place as it is booked."""
    known = cut.start != EVER
    return said.Outage(
        place.id,
        start=_local(cut.start.first, cut.start.zone) if known else "",
        end=_local(cut.end.last, cut.end.zone),
        hours=(cut.end.last - cut.start.first) / 60 if known else 0.0,
        full=cut.full,
        max_temp_f=cut.max_temp_f,
        ice=cut.ice,
    )


def _local(minute: int, zone: int) -> str:
    day, rest = divmod(minute + zone, DAY_MIN)
    there = timezone(timedelta(minutes=zone))
    return iso(datetime.combine(date.fromordinal(day), time(rest // 60, rest % 60), there))
