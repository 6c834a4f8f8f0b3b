"""What a detail of a process can be for a method, where no kitchen reaches every number or a number
says nothing: the warmth of what ferments, dries or is frozen, salt of no share. Lines
of our own, wide enough for any published practice; what is dangerous within them is doubted
(strength.py, core.keeping.unripe)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.measured import all_fahrenheit, all_minutes, spelled_out
from pantry_tui.core.safety.salt import says_no_share
from pantry_tui.core.words import Method


class _Warmth(NamedTuple):
    """From where to where it can be, °F, and what may be written instead."""

    low: float
    high: float
    hint: str


#: Minutes. Longer than any published process of jars (the longest we know is of fish in quarts,
#: 160, USDA AIB 539, from memory); the line itself is our own choice.
LONGEST = 300

_SALTED = frozenset({Method.LACTIC, Method.PASTE, Method.SALTED})
_LETTER = re.compile(r"(?i)(?<![a-z])[cf]\b")
_OF_FERMENT = _Warmth(28, 212, "write how warm it stands while it works, like temperature=70F")
_OF_FREEZER = _Warmth(
    -120,
    0,
    "a freezer holds 0 F or less, like temperature=0F; a warmer one is a reading of its place",
)
_OF_STORE = _Warmth(20, 120, "write how warm it stands, like temperature=38F")
_DRYING = _Warmth(28, 350, "write how warm the air is, like temperature=140F")
_SMOKED = _Warmth(28, 450, "write how hot it came inside, like temperature=165F")
_WARMTH = {
    **dict.fromkeys((Method.LACTIC, Method.PASTE, Method.SALTED), _OF_FERMENT),
    **dict.fromkeys((Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT), _OF_FERMENT),
    **dict.fromkeys((Method.FROZEN, Method.FREEZER_JAM), _OF_FREEZER),
    **dict.fromkeys((Method.CELLAR, Method.FRESH), _OF_STORE),
    **dict.fromkeys((Method.HOT_SMOKED, Method.COLD_SMOKED), _SMOKED),
    Method.DRIED: _DRYING,
}


def impossible(method: Method | None, pairs: Iterable[tuple[str, str]]) -> Sequence[str]:
    """What a record says that cannot be of this method, a sentence each; pairs as they are kept
    (core.safety.record.read_details)."""
    said = dict(pairs)
    return (*_shareless(method, said), *_too_warm(method, said), *_too_long(method, said))


def _too_long(method: Method | None, said: Mapping[str, str]) -> Sequence[str]:
    """Minutes of jars that no canner runs for: a slip of the unit, and no process."""
    typed = said.get("minutes", "")
    if method not in LIDDED or max(all_minutes(typed), default=0) <= LONGEST:
        return ()
    return (
        f"minutes={typed[:40]} of what is {method} cannot be: no published process takes more than "
        f"{LONGEST} minutes, write minutes=25 or minutes=1h15.",
    )


def _shareless(method: Method | None, said: Mapping[str, str]) -> Sequence[str]:
    """Salt by which food is kept, and nobody says to how much of it."""
    salt = said.get("salt", "")
    if method not in _SALTED or denies(salt) or not says_no_share(salt):
        return ()
    return (
        f"salt={salt[:40]} to how much? Write it with the weight it went to, like salt=3tbsp to "
        "5lb, or as a share of it, like salt=2.25%.",
    )


def _too_warm(method: Method | None, said: Mapping[str, str]) -> Sequence[str]:
    if method is None or method not in _WARMTH:
        return ()
    span = _WARMTH[method]
    typed = said.get("temperature", "")
    if all(span.low <= warm <= span.high for warm in all_fahrenheit(typed)):
        return ()
    what = _IS.get(method, method.value)
    return (f"temperature={typed[:40]} of what is {what} cannot be: {span.hint}.",)


def with_degrees(pairs: Iterable[tuple[str, str]], unit: str) -> tuple[tuple[str, str], ...]:
    """The record with the degrees that a household means where a temperature has no letter, and
    the unit of an altitude that is a bare number: metres, the stricter reading, where it reads °C,
    else feet, so that it is seen which."""

    def meant(key: str, value: str) -> str:
        if key == "altitude" and re.fullmatch(r"\s*-?[\d,]+\s*", value):
            return f"{value.strip()}{'m' if unit == 'C' else 'ft'}"
        if key == "temperature" and unit == "C" and re.search(r"\d", spelled_out(value)):
            return value if _LETTER.search(value) else f"{value.strip()} {unit}"
        return value

    return tuple((key, meant(key, value)) for key, value in pairs)


#: What is said of food of a method, where its name is no such word.
_IS = {
    Method.LACTIC: "fermenting",
    Method.PASTE: "fermenting",
    Method.VINEGAR_FERMENT: "fermenting",
    Method.ALCOHOL_FERMENT: "fermenting",
    Method.FREEZER_JAM: "frozen",
    Method.CELLAR: "stored",
}
