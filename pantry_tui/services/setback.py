"""The clock of the computer was put back: what was booked while it was ahead is said to be so.

Asked before every event that is booked. Which events those are, and between which moments they were
booked, stands in the log then (core.log.ahead), so that it is known in every store that they go to,
and after the wrong day too.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta, timezone
from typing import TYPE_CHECKING

from pantry_tui.core.log.ahead import clock_of
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import ClockAhead, Redo, Undo, place_of, touches
from pantry_tui.core.model import DAY_MIN, When
from pantry_tui.store import log

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry

#: A clock is set right by so many minutes without anybody having put it wrong. Our own choice.
_WOBBLE = 2
_EPOCH = datetime(1, 1, 1, tzinfo=UTC)


def ahead(p: Pantry, new: Event) -> Iterator[ClockAhead]:
    """What is to be booked before `new`, which is not booked yet: by batch and by place, which of
    the newest events were booked by a clock that had gone on further than that of `new`."""
    now = clock_of(new)
    newest = log.backwards(p.store.db)
    found: list[Event] = []
    since: When | None = None
    for event in newest:
        then = clock_of(event)
        by_the_hour = then.known and now.known
        if then.first <= now.last + (_WOBBLE if by_the_hour else 0):
            since = then
            break
        found.append(event)
    of: dict[tuple[str, str], list[str]] = defaultdict(list)
    for event in reversed(found):
        if isinstance(event.payload, ClockAhead | Undo | Redo):
            continue
        for batch in touches(event.payload):
            of[batch, ""].append(event.id)
        if place := place_of(event.payload):
            of["", place].append(event.id)
    until, start = _iso(now.last, now.zone), "" if since is None else _iso(since.first, since.zone)
    for (batch, place), ids in of.items():
        yield ClockAhead(tuple(ids), until, start, batch, place)


def _iso(minute: int, zone: int) -> str:
    """A minute as `When` counts it, by its clock."""
    then = _EPOCH + timedelta(minutes=minute - DAY_MIN)
    return then.astimezone(timezone(timedelta(minutes=zone))).isoformat(timespec="minutes")
