"""How far the date on a pack is believed: a use-by date stands for the days of the chart (USDA
FSIS, food product dating). One that lies further ahead than on any pack of its kind was mistyped.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.harm import is_vacuum_packed, use_by
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Climate, Group

#: Days further ahead than on any pack that only a refrigerator keeps, but for hard cheese and
#: butter; on cooked food; and on raw meat or fish that is not under vacuum. This program's choice.
_FURTHEST, _COOKED_FURTHEST, _RAW_FURTHEST = 180, 60, 14
_LONG = re.compile(r"hard cheese|butter|powder|condensed|evaporated|shelf-stable|dried")
#: Classes of raw meat and fish.
_RAW = frozenset({"poultry", "ground-meat", "whole-cut", "fatty-fish", "lean-fish", "shellfish"})
#: The longest that eggs are published for, in any row.
_EGGS_FURTHEST = 35


def _furthest(batch: Batch) -> int:
    if batch.food.name == "eggs":
        return _EGGS_FURTHEST
    if batch.food.classes & _RAW and not is_vacuum_packed(batch):
        return _RAW_FURTHEST
    return _COOKED_FURTHEST if batch.food.group is Group.MEAL else _FURTHEST


def too_far(batch: Batch, spans: Sequence[Span]) -> str:
    """What is said of a printed date that cannot be, "" of any other."""
    if batch.printed is None or batch.made is None or not use_by(batch):
        return ""
    if _LONG.search(batch.food.name) or all(s.climate is not Climate.FRIDGE for s in spans):
        return ""
    if batch.printed <= batch.made + timedelta(days=_furthest(batch)):
        return ""
    return (
        f"The printed date, {dates.say(batch.printed)}, lies further ahead than that of any pack "
        "of its kind: look at it again, and correct it."
    )
