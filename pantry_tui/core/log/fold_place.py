"""Fold what was said of a place into the place and its facts over time. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from pantry_tui.core.dataclass import replace
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.ahead import Clocks, clock_of
from pantry_tui.core.log.climates import Change, Kept, climates
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.moments import moment
from pantry_tui.core.model import EVER, Cut, Held, Place, Read, When, no_later

#: No clock was ahead.
_RIGHT = Clocks()


def fold_place(events: Sequence[Event]) -> Place | None:
    """A place from the standing events that speak of it, in recorded order; None when its adding
    was taken back. Its climate and target follow the moments of what was said of them, in
    whatever order it was booked."""
    place: Place | None = None
    added = EVER
    changes: list[Change] = []
    clocks = Clocks(events)
    for event in _as_put_right(events):
        payload = event.payload
        match payload:
            case said.PlaceAdded():
                added = clocks.when(event)
                place = Place(
                    payload.place,
                    payload.name,
                    payload.climate,
                    payload.parent,
                    payload.target_f,
                    payload.capacity,
                )
            case said.PlaceChanged() if place is not None:
                place = _renamed(place, payload)
                changes.append((clocks.when(event), payload))
            case said.PlaceRemoved() if place is not None:
                place = replace(place, gone=True)
            case said.Count() | said.Reading() | said.Outage() if place is not None:
                place = learnt(place, event, clocks)
    return _held(place, added, changes) if place is not None else None


def _as_put_right(events: Sequence[Event]) -> Iterator[Event]:
    """What was put right as it was said anew, in the place of the old word and no later: what was
    read in the same minute after that is the newer. The old one counts again when the new one is
    taken back."""
    anew: dict[str, Event] = {}
    for event in events:
        if old := getattr(event.payload, "instead_of", ""):
            anew[old] = event
    known = {event.id for event in events}
    for event in events:
        if getattr(event.payload, "instead_of", "") in known:
            continue
        stands = event
        while stands.id in anew:
            stands = anew[stands.id]
        yield stands


def learnt(place: Place, event: Event, clocks: Clocks = _RIGHT) -> Place:
    """The place with what a reading, a power cut or a count adds to it; what it is stays."""
    payload = event.payload
    match payload:
        case said.Reading():
            read = Read(clocks.when(event), payload.temp_f, payload.humidity, payload.since)
            return knowing(place, read)
        case said.Outage() if payload.end:
            # Older logs know only how many hours, and marked what that did to each container.
            return knowing(place, _cut(event, payload, clocks))
        case said.Count() if not payload.part:
            return replace(place, checked=event.day)
    return place


def _renamed(old: Place, payload: said.PlaceChanged) -> Place:
    """What a change says beside climate and target."""
    return replace(
        old,
        name=payload.name or old.name,
        parent=old.parent if payload.parent is None else payload.parent or None,
        capacity=old.capacity if payload.capacity is None else payload.capacity,
    )


def _held(place: Place, added: When, changes: Sequence[Change]) -> Place:
    """With what it held from which moment on."""
    kept, facts = climates(Kept(place.climate, place.target_f), added, changes)
    place = replace(place, climate=kept.climate, target_f=kept.target_f)
    for fact in facts:
        place = knowing(place, fact)
    return place


def _cut(event: Event, payload: said.Outage, clocks: Clocks) -> Cut:
    """Where its clock was ahead, the power was off for as long at any time that it may have been
    told of."""
    told, window = cut_fact(payload), clocks.within.get(event.id)
    if window is None:
        return told
    if told.start == EVER:
        return told._replace(end=no_later(told.end, window.until))
    before = max(0, clock_of(event).last - told.start.first)
    return off_within(told, window.first - before, min(told.end.last, window.until.last))


def off_within(told: Cut, first: int, end: int) -> Cut:
    """The power was off for as long as is told, at any time from the minute `first` to `end`."""
    if told.start == EVER:
        return told._replace(end=When(min(first, end), end, told.end.day_of(end), told.end.zone))
    long = told.end.last - told.start.first
    start = min(told.start.first, first, end - long)
    zone, day = told.start.zone, told.start.day_of(start)
    return told._replace(
        start=When(start, end - long, day, zone), end=When(start, end, told.end.day_of(end), zone)
    )


def cut_fact(payload: said.Outage) -> Cut:
    """Without a start nobody knows since when (core.keeping.power)."""
    start = moment(payload.start) if payload.start else EVER
    end = moment(payload.end)
    return Cut(start, end, payload.full, payload.max_temp_f, payload.ice)


def knowing(place: Place, fact: Held | Read | Cut) -> Place:
    """A place with one fact more, in the order of its moments; of the same moment a reading comes
    after what the place was meant to hold."""

    def order(one: Held | Read | Cut) -> tuple[int, int, bool]:
        then = one.start if isinstance(one, Cut) else one.when
        return then.first, then.last, not isinstance(one, Held)

    return replace(place, facts=tuple(sorted((*place.facts, fact), key=order)))


def path_of(places: Mapping[str, Place], id_: str) -> str:
    """ "basement › north wall › shelf 2"."""
    names: list[str] = []
    here = places.get(id_)
    while here is not None and len(names) < 20:
        names.append(here.name)
        here = places.get(here.parent or "")
    return " › ".join(reversed(names))
