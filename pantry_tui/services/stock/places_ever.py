"""Places of which something is booked late: also one that is gone, or whose name a new one took."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, datetime

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.moments import moment, when
from pantry_tui.core.model import Place, When
from pantry_tui.errors import BadInput, Unclear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.seen import At, first_minute

#: Nobody knows since when: perhaps since before all places there are.
SINCE_EVER = -1
_WHICH = re.compile(r"(.+?)\s+(until|since)\s+(\d{4}-\d{2}-\d{2})")


def place_ever(p: Pantry, text: str, begins: int) -> Place:
    """The place of that name at the minute at which a fact begins, also one that is gone since.

    Where a new place has taken the name, what begins before the old one went may be of either: it
    is asked, and answered by "chest until 2026-11-25" or "chest since 2026-11-25". Raises BadInput,
    Unclear."""
    match = _WHICH.fullmatch(text.strip())
    named = match[1] if match else text
    left = _gone(p, named)
    try:
        here = p.find_place(named)
    except BadInput:
        if not left:
            raise
        here = None
    if match:
        return _chosen(p, here, left, match[2], date.fromisoformat(match[3]))
    if here is not None and all(begins > went.last for _, went in left):
        return here
    if here is None and len(left) == 1:
        return left[0][0]
    choices = [f"{one.name} until {went.day.isoformat()}" for one, went in left]
    if here is not None:
        choices.append(f"{here.name} since {_added(p, here).day.isoformat()}")
    raise Unclear(
        f"There was a place {named} before, and what is booked began then: write "
        f"{' or '.join(choices)}.",
        "place",
        text,
        tuple(choices),
    )


def _chosen(
    p: Pantry, here: Place | None, left: list[tuple[Place, When]], word: str, day: date
) -> Place:
    if word == "since" and here is not None and _added(p, here).day == day:
        return here
    of_day = [one for one, went in left if word == "until" and went.day == day]
    if not of_day:
        raise BadInput(f"No place of that name is known {word} {day.isoformat()}: leave that out.")
    return of_day[-1]


def begins_at(p: Pantry, at: At | date | None) -> int:
    """The first minute of what happened `at`, None: now."""
    if at is None:
        return p.clock.now.first
    return first_minute(p, at if isinstance(at, At) else At(at))


def begins_with(p: Pantry, start: datetime | None) -> int:
    """The first minute that a time without offset may be on the clock of its day, None: nobody
    knows."""
    if start is None:
        return SINCE_EVER
    if start.tzinfo is not None:
        return moment(start.isoformat()).first
    return first_minute(p, At(start.date(), start.hour * 60 + start.minute))


def merged_into(p: Pantry, ids: Iterable[str]) -> dict[str, Place]:
    """The places that are gone and whose stock went into one of these, by id; also into one of
    those before."""
    went = {
        one.id: event.payload.into
        for one in p.ever.values()
        if one.gone
        for event in _events(p, one)
        if isinstance(event.payload, said.PlaceRemoved)
    }
    found: dict[str, Place] = {}
    wanted = set(ids)
    while more := {one for one, into in went.items() if into in wanted} - wanted:
        wanted |= more
        found |= {one: p.ever[one] for one in more}
    return found


def _gone(p: Pantry, text: str) -> list[tuple[Place, When]]:
    """The places of that name that are gone, with the moment each went, oldest first."""
    name = " ".join(text.casefold().split())
    found = [
        (one, when(event))
        for one in p.ever.values()
        if one.gone and " ".join(one.name.casefold().split()) == name
        for event in _events(p, one)
        if isinstance(event.payload, said.PlaceRemoved)
    ]
    return sorted(found, key=lambda one: one[1].last)


def _added(p: Pantry, place: Place) -> When:
    return next(
        when(event) for event in _events(p, place) if isinstance(event.payload, said.PlaceAdded)
    )


def _events(p: Pantry, place: Place) -> list[Event]:
    """What stands of what was said of a place."""
    from pantry_tui.store import log
    from pantry_tui.store.store import reading

    with reading(p.path):
        return list(standing(log.of_place(p.store.db, place.id)))
