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
from pantry_tui.core.model import DAY_MIN, Place, When
from pantry_tui.errors import BadInput, Unclear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.seen import At, first_minute

#: Nobody knows since when: perhaps since before all places there are.
SINCE_EVER = -1
_WHICH = re.compile(
    r"(.+?)\s+(until|since)\s+(\d{4}-\d{2}-\d{2}(?:\s+\d{2}:\d{2})?(?:\s+\(\d{1,3}\))?)"
)


def place_ever(p: Pantry, text: str, begins: int) -> Place:
    """The place of that name at the minute at which a fact begins, also one that is gone since, or
    was called otherwise.

    Where a new place has taken the name, what begins before the old one gave it up may be of
    either: it is asked, and answered by "chest until 2026-11-25" or "chest since 2026-11-25"; with
    the hour where several gave it up on that day ("chest until 2026-11-25 10:40").
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
        return _chosen(p, here, left, match)
    if here is not None and all(begins > went.last for _, went in left):
        return here
    if here is None and len({one.id for one, _ in left}) == 1:
        return left[-1][0]
    was = " ".join(named.split())
    choices = [f"{was} until {label}" for label in _labels(left)]
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
    p: Pantry, here: Place | None, left: list[tuple[Place, When]], match: re.Match[str]
) -> Place:
    """The one that is meant. Raises BadInput, Unclear where several gave the name up that day."""
    word, typed = match[2], " ".join(match[3].split())
    day = typed[:10]
    if word == "since" and here is not None and _since(p, here).day.isoformat() == day:
        return here
    labels = _labels(left)
    if word == "until" and typed in labels:
        return left[labels.index(typed)][0]
    of_day = [label for label in labels if word == "until" and label.startswith(day)]
    if len(of_day) > 1:
        choices = tuple(f"{match[1]} until {label}" for label in of_day)
        asked = f"{len(of_day)} places of that name were given up on {day}: write "
        raise Unclear(f"{asked}{' or '.join(choices)}.", "place", match[0], choices)
    raise BadInput(f"No place of that name is known {word} {typed}: leave that out.")


def _labels(left: list[tuple[Place, When]]) -> list[str]:
    """By what each of those that gave a name up is told from the others: its day, the hour too
    where it shares that, and a number, the oldest first, where nobody knows the hour."""
    days = [went.day.isoformat() for _, went in left]
    hours = [_hour(went) for _, went in left]
    long = [
        f"{day} {hour}".rstrip() if days.count(day) > 1 else day
        for day, hour in zip(days, hours, strict=True)
    ]
    return [
        f"{label} ({long[:n].count(label) + 1})" if long.count(label) > 1 else label
        for n, label in enumerate(long)
    ]


def _hour(went: When) -> str:
    """ "10:40" by the clock of that day, "" where nobody knows."""
    hour, minute = divmod((went.first + went.zone) % DAY_MIN, 60)
    return f"{hour:02}:{minute:02}" if went.known else ""


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
