"""The day in a line: "yesterday", "three weeks ago", "last march", "in june", "2025", "started
sunday". What could be two days is asked about."""

from __future__ import annotations

import re
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.line.day_figures import Day as Day
from pantry_tui.core.line.day_figures import alone, figures
from pantry_tui.core.line.day_figures import readings as readings
from pantry_tui.core.line.day_hours import ends, hour_after
from pantry_tui.core.line.day_relative import relative, weekday
from pantry_tui.core.line.day_words import (
    DAYS,
    FEASTS,
    FOREIGN_MONTHS,
    LEADS,
    MONTH_WORDS,
    MONTHS,
    MOVING,
    NOBODY_KNOWS,
    SEASONS,
)
from pantry_tui.core.line.tokens import Kind, Line
from pantry_tui.core.text import begun

#: In front of a day on which something else was done than putting up.
_LATER = frozenset({"opened", "thawed", "defrosted", "eaten", "moved", "finished", "ready", "done"})
#: Of these the first day that they may mean is when it was opened: its days are counted from it.
_OPENED = "opened"
#: In front of "unknown" it is the day of which nobody knows anything: "bought unknown".
_DONE_THEN = frozenset({"bought", "canned", "frozen", "dried", "pickled", "salted", "smoked"})
#: Where nothing but the day of opening is said.
_MADE_TOO = ": say also when it was made or bought, like bought 3 weeks ago, or made unknown."
#: Of such a day.
_NOT_MADE = (
    " is not the day it was made or bought: say that one, or unknown, in its place; then book this "
    "with `--at`."
)


def take_day(line: Line, today: date, food: frozenset[int]) -> Day:
    """Claims the day; `food` are tokens that belong to a food's or method's name ("October
    beans"). Raises nothing."""
    found = Day()
    later: tuple[str, tuple[str, ...], str] | None = None
    opened: tuple[date, str] | None = None
    for i in range(len(line.tokens)):
        if not line.free[i] or i in food:
            continue
        start = i
        stop, day = _day_at(line, i, today)
        if stop == i:
            lead = _lead(line, i)
            if any(n in food for n in range(i, i + lead)):
                lead = 0
            stop, day = _day_at(line, i + lead, today) if lead else (i, None)
            if stop == i + lead:
                stop = i
        if stop == start or any(n in food for n in range(start, stop)):
            continue
        stop += hour_after(line, stop) + line.says(stop, "onwards")
        stop += _mark(line, stop)
        line.claim(start, stop)
        if day is None:
            continue
        if start and line.word(start - 1) in _LATER:
            typed = " ".join(token.said for token in line.tokens[start - 1 : stop])
            line.claim(start - 1, start)
            if line.tokens[start - 1].text == _OPENED and day.day is not None and not opened:
                opened = (day.day, typed)
            else:
                later = (typed, (), f"{begun(typed)}{_NOT_MADE}")
            continue
        if found.said and _says_weekday(found, day):
            found = day if day.weekday is None else found
            found.said, found.weekday = True, None
        elif found.said and (found.day, found.unknown, found.ask) != (
            day.day,
            day.unknown,
            day.ask,
        ):
            typed = " ".join(token.said for token in line.tokens[start:stop])
            found.ask = (typed, (), "Two days are named: say on which it was made.")
            found.day = None
        elif not found.said:
            found = day
            found.said = True
    found.ask = found.ask or later
    if opened is not None:
        found.opened = opened[0]
        if not found.said:
            found.ask = found.ask or (opened[1], (), f"{begun(opened[1])}{_MADE_TOO}")
    return found


def _says_weekday(one: Day, other: Day) -> bool:
    """Whether they are a day and its weekday: "Fri 13 Nov 2026"."""
    for named, day in ((one, other), (other, one)):
        if named.weekday is not None and day.weekday is None and day.day is not None:
            return day.day.weekday() == named.weekday
    return False


