"""Of two records of one process, what either says: of two values of one detail the one that makes
nothing milder. Pure."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from pantry_tui.core.amounts import read_altitude
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.measured import (
    all_fahrenheit,
    danger,
    read_minutes,
    read_percent,
    read_ph,
    read_psi,
)
from pantry_tui.core.safety.salt import read_salt, says_of_brine
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.errors import BadInput

Pairs = Sequence[tuple[str, str]]


def _feet(text: str) -> float | None:
    try:
        return read_altitude(text)
    except BadInput:
        return None


def _salt(text: str) -> float | None:
    return None if says_of_brine(text) else read_salt(text)


def _degrees(text: str) -> float | None:
    return min(all_fahrenheit(text), default=None)


#: How a detail is read as a number, and which of two numbers is the stricter.
_STRICTER: Mapping[str, tuple[Callable[[str], float | None], Callable[[float, float], float]]] = {
    "minutes": (read_minutes, min), "psi": (read_psi, min), "ph": (read_ph, max),
    "vinegar": (read_percent, min), "salt": (_salt, min), "altitude": (_feet, max),
    "temperature": (_degrees, min),
}  # fmt: skip
#: What no verdict rests on.
_WORDS = frozenset({"amount", "headspace", "sugar"})


def differ(detail: str) -> str:
    """In doubt, where nobody can say which of two values of a detail is the stricter."""
    return f"Two records differ in {detail}: say which, or do not eat it."


def both(ours: Pairs, theirs: Pairs) -> tuple[tuple[tuple[str, str], ...], tuple[str, ...]]:
    """All details that either record says, by name, and the doubts that are left. The same from
    either side."""
    mine, come = dict(ours), dict(theirs)
    found: dict[str, str] = {}
    doubts = []
    for key in sorted(mine.keys() | come.keys()):
        words = {said[key] for said in (mine, come) if key in said and not is_unknown(said[key])}
        told = sorted(words, key=lambda one: (one.casefold(), one))
        if not told:
            found[key] = mine.get(key) or come.get(key) or ""
        elif len({one.casefold() for one in told}) == 1:
            found[key] = told[0]
        elif (strict := _stricter(key, *told)) is not None:
            found[key] = strict
        else:
            found[key] = told[0]
            doubts += [] if key in _WORDS else [differ(f"{key} ({' or '.join(told)})")]
    return tuple(found.items()), tuple(doubts)


def _stricter(key: str, one: str, other: str) -> str | None:
    """The stricter of two values, None where that cannot be told."""
    if key not in _STRICTER or any(denies(word) or danger(word) for word in (one, other)):
        return None
    read, stricter = _STRICTER[key]
    figures = read(one), read(other)
    if figures[0] is None or figures[1] is None:
        return None
    return one if stricter(figures[0], figures[1]) == figures[0] else other
