"""Moments as they are typed: a day, and the hour where it is known."""

from __future__ import annotations

import re
from contextlib import suppress
from datetime import date, timedelta

from pantry_tui.core.dates import read_date, say
from pantry_tui.core.hours import day_and_hour
from pantry_tui.errors import BadInput

#: A day, and the minute of that day where it is known (0 to 1439).
Moment = tuple[date, int | None]

_ISO = r"([0-9]{4}-[0-9]{2}-[0-9]{2})(?:[T ]+([0-9]{1,2}:[0-9]{2}))?"
# Patterns stay text until they are asked: most starts ask none.
_OFFSET = r"(?s)(.*[0-9]{1,2}:[0-9]{2})([+-])([0-9]{2}:[0-9]{2})"
_AGO = r"(?i)(an?|[0-9]{1,3}) (hour|minute|min)s? ago"
_HOUR = r"(?s)(?:(.*?)[T ])?\s*([0-9]{1,2}:[0-9]{2})"


def read_today(text: str) -> Moment:
    """("2026-11-25", "2026-11-25 18:30", "2026-11-25T18:30") -> that moment. Raises BadInput."""
    if len(text) == 10 and text[7] == "-" and "1900" <= text[:4] <= "2100":
        with suppress(ValueError):  # a plain day, as every script tells it
            return date.fromisoformat(text), None
    match = re.fullmatch(_ISO, day_and_hour(text))
    try:
        if match is None:
            raise ValueError
        if not "1900" <= match[1][:4] <= "2100":
            raise BadInput(f"{match[1]} is no day of a household: write one from 1900 to 2100.")
        return date.fromisoformat(match[1]), _minute(match[2]) if match[2] else None
    except ValueError:
        raise BadInput(f"{text[:40]!r} is no date: write --today 2026-11-25.") from None


def read_at(text: str, now: Moment) -> Moment:
    """The same of what happened by `now`: "yesterday", "24 nov 18:30", "7 am", "2 hours ago".
    Raises BadInput."""
    today, this_minute = now
    ago = re.fullmatch(_AGO, " ".join(text.split()))
    if ago is not None and this_minute is not None:
        return _before(today, this_minute, ago)
    text = day_and_hour(text)
    match = re.fullmatch(_HOUR, text)
    typed = text if match is None else match[1]
    day = read_date(typed, today) if typed and typed.strip() else today
    minute = None if match is None else _minute(match[2])
    if (day, minute or 0) > (today, 1439 if this_minute is None else this_minute):
        hour = "" if minute is None else f" {minute // 60:02}:{minute % 60:02}"
        raise BadInput(f"{say(day)}{hour} is still to come: give the moment at which it happened.")
    return day, minute


def _before(today: date, minute: int, ago: re.Match[str]) -> Moment:
    number = int(ago[1]) if ago[1].isdigit() else 1
    days, left = divmod(minute - number * (60 if ago[2].lower() == "hour" else 1), 1440)
    return today + timedelta(days=days), left


def offset(text: str) -> tuple[str, int | None]:
    """("25 oct 02:30+01:00") -> "25 oct 02:30", 60: an hour that came twice is told by how far the
    clock was ahead of Greenwich. Raises BadInput."""
    match = re.fullmatch(_OFFSET, text.strip())
    if match is None:
        return text, None
    minutes = _minute(match[3])
    return match[1], -minutes if match[2] == "-" else minutes


def _minute(text: str) -> int:
    """("18:30") -> 1110. Raises BadInput."""
    hour, _, minute = text.partition(":")
    if int(hour) > 23 or int(minute) > 59:
        raise BadInput(f"{text} is no time of day: write 18:30.")
    return int(hour) * 60 + int(minute)
