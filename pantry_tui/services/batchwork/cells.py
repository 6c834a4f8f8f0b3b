"""The cells of a household's own list that a line has no words for: how many there are."""

from __future__ import annotations

import re

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
