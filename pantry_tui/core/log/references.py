"""What events name must have been named before: batches, containers, places, other events."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event


def unknown(events: Sequence[Event]) -> Iterator[tuple[Event, str]]:
    """Each event, in recorded order, that names what nothing before it named, or gives what was
    given already; with what is wrong, in a few words."""
    known = _Known(
        {event.payload.batch for event in events if isinstance(event.payload, said.Relabelled)}
    )
    for event in events:
        for what in known.wrong(event):
            yield event, what
        known.learn(event)


def names_of(payload: said.Payload) -> Iterator[str]:
    """The ids of the batches, containers and places that must be there for what it says."""
    if not isinstance(payload, said.PutUp):
        yield from (one for one in (getattr(payload, "batch", ""),) if one)
    if isinstance(payload, said.Count):
        yield from (one.batch for one in payload.new)
    yield from _containers(payload)
    yield from _places(payload)


class _Known:
    """What was named so far."""

    def __init__(self, relabelled: Collection[str]) -> None:
        self.relabelled = relabelled
        self.events: set[str] = set()
        self.containers: set[str] = set()
        self.places: set[str] = set()
        self.batches: set[str] = set()
        self.codes: dict[str, str] = {}

    def wrong(self, event: Event) -> Iterator[str]:
        payload = event.payload
        if isinstance(payload, said.PutUp):
            yield from self._given(payload)
        elif (batch := getattr(payload, "batch", "")) and batch not in self.batches:
            yield f"it speaks of a batch that was never put up ({batch})"
        for id_ in _containers(payload):
            if id_ not in self.containers:
                yield f"it speaks of a container that was never put up ({id_})"
        for id_ in _places(payload):
            if id_ not in self.places:
                yield f"it speaks of a place that was never added ({id_})"
        for id_ in getattr(payload, "events", ()):
            if id_ not in self.events:
                yield f"it takes back or brings again what is not there ({id_})"

    def _given(self, payload: said.PutUp) -> Iterator[str]:
        if payload.batch in self.batches:
            yield f"its batch was put up already ({payload.batch})"
        both = {payload.batch, self.codes.get(payload.code, payload.batch)}
        if len(both) > 1 and not both & set(self.relabelled):
            yield f"its lid code {payload.code} is that of another batch"

    def learn(self, event: Event) -> None:
        payload = event.payload
        self.events.add(event.id)
        match payload:
            case said.PutUp():
                self.batches.add(payload.batch)
                self.containers.update(payload.containers)
                self.codes.setdefault(payload.code, payload.batch)
            case said.Count():
                self.containers.update(id_ for one in payload.new for id_ in one.containers)
            case said.PlaceAdded():
                self.places.add(payload.place)


def _containers(payload: said.Payload) -> Iterator[str]:
    match payload:
        case said.PutUp():
            yield from (part.container for part in payload.parts)
        case said.Count():
            yield from (one.container for one in payload.gone)
            yield from (one.container for one in payload.back)
        case said.Outage():
            yield from (one.container for one in payload.marks)
        case _:
            yield from getattr(payload, "containers", ())


def _places(payload: said.Payload) -> Iterator[str]:
    match payload:
        case said.PlaceAdded():
            yield from (payload.parent,) if payload.parent else ()
        case said.PutUp():
            yield from {payload.place, *(part.place for part in payload.parts if part.place)}
        case said.Count():
            back, new = (one.place for one in payload.back), (one.place for one in payload.new)
            yield from {payload.place, *back, *new}
        case _:
            named = (getattr(payload, name, None) for name in ("place", "into", "parent"))
            yield from (one for one in named if one)
