"""The altitude at which a batch was canned, as it is said in a put-up line."""

from __future__ import annotations

import re

from pantry_tui.core.line.tokens import Line

_FEET = ("ft", "feet", "foot")
_METRES = ("metres", "meters")
_LEADS = ("altitude", "elevation")


def altitude_at(line: Line, i: int) -> tuple[int, str] | None:
    """("at 4,800 ft", "altitude 4 800 feet") -> where it stops, and "4800 ft"; None where no
    altitude begins there."""
    at = i
    while line.word(at) in ("at", "of", *_LEADS):
        at += 1
    number = _whole(line, at)
    if number is None:
        return None
    stop, said = number
    unit = line.word(stop)
    named = any(line.word(n) in _LEADS for n in range(i, at))
    if unit not in (*_FEET, *_METRES) and not (named and unit == "m"):
        return None
    stop += 1
    stop += line.says(stop, "up") or line.says(stop, "above", "sea", "level")
    stop += line.says(stop, "altitude") or line.says(stop, "elevation")
    return stop, f"{said} {'ft' if unit in _FEET else 'm'}"


def _whole(line: Line, i: int) -> tuple[int, str] | None:
    """A whole number, also one whose thousands are set off: 4,800 or 4 800."""
    number, token = line.number(i), line.at(i)
    if number is None or token is None:
        return None
    after = line.at(i + 1)
    if (
        re.fullmatch(r"[1-9]\d?", token.said)
        and after is not None
        and after.part == token.part
        and re.fullmatch(r"\d{3}", after.said)
        and line.number(i + 1) is not None
    ):
        return i + 2, token.said + after.said
    if re.fullmatch(r"\d{1,3},\d{3}", token.said):
        return i + 1, token.said.replace(",", "")
    return (i + 1, token.said) if number.denominator == 1 else None
