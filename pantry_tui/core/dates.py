"""Days: adding a published life, reading what a person types, saying a day."""

from __future__ import annotations

import math
import re
from datetime import date, timedelta
from typing import TYPE_CHECKING

from pantry_tui.errors import BadInput

if TYPE_CHECKING:
    from fractions import Fraction

_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTH_NAMES = (
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
)


def _place_of(word: str, names: tuple[str, ...]) -> int | None:
    """Which of `names` a word stands for: the whole name or its first three letters or more.
    "Fri" and "frid" are Friday, "fridge" is not; "mar" is March, "marrow" is not."""
    if len(word) < 3:
        return None
    return next((i for i, name in enumerate(names) if name.startswith(word)), None)


def _weekday(words: str) -> int | None:
    return 2 if words == "weds" else _place_of(words, _WEEKDAYS)


def add(day: date, n: int | float | Fraction, unit: str) -> date:
    """`day` + n hours, days, weeks, months or years; never longer than said.

    Months run by calendar from `day` and clip to the month's end (31 Aug + 6 months = 28 Feb);
    a part of a month is 30 days times the part, a part of a day is dropped.
    """
    from fractions import Fraction  # a day is read and said without it

    if unit in ("hours", "days", "weeks"):
        per = {"hours": Fraction(1, 24), "days": Fraction(1), "weeks": Fraction(7)}[unit]
        return day + timedelta(days=math.floor(Fraction(n) * per))
    months = Fraction(n) * (12 if unit == "years" else 1)
    whole = math.floor(months)
    part = math.floor((months - whole) * 30)
    return _months_from(day, whole) + timedelta(days=part)


def _months_from(day: date, months: int) -> date:
    """By calendar, clipped to the month's end."""
    # As dateutil has it, which takes a twentieth of a short verb's time to load.
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    last = 31 if month == 11 else (date(year, month + 2, 1) - timedelta(days=1)).day
    return date(year, month + 1, min(day.day, last))


def iso(text: str) -> date:
    """("2027-03-31") -> that day, as files hold it. Raises ValueError."""
    return date.fromisoformat(text)


def say(day: date) -> str:
    """ "Tue 31 Mar 2027", in English whatever the machine speaks."""
    return (
        f"{_DAYS[day.weekday()].capitalize()} {day.day} "
        f"{_MONTHS[day.month - 1].capitalize()} {day.year}"
    )


def span(n: float, unit: str) -> str:
    """ "1 day", "3 months"."""
    return f"{n:g} {unit.removesuffix('s') if n == 1 else unit}"


def read_date(text: str, today: date, strict_first: bool = True) -> date:
    """The day a person means. Raises BadInput in one sentence.

    A month alone is its first day (`strict_first`, for a day made: the stricter reading) or its
    last (for a printed best-by). Ambiguous numbers are refused with both readings named.
    """
    words = _plain(text)
    weekday, dated = _and_date(words)
    if weekday is not None:
        return _on_weekday(read_date(dated, today, strict_first), weekday)
    words = _feast(words)
    found = _relative(words, today) or _iso(words) or _named(words, today, strict_first)
    if found is None:
        raise _unread(text)
    if not 1900 <= found.year <= 2100:
        raise BadInput(f"{found.year} is too far away: give a year from 1900 to 2100.")
    return found


#: A printed day without a year is the one that lies so few days back, or ahead. A choice of this
#: program: what is bought is seldom staler, and what keeps longer has its year on it.
PRINTED_DAYS = (31, 183)


def read_printed(text: str, today: date) -> date:
    """The day printed on a pack; a month alone lasts to its end. Raises BadInput, also where only
    the year could say which is meant."""
    back, ahead = PRINTED_DAYS
    if re.search(r"\d{4}|\d[./-]\d+[./-]\d", text):
        return read_date(text, today, strict_first=False)
    if re.search(r"\d", text) and re.search(r"[a-z]{3}", text.casefold()):
        for year in (today.year, today.year + 1, today.year - 1):
            found = read_date(f"{text} {year}", today)
            if -back <= (found - today).days <= ahead:
                return found
    raise BadInput(f"{text[:30]!r} has no year: write the printed date like 2027-03-31.")


def read_coming(text: str, today: date) -> date:
    """The same for a day that lies ahead, today included: "tomorrow", "friday", "24 dec"."""
    words = _feast(_plain(text))
    named, dated = _and_date(words)
    if named is not None:
        return _on_weekday(read_coming(dated, today), named)
    weekday = words.removeprefix("next ")
    soonest = int(weekday != words)  # next friday, said on a friday, is not that evening
    if words in ("tomorrow", "day after tomorrow"):
        return today + timedelta(days=1 + (words != "tomorrow"))
    number = _weekday(weekday.removeprefix("this "))
    if number is not None:
        return today + timedelta(days=(number - today.weekday() - soonest) % 7 + soonest)
    of_month = re.fullmatch(_ORDINAL, words)
    if of_month is not None:
        return _next_of_month(int(of_month[1]), today)
    found = read_date(words, today)
    if found < today and not re.search(r"\d{4}", words) and re.search(r"\d", words):
        return _months_from(found, 12) if " ago" not in words else found
    return found


def read_lately(text: str, today: date) -> date:
    """The same for a day that is over, today included: "monday", said on a Monday, is that day."""
    return today if _weekday(_plain(text)) == today.weekday() else read_date(text, today)


_PARTS_OF_DAY = r"(?<=\S) (?:morning|lunch|lunchtime|afternoon|dinner|supper|evening|night)"
_TODAY = frozenset(("this morning", "this afternoon", "this evening", "tonight"))
#: "the 2nd": of a month that is not named.
_ORDINAL = r"(?:the )?([0-9]{1,2})(?:st|nd|rd|th)"


