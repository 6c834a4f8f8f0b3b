"""Words on a label of a given size: as large as all of them fit, never cut off."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from math import sqrt
from textwrap import wrap
from typing import NamedTuple

from pantry_tui.errors import BadInput

#: Sides of a label, and a type that can be read on a shelf, in mm. 25.4 mm are an inch, 0.353 a
#: point.
SMALLEST, LARGEST = 15.0, 300.0
LEAST_TYPE, LARGEST_TYPE, _STEP = 1.76, 4.6, 0.02
_INCH = 25.4
#: Free at each side, and a line to the next, as a part of the type.
_AIR_MM, _LINE = 1.2, 1.2
#: How wide a letter of a usual sans-serif is at most on average, as a part of its size.
_WIDE = 0.58
_ROUND = re.compile(r"\bround\b")
_SIZE = re.compile(
    r"(?P<width>\d+(?:\.\d+)?)\s*(?:x\s*(?P<height>\d+(?:\.\d+)?)\s*)?"
    r"(?P<unit>mm|cm|in|inch|inches|\")"
)
_MM = {"mm": 1.0, "cm": 10.0}


class Size(NamedTuple):
    """Of a label, in mm; a round one is as high as it is wide."""

    width: float
    height: float
    round: bool = False


class Piece(NamedTuple):
    """Some words of a label, how large beside the others, and whether they may be left out."""

    text: str
    scale: float = 1.0
    optional: bool = False


class Fitted(NamedTuple):
    """The type in mm, and each line with its scale."""

    type_mm: float
    lines: tuple[tuple[str, float], ...]


def read_size(typed: str) -> Size:
    """ "60x40mm", "2.5 x 1.5 in", "round 50mm". Raises BadInput."""
    text = " ".join(typed.lower().replace("×", "x").split())
    is_round = bool(_ROUND.search(text))
    found = _SIZE.fullmatch(_ROUND.sub("", text).strip())
    if not found or (not is_round and found["height"] is None):
        raise BadInput(f"{typed!r} is no size of a label: say 60x40mm, 2.5x1.5in or round 50mm.")
    unit = _MM.get(found["unit"], _INCH)
    wide = round(float(found["width"]) * unit, 2)
    high = round(float(found["height"] or found["width"]) * unit, 2)
    if not all(SMALLEST <= side <= LARGEST for side in (wide, high)):
        raise BadInput(f"A label is {SMALLEST:g} to {LARGEST:g} mm wide and high, not {typed}.")
    if is_round and wide != high:
        raise BadInput(f"A round label has one size across, not {typed}.")
    return Size(wide, high, is_round)


def fitted(pieces: Sequence[Piece], size: Size) -> Fitted | None:
    """All pieces in the largest type that holds them; where even the least does not, those that
    may be left out go, the last first. None where the others do not fit either."""
    kept = list(pieces)
    while True:
        steps = int((LARGEST_TYPE - LEAST_TYPE) / _STEP)
        for step in range(steps + 1):
            type_mm = LARGEST_TYPE - step * _STEP
            lines = _laid(kept, size, type_mm)
            if lines is not None:
                return Fitted(round(type_mm, 2), lines)
        spare = [at for at, piece in enumerate(kept) if piece.optional]
        if not spare:
            return None
        del kept[spare[-1]]


def least(pieces: Sequence[Piece], size: Size) -> Size:
    """The smallest size of the same shape that holds what must stand there, in whole mm."""
    needed = [piece for piece in pieces if not piece.optional]
    more = size
    while _laid(needed, more, LEAST_TYPE) is None:
        more = Size(more.width * 1.05, more.height * 1.05, size.round)
    return Size(float(-(-more.width // 1)), float(-(-more.height // 1)), size.round)


def _laid(
    pieces: Sequence[Piece], size: Size, type_mm: float
) -> tuple[tuple[str, float], ...] | None:
    """Lines of that type inside the label, None where they do not fit."""
    for wide, high in _rooms(size):
        lines: list[tuple[str, float]] = []
        for text, scale, _ in pieces:
            room = int(wide / (type_mm * scale * _WIDE))
            if room < 1:
                break
            lines += [(line, scale) for line in wrap(text, room)]
        else:
            if sum(scale for _, scale in lines) * type_mm * _LINE <= high:
                return tuple(lines)
    return None


def _rooms(size: Size) -> Iterator[tuple[float, float]]:
    """Width and height of what is written on: of a round label, each block inside its circle."""
    if not size.round:
        yield size.width - 2 * _AIR_MM, size.height - 2 * _AIR_MM
        return
    across = size.width - 2 * _AIR_MM
    for part in range(30, 96, 5):
        high = across * part / 100
        yield sqrt(across**2 - high**2), high
