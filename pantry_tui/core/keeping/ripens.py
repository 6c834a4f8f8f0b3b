"""From which day on a ferment may be called ready, as it stands now.

What promises a day asks what refuses it: the day is the first on which core.keeping.unripe has
nothing against it, at whatever hour of it somebody calls it ready.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.keeping.unripe import (
    MEASURE,
    ferments,
    in_time,
    paces_of,
    told_paces,
    unripe,
)
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, Batch
from pantry_tui.core.safety.measured import PH_LINE, read_ph


class Ripe(NamedTuple):
    """The first day, or None where no day makes it ready as it stands, and then why not."""

    day: date | None
    why: str = ""


def ripe_from(
    batch: Batch, spans: Sequence[Span], zone: int, book: Rulebook, today: date
) -> Ripe | None:
    """When what is in progress may be called ready, if it stays where it is; None where nothing
    but its maker says when. `zone`: minutes that the local clock is ahead of the spans."""
    working = [span for span in spans if span.in_progress]
    if not ferments(batch) or all(span.end < FOREVER for span in working):
        return None

    def against(batch: Batch, day: date) -> Trouble | None:
        return unripe(batch, _called_ready(working, day, zone), zone, book)

    acidity = read_ph(dict(batch.process).get("ph", ""))
    if acidity is not None and acidity > PH_LINE:
        found = against(batch, today)
        return Ripe(None, found.text if found is not None else "")
    if batch.ph_day is not None and in_time(batch.ph_day, today) and not against(batch, today):
        return Ripe(batch.ph_day)
    # A pH that was measured long before it is called ready says nothing of it.
    unmeasured = replace(batch, ph_day=None)
    began = min(span.day for span in working)
    paces = paces_of(batch.food, began, book)
    longest = math.ceil(max((one.days for one in paces), default=0))
    first = began + timedelta(days=1)
    last = max(first, *(span.day for span in working)) + timedelta(days=longest + 1)
    if against(unmeasured, last) is not None:
        return Ripe(None, _never(told_paces(paces)))
    while first < last:
        middle = first + (last - first) // 2
        if against(unmeasured, middle) is None:
            last = middle
        else:
            first = middle + timedelta(days=1)
    return Ripe(first)


def _called_ready(working: Sequence[Span], day: date, zone: int) -> list[Span]:
    """What it would have been through if it were called ready as a day begins, and stayed."""
    start = day.toordinal() * DAY_MIN - zone
    before = [one._replace(end=min(one.end, start)) for one in working if one.start < start]
    done = [
        one._replace(start=start, end=FOREVER, day=day, in_progress=False)
        for one in working
        if one.end >= FOREVER
    ]
    return [*before, *done]


def _never(times: str) -> str:
    if not times:
        return f"No working time is published for it. {MEASURE}"
    return f"Where it stands no day counts: the shortest published time is {times}. {MEASURE}"
