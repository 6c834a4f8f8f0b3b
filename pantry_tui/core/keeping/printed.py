"""How far the date on a pack is believed: alone, beside the published days, or not at all, where it
lies further ahead than on any pack of its kind."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.harm import use_by
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Climate, Group

#: No pack of fresh food is dated further ahead, beef under vacuum neither: what is was misread, or
#: speaks of a tin (common practice, no source).
LONGEST_USE_BY = timedelta(days=90)
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
    return batch.made is None or batch.printed - batch.made <= LONGEST_USE_BY


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
