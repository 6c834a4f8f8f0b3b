"""Appending to the log inside `Pantry.writing`, and what each event makes be read again."""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import UTC, date, datetime
from typing import TYPE_CHECKING

from pantry_tui.core.dates import say
from pantry_tui.core.lidcode import code_at
from pantry_tui.core.log.events import Event, new_id, standing
from pantry_tui.core.log.fold_place import fold_place, learnt
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
    place_of,
    touches,
)
from pantry_tui.errors import Refused
from pantry_tui.store import log, places
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry


def append(p: Pantry, payload: Payload, day: date | None, at: int | None) -> Event:
    """One event, of today unless a day (and a minute of it) is given."""
    recorded = p.clock.recorded.isoformat(timespec="seconds")
    today = day is None or day == p.today
    _refuse_before_it_was_made(p, payload, day or p.today)
    with reading(p.path):
        if today and at is None and p.clock.day_alone and not isinstance(payload, PutUp):
            at = -1 - log.booked_in_turn(p.store.db, p.today)
        id_ = next_id(p)
    event = Event(id_, recorded, day or p.today, payload, at, p.group)
    log.append(p.store.db, event)
    p.store.booked = True
    p.appended(event)
    note(p, event)
    return event


def _refuse_before_it_was_made(p: Pantry, payload: Payload, day: date) -> None:
    """Raises Refused for an act on a batch that was not there yet on that day."""
    if isinstance(payload, PutUp | Correct) or not (id_ := getattr(payload, "batch", "")):
        return
    held = p.load(id_)
    if held is None or held[0].made is None:
        return
    batch, containers = held
    began = batch.made
    if batch.carried:  # its food is older than its vessels
        began = min((one.turns[0].when.day for one in containers.values()), default=began)
    if began is not None and day < began:
        raise Refused(
            f"{batch.code} {batch.food.name} was put up on {say(began)}, and this is said of "
            f"{say(day)}: give a day from then on."
        )


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
        adds = isinstance(event.payload, Reading | Outage | Count) and not again
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
    return new_id(datetime.now(UTC), log.last_id(p.store.db), os.urandom(4))


def next_code(p: Pantry) -> str:
    """A lid code that was never given, also not to a batch that was taken back."""
    number = int(p.store.meta("codes") or "0")
    while True:
        code = code_at(number)
        number += 1
        if p.store.db.execute("SELECT 1 FROM codes WHERE code = ?", (code,)).fetchone() is None:
            p.store.set_meta("codes", str(number))
            return code
