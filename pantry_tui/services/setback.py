"""The clock of the computer was put back: what was booked while it was ahead is said to be so.

Asked before every event that is booked. Which events those are, and between which moments they were
booked, stands in the log then (core.log.ahead), so that it is known in every store that they go to,
and after the wrong day too.

A clock that ran ahead by days shows by a step back of any length, and nobody knows since when: what
it booked may have been booked at any time since what was booked before. Clocks that differ by
minutes (a phone that is set right, two computers whose logs became one, an hour that is put back by
hand) step back by no more than that: what was booked counts from so much earlier on, and in its
order.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta, timezone
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.core.log.ahead import SLIGHT, clock_of
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import ClockAhead, Redo, Undo, place_of, touches
from pantry_tui.core.model import DAY_MIN, When
from pantry_tui.store import log

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry

#: A clock is set right by so many minutes without anybody having put it wrong. Our own choice.
_WOBBLE = 2
_EPOCH = datetime(1, 1, 1, tzinfo=UTC)

#: A batch, or a place: its id, "" for the other.
_Subject = tuple[str, str]


class _Booked(NamedTuple):
    """An event, and what the clock said when it was booked."""

    event: Event
    then: When

    @property
    def of(self) -> Iterator[_Subject]:
        """What it speaks of, where that is to be said of it."""
        payload = self.event.payload
        if not isinstance(payload, ClockAhead | Undo | Redo):
            yield from ((batch, "") for batch in touches(payload))
            if place := place_of(payload):
                yield "", place


def ahead(p: Pantry, new: Event) -> Iterator[ClockAhead]:
    """What is to be booked before `new`, which is not booked yet: by batch and by place, which of
    the newest events were booked by a clock that had gone on further than that of `new`."""
    now = clock_of(new)
    found, since = _since(p, now)
    of: dict[_Subject, list[_Booked]] = defaultdict(list)
    for one in found:
        for subject in one.of:
            of[subject].append(one)
    by_minutes = now.known and all(
        one.then.known and one.then.first <= now.first + SLIGHT for one in found
    )
    most = max((one.then.first - now.first for one in found), default=0)
    for (batch, place), mine in of.items():
        if by_minutes:
            notes = _each(mine, most, since)
        else:
            start = "" if since is None else _iso(since.first, since.zone)
            notes = {(start, _iso(now.last, now.zone)): [one.event.id for one in mine]}
        for (start, until), ids in notes.items():
            yield ClockAhead(tuple(ids), until, start, batch, place)


def _since(p: Pantry, now: When) -> tuple[Sequence[_Booked], When | None]:
    """What was booked by a clock that was ahead of now, the oldest first, and when what was booked
    before it was; None where that is nothing."""
    found: list[_Booked] = []
    for event in log.backwards(p.store.db):
        then = clock_of(event)
        if then.first <= now.last + (_WOBBLE if then.known and now.known else 0):
            return found[::-1], then
        found.append(_Booked(event, then))
    return found[::-1], None


def _each(
    mine: Sequence[_Booked], most: int, since: When | None
) -> dict[tuple[str, str], list[str]]:
    """Between which moments each was booked, where clocks differ by `most` minutes. Which of them
    was right nobody knows, so each may be so much earlier than it was told, not before what was
    booked before it; and what the clock booked one after the other stays so."""
    firsts: list[int] = []
    before = since.first if since is not None and since.known else None
    told: int | None = None
    for _, then in mine:
        first = then.first - most
        if before is not None and (told is None or then.first > told):
            first = max(first, before + 1)
        elif before is not None and then.first == told:
            first = before
        firsts.append(first)
        before, told = first, then.first
    found: dict[tuple[str, str], list[str]] = defaultdict(list)
    for n, (event, then) in enumerate(mine):
        last = then.first
        if n + 1 < len(mine) and mine[n + 1].then.first > then.first:
            last = max(firsts[n], min(last, firsts[n + 1] - 1))
        found[_iso(firsts[n], then.zone), _iso(last, then.zone)].append(event.id)
    return found


def _iso(minute: int, zone: int) -> str:
    """A minute as `When` counts it, by its clock."""
    then = _EPOCH + timedelta(minutes=minute - DAY_MIN)
    return then.astimezone(timezone(timedelta(minutes=zone))).isoformat(timespec="minutes")
