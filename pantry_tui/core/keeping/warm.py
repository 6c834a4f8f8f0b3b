"""The minutes in which food that keeps in the cold was not in it."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import NamedTuple

from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.safety.outage import OutageRule


class Warm(NamedTuple):
    """Minutes in which food that keeps in the cold was not in it."""

    start: int
    end: int
    day: date
    temperature_f: float
    rule: Rule | OutageRule | None
    where: str


def passed(warm: Iterable[Warm], most: int) -> tuple[Warm, int] | None:
    """The one in which the minutes, each counted once, come to more than `most`, and when."""
    total, reach = 0, -1 << 40
    for one in sorted(warm, key=lambda one: one[:4]):
        if one.end > max(one.start, reach):
            total += one.end - max(one.start, reach)
            reach = one.end
        if total > most:
            return one, reach - (total - most)
    return None
