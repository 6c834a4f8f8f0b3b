"""A measure as it stands in a sentence: its numbers, and which way its words let it be rounded."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from pantry_tui.core.amounts import VULGAR, fractions_spelled

_WHOLE = r"\d{1,3}(?:,\d{3})+|\d+"
N = (
    rf"(?:(?:{_WHOLE})[ -]\d+/\d+|\d+/\d+|(?:\d+ ?)?[{''.join(VULGAR)}]"
    rf"|(?:{_WHOLE})(?:\.\d+)?|\.\d+)"
)
#: One number or two; the minus of a number stands behind no digit.
SPAN = rf"(?<![\w./,-])(?P<low>-?{N})(?:(?P<mid> to | or | and |-|–| or so to )(?P<high>-?{N}))?"
CONTEXT = 44


class Found(NamedTuple):
    """A measure in a sentence: its numbers, its unit as written, the words around it."""

    low: Fraction
    high: Fraction | None
    mid: str
    unit: str
    before: str
    after: str
    close: bool = False  # no space between number and unit: as it is typed, "55F"


def number_of(text: str) -> Fraction:
    """("1 1/2") -> 3/2; takes "1-1/2", "½", "1,800" and "0.25" as well."""
    plain = text.replace(",", "")
    sign = -1 if plain.startswith("-") else 1
    plain = plain.removeprefix("-").replace("-", " ")
    plain = fractions_spelled(plain)
    return sign * sum((Fraction(part) for part in plain.split()), Fraction(0))


def in_steps(number: Fraction, step: Fraction, way: Callable[[Fraction], int]) -> Fraction:
    return way(number / step) * step


def nearest(number: Fraction) -> int:
    return floor(number + Fraction(1, 2))


def say(number: Fraction) -> str:
    """ "1,200", "4.4", without trailing noughts."""
    shown = f"{float(number):,.2f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


# -- which way to round ---------------------------------------------------------------------------

_AT_MOST_AFTER = re.compile(
    r",? ?(?:inside )?(?:(?:or|and) (?:below|colder|less|under|lower|cooler|smaller)"
    r"|at (?:the )?most|at the outside|only\b)"
)
_AT_LEAST_AFTER = re.compile(
    r",? ?(?:(?:or|and) (?:above|more|over|higher|hotter|warmer|up\b)|at (?:the )?least"
    r"|(?:and )?up\b)"
)
_AT_MOST_BEFORE = re.compile(
    r"\b(?:below|under|at most|up to|no (?:warmer|hotter|more|higher|larger) than|within|less than|"
    r"not (?:above|over)|per|for each|for every|each|every|for|to the|of)$"
)
_PAST_BEFORE = re.compile(
    r"\b(?:above|over|past|beyond|(?:warmer|hotter|higher|more|larger|longer) than)$"
)
_AT_LEAST_BEFORE = re.compile(
    r"\b(?:at least|no (?:colder|cooler|less|lower) than|not (?:below|under)|colder than|reach|"
    r"reaches|to)$"
)
_HURTS_BELOW = re.compile(r"\b(?:chills?|freezes?|hurt|sprouts?)\b")
_HURT_BELOW_AFTER = re.compile(r",? ?it (?:may|freezes|is hurt|does)|,? no ")
_MEASURED = re.compile(
    r"\b(?:measured|stood at|was read|were read|read|reads|reading|kept at|held at)[ :]*$"
    r"|\b(?:room|pantry|cellar|fridge|freezer),? *$"
)
_MEASURED_AFTER = re.compile(r",? (?:was )?(?:read|is assumed|assumed|measured|in )\b")


def way_of(found: Found, *, heat: bool = False) -> Callable[[Fraction], int] | None:
    """`floor` for what is at most, `ceil` for what is at least, None where no word says it."""
    before, after = found.before.casefold().rstrip(), found.after.casefold()
    if _AT_MOST_AFTER.match(after):
        return floor
    if _AT_LEAST_AFTER.match(after):
        return ceil
    if _PAST_BEFORE.search(before):
        return ceil if heat else floor
    if re.search(r"\b(?:below|under)$", before) and (
        _HURTS_BELOW.search(before) or _HURT_BELOW_AFTER.match(after)
    ):
        return ceil
    if _AT_LEAST_BEFORE.search(before) and (heat or not before.endswith(" to")):
        return ceil
    if _AT_MOST_BEFORE.search(before):
        return floor
    return None


def measured(found: Found) -> bool:
    """Whether somebody read it off, or it is what a place is taken to hold."""
    before, after = found.before.casefold(), found.after.casefold()
    alone = not before and not after  # a cell of a table of places
    return alone or bool(_MEASURED.search(before) or _MEASURED_AFTER.match(after))
