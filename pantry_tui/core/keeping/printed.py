"""How far the date on a pack is believed where no published days stand beside it: one that lies
further ahead than on any pack of its kind was mistyped."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.harm import use_by
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Climate, Group

#: Days further ahead than on any pack that only a refrigerator keeps, but for hard cheese and
#: butter; and on cooked food. This program's choice.
_FURTHEST, _COOKED_FURTHEST = 180, 60
_LONG = re.compile(r"hard cheese|butter|powder|condensed|evaporated|shelf-stable|dried")


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
