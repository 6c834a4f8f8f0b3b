"""How old a note says that food is, where its record has a day: "5 days old", "cooked three days
ago", "opened last week". Which words are listened for is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from typing import NamedTuple

from pantry_tui.core.dates import read_date
from pantry_tui.core.safety.denial import DENIAL
from pantry_tui.core.safety.note_states import done_of
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput


class Told(NamedTuple):
    """A day of a note: the words, the day, and whether it was opened then, or made or bought."""

    typed: str
    day: date
    opened: bool


_EACH = {"day": 1, "week": 7, "month": 28}
_SEVERAL = r"(?:an? (?:few|couple of|couple)|few|couple of|some|several)"
#: Before an age that is of the batch, and not of what went into it.
_LEAD = (
    r"(?:(?:it|this|these|they|all|is|are|was|were|already|now|about|nearly|almost|over|more|than|"
    r"at|least|most|by|then|only|just|maybe|perhaps|probably|roughly|around|soup|stew|leftovers?|"
    r"milk|cream|meat|chicken|fish|eggs?|food|batch|the) )*?"
)
_AGE = (
    rf"^{_LEAD}(?:(\d+)|(half an?)|({_SEVERAL})|an?)?[ -]?(day|week|month)s? old\b(?!')"
    r"(?= *(?:$|by|now|already|and|today|when|at|so|then)\b| *$)"
)
_AGO = rf"(?:({_SEVERAL})|an?) (day|week|month)s? ago"
#: What begins the days that its record counts.
_BEGAN = {
    Method.MEAL: (
        r"(?:re ?)?cooked|made|roasted|baked|boiled|fried|stewed|braised|simmered|prepared|grilled|"
        r"carved|left over|left ?overs?|^(?:it |they |all )?(?:is |are |was |were )?from"
    ),
    Method.HOT_SMOKED: r"smoked|made|cooked",
    Method.IN_OIL: r"made|put up|mixed|filled|packed|bottled",
    Method.FRIDGE_PICKLE: r"made|put up|mixed|filled|packed|bottled",
    Method.FRESH: (
        r"bought|got|picked up|collected|fetched|delivered|milked|laid|caught|landed|minced|ground|"
        r"churned|made|cut|sliced"
    ),
    Method.BOUGHT: r"bought|got|picked up|collected|fetched|delivered",
}
_OPENED = r"opened|open since|begun|started"
#: What may stand between that and the day, and what goes on behind a day.
_FILLER = r"(?:it|them|this|all|both|on|in|up|fresh|back|again|late|early|since|from|over|already)"
_LINK = r"(?:and|with|at|by|in|after|before|when|to|then|so|but)"


def days_of(method: Method, note: str, noted: date) -> Iterator[Told]:
    """The days that its words name, as of the day on which it was `noted`."""
    for typed, clause in clauses(note) if method in _BEGAN else ():
        done = done_of(clause)
        age = re.search(_AGE, done)
        if age is not None:
            number = int(age[1] or 2) if age[1] or age[3] else 1
            days = number * _EACH[age[4]] // (2 if age[2] else 1)
            yield Told(typed, _before(noted, days), False)
        for verbs, opened in ((_BEGAN[method], False), (_OPENED, True)):
            for found in re.finditer(rf"(?:\b|^)(?:{verbs})\b((?: [\w']+){{1,8}})", done):
                denied = re.search(rf"{DENIAL} (?:\w+ )?$", done[: found.start()])
                day = None if denied else _named(found[1].split(), noted)
                if day is not None:
                    yield Told(typed, day, opened)


def _named(words: list[str], noted: date) -> date | None:
    """The day that stands behind a verb, None where none does."""
    while words and _day(" ".join(words[:1]), noted) is None and re.fullmatch(_FILLER, words[0]):
        words = words[1:]
    for many in range(min(5, len(words)), 0, -1):
        ends = len(words) == many or re.fullmatch(_LINK, words[many])
        day = _day(" ".join(words[:many]), noted) if ends else None
        if day is not None:
            return day
    return None


def _day(words: str, noted: date) -> date | None:
    ago = re.fullmatch(_AGO, words)
    if ago is not None:
        return _before(noted, (2 if ago[1] else 1) * _EACH[ago[2]])
    if words == "the day before yesterday":
        return _before(noted, 2)
    if words in ("last week", "last weekend"):  # its last day
        return _before(noted, noted.weekday() + 1)
    if words == "last month":
        return _before(noted, noted.day)
    of_month = re.fullmatch(r"the ([12]?\d|3[01])(?:st|nd|rd|th)", words)
    if of_month is not None:  # the last one of that number
        month = (_before(noted, days) for days in range(62))
        return next((day for day in month if day.day == int(of_month[1])), None)
    try:
        return read_date(words, noted)
    except BadInput:
        return None


def _before(noted: date, days: int) -> date:
    return noted - timedelta(days=min(days, noted.toordinal() - 1))
