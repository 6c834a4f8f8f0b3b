"""The cells of a household's own list that a line has no words for: a count, a day."""

from __future__ import annotations

import re
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.line.days import readings
from pantry_tui.errors import BadInput

_UNKNOWN = frozenset({"", "?", "??", "-", "–", "—", "x", "n/a", "na", "none", "unknown", "tbd"})
_WHOLE = r"\d+(?:[.,]0{1,2})?"
_THOUSANDS = r"\d{1,3}(?:[.,'’\s]\d{3})+"
_PART = r"(?:\d+[.,]\d+|(?:\d+\s+)?\d+/\d+|\d*\s*[¼½¾⅓⅔⅛])"


def read_count(cell: str) -> str:
    """The cell as a line writes it ("7,0" -> "7"); what has words beside the number is left for
    the line to read ("7 pint jars", "2.5 kg"). Raises ValueError, with what is wrong in a
    sentence, for a number that no count of containers can be, or that is none."""
    plain = " ".join(cell.split())
    shown = plain[:20]
    if plain.casefold() in _UNKNOWN:
        said = f"{shown!r} says" if plain else "The cell is empty, which says"
        raise ValueError(f"{said} no number: give how many there are, 1 to 999.")
    if re.fullmatch(_WHOLE, plain):
        whole = re.split(r"[.,]", plain)[0].lstrip("0") or "0"
        if len(whole) > 3 or whole == "0":
            raise ValueError(f"{shown!r} is no count of one row: give 1 to 999.")
        return whole
    if re.fullmatch(_THOUSANDS, plain):
        first = re.split(r"[.,'’\s]", plain)[0]
        raise ValueError(
            f"{shown!r} could be {first} or thousands: write the number without that sign, "
            "1 to 999 in one row."
        )
    if re.fullmatch(_PART, plain):
        raise ValueError(
            f"{shown!r} is no whole number of containers: give 1 to 999, "
            "or the unit beside the number where it is an amount."
        )
    return plain


class WrongCell(BadInput):
    """A cell that cannot be read."""

    def __init__(self, column: str, message: str) -> None:
        super().__init__(message)
        self.field = column


def day_of(typed: str, order: str, today: date, column: str) -> str:
    """A cell of a day as the line writes it, by the order of the column."""
    plain = typed.strip().rstrip("?")
    if re.fullmatch(r"\d{4}", plain):
        return plain
    plain = re.sub(r"[T ]\d{1,2}:\d{2}(?::\d{2})?$", "", plain)
    figures = re.fullmatch(r"\d{1,4}[./-]\d{1,2}(?:[./-]\d{2,4})?", plain)
    if figures is None:
        try:
            return dates.read_date(plain, today).isoformat()
        except BadInput:
            return plain
    days = readings(plain, today)
    if not days:
        raise WrongCell(column, f"{typed[:20]!r} is no day of the calendar: mend it.")
    return days[-1 if order == "mdy" and len(days) > 1 else 0].isoformat()
