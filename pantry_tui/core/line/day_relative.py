"""Days reckoned back from today: "yesterday", "three weeks ago", "last tuesday"."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from fractions import Fraction

from pantry_tui.core import dates
from pantry_tui.core.line.day_figures import Day, alone
from pantry_tui.core.line.day_words import DAYS, FOREIGN_DAYS, VAGUE
from pantry_tui.core.line.numbers import Said, read_number
from pantry_tui.core.line.tokens import Line
from pantry_tui.core.text import begun
from pantry_tui.errors import BadInput


def relative(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """Where such a day that begins at `i` stops, and it; `i` where none does."""
    for said, back in (
        (("the", "day", "before", "yesterday"), 2), (("day", "before", "yesterday"), 2),
        (("today",), 0), (("tonight",), 0), (("this", "morning"), 0), (("this", "evening"), 0),
        (("this", "afternoon"), 0),
        (("just", "now"), 0), (("now",), 0), (("yesterday",), 1), (("last", "night"), 1),
    ):  # fmt: skip
        if line.says(i, *said):
            return i + len(said), Day(today - timedelta(days=back))
    if line.word(i) in FOREIGN_DAYS and alone(line, i):
        return i + 1, Day(today - timedelta(days=FOREIGN_DAYS[line.word(i)]))
    if line.says(i, "last", "year"):
        return i + 2, Day(date(today.year - 1, 1, 1))
    if line.says(i, "this", "year"):
        return i + 2, Day(date(today.year, 1, 1))
    for phrase, back in VAGUE.items():
        words = phrase.split()
        if line.says(i, *words):
            if phrase in _NOW:
                return i + len(words), Day(_NOW[phrase](today), among=phrase)
            earliest = _begins(phrase, today) or today - timedelta(days=back)
            why = (
                f"{begun(phrase)} could be many days: give one, "
                f"for example {dates.say(earliest)}, or unknown."
            )
            return i + len(words), Day(ask=(phrase, (earliest.isoformat(),), why))
    return _ago(line, i, today)


def _begins(phrase: str, today: date) -> date | None:
    """The first day of what has a first day: last week's Monday, last weekend's Saturday."""
    monday, first = today - timedelta(days=today.weekday()), today.replace(day=1)
    return {
        "last week": monday - timedelta(days=7),
        "last weekend": monday - timedelta(days=2),
        "last month": (first - timedelta(days=1)).replace(day=1),
    }.get(phrase)


def _week(today: date) -> date:
    """The first day of this week, whichever of Sunday and Monday a household begins it with."""
    monday = today - timedelta(days=today.weekday())
    return monday if today.weekday() == 6 else monday - timedelta(days=1)


#: What is still running has one first day, the strict reading, as a month or a year has.
_NOW: dict[str, Callable[[date], date]] = {
    "this week": _week,
    "this month": lambda today: today.replace(day=1),
}


_SPANS = {"fortnight": ("week", 2), "wk": ("week", 1), "mth": ("month", 1), "yr": ("year", 1)}


def _ago(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """ "three weeks ago", "a fortnight ago"; "since 3 weeks" and "for 3 weeks" say the same."""
    since = 1 if line.word(i) in ("since", "for") else 0
    found = read_number(line, i + since)
    if found is None and line.word(i) in ("fortnight", "week", "month", "year"):
        found = Said(i, Fraction(1))  # "fortnight ago"
    if found is None or found.value is None or found.value.denominator != 1:
        return i, None
    unit = line.word(found.stop).rstrip("s")
    unit, times = _SPANS.get(unit, (unit, 1))
    if unit not in ("day", "week", "month", "year"):
        return i, None
    ago = line.says(found.stop + 1, "ago") or line.says(found.stop + 1, "back")
    if not ago and not since:
        return i, None
    try:
        day = dates.read_date(f"{int(found.value) * times} {unit}s ago", today)
    except (BadInput, OverflowError):
        return i, None
    return found.stop + 1 + ago, Day(day)


def weekday(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """ "sunday" is the last one; "last tuesday", said on a Thursday, may be this week's or last
    week's and is asked about."""
    last = line.says(i, "last")
    day = DAYS.get(line.word(i + last))
    if day is None:
        return i, None
    back = (today.weekday() - day - 1) % 7 + 1
    nearest = today - timedelta(days=back)
    if last and back <= today.weekday():
        before = nearest - timedelta(days=7)
        named = f"{dates.say(before)} or {dates.say(nearest)}"
        said = f"last {line.word(i + last)}"
        choices = (before.isoformat(), nearest.isoformat())
        return i + last + 1, Day(ask=(said, choices, f"{begun(said)} could be {named}."))
    return i + last + 1, Day(nearest, weekday=None if last else day)
