"""What a person types to find stock: words, and what a word is to be looked for in.

`beans place:north method:canned group:fruit before:feb month:2027-02 left:3`: each must hold. A
bare word may stand anywhere: food, its other names, group, method, place, state, verdict, note, lid
code.
"""

from __future__ import annotations

import re
from datetime import date

from pantry_tui.core.dates import add, read_date
from pantry_tui.core.text import singular
from pantry_tui.core.words import SEVERITY, Verdict
from pantry_tui.errors import BadInput

#: What stands before the colon, and where it is looked for (a condition on the stock tables).
_IN = {
    "place": "instr(lower(path), {}) > 0",
    "method": "instr(method, {}) > 0",
    "food": "instr(lower(food), {}) > 0",
    "state": "instr(state, {}) > 0",
    "group": "instr(' ' || words || ' ', ' ' || {} || ' ') > 0",
}
_TOKEN = r'(?:(place|method|food|state|group|before|month|left):)?("[^"]*"?|\S+)?'

#: Verdicts of what has no date that anybody should wait for.
_NO_DATE = (Verdict.DO_NOT_TASTE, Verdict.DISCARD, Verdict.UNKNOWN)

#: For a field that is being typed, and for help.
HINT = "words, or place: method: group: before: left:"


def conditions(text: str, today: date) -> tuple[list[str], dict[str, object]]:
    """The conditions of a search, and their values. What is not typed to its end, or cannot be
    read, holds nothing back."""
    parts: list[str] = []
    values: dict[str, object] = {}
    for number, found in enumerate(re.finditer(_TOKEN, text, re.IGNORECASE)):
        field, word = (found[1] or "").lower(), (found[2] or "").strip('"').lower()
        if not word:
            continue
        hole = f"w{number}"
        if field == "before":
            _before(word, today, hole, parts, values)
        elif field == "month":
            _month(word, today, hole, parts, values)
        elif field == "left":
            _left(word, hole, parts, values)
        elif field:
            parts.append(_IN[field].format(f":{hole}"))
            values[hole] = word
        else:
            verdicts = [str(n) for n, one in enumerate(SEVERITY) if word in one.value]
            among = f" OR verdict IN ({', '.join(verdicts)})" if verdicts else ""
            parts.append(f"(instr(words, :{hole}) > 0 OR instr(words, :{hole}s) > 0{among})")
            values |= {hole: word, f"{hole}s": singular(word)}  # "jams" finds jam
    return parts, values


def _before(word: str, today: date, hole: str, parts: list[str], values: dict[str, object]) -> None:
    """Whose first date, of either kind, lies before a day: "feb", "2027-02-01", "+30d"."""
    try:
        day = read_date(word.replace("-", " ") if word[:1].isalpha() else word, today)
    except BadInput:
        return
    if day < today and not re.search(r"[0-9]{4}|ago|yesterday", word):
        day = add(day, 12, "months")
    parts.append(f"first_date < :{hole}")
    values[hole] = day.isoformat()


def _month(word: str, today: date, hole: str, parts: list[str], values: dict[str, object]) -> None:
    """Whose next date, of either kind, lies in a month: "2027-02". What must go, or is in doubt,
    has none."""
    found = re.fullmatch(r"(\d{4})-(\d{2})", word)
    if found is None or not 1 <= int(found[2]) <= 12 or not 1900 <= int(found[1]) < 2100:
        return
    first = date(int(found[1]), int(found[2]), 1)
    values |= {
        f"{hole}a": max(first, today).isoformat(),
        f"{hole}b": add(first, 1, "months").isoformat(),
        f"{hole}t": today.isoformat(),
    }
    within = "{0} >= :{1}a AND {0} < :{1}b"
    first_of = "NOT ({0} >= :{1}t AND {0} < {2})"
    best, last = "coalesce(best_by, '9')", "coalesce(discard_after, '9')"
    ways = (
        f"({within.format(one, hole)} AND {first_of.format(other, hole, one)})"
        for one, other in ((best, last), (last, best))
    )
    doubted = ", ".join(str(SEVERITY.index(one)) for one in _NO_DATE)
    parts.append(f"(({' OR '.join(ways)}) AND verdict NOT IN ({doubted}))")


def _left(word: str, hole: str, parts: list[str], values: dict[str, object]) -> None:
    """So many containers or fewer on a line; ">5", more than that."""
    more = word.startswith(">")
    number = word.lstrip("<>=")
    if number.isdecimal():
        parts.append(f"n {'>' if more else '<='} :{hole}")
        values[hole] = int(number[:6])