def _plain(text: str) -> str:
    """The words of a day, without what leads to it and the part of the day."""
    words = " ".join(text.lower().replace(",", " ").split()).removeprefix("on ")
    if words in _TODAY:
        return "today"
    if words == "last night":
        return "yesterday"
    return re.sub(rf"{_PARTS_OF_DAY}$", "", words).removeprefix("the ")


def _feast(words: str) -> str:
    """The day and month of a feast that never moves, "boxing day 2026"; else the words."""
    from pantry_tui.core.line.day_words import FEASTS, MONTH_WORDS

    feast, year = re.fullmatch(r"(.*?)( \d{4})?", words).groups("")  # type: ignore[union-attr]
    if feast not in FEASTS:
        return words
    day, month = FEASTS[feast]
    return f"{day} {MONTH_WORDS[month - 1]}{year}"


def _and_date(words: str) -> tuple[int | None, str]:
    """ "wed 2 dec 2026": the day of the week, and the date behind it; None where none is."""
    first, _, rest = words.partition(" ")
    return (_weekday(first), rest) if re.search(r"\d", rest) else (None, words)


def _on_weekday(day: date, weekday: int) -> date:
    """Raises BadInput where a day is not the one of the week that was named beside it."""
    if day.weekday() != weekday:
        said = _WEEKDAYS[weekday].capitalize()
        raise BadInput(f"{say(day)} is no {said}: give the date, with its year, or the day alone.")
    return day


def _next_of_month(number: int, today: date) -> date:
    """The next day that is the so-many-th of its month. Raises BadInput."""
    for ahead in range(62):
        day = today + timedelta(days=ahead)
        if day.day == number:
            return day
    raise BadInput(f"The {number} is no day of a month: give another date.")


def _relative(words: str, today: date) -> date | None:
    if words in ("today", "yesterday"):
        return today - timedelta(days=words == "yesterday")
    ago = re.fullmatch(r"([0-9]{1,4}) (day|week|month|year)s? ago", words)
    if ago:
        number = int(ago[1])
        if number > 1200:
            raise BadInput(f"{words!r} is too long ago: give the date itself.")
        if ago[2] in ("day", "week"):
            return today - timedelta(days=number * (7 if ago[2] == "week" else 1))
        return _months_from(today, -number * (12 if ago[2] == "year" else 1))
    ahead = re.fullmatch(r"\+([0-9]{1,3})([dwmy])", words)
    if ahead:
        return add(
            today, int(ahead[1]), {"d": "days", "w": "weeks", "m": "months", "y": "years"}[ahead[2]]
        )
    weekday = _weekday(words.removeprefix("last "))
    if weekday is not None:
        return today - timedelta(days=(today.weekday() - weekday - 1) % 7 + 1)
    return None


def _iso(words: str) -> date | None:
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", words):
        return None
    try:
        return date.fromisoformat(words)
    except ValueError:
        raise BadInput(f"{words} is no day of the calendar: give another date.") from None


def _named(words: str, today: date, strict_first: bool) -> date | None:
    parts = words.split()
    months = [i for i, part in enumerate(parts) if _place_of(part, _MONTH_NAMES) is not None]
    if len(months) != 1 or not 2 <= len(parts) <= 3:
        return None
    month = (_place_of(parts[months[0]], _MONTH_NAMES) or 0) + 1
    numbers = [part for i, part in enumerate(parts) if i != months[0]]
    plain = [re.sub(r"(st|nd|rd|th)$", "", part) for part in numbers]
    if not all(re.fullmatch(r"[0-9]{1,4}", part) for part in plain):
        return None
    years = [int(part) for part in plain if len(part) == 4]
    days = [int(part) for part in plain if len(part) <= 2]
    if len(years) + len(days) != len(plain) or len(years) > 1 or len(days) > 1:
        return None
    try:
        if not days:
            first = date(years[0], month, 1)
            return first if strict_first else _months_from(first, 1) - timedelta(days=1)
        if years:
            return date(years[0], month, days[0])
        this = date(today.year, month, days[0])
        return this if this <= today else date(today.year - 1, month, days[0])
    except ValueError:
        raise BadInput(f"{words!r} is no day of the calendar: give another date.") from None


def _unread(text: str) -> BadInput:
    numbers = re.fullmatch(r"\s*(\d{1,2})[/.-](\d{1,2})[/.-](\d{2,4})\s*", text)
    if numbers:
        one, two, year = (int(part) for part in numbers.groups())
        year += 2000 if year < 100 else 0
        readings = []
        for day, month in ((one, two), (two, one)):
            try:
                readings.append(say(date(year, month, day)))
            except ValueError:
                continue
        named = " or ".join(dict.fromkeys(readings))
        if named:
            return BadInput(f"{text!r} could be {named}: write it as {year}-MM-DD.")
    return BadInput(f"{text[:60]!r} is no date: write 2026-11-25, 25 nov, yesterday or 3 days ago.")


_SPAN = r"(\d{1,4})\s*(?:(d)(?:ays?)?|(w)(?:eeks?)?|(m)(?:onths?)?|(y)(?:ears?)?)?"


def read_span(text: str) -> int:
    """("30d", "2 weeks", "1m", "30") -> days; a month counts as 30, a year as 365. Raises
    BadInput."""
    match = re.fullmatch(_SPAN, text.lower().strip())
    if match is None:
        raise BadInput(f"{text[:40]!r} is no span of time: write 30d, 2w, 1m or 1y.")
    unit = next((one for one in match.groups()[1:] if one), "d")
    return int(match[1]) * {"d": 1, "w": 7, "m": 30, "y": 365}[unit]
