"""Who sits at table when, as it is typed: "6 on friday", "8 guests sun", "away 2 to 4 dec"."""

from __future__ import annotations

import re
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.safety.measured import spelled_out
from pantry_tui.core.text import begun
from pantry_tui.errors import BadInput, Unclear

#: So many sit there; None: as many as usual.
Seats = int | None
Days = tuple[date, date]

EXAMPLE = "away 24 dec to 27 dec, or 6 on friday"
_COMERS = r"guests?|visitors?"
_PEOPLE = rf"(people|persons?|adults?|eaters?|heads|{_COMERS})"
_WHO = (
    (r"(?:as |the )?usual", None),
    (r"away|out|gone|(?:nobody|no[ -]?one)(?: (?:is )?(?:at )?home| eats)?|0", 0),
)
_MANY = (
    rf"(\d{{1,3}})(?: (more|extra))?(?: {_PEOPLE})?"
    r"((?: of us)?(?: (?:at|to)(?: the)? table| to eat| eat| in all| come| coming)*)"
)
_SPAN = r"(?:from |between )?(.+?) (?:to|until|till|through|[-–]) (.+)"
_DASHED = r"(?!\d{4}-)(?:from )?([a-z\d ]+)[-–]([a-z\d ]+)"  # "fri-sun", "2-4 dec"
_TWO_DAYS = r"^(\d{4}-\d\d-\d\d) (\d{4}-\d\d-\d\d)$"
_BOTH = r"(?:between )?(.+?) (?:and|&) (.+)"
#: A day whose month stands behind the last one: "3 to 9 jan", "wed 2 to thu 3 dec".
_BARE = r"(?:[a-z]+ )?\d{1,2}(?:st|nd|rd|th)?"
_LEADS = ("on ", "from ", "for ", "over ", "at ")


def read_seats(line: str, usual: int, today: date, guests: bool = False) -> tuple[Seats, Days]:
    """How many sit at the table, and from which day to which; `usual` is how many do else. Guests
    sit beside them; with `guests` a number alone is of guests. Raises BadInput, Unclear, with a
    word that is not understood by its name."""
    words = " ".join(line.lower().replace(",", " ").split())
    for who, seats in _WHO:
        match = re.match(rf"(?:{who})(?: |$)", words)
        if match is not None:
            return seats, read_days(words[match.end() :], today)
    plain = re.sub(r"^(?:us|we) (?:and|plus|\+) (\d{1,3})\b", r"\1 more", spelled_out(words))
    match = re.match(rf"{_MANY}(?: |$)", plain)
    if match is None:
        raise BadInput(f"{line[:40]!r}: write {EXAMPLE}.")
    people = int(match[1]) + (usual if _beside(match, guests) else 0)
    return people, read_days(_no_more_eaters(plain[match.end() :], match), today)


def _beside(match: re.Match[str], guests: bool) -> bool:
    """Whether so many sit there beside the household, and not in all."""
    _, more, who, how = match.groups()
    if more:
        return True
    if "in all" in how:
        return False
    if who:
        return re.fullmatch(_COMERS, who) is not None
    return guests and not how


def read_people(typed: str) -> int:
    """("4", "4 people", "two adults") -> how many. Raises BadInput, Unclear."""
    plain = spelled_out(" ".join(typed.lower().split()))
    match = re.match(rf"{_MANY}(?: |$)", plain)
    if match is None or match[2]:
        raise BadInput("Give the number of people, for example 4.")
    rest = _no_more_eaters(plain[match.end() :], match)
    if rest:
        raise BadInput(
            f"{rest[:40]!r} is not understood: give the number of people, for example 4."
        )
    return int(match[1])


def _no_more_eaters(rest: str, match: re.Match[str]) -> str:
    """What follows the number. Raises Unclear for others who eat beside them: nobody knows how
    much a small child does."""
    more = re.match(r"(?:and|plus|\+|with|&) (.+)", rest)
    if more is None:
        return rest
    known = int(match[1])
    beside = re.sub(r" (?:on|from) .*", "", more[1])
    raise Unclear(
        f"How much {beside[:30]!r} eats is not known: write {known}, or {known + 1} where "
        "it is as much as one more.",
        "people",
        match[0].strip() + " " + rest,
        (str(known), str(known + 1)),
    )


def read_days(typed: str, today: date) -> Days:
    """("fri to sun", "wed 2 to thu 3 dec", "this weekend", "until sunday", "friday") -> the first
    day and the last, today or later where no year says otherwise. Raises BadInput, Unclear."""
    words = " ".join(typed.lower().replace(",", " ").split())
    if not words:
        raise BadInput("Say when: 24 dec, or 24 dec to 2 jan.")
    words = re.sub(_TWO_DAYS, r"\1 to \2", words)
    until = re.fullmatch(r"(?:until|till) (.+)", words)
    if until is not None:
        return today, dates.read_coming(until[1], today)
    for lead in _LEADS:
        if words.startswith(lead) and (lead != "from " or not re.fullmatch(_SPAN, words)):
            words = words.removeprefix(lead)
            break
    if words in ("this weekend", "the weekend", "weekend", "next weekend"):
        return _weekend(words, today)
    span = re.fullmatch(_SPAN, words) or re.fullmatch(_DASHED, words)
    both = None if span is not None else re.fullmatch(_BOTH, words)
    found = span or both
    if found is None:
        day = dates.read_coming(words, today)
        return day, day
    first, last = _both_ends(found[1], found[2], today)
    if both is not None and last - first != timedelta(days=1) and not words.startswith("between"):
        raise Unclear(
            f"{words[:40]!r} could leave out the days between: write {dates.say(first)} to "
            f"{dates.say(last)}, or each day by itself.",
            "days",
            words,
            (),
        )
    return first, last


def _both_ends(begins: str, ends: str, today: date) -> Days:
    if re.fullmatch(_BARE, begins) and not begins.startswith("the "):
        _, _, behind = re.sub(r"^[a-z]+ (?=\d)", "", ends).partition(" ")
        begins = f"{begins} {behind}".strip()
    first = dates.read_coming(begins, today)
    return first, dates.read_coming(ends, first)


def _weekend(words: str, today: date) -> Days:
    """Raises Unclear on a weekend, when it may be this one or the next."""
    saturday = today + timedelta(days=(5 - today.weekday()) % 7)
    if words.startswith("next") or today.weekday() > 4:
        choices = [saturday + timedelta(days=7 * n) for n in (0, 1)]
        named = " or ".join(
            f"{dates.say(one)} to {dates.say(one + timedelta(1))}" for one in choices
        )
        raise Unclear(f"{begun(words)} could be {named}: write the days.", "days", words, ())
    return saturday, saturday + timedelta(days=1)


def said_days(first: date, last: date) -> str:
    """ "Fri 27 Nov 2026 to Sun 29 Nov 2026"."""
    return dates.say(first) if first == last else f"{dates.say(first)} to {dates.say(last)}"
