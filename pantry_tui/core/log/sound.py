"""Whether what an event says could have been said here: a log of somebody else is held to what a
person may type. A store's own log is not asked: what it holds is read as it is."""

from __future__ import annotations

import math
from collections.abc import Iterator
from datetime import date, datetime
from enum import Enum
from typing import Any

from pantry_tui.core.amounts import Amount
from pantry_tui.core.lidcode import is_code
from pantry_tui.core.text import has_name

#: Field -> the least and the most of it, in the unit in which the log keeps it.
_BOUNDS: dict[str, tuple[float, float]] = {
    "Household.people": (1, 100), "people": (0, 1000), "altitude_ft": (-1500, 20_000),
    "meals": (0, 100), "temp_f": (-100, 250), "target_f": (-100, 250), "max_temp_f": (-100, 250),
    "humidity": (0, 100), "hours": (0, 100_000), "since": (0, 10_000_000), "minutes": (0, 6000),
    "psi": (0, 100), "capacity": (0, 1_000_000), "empty": (0, 1_000_000), "in_use": (0, 1_000_000),
    "count": (-1_000_000, 1_000_000), "number": (0, 100_000),
}  # fmt: skip
_WORDS: dict[str, tuple[str, ...]] = {
    "units": ("us", "metric"), "advice": ("usual", "strictest"), "jars": ("maker", "strict"),
    "half": ("north", "south"),
}  # fmt: skip
_MOMENTS = frozenset({"Outage.start", "Outage.end", "ClockAhead.since", "ClockAhead.until"})
_CODES = frozenset({"PutUp.code", "Relabelled.code", "Relabelled.was"})
_NAMES = frozenset({"PlaceAdded.name", "PlaceChanged.name", "FoodFacts.name", "FoodAdded.name",
                    "Dish.name"})  # fmt: skip
#: Any other number at most.
_MOST = 1e9
#: So many characters of a text are booked at most.
LONGEST = 20_000
#: A log that was booked without that limit still comes in, up to this.
_READ_AT_MOST = 1_000_000
_YEARS = (1900, 2200)


def wrong_with(payload: object) -> str:
    """What is wrong with it, in a few words; "" where nothing is."""
    return next(_wrong(type(payload).__name__, "", payload), "")


def too_long(payload: object) -> tuple[str, int] | None:
    """The first text of it that is longer than what is booked: its field, and how long it is."""
    return next(_too_long("", payload), None)


def _too_long(name: str, value: Any) -> Iterator[tuple[str, int]]:
    if isinstance(value, str):
        if len(value) > LONGEST:
            yield name, len(value)
    elif fields := getattr(value, "__match_args__", ()):
        for field in fields:
            yield from _too_long(field, getattr(value, field))
    elif isinstance(value, tuple | frozenset):
        for one in value:
            yield from _too_long(name, one)


def _wrong(kind: str, name: str, value: Any) -> Iterator[str]:
    if value is None or isinstance(value, bool | Enum):
        return
    if isinstance(value, Amount):
        if not 0 < value.number <= _MOST:
            yield f"{name} is no possible amount"
    elif isinstance(value, int | float):
        yield from _number(kind, name, value)
    elif isinstance(value, str):
        yield from _text(kind, name, value)
    elif isinstance(value, date):
        if not _YEARS[0] <= value.year <= _YEARS[1]:
            yield f"{name} is no day of any household"
    elif fields := getattr(value, "__match_args__", ()):
        for field in fields:
            yield from _wrong(type(value).__name__, field, getattr(value, field))
    elif isinstance(value, tuple | frozenset):
        for one in value:
            yield from _wrong(kind, name, one)


def _number(kind: str, name: str, value: float) -> Iterator[str]:
    least, most = _BOUNDS.get(f"{kind}.{name}") or _BOUNDS.get(name) or (-_MOST, _MOST)
    if not (math.isfinite(value) and least <= value <= most):
        yield f"{name} is not between {least:g} and {most:g}"


def _text(kind: str, name: str, value: str) -> Iterator[str]:
    full = f"{kind}.{name}"
    if len(value) > _READ_AT_MOST:
        yield f"{name} is too long"
    elif full in _CODES and not is_code(value):
        yield f"{name} is no lid code"
    elif full in _NAMES and not has_name(value):
        yield f"{name} has neither a letter nor a figure"
    elif full in _MOMENTS and value and not _is_moment(value):
        yield f"{name} is no moment"
    elif name in _WORDS and kind == "Household" and value not in _WORDS[name]:
        yield f"{name} is none of {', '.join(_WORDS[name])}"


def _is_moment(text: str) -> bool:
    try:
        return _YEARS[0] <= datetime.fromisoformat(text).year <= _YEARS[1]
    except ValueError:
        return False
