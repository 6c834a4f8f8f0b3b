"""What a person types to find stock: words, and what a word is to be looked for in.

`beans place:north method:canned group:fruit before:feb left:3`: each must hold. A bare word may
stand anywhere: food, its other names, group, method, place, state, verdict, note, lid code.
"""

from __future__ import annotations

import re
from datetime import date

from pantry_tui.core.dates import add, read_date
from pantry_tui.core.words import SEVERITY
from pantry_tui.errors import BadInput

#: What stands before the colon, and where it is looked for (a condition on the stock tables).
_IN = {
    "place": "instr(lower(path), {}) > 0",
    "method": "instr(method, {}) > 0",
    "food": "instr(lower(food), {}) > 0",
    "state": "instr(state, {}) > 0",
    "group": "instr(' ' || words || ' ', ' ' || {} || ' ') > 0",
}
_TOKEN = r'(?:(place|method|food|state|group|before|left):)?("[^"]*"?|\S+)?'

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
        elif field == "left":
            _left(word, hole, parts, values)
        elif field:
            parts.append(_IN[field].format(f":{hole}"))
            values[hole] = word
        else:
            verdicts = [str(n) for n, one in enumerate(SEVERITY) if word in one.value]
            among = f" OR verdict IN ({', '.join(verdicts)})" if verdicts else ""
            parts.append(f"(instr(words, :{hole}) > 0{among})")
            values[hole] = word
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


def _left(word: str, hole: str, parts: list[str], values: dict[str, object]) -> None:
    """So many containers or fewer on a line; ">5", more than that."""
    more = word.startswith(">")
    number = word.lstrip("<>=")
    if number.isdecimal():
        parts.append(f"n {'>' if more else '<='} :{hole}")
        values[hole] = int(number[:6])
