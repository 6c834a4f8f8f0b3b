"""Numbers as people say them: in figures, in words, dozens, a few."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from pantry_tui.core.line.tokens import Kind, Line, Token

_ONES = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14,
    "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
_TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
    "eighty": 80, "ninety": 90,
}  # fmt: skip
#: Words for so many at once.
SETS = {"dozen": 12, "doz": 12, "score": 20, "gross": 144, "pair": 2, "couple": 2, "brace": 2,
        "pairs": 2, "dozens": 12}  # fmt: skip
_VAGUE = frozenset({"some", "several", "few", "many", "lots", "plenty", "loads"})
_ABOUT = frozenset({"about", "around", "approx", "approximately", "roughly", "circa", "nearly"})


class Said(NamedTuple):
    """A number and where it stops; `value` None: a number that nobody can count with. `word`: it
    was "a" or "an", which may be no number at all."""

    stop: int
    value: Fraction | None
    word: bool = False


def in_thousands(token: Token) -> bool:
    """Whether a figure is one in one country and a thousand in another: 1,000 or 1.000."""
    return re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", token.said) is not None


def read_number(line: Line, i: int) -> Said | None:
    """The number that begins at token `i`, or None. "7 or 8", "-3" and "some" have no value."""
    if line.word(i) in _ABOUT:
        inner = read_number(line, i + 1)
        return inner
    if line.word(i) in ("-", "–") and line.number(i + 1) is not None:
        return Said(i + 2, None)
    if line.word(i) in _VAGUE or (line.word(i) == "a" and line.word(i + 1) in _VAGUE):
        stop = i + (1 if line.word(i) in _VAGUE else 2)
        return Said(stop + line.says(stop, "of"), None)
    found = _one(line, i)
    if found is None:
        return None
    if line.word(found.stop) in ("or", "to", "–") and found.value is not None:
        other = _one(line, found.stop + 1)
        if other is not None and not other.word:
            return Said(other.stop, None)
    return found


def _one(line: Line, i: int) -> Said | None:
    token = line.at(i)
    if token is None:
        return None
    if token.kind is Kind.NUMBER:
        return _times_set(line, i + 1, None if in_thousands(token) else token.number)
    if token.text == "half" and line.word(i + 1) in ("dozen", "doz"):
        return Said(i + 2 + line.says(i + 2, "of"), Fraction(6))
    if line.says(i, "half", "a", "dozen") or line.says(i, "a", "half", "dozen"):
        return Said(i + 3 + line.says(i + 3, "of"), Fraction(6))
    if line.says(i, "baker's", "dozen"):
        return Said(i + 2, Fraction(13))
    if token.text in ("a", "an"):
        if line.word(i + 1) in SETS:
            return Said(i + 2 + line.says(i + 2, "of"), Fraction(SETS[line.word(i + 1)]))
        return Said(i + 1, Fraction(1), word=True)
    if token.text in SETS:
        return Said(i + 1 + line.says(i + 1, "of"), Fraction(SETS[token.text]))
    if token.text in _TENS:
        ones = _ONES.get(line.word(i + 1), 0)
        unit = ones if ones < 10 else 0
        return _times_set(line, i + 1 + bool(unit), Fraction(_TENS[token.text] + unit))
    if token.text in _ONES:
        return _times_set(line, i + 1, Fraction(_ONES[token.text]))
    return None


def _times_set(line: Line, stop: int, value: Fraction | None) -> Said:
    """ "3 dozen" -> 36."""
    if value is not None and line.word(stop) in SETS:
        return Said(stop + 1 + line.says(stop + 1, "of"), value * SETS[line.word(stop)])
    return Said(stop, value)
