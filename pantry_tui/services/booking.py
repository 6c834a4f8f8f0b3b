"""Appending to the log inside `Pantry.writing`, and what each event makes be read again."""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import date, datetime, time
from typing import TYPE_CHECKING, TypedDict

from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import say
from pantry_tui.core.lidcode import code_at
from pantry_tui.core.log.events import Event, new_id, standing
from pantry_tui.core.log.fold_place import fold_place, learnt
from pantry_tui.core.log.moments import when
from pantry_tui.core.log.payloads import (
    Correct,
    Count,
    FoodAdded,
    Household,
    Outage,
    Payload,
    PutUp,
    Reading,
    RuleAdded,
    Timer,
    batch_of,
    place_of,
    touches,
)
from pantry_tui.core.log.sound import LONGEST, too_long
from pantry_tui.core.model import DAY_MIN, When
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services import clock as clocks
from pantry_tui.services.setback import Notes, ahead
from pantry_tui.store import log, places
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from pantry_tui.services.clock import Clock
    from pantry_tui.services.pantry import Pantry


_NOON = 12 * 60


class Happened(TypedDict, total=False):
    """When it happened: the day, the minute of it where the hour is known, and how many minutes
    that clock was ahead of Greenwich, where it was said. None, as what is not there: not told."""

    day: date | None
    at: int | None
    zone: int | None


def append(
    p: Pantry,
    payload: Payload,
    day: date | None = None,
    at: int | None = None,
    zone: int | None = None,
) -> Event:
    """One event, of today unless a day (and a minute of it) is given. Raises Refused; Unclear for
    an hour that came twice that night, BadInput for a text that no log may hold."""
    if (long := too_long(payload)) is not None:
        what, much = long[0].replace("_", " "), f"{long[1]:,} characters"
        raise BadInput(f"The {what} has {much}, and at most {LONGEST:,} are kept: shorten it.")
    alone = p.clock.day_alone and not isinstance(payload, Timer)  # which is by the hour
    written = _written(p, day or p.today, at, zone, alone)
    today = day is None or day == p.today
    with reading(p.path):
        if today and at is None and p.clock.day_alone and not isinstance(payload, PutUp):
            at = -1 - log.booked_in_turn(p.store.db, p.today)
        recorded = written.isoformat(timespec="minutes" if alone else "seconds")
        event = Event(next_id(p), recorded, day or p.today, payload, at, p.group)
        if (notes := ahead(p, event)).payloads:
            event = _put_right(p, event, notes)
    _refuse_before_it_was_made(p, event)
    _append(p, event)
    return event


def _put_right(p: Pantry, event: Event, notes: Notes) -> Event:
    """What was booked by a clock that was ahead is said to be so, before the event that shows it
    and apart from it: to take that back takes none of it back. Where only words show it they are
    booked as one. The event, with a new id."""
    group = (notes.by_word and p.group) or next_id(p)
    for payload in notes.payloads:
        alike = replace(event, id=next_id(p), day=p.today, payload=payload, at=None)
        _append(p, replace(alike, together=group))
    return replace(event, id=next_id(p), together=group if notes.by_word else event.together)


def _append(p: Pantry, event: Event) -> None:
    log.append(p.store.db, event)
    p.store.booked = True
    p.appended(event)
    note(p, event)


def _written(
    p: Pantry, day: date, at: int | None, zone: int | None, alone: bool = False
) -> datetime:
    """The moment of writing, told by the clock of the day on which it happened: the offset behind
    it is the one by which that day and minute are counted (core.log.moments). Where
    `alone` the day of writing is told its first minute stands for it (core.log.moments)."""
    now = p.clock.recorded
    if alone:
        like = one_moment(p.clock, day, at, zone) if at is not None else None
        like = like or (p.clock.told(day, _NOON)[:1] or (now,))[0]
        return datetime.combine(p.today, time(), like.tzinfo)
    if at is None:
        of_day = p.clock.told(day, _NOON)[:1]
        by_it = now.astimezone(of_day[0].tzinfo) if of_day else now
        # What is booked on its own day happened when it was booked: no other day may become one.
        return by_it if day not in (now.date(), by_it.date()) else now
    if at < 0:
        return now
    return now.astimezone(one_moment(p.clock, day, at, zone).tzinfo)


