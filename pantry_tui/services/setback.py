"""The clock of the computer was put back: what was booked while it was ahead is said to be so.

Asked before every event that is booked. Which events those are, and between which moments they were
booked, stands in the log then (core.log.ahead), so that it is known in every store that they go to,
and after the wrong day too.

A clock that ran ahead by days shows by a step back of any length, and nobody knows since when: what
it booked may have been booked at any time since what was booked before. Clocks that differ by
minutes (a phone that is set right, two computers whose logs became one, an hour that is put back by
hand) step back by no more than that: what was booked counts from so much earlier on, and in its
order.

A day that is typed (`--today`) is a person's word and no clock: said of a time before the last
booking it is no step back, where the computer's own clock, by which ids are made, went on.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta, timezone
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.core.log.ahead import SLIGHT, clock_of
from pantry_tui.core.log.events import Event, made_at
from pantry_tui.core.log.payloads import ClockAhead, Redo, Undo, place_of, touches
from pantry_tui.core.model import DAY_MIN, When
from pantry_tui.services import clock
from pantry_tui.store import log

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry

#: A clock is set right by so many minutes without anybody having put it wrong. Our own choice.
_WOBBLE = 2
_EPOCH = datetime(1, 1, 1, tzinfo=UTC)
#: The minute, as `When` counts it, from which on ids count their milliseconds.
_UNIX = (datetime(1970, 1, 1, tzinfo=UTC) - _EPOCH).days * DAY_MIN + DAY_MIN

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


class Notes(NamedTuple):
    """What is to be booked before an event. `by_word`: only what was typed shows it, on either
    side, so that it is taken back with that event."""

    payloads: Sequence[ClockAhead]
    by_word: bool


def ahead(p: Pantry, new: Event) -> Notes:
    """What is to be booked before `new`, which is not booked yet: by batch and by place, which of
    the newest events were booked by a clock that had gone on further than that of `new`."""
    now = clock_of(new)
    found, since = _since(p, now)
    if p.clock.typed:
        found = [one for one in found if not _had_come(one)]
    by_word = p.clock.typed and not any(_put_back_since(one) for one in found)
    return Notes(tuple(_notes(found, now, since)), by_word)


def is_still_ahead(p: Pantry, note: ClockAhead) -> bool:
    """Whether what it speaks of was booked by a clock that had gone on further than that of now."""
    return any(
        clock_of(event).first > p.clock.minute_now
        for id_ in note.events
        for event in log.select(p.store.db, "WHERE id = ?", (id_,))
    )


def _notes(found: Sequence[_Booked], now: When, since: When | None) -> Iterator[ClockAhead]:
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
    machine = clock.real().timestamp() * 1000 + _WOBBLE * 60_000
    for event in log.backwards(p.store.db):
        then = clock_of(event)
        if then.first > now.last + (_WOBBLE if then.known and now.known else 0):
            found.append(_Booked(event, then))
            continue
        made, by_itself = made_at(event.id)
        if made <= machine or not by_itself:
            return found[::-1], then
        # A day was typed, on a computer whose clock was ahead all the same: it hides nothing.
    return found[::-1], None


def _had_come(booked: _Booked) -> bool:
    """Whether what the clock said when it was booked had come by the clock of the computer, which
    was not put back since."""
    made, _ = made_at(booked.event.id)
    return booked.then.first <= made // 60_000 + _UNIX and not _put_back_since(booked)


def _put_back_since(booked: _Booked) -> bool:
    """Whether the clock of the computer stands before what it said when that was booked."""
    return made_at(booked.event.id)[0] > clock.real().timestamp() * 1000


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
