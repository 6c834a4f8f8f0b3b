"""How far the date on a pack is believed: alone, beside the published days, or not at all, where it
lies further ahead than on any pack of its kind."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.harm import is_vacuum_packed, stands_by_itself, use_by
from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.prepared import is_cut
from pantry_tui.core.words import Climate, Group

#: Days from the day it was bought behind which a use-by was misread, or speaks of a tin: no pack of
#: its kind is dated further ahead. Mince, raw fish and shellfish, sprouts, what is cut, sushi; raw
#: poultry and meat; meat under vacuum; cooked meals; all else. This program's choice, no source.
_AT_ONCE, _RAW, _VACUUM, _COOKED, LONGEST_USE_BY = 14, 21, 60, 30, 90
_SOONEST = frozenset({"ground-meat", "sprout"})
_SOONEST_NAMES = frozenset({"rice balls", "mixed fruit"})
#: Days further ahead than on any pack that only a refrigerator keeps, but for hard cheese and
#: butter; and on cooked food. This program's choice.
_FURTHEST, _COOKED_FURTHEST = 180, 60
_LONG = re.compile(r"hard cheese|butter|powder|condensed|evaporated|shelf-stable|dried")


def date_stands_alone(batch: Batch) -> bool:
    """Whether the date on a pack counts instead of the published days. On what only the cold keeps
    that is a use-by (USDA FSIS, Food Product Dating: such a date is followed, behind a sell-by or
    none the days of the chart count; UK FSA: eaten up to the use-by; both from memory), and one
    that a fresh pack can have; every other date counts beside those days."""
    if not use_by(batch):
        return True
    if batch.printed is None or ("dated", "use-by") not in batch.process:
        return False
    return batch.made is None or batch.printed - batch.made <= timedelta(days=furthest(batch))


def furthest(batch: Batch) -> int:
    """Days after which no use-by of its kind is believed."""
    food = batch.food
    soonest = food.classes & _SOONEST or food.name in _SOONEST_NAMES or is_cut(batch)
    if soonest or food.group is Group.FISH:
        return _AT_ONCE
    if food.group is Group.MEAL:
        return _COOKED
    if "poultry" in food.classes or (food.group is Group.MEAT and not food.known):
        return _RAW
    if "whole-cut" in food.classes:
        return _VACUUM if is_vacuum_packed(batch) else _RAW
    return LONGEST_USE_BY


def covered_by_days(batch: Batch, frozen: bool, safety: Sequence[Rule]) -> bool:
    """Whether the date on a shut pack is anything to go by: one that counts alone is; every other
    one on what only the cold keeps says how good it is, so that published days must say how long
    it is safe, unless it is frozen."""
    if date_stands_alone(batch) or frozen or stands_by_itself(batch):
        return True
    return bool(safety)


def too_far(batch: Batch, spans: Sequence[Span]) -> str:
    """What is said of a printed date that cannot be, "" of any other."""
    if batch.printed is None or batch.made is None or not use_by(batch):
        return ""
    if _LONG.search(batch.food.name) or all(s.climate is not Climate.FRIDGE for s in spans):
        return ""
    most = _COOKED_FURTHEST if batch.food.group is Group.MEAL else _FURTHEST
    if batch.printed <= batch.made + timedelta(days=most):
        return ""
    return (
        f"The printed date, {dates.say(batch.printed)}, lies further ahead than that of any pack "
        "of its kind: look at it again, and correct it."
    )