def month_or_day(line: Line, i: int) -> tuple[int, str]:
    """A printed date behind "best before": where it stops, and as it was typed, which
    `dates.read_date` reads; figures that could be two days stay as they are and are refused. A day
    without a year is left so ("3 december")."""
    if line.word(i) in DAYS:
        stop, said = month_or_day(line, i + 1)
        return (stop, f"{line.word(i)} {said}") if stop > i + 1 else (i, "")
    token = line.at(i)
    if token is not None and token.kind is Kind.DATE:
        days = readings(token.said, date.max)
        parts = re.split(r"[./-]", token.said)
        whole = len(parts) == 3 and len(days) == 1
        if whole:
            return i + 1, days[0].isoformat()
        if len(parts) == 2 and days:
            return i + 1, f"{MONTH_WORDS[days[0].month - 1]} {days[0].year}"
        return i + 1, token.said
    if token is not None and re.fullmatch(r"\d{1,2}/\d{1,2}", token.said):
        return i + 1, token.said
    at, day = _ordinal(line, i)
    at += line.says(at, "of")
    month = MONTHS.get(line.word(at), 0)
    if not day and month:
        stop, day = _ordinal(line, at + 1)
        at = stop - 1 if day else at
    stop, year = _year_at(line, at + 1)
    if not month or not (year or day):
        return i, ""
    if not year:
        return at + 1, f"{day} {MONTH_WORDS[month - 1]}"
    return stop, f"{day or ''} {MONTH_WORDS[month - 1]} {year}".strip()


def is_day_at(line: Line, i: int, today: date) -> bool:
    """Whether a day begins there, or what leads to one ("on sunday")."""
    at = i + _lead(line, i)
    return _day_at(line, at, today)[0] > at


def _lead(line: Line, i: int) -> int:
    """How many words lead to a day: "started on", "picked in"."""
    lead = next((len(one) for one in LEADS if line.says(i, *one)), 0)
    return lead + (line.says(i + lead, "on") or line.says(i + lead, "in")) if lead else 0


def _mark(line: Line, i: int) -> int:
    return 1 if line.word(i) == "?" else 0


