"""What stands in what: which vessels the first draw opens, and how much one of them holds."""

from __future__ import annotations

import re
from collections.abc import Collection
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from pantry_tui.core.amounts import MOST, UNITS, Amount, fractions_spelled
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.words import Method


class Vessel(StrEnum):
    """How a container is drawn from. A `CLOSED` one (jar, bottle, tin, pack, bag, tub, box) is
    opened by the first draw; an `OPEN` one (crate, crock, sack) never is; `PIECES` lie loose and
    are counted."""

    CLOSED = "closed"
    OPEN = "open"
    PIECES = "pieces"


_OPEN = (
    r"\b(crock|crate|sack|bin|demijohn|carboy|barrel|keg|basket|trug|bucket|pail|string|braid"
    r"|plait|net|bunch|bushel|heap|pile|loose|clamp)"
)
_CLOSED = (
    r"\b(jar|bottle|jug|tin|can|pack|packet|parcel|bag|tub|box|carton|pouch|pint|quart|gallon)"
)
#: Eggs in the shell are taken out of it one by one, and keep as they did.
_BOXED = r"\b(?:box|carton|tray|flat|punnet)(?:e?s)?\b.*\bof (?:a )?(?:dozen|\d)"
#: Kept as it is: a whole ham, a side of bacon, a crock of eggs; a cut does not open it.
_UNPACKED = frozenset(
    {
        Method.CELLAR, Method.FRESH, Method.SALTED, Method.LIME, Method.HOT_SMOKED,
        Method.COLD_SMOKED, Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT,
        Method.PASTE,
    }
)  # fmt: skip
_AS_LAID = frozenset({Method.FRESH, Method.BOUGHT})
#: Words for one of what is counted, which are no vessels.
_PIECE = r"(?:whole|loose)?\s*(?:head|fruit|piece|root|bulb|squash|egg|each|whole|loose)?(?:s|es)?"
#: Bounded: a log of before, or of somebody else, may hold a figure of a thousand digits.
_FIGURE = r"\d{1,7}\s+\d{1,4}/\d{1,4}|\d{1,4}/\d{1,4}|\d{1,7}(?:\.\d{1,6})?"
_HELD = (
    rf"(?P<figure>{_FIGURE})?[\s-]*(?P<unit>"
    + "|".join(sorted((re.escape(one) for one in UNITS), key=len, reverse=True))
    + r")\b"
)
_HALF = r"half[\s-](?P<unit>pint|gallon|litre|liter|kilo|pound)s?\b"
_OF = r"\bof (?:(?P<dozen>a dozen|dozen)|(?P<number>\d{1,4}))\b"
#: A jar or bottle of so many ounces is meant by volume.
_BY_VOLUME = r"\b(jar|bottle|jug)"


@lru_cache(maxsize=4096)
def vessel_of(method: Method, size: str, unit: str | None = None, *, whole: bool = False) -> Vessel:
    """How what is put up so is drawn from (`size` as "pint jars"); `unit` is that of what it
    holds, "" for pieces, None where nobody knows; `whole` of eggs in their shell."""
    said = size.casefold()
    if whole and method in _AS_LAID and unit == "" and re.search(_BOXED, said):
        return Vessel.PIECES
    if method in LIDDED:
        return Vessel.CLOSED
    if method is Method.CELLAR or re.search(_OPEN, said):
        # Whole raw crops: a bag of carrots is no closed pack.
        loose = unit == "" and not re.search(_OPEN, said) and not re.search(_CLOSED, said)
        return Vessel.PIECES if loose else Vessel.OPEN
    if re.search(_CLOSED, said) or method not in _UNPACKED:
        return Vessel.CLOSED
    if method is Method.FRESH and unit in ("ml", "l", "fl oz", "cup", "pint", "quart", "gallon"):
        return Vessel.CLOSED
    return Vessel.PIECES if unit == "" and names_pieces(said) else Vessel.OPEN


def laid_eggs(name: str, classes: Collection[str]) -> bool:
    """Whether a food is eggs as they are laid, unless they were beaten or cooked since."""
    return "whole-egg" in classes and "hard" not in name


def is_closed(method: Method, size: str) -> bool:
    """Whether what is put up so stands in closed vessels."""
    return vessel_of(method, size) is Vessel.CLOSED


def names_pieces(size: str) -> bool:
    """("heads", "") -> True: no vessel, but what is counted itself."""
    return re.fullmatch(_PIECE, size.strip().casefold()) is not None


def in_jars(wanted: str) -> str:
    """("3 quart (1 short)") -> "3 quart jars (1 short)", so that nobody reads a volume."""
    count, size, *more = wanted.split(" ", 2)
    return wanted if "jars" in wanted.split() else " ".join([count, size, "jars", *more])


@lru_cache(maxsize=4096)
def vessel_word(size: str) -> str:
    """("40 lb crates") -> "crates", ("box of 12") -> "box"; "" where it names none."""
    words = size.casefold().partition(" of ")[0].split()
    last = words[-1] if words else ""
    return last if last.isalpha() and last not in UNITS else ""


@lru_cache(maxsize=4096)
def contents_of(size: str) -> Amount | None:
    """What one of that size holds: ("40 lb crates") -> 40 lb, ("half-pint jars") -> 1/2 pint,
    ("box of 12") -> 12 pieces; None where the words do not say, or say what no vessel holds."""
    said = fractions_spelled(size.casefold()).strip()
    half = re.match(_HALF, said)
    if half is not None:
        return Amount(Fraction(1, 2), UNITS[half["unit"]])
    found = re.match(_HELD, said)
    if found is not None:
        number = _figure(found["figure"] or "1")
        unit = UNITS[found["unit"]]
        if unit == "oz" and re.search(_BY_VOLUME, said):
            unit = "fl oz"
        return Amount(number, unit) if 0 < number <= MOST else None
    count = re.search(_OF, said)
    pieces = 0 if count is None else 12 if count["dozen"] else int(count["number"])
    return Amount(Fraction(pieces)) if pieces else None


def _figure(said: str) -> Fraction:
    """("2 1/4") -> 9/4; nought for what divides by nothing."""
    try:
        return sum(map(Fraction, said.split()), Fraction(0))
    except ZeroDivisionError:
        return Fraction(0)


#: A size that is longer is no size, characters.
_LONGEST = 60
_LIKE_A_NUMBER = r"(?<![\w.,/])[-+−–]?\s?[\d.,/]*\d[\d.,/]*(?:e[-+]?\d+)?|\b(?:nan|inf|infinity)\b"


def wrong_size(size: str) -> str:
    """What is wrong with a size that somebody types, in a sentence; "" for one that is understood,
    or that says no figure ("heads", "half-pint jars", "40 lb crate")."""
    said = " ".join(size.split())
    shown = said if len(said) <= 30 else f"{said[:30]}..."
    if len(said) > _LONGEST:
        return f"The size {shown!r} is too long: write it like 500 ml jars."
    said = fractions_spelled(said)
    for typed in re.findall(_LIKE_A_NUMBER, said.casefold()):
        figure = typed.strip()
        if re.fullmatch(r"\d+,\d+", figure):
            return f"The size {shown!r} could be read two ways: write the number with a point."
        if not re.fullmatch(_FIGURE, figure) or not 0 < _figure(figure) <= MOST:
            return (
                f"The size {shown!r} holds no figure that a vessel can have: "
                "write it like 500 ml, 1/2 pint or 40 lb."
            )
    return ""
