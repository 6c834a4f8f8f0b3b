"""How long the cold was off, as a person says it: hours until now, or from when to when."""

from __future__ import annotations

import re
from datetime import date, datetime

from pantry_tui.core import dates
from pantry_tui.core.hours import day_and_hour, in_figures
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import cut_hours, outage

Stretch = tuple[datetime | None, datetime]

_SPAN = re.compile(
    r"(?:from |since )?(.+?)(?: to | until | till | [-–] |(?<=:\d\d)[-–](?=\d))(?!now)(.+)",
    re.IGNORECASE,
)
_SINCE = re.compile(r"(?:from |since )(.+?)(?:(?: until| to)? now)?", re.IGNORECASE)
_DAY = re.compile(r"(.*?)[ ,]*(\d{1,2}:\d{2})", re.IGNORECASE)
MOST_H = 1000


def read_stretch(p: Pantry, typed: str) -> Stretch:
    """("6", "1.5 h", "unknown", "09:00 to 17:30", "yesterday 6 pm to noon", "since 18:00") ->
    from when to when it was off; None where nobody knows since when. Raises BadInput."""
    words = in_figures(typed)
    now = outage.now_of(p)
    hours = _hours(words)
    if hours is not None:
        return outage.lasting(p, hours)
    if is_unknown(words) or words.casefold() == "nobody knows":
        return None, now
    span, since = _SPAN.fullmatch(words), _SINCE.fullmatch(words)
    if span is None and since is not None:
        begun = spoken(since[1], p.today)
        if begun[-3:-2] == ":":
            return cut_hours.times(begun, f"{now:%Y-%m-%d %H:%M}", p.today)[0], now
    if span is None:
        raise BadInput(
            f"{typed[:40]!r} is neither hours nor from when to when: write 6, 09:00 to 17:30, "
            "yesterday 18:00 to 06:00, or unknown."
        )
    return cut_hours.times(spoken(span[1], p.today), spoken(span[2], p.today), p.today)


def _hours(words: str) -> float | None:
    plain = re.sub(r" ?(?:hours?|hrs?|h)$", "", words.casefold())
    if re.fullmatch(r"-?\d+(?:[.,]\d+)?", plain) is None:
        return None
    hours = float(plain.replace(",", "."))
    if not 0 <= hours <= MOST_H:
        raise BadInput(f"Give the hours as a number from 0 to {MOST_H}.")
    return hours


def spoken(typed: str, today: date) -> str:
    """("yesterday 6 pm") -> "2026-11-24 18:00"; a bare hour, or unknown, as it is. Raises
    BadInput."""
    typed = day_and_hour(typed)
    match = _DAY.fullmatch(typed)
    if match is None or not match[1] or re.fullmatch(r"\d{4}-\d{2}-\d{2}T?", match[1]):
        return typed
    return f"{dates.read_date(match[1], today).isoformat()} {match[2]}"
