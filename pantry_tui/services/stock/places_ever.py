"""Places of which something is booked late: also one that is gone or has another name since, or
whose name a new one took."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from contextlib import suppress
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
    """The place of that name at the minute at which a fact begins, also one that is gone since, or
    was called otherwise.

    Where a new place has taken the name, what begins before the old one gave it up may be of
    either: it is asked, and answered by "chest until 2026-11-25" or "chest since 2026-11-25".
    Raises BadInput, Unclear."""
    match = _WHICH.fullmatch(text.strip())
    named = match[1] if match else text
    left = _left(p, named)
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
    if here is None and len({one.id for one, _ in left}) == 1:
        return left[-1][0]
    was = " ".join(named.split())
    choices = [f"{was} until {went.day.isoformat()}" for _, went in left]
    now = ", ".join(one.name for one, _ in left if _plain(one.name) != _plain(was))
    since = f", called {now} since" if now else ""
    if here is not None:
        choices.append(f"{here.name} since {_since(p, here).day.isoformat()}")
    raise Unclear(
        f"There was a place {was} before{since}, and what is booked began then: write "
        f"{' or '.join(choices)}.",
        "place",
        text,
        tuple(choices),
    )


def _chosen(
    p: Pantry, here: Place | None, left: list[tuple[Place, When]], word: str, day: date
) -> Place:
    if word == "since" and here is not None and _since(p, here).day == day:
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


def said_otherwise(p: Pantry, place: Place, typed: str) -> str:
    """Which place it is, where it was found by a name that it has no more; else ""."""
    match = _WHICH.fullmatch(typed.strip())
    named = match[1] if match else typed
    with suppress(BadInput):
        if p.find_place(named).id == place.id:
            return ""
    if _plain(named) == _plain(place.name):
        return ""
    now = "was called" if place.gone else "is called"
    return f"{' '.join(named.split())} {now} {place.name} since then."


def _left(p: Pantry, text: str) -> list[tuple[Place, When]]:
    """The places that had that name and have it no more, being gone or renamed, with the moment at
    which each gave it up, oldest first."""
    wanted = _plain(text)
    found: dict[str, tuple[Place, When]] = {}
    for one in p.ever.values():
        for name, until in _former(p, one):
            if _plain(name) == wanted and (one.gone or _plain(one.name) != wanted):
                found[one.id] = one, until
    return sorted(found.values(), key=lambda one: one[1].last)


def _former(p: Pantry, place: Place) -> Iterator[tuple[str, When]]:
    """Each name that a place gave up, and when."""
    name = ""
    for event in _events(p, place):
        payload = event.payload
        if isinstance(payload, said.PlaceAdded):
            name = payload.name
        elif isinstance(payload, said.PlaceRemoved):
            yield name, when(event)
        elif isinstance(payload, said.PlaceChanged) and payload.name and payload.name != name:
            yield name, when(event)
            name = payload.name


def _since(p: Pantry, place: Place) -> When:
    """Since when a place has had the name that it has."""
    named = [
        when(event)
        for event in _events(p, place)
        if getattr(event.payload, "name", None) == place.name
    ]
    return named[-1]


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


def _events(p: Pantry, place: Place) -> list[Event]:
    """What stands of what was said of a place."""
    from pantry_tui.store import log
    from pantry_tui.store.store import reading

    with reading(p.path):
        return list(standing(log.of_place(p.store.db, place.id)))
