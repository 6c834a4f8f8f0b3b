"""Lid codes: short, unique, never reused, starting with a digit, no look-alike letters."""

from __future__ import annotations

_DIGITS = "2345679"
_LETTERS = "ACDEFHJKMNPRTWXY"


def code_at(number: int) -> str:
    """The code of a number, from 0: 2A, 3A, ... 9Y, then 2A2, 3A2, ... and longer."""
    length, left = 2, number
    while left >= _how_many(length):
        left -= _how_many(length)
        length += 1
    code = ""
    for position in range(length):
        alphabet = _alphabet(position)
        left, letter = divmod(left, len(alphabet))
        code += alphabet[letter]
    return code


def number_of(code: str) -> int:
    """The number of a code, as `code_at` counts them. Raises ValueError for what is no code."""
    if not is_code(code):
        raise ValueError(f"{code[:20]!r} is no lid code")
    found, each = 0, 1
    for position, letter in enumerate(code):
        alphabet = _alphabet(position)
        found += alphabet.index(letter) * each
        each *= len(alphabet)
    return found + sum(_how_many(shorter) for shorter in range(2, len(code)))


def _alphabet(position: int) -> str:
    """Digit, letter, digit, letter ...; the first digit turns fastest."""
    return _DIGITS if position % 2 == 0 else _LETTERS


def _how_many(length: int) -> int:
    """Codes of that length."""
    count = 1
    for position in range(length):
        count *= len(_alphabet(position))
    return count


def is_code(text: str) -> bool:
    """Whether it could be a lid code: digit, letter, digit, letter ..."""
    return 2 <= len(text) <= 5 and all(one in _alphabet(at) for at, one in enumerate(text))


def normal_code(text: str) -> str:
    """A code as stored: upper case, no spaces."""
    return "".join(text.split()).upper()