def _day_at(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """Where the day that begins at `i` stops, and it; `i` where none does."""
    for read in (_unknown, relative, figures, _named, _feast, weekday, _year):
        stop, day = read(line, i, today)
        if stop > i:
            return _dated(line, i, stop, day, today) if read is weekday else (stop, day)
    return i, None


def _dated(line: Line, i: int, stop: int, named: Day | None, today: date) -> tuple[int, Day | None]:
    """A day of the week with its date behind it, "wed 25 nov 2026"; where they do not agree it is
    asked which is meant."""
    weekday_said = named.weekday if named is not None else None
    if weekday_said is None:
        return stop, named
    for read in (figures, _named):
        end, day = read(line, stop, today)
        if end > stop and day is not None and day.day is not None:
            if day.day.weekday() == weekday_said:
                return end, day
            typed = " ".join(token.said for token in line.tokens[i:end])
            why = f"{dates.say(day.day)} is no {line.tokens[i].said}: say which day it was."
            return end, Day(ask=(typed, (), why))
    return stop, named


def _unknown(line: Line, i: int, _today: date) -> tuple[int, Day | None]:
    behind_a_way = i > 0 and line.tokens[i - 1].text in _DONE_THEN
    if line.word(i) == "unknown" and (alone(line, i) or (behind_a_way and ends(line, i))):
        return i + 1, Day(unknown=True)
    for said in NOBODY_KNOWS:
        if line.says(i, *said):
            return i + len(said), Day(unknown=True)
    return i, None


def _ordinal(line: Line, i: int) -> tuple[int, int]:
    """ "13", "13th", "the 13th of": where it stops, and the day of the month; 0 where none is."""
    i += line.says(i, "the")
    number = line.number(i)
    if number is None or number.denominator != 1 or not 1 <= number <= 31:
        return i, 0
    stop = i + 1
    token = line.at(stop)
    if token is not None and token.joined and token.text in ("st", "nd", "rd", "th", "er", "."):
        stop += 1
    return stop, int(number)


def _named(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """ "12 september", "sept 12 2025", "june", "last march", "june 2026", "summer 2025"."""
    last = (
        line.says(i, "last")
        or line.says(i, "late")
        or line.says(i, "early")
        or line.says(i, "mid")
        or max(line.says(i, part, "of") for part in ("end", "start", "beginning", "middle"))
    )
    at, day = _ordinal(line, i)
    if day:
        at += line.says(at, "of")
        month = MONTHS.get(line.word(at), 0) or FOREIGN_MONTHS.get(line.word(at), 0)
        if not month:
            return _of_this_month(line, i, today)
        return _with_year(line, at + 1, day, month, today)
    at = i + last
    foreign = FOREIGN_MONTHS.get(line.word(at), 0)
    month = MONTHS.get(line.word(at), 0) or foreign
    if month:
        doubtful = foreign or line.word(at) in ("may", "mar", "dec", "sun")
        if doubtful and not _is_date_place(line, at, last):
            return i, None
        stop, day = _ordinal(line, at + 1)
        if day and not _counts(line, stop):
            return _with_year(line, stop, day, month, today)
        if line.says(i, "last") and month == today.month and not _year_at(line, at + 1)[1]:
            return at + 1, _this_or_last(line.word(at), today)
        return _with_year(line, at + 1, 0, month, today)
    season = SEASONS.get(line.word(at), 0)
    stop, year = _year_at(line, at + 1)
    if year and season:
        return stop, Day(date(year, season, 1), first_of=f"{line.word(at)} {year}")
    return i, None


def _this_or_last(month: str, today: date) -> Day:
    """ "last november", said in November, is this one or that of last year."""
    both = [date(year, today.month, 1) for year in (today.year, today.year - 1)]
    choices = tuple(f"{one:%B} {one.year}".lower() for one in both)
    said = f"last {month}"
    return Day(ask=(said, choices, f"{begun(said)} could be {choices[0]} or {choices[1]}."))


def _of_this_month(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """ "the 3rd", "12th": the last such day."""
    at, day = _ordinal(line, i)
    plain = line.tokens[at - 1].kind is Kind.NUMBER or line.tokens[at - 1].text == "."
    if plain or (line.word(at) and line.tokens[at].part == line.tokens[i].part):
        return i, None
    for back in range(62):
        that = today - timedelta(days=back)
        if that.day == day:
            return at, Day(that)
    return i, None


def _is_date_place(line: Line, i: int, last: int) -> bool:
    """ "may" is a month behind "in" or "last", before a number, or alone in its part."""
    before = line.tokens[i - 1].text if i else ""
    token = line.at(i + 1)
    return (
        bool(last)
        or alone(line, i)
        or before in ("in", "since", "of", "from")
        or (token is not None and token.kind is Kind.NUMBER)
        or bool(_year_at(line, i + 1)[1])
    )


def _counts(line: Line, i: int) -> bool:
    """Whether the number before `i` counts what follows ("june 6 jars")."""
    from pantry_tui.core.line.amounts import unit_at
    from pantry_tui.core.line.vessels import vessel

    return bool(unit_at(line, i)[1] or (line.word(i) and vessel(line.word(i))))


def _year_at(line: Line, i: int) -> tuple[int, int]:
    """ "2026", "'26": where it stops, and the year; 0 where there is none."""
    token = line.at(i)
    if line.word(i) in ("'", "’"):
        short = line.at(i + 1)
        if short is not None and short.joined and re.fullmatch(r"\d{2}", short.said):
            return i + 2, 2000 + int(short.said)
        return i, 0
    if token is None or token.kind is not Kind.NUMBER or not re.fullmatch(r"\d{4}", token.said):
        return i, 0
    return (i + 1, int(token.said)) if 1900 <= int(token.said) <= 2100 else (i, 0)


def _with_year(line: Line, i: int, day: int, month: int, today: date) -> tuple[int, Day]:
    """A day of a month (0: its first) in the year behind it, or the last such day."""
    stop, year = _year_at(line, i)
    try:
        that = date(year or today.year, month, day or 1)
        that = that if year or that <= today else date(today.year - 1, month, day or 1)
        return stop, Day(that, first_of="" if day else f"{that:%B} {that.year}")
    except ValueError:
        said = f"{day} {month}"
        return stop, Day(ask=(said, (), "That is no day of the calendar: give another date."))


def _feast(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    last = line.says(i, "last")
    at = i + last
    for size in (3, 2, 1):
        name = " ".join(line.word(at + n) for n in range(size))
        if name in FEASTS:
            day, month = FEASTS[name]
            return _with_year(line, at + size, day, month, today)
        if name in MOVING:
            stop, _ = _year_at(line, at + size)
            why = f"{begun(name)} is another day each year: give the date."
            return stop, Day(ask=(name, (), why))
    return i, None


def _year(line: Line, i: int, today: date) -> tuple[int, Day | None]:
    """ "2024" alone, or "2024?": that year's first day, the strict reading."""
    stop, year = _year_at(line, i)
    if not year or year > today.year:
        return i, None
    from pantry_tui.core.line.amounts import unit_at

    if unit_at(line, stop)[1]:
        return i, None
    return stop, Day(date(year, 1, 1), first_of=str(year))