def one_moment(clock: Clock, day: date, minute: int, zone: int | None = None) -> datetime:
    """The moment of a local time. Raises Unclear where it came twice and nothing says which, and
    BadInput where it never was."""
    found = clock.told(day, minute, zone)
    if len(found) == 1:
        return found[0]
    hour = f"{minute // 60:02}:{minute % 60:02}"
    both = tuple(one.isoformat(timespec="minutes")[11:] for one in clock.told(day, minute))
    if not both:
        raise BadInput(f"The clock was put on over {hour} of {say(day)}: give another time.")
    if len(both) == 1:
        raise BadInput(f"{hour} of {say(day)} was {both[0]}: write that.")
    raise Unclear(
        f"The clock was put back, and {hour} came twice on {say(day)}: write {' or '.join(both)}.",
        "at",
        hour,
        both,
    )


def _refuse_before_it_was_made(p: Pantry, event: Event) -> None:
    """Raises Refused for an act on a batch, or on what another one is made from, that was not there
    yet on that day, or at the minute of it that is told. What is booked without one happens now,
    whatever the clock said when it was put up."""
    payload = event.payload
    if isinstance(payload, Correct):
        return
    if isinstance(payload, PutUp):
        about = {batch_of(part.container) for part in payload.parts}
    else:
        about = {getattr(payload, "batch", "")} - {""}
    for held in map(p.load, about):
        if held is None or held[0].made is None:
            continue
        batch, containers = held
        came = min((one.turns[0].when for one in containers.values()), default=None)
        # The food of what is carried on is older than its vessels.
        began = came.day if came is not None and batch.carried else batch.made
        named = f"{batch.code} {batch.food.name} was put up"
        if began is not None and event.day < began:
            raise Refused(
                f"{named} on {say(began)}, and this is said of {say(event.day)}: give a day from "
                "then on."
            )
        hour_told = event.at is not None and event.at >= 0
        if came is not None and hour_told and (told := when(event)).last < came.first:
            raise Refused(
                f"{named} on {say(came.day)} at {_clock(came)}, and this is said of "
                f"{_clock(told)}: give an hour from then on. If it was there before, take its "
                "put-up back first, and put it up again with --at and its own hour."
            )


def _clock(then: When) -> str:
    """The local time of its earliest minute."""
    hour, minute = divmod((then.first + then.zone) % DAY_MIN, 60)
    return f"{hour:02}:{minute:02}"


def note(p: Pantry, event: Event, *, again: bool = False) -> None:
    """What an event changes is read again, and its lines are made again before the commit.
    `again`: it was taken back or brought again."""
    payload = event.payload
    about = touches(payload)
    p.touched(about)
    if where := place_of(payload):
        _place(p, where, event, again)
        if not isinstance(payload, Count):
            p.mark(where)
    if not about and not where:
        p.home_changed(rules=isinstance(payload, RuleAdded | FoodAdded | Household))


def _place(p: Pantry, where: str, event: Event, again: bool) -> None:
    """Its row is written at once, so that what follows in the same act sees it."""
    db = p.store.db
    with reading(p.path):
        was = places.all_of(db).get(where)
        anew = again or bool(getattr(event.payload, "instead_of", ""))
        adds = isinstance(event.payload, Reading | Outage | Count) and not anew
        if adds and was is not None:
            places.save(db, where, learnt(was, event))
        else:
            places.save(db, where, fold_place(standing(log.of_place(db, where))))
    p.places_changed()


def take_back(p: Pantry, events: Sequence[Event]) -> None:
    """Events were taken back or brought again: so much is to be read again."""
    p.refresh_events()
    for event in events:
        note(p, event, again=True)


def next_id(p: Pantry) -> str:
    """An id that sorts after every event of the log."""
    return new_id(clocks.real(), log.last_id(p.store.db), os.urandom(4))


def next_code(p: Pantry) -> str:
    """A lid code that was never given, also not to a batch that was taken back."""
    number = int(p.store.meta("codes") or "0")
    while True:
        code = code_at(number)
        number += 1
        if p.store.db.execute("SELECT 1 FROM codes WHERE code = ?", (code,)).fetchone() is None:
            p.store.set_meta("codes", str(number))
            return code
