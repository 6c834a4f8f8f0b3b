"""How old a note says that food is, where its record has a day: "5 days old", "sunday's leftovers",
"in the fridge since friday", "opened last week", "use by 3 nov". Which words are listened for is a
choice of our own, the stricter one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from enum import StrEnum
from typing import NamedTuple

from pantry_tui.core.dates import read_date, read_lately
from pantry_tui.core.safety import note_day_words as words
from pantry_tui.core.safety.denial import DENIAL
from pantry_tui.core.safety.note_states import done_of
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput


class Of(StrEnum):
    """What was on a day of a note."""

    MADE = "made"  # or bought
    OPENED = "opened"
    TOPPED = "topped up"  # with more of it
    LAST = "last"  # a date on its pack, which no plan of the kitchen is


class Told(NamedTuple):
    """A day of a note: the words, the day, and what was on it."""

    typed: str
    day: date
    of: Of


_EACH = {"day": 1, "week": 7, "month": 28}


def days_of(method: Method, note: str, noted: date) -> Iterator[Told]:
    """The days that its words name, as of the day on which it was `noted`."""
    if method not in words.BEGAN or not note:
        return
    told, as_typed = _with_dates(note, noted)
    for quoted, clause in clauses(told):
        typed = quoted
        for spelled, original in as_typed.items():
            typed = typed.replace(spelled, original)
        plain = _plainly(clause)
        if (last := _last_day(plain, noted)) is not None:
            yield Told(typed, last, Of.LAST)
            continue
        done = done_of(plain)
        for day in (_aged(done, noted), _standing(method, plain, done, noted)):
            if day is not None:
                yield Told(typed, day, Of.MADE)
        for verbs, of in (
            (words.BEGAN[method], Of.MADE),
            (words.OPENED, Of.OPENED),
            (words.TOPPED, Of.TOPPED),
        ):
            for found in re.finditer(rf"(?:\b|^)(?:{verbs})\b((?: [\w'-]+){{1,8}})", done):
                denied = re.search(rf"{DENIAL} (?:\w+ )?$", done[: found.start()])
                day = None if denied else _named(found[1].split(), noted)
                if day is not None:
                    yield Told(typed, day, of)


def _with_dates(note: str, noted: date) -> tuple[str, dict[str, str]]:
    """The note with its dates in figures spelled out, and how each of them was typed. Of two
    readings the newest that is over counts, of a last day the nearest."""
    as_typed: dict[str, str] = {}

    def spelled(found: re.Match[str]) -> str:
        day = _of_figures(found, noted, nearest=re.search(words.LAST_BEFORE, found[1]) is not None)
        if day is None:
            return found[0]
        plain = f"{day.day} {words.MONTHS[day.month - 1]} {day.year}"
        as_typed[plain] = found[0][len(found[1]) :].rstrip(".")
        return f"{found[1]}{plain}"

    def of_last_year(found: re.Match[str]) -> str:
        plain = f"31 {words.MONTHS[11]} {noted.year - 1}"
        as_typed[plain] = found[2]
        return f"{found[1]}{plain}"

    note = re.sub(words.LAST_YEAR, of_last_year, note)
    return re.sub(words.IN_FIGURES, spelled, re.sub(words.DOTTED, r"\1 ", note)), as_typed


def _of_figures(found: re.Match[str], noted: date, *, nearest: bool) -> date | None:
    one, two, year = int(found[2]), int(found[4]), found[5]
    if found[3] == "-" and len(year or "") < 4:
        return None
    sure = re.search(words.SURELY_A_DAY, found[1])
    if found[3] == "/" and (one, two) in words.FRACTIONS and not (sure or year):
        return None
    # A month comes first behind a stroke alone: 5.30 is an hour.
    orders = {(one, two), (two, one)} if found[3] == "/" else {(one, two)}
    years = [noted.year - 1, noted.year, noted.year + 1]
    if year:
        years = [int(year) + (2000 if len(year) == 2 else 0)]
    days = []
    for day, month in orders:
        for each in years:
            try:
                days.append(date(each, month, day))
            except ValueError:
                continue
    if nearest:
        return min(days, key=lambda one: abs(one - noted), default=None)
    return max((one for one in days if one <= noted), default=None)


def _plainly(clause: str) -> str:
    """With the days as they are read: "3d" as 3 days, "sunday's" as sunday."""
    for pattern, meant in words.SAME:
        clause = re.sub(pattern, meant, clause)
    hours = r"\b(\d+) ?(?:h|hrs?|hours?) (?=old\b|ago\b)"
    return re.sub(hours, lambda found: f"{int(found[1]) // 24} days ", clause)


def _aged(done: str, noted: date) -> date | None:
    """The day on which it began, by an age of it: "5 days old", "been in the fridge 4 days"."""
    age = re.search(words.AGE, done)
    if age is not None:
        number = int(age[1] or 2) if age[1] or age[3] else 1
        return _before(noted, number * _EACH[age[4]] // (2 if age[2] else 1))
    for pattern in words.AGED:
        if found := re.search(pattern, done):
            unit = found[2] if found.lastindex == 2 else "day"
            return _before(noted, max(0, int(found[1]) * _EACH[unit] - (pattern == words.DAY_N)))
    return None


def _standing(method: Method, clause: str, done: str, noted: date) -> date | None:
    """The day since which it stands there, or of which it is a rest."""
    alone = done == clause
    if (bare := re.search(words.BARE, done)) is not None:
        day = _nearest(bare[1], noted)
        return day if day is not None and day <= noted else None
    for pattern in (words.SINCE, *words.REST.get(method, ())):
        if pattern is words.WHOSE_DAY and not alone:
            continue  # "monday's, for Jane"
        if found := re.search(pattern, done):
            day = _named(found[1].split(), noted)
            if day is not None and day <= noted:
                return day
    return None


def _last_day(clause: str, noted: date) -> date | None:
    """The last day that a pack or a label has."""
    found = re.search(words.LAST_DAY, clause)
    return _nearest(found[1], noted) if found is not None else None


def _nearest(told: str, noted: date) -> date | None:
    """A day that may be over or to come, of the years about it the nearest."""
    dated = re.search(r"\d", told) is not None and re.search(r"\d{4}", told) is None
    years = (f" {noted.year + ahead}" for ahead in (-1, 0, 1)) if dated else ("",)
    days = []
    for year in years:
        try:
            days.append(read_date(f"{told}{year}", noted))
        except BadInput:
            continue
    return min(days, key=lambda one: abs(one - noted), default=None)


def _named(told: list[str], noted: date) -> date | None:
    """The day that stands behind a verb, None where none does."""
    while told and _day(" ".join(told[:1]), noted) is None and re.fullmatch(words.FILLER, told[0]):
        told = told[1:]
    for many in range(min(5, len(told)), 0, -1):
        ends = len(told) == many or re.fullmatch(words.LINK, told[many])
        day = _day(" ".join(told[:many]), noted) if ends else None
        if day is not None:
            return day
    return None


def _day(told: str, noted: date) -> date | None:
    ago = re.fullmatch(words.AGO, told)
    if ago is not None:
        return _before(noted, (2 if ago[1] else 1) * _EACH[ago[2]])
    if told == "the day before yesterday":
        return _before(noted, 2)
    if told in ("last week", "last weekend"):  # its last day
        return _before(noted, noted.weekday() + 1)
    if told in ("weekend", "the weekend"):
        return noted if noted.weekday() > 4 else _before(noted, noted.weekday() + 1)
    if told == "last month":
        return _before(noted, noted.day)
    of_month = re.fullmatch(r"the ([12]?\d|3[01])(?:st|nd|rd|th)", told)
    if of_month is not None:  # the last one of that number
        month = (_before(noted, days) for days in range(62))
        return next((day for day in month if day.day == int(of_month[1])), None)
    try:
        return read_lately(told, noted)
    except BadInput:
        return None


def _before(noted: date, days: int) -> date:
    return noted - timedelta(days=min(days, noted.toordinal() - 1))
