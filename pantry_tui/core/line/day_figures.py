"""A day written in figures: "2026-11-20", "13/9/26", "25.9.". What could be two days is asked."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.line.tokens import Kind, Line


@dataclass
class Day:
    """The day that was said; `unknown`: that nobody knows it. `ask` is (typed, choices, why)."""

    day: date | None = None
    unknown: bool = False
    said: bool = False
    ask: tuple[str, tuple[str, ...], str] | None = None
    weekday: int | None = None  # of a day that is named by it alone, Monday 0
    among: str = ""  # the words of which it is the first day, "this week"
    first_of: str = ""  # the month or the year of which it is the first day, "March 2026"
    opened: date | None = None  # on which it was opened, which is no day on which it was made


def numeric(said: str, today: date) -> Day:
    read = readings(said, today)
    days = [day for day in read if day <= today] or read  # nothing was done on a day to come
    if len(days) == 1:
        month = len(re.split(r"[./-]", said.rstrip("."))) == 2 and re.search(r"\d{4}", said)
        return Day(days[0], first_of=f"{days[0]:%B} {days[0].year}" if month else "")
    if not days:
        return Day(ask=(said, (), f"{said} is no day of the calendar: give another date."))
    named = " or ".join(dates.say(day) for day in days)
    choices = tuple(day.isoformat() for day in days)
    return Day(ask=(said, choices, f"{said!r} could be {named}: say which."))


def readings(said: str, today: date) -> list[date]:
    """Every day that figures could mean, the day first before the month first; a month and year
    are its first day. Without a year it is the last such day. "25.9." is written where the day
    stands first."""
    parts = re.split(r"[./-]", said.rstrip("."))
    if len(parts[0]) == 4:
        orders = [(int(parts[2]) if len(parts) > 2 else 1, int(parts[1]), int(parts[0]))]
    elif len(parts) == 2 and len(parts[1]) == 4:
        orders = [(1, int(parts[0]), int(parts[1]))]
    else:
        one, two = int(parts[0]), int(parts[1])
        year = int(parts[2]) if len(parts) > 2 else 0
        year += 2000 if 0 < year < 100 else 0
        orders = [(one, two, year), (two, one, year)][: 1 if said.endswith(".") else 2]
    found: list[date] = []
    for day, month, year in orders:
        try:
            that = date(year or today.year, month, day)
            if not year and that > today:
                that = date(today.year - 1, month, day)
        except ValueError:
            continue
        if 1900 <= that.year <= 2100 and that not in found:
            found.append(that)
    return found


def figures(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """ "2026-11-20", "13/9/26", "13.9.2026", "9/14", "05/2025"."""
    token = line.at(i)
    if token is None:
        return i, None
    if token.kind is Kind.DATE:
        return i + 1, numeric(token.said, today)
    if re.fullmatch(r"(19|20)\d{6}", token.said):
        said = f"{token.said[:4]}-{token.said[4:6]}-{token.said[6:]}"
        return i + 1, numeric(said, today)
    if re.fullmatch(r"\d{1,2}\.\d{1,2}", token.said) and alone(line, i):
        return i + 1, numeric(token.said, today)
    short = re.fullmatch(r"(\d{1,2})/(\d{1,2})", token.said)
    if short and token.kind is Kind.NUMBER and _standsalone(line, i):
        return i + 1, numeric(token.said, today)
    return i, None


def _standsalone(line: Line, i: int) -> bool:
    """A day and month like 9/14, and no half a pound: the part holds nothing else, or it is no
    usual fraction."""
    part = line.tokens[i].part
    same = [n for n, token in enumerate(line.tokens) if token.part == part]
    above, below = (int(one) for one in line.tokens[i].said.split("/"))
    return len(same) == 1 or below not in (2, 3, 4, 8, 16) or above >= below


def alone(line: Line, i: int) -> bool:
    """Whether a word is all that its part says."""
    return sum(1 for token in line.tokens if token.part == line.tokens[i].part) == 1
