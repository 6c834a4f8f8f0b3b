"""Hours of the day as people say them: "6 pm", "at noon", "midnight"."""

from __future__ import annotations

import re

from pantry_tui.errors import Unclear

_HALVES = r"(?i)(?<![\d:.])(\d{1,2})(?:[:.](\d{2}))?\s?([ap])\.?m\b\.?"
_NOON = r"(?i)(?<!\S)(?:12 )?(?:noon|midday)(?!\S)"
_MIDNIGHT = r"(?i)(?<!\S)(?:12 )?midnight(?!\S)"
_AT = r"(?i)(?<!\S)at (?=\d{1,2}:\d{2}|midnight)"
#: A number of hours that says nothing of which half of the day.
_EITHER = r"(?i)(?:.*\s)?(?:at (\d{1,2})(?: o['’]?clock)?|(\d{1,2}) o['’]?clock)"
_HOUR_FIRST = r"(?i)(\d{1,2}:\d{2}) (?:on )?([^\d\s]*[a-z].*)"


def in_figures(text: str) -> str:
    """("6 pm to noon") -> "18:00 to 12:00"; midnight stays a word, as it may be of two days."""
    plain = re.sub(_NOON, "12:00", re.sub(_HALVES, _of_the_half, " ".join(text.split())))
    return re.sub(_AT, "", plain)


def day_and_hour(text: str) -> str:
    """("yesterday at 6 pm") -> "yesterday 18:00"; ("noon on friday") -> "friday 12:00";
    ("midnight") -> "00:00", that at which today began; what says no hour as it is. Raises Unclear
    for an hour of either half of the day, and for the midnight of a day: it begins and ends with
    one."""
    plain = in_figures(text)
    midnight = re.search(_MIDNIGHT, plain)
    if midnight is not None:
        day = f"{plain[: midnight.start()]} {plain[midnight.end() :]}".strip()
        if day:
            why = f"{plain[:40]!r} could be when that day begins or when it ends"
            raise Unclear(f"{why}: write 00:00 and the day that begins then.", "at", plain, ())
        return "00:00"
    either = re.fullmatch(_EITHER, plain)
    hour = int(either[1] or either[2]) if either is not None else 0
    if 1 <= hour <= 12:
        choices = (f"{hour:02}:00", f"{(hour + 12) % 24:02}:00")
        why = f"{plain[:40]!r} could be {' or '.join(choices)}: write which."
        raise Unclear(why, "at", plain, choices)
    hour_first = re.fullmatch(_HOUR_FIRST, plain)
    return f"{hour_first[2]} {hour_first[1]}" if hour_first is not None else plain


def _of_the_half(match: re.Match[str]) -> str:
    hour, minute = int(match[1]), match[2] or "00"
    if not 1 <= hour <= 12:
        return match[0]
    if hour == 12 and match[3].lower() == "a":
        return "midnight" if minute == "00" else f"00:{minute}"
    return f"{hour % 12 + (12 if match[3].lower() == 'p' else 0):02}:{minute}"
