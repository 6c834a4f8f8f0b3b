"""Lid codes: short, unique, never reused, starting with a digit, no look-alike letters."""

from __future__ import annotations

from collections.abc import Collection

_DIGITS = "2345679"
_LETTERS = "ACDEFHJKMNPRTWXY"


def next_code(used: Collection[str]) -> str:
    """The first code not in `used`: 2A, 3A, ... 9Y, then 2A2, 3A2, ... and longer."""
    taken = set(used)
    length = 2
    while True:
        for code in _codes(length):
            if code not in taken:
                return code
        length += 1


def _codes(length: int) -> list[str]:
    """All codes of a length: digit, letter, digit, letter ... the first digit turning fastest."""
    codes = [""]
    for position in range(length - 1, -1, -1):
        alphabet = _DIGITS if position % 2 == 0 else _LETTERS
        codes = [letter + code for code in codes for letter in alphabet]
    return codes


def normal_code(text: str) -> str:
    """A code as stored: upper case, no spaces."""
    return "".join(text.split()).upper()
