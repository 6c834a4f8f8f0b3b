"""What two logs had in common and one of them has taken back since, or brought again: the other
household is told, since what it went by may be milder now."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Protocol

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, undone
from pantry_tui.core.log.parted import Parted


class Names(Protocol):
    """What things are called once both logs are one."""

    def batch(self, id_: str) -> str: ...

    def place(self, id_: str) -> str: ...


def taken_back(parted: Parted, made: Sequence[Event], names: Names) -> Iterator[str]:
    """A sentence for each event that both have and only one counts; what settled the logs says so
    itself (`made`)."""
    ours, theirs = (undone((*parted.shared, *some)) for some in (parted.ours, parted.theirs))
    gone = undone((*parted.all, *made))
    settled = {id_ for one in made for id_ in _again(one.payload)}
    for event in parted.shared:
        if event.id in settled or (event.id in ours) == (event.id in theirs):
            continue
        counts = "it counts no more" if event.id in gone else "it counts"
        yield (
            f"{_what(event, names)} of {event.day.isoformat()} was taken back in one log and "
            f"stands in the other: {counts}."
        )


def counts_again(event: Event, names: Names) -> str:
    """Of what one log took back and can only make food judged more strictly."""
    return (
        f"{_what(event, names)} of {event.day.isoformat()} was taken back in one log and stands "
        f"in the other: it counts again, so that nothing is milder. If it never was, take it back "
        f"once more: `undo {event.id}`."
    )


def _again(payload: said.Payload) -> Iterable[str]:
    return payload.events if isinstance(payload, said.Undo | said.Redo) else ()


def _what(event: Event, names: Names) -> str:
    payload = event.payload
    kind = event.did.value.replace("_", " ")
    if isinstance(payload, said.Correct):
        return f"What was put right of {names.batch(payload.batch)}{_record(payload)}"
    batches = ", ".join(names.batch(id_) for id_ in said.touches(payload))
    if batches:
        return f"The {kind} of {batches}"
    if where := said.place_of(payload):
        return f"The {kind} of {names.place(where)}"
    return f"The {kind}"


def _record(payload: said.Correct) -> str:
    """ " (minutes=20, size=quart)", "" for what it does not say."""
    found = [f"{name}={value}" for name, value in payload.process or ()]
    names = ("made", "size", "method")
    found += [f"{name}={value}" for name in names if (value := getattr(payload, name))]
    found += [f"food={payload.food.name}"] if payload.food is not None else []
    return f" ({', '.join(found)})" if found else ""
