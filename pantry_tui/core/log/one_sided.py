"""What only one of two parted logs took back, though it can only make food judged more strictly:
it counts again in both, until a person who has seen that takes it back once more. Pure."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, undone

#: No fact of these ever makes a verdict milder (core.keeping.limits), whatever else is booked.
_STRICT = (
    said.Ready | said.Open | said.Thaw | said.Move | said.Discard | said.Reading | said.Outage
    | said.ClockAhead
)  # fmt: skip


def only_stricter(payload: said.Payload) -> bool:
    """Whether what it says can do food no good. A look that found all sound can; what was eaten up
    or given away is gone, and a part that was drawn opens."""
    if isinstance(payload, said.Sign):
        return payload.sign != "looked"
    if isinstance(payload, said.Use | said.Give | said.Missing):
        return payload.amount is not None
    if isinstance(payload, said.Timer):
        return payload.told is said.Clocked.DROP
    return isinstance(payload, _STRICT)


def brought_again(
    ours: Sequence[Event],
    theirs: Sequence[Event],
    shared: Sequence[Event],
    after: Callable[[Sequence[Event], said.Payload], Event],
) -> Iterator[Event]:
    """A redo of each undo of only one log that took back what the other stands by; of one that was
    booked after such a redo none, since whoever booked it had been told."""
    all_ = sorted((*shared, *ours, *theirs), key=lambda one: one.id)
    gone = undone(all_)
    here, there = (undone((*shared, *some)) for some in (ours, theirs))
    by_id = {one.id: one for one in all_}
    both = {one.id for one in shared}
    seen = {id_ for one in all_ if _settled(one, by_id, after) for id_ in one.payload.events}  # type: ignore[union-attr]
    put_up = {one.payload.batch for one in all_ if _is_put_up(one) and one.id not in gone}  # type: ignore[union-attr]
    for undo in all_:
        if not isinstance(undo.payload, said.Undo):
            continue
        again = tuple(
            id_
            for id_ in undo.payload.events
            if id_ in gone & both
            and (id_ in here) != (id_ in there)
            and id_ not in seen
            and only_stricter(by_id[id_].payload)
            and put_up.issuperset(said.touches(by_id[id_].payload))
        )
        if again:
            seen.update(again)
            yield after([undo], said.Redo(undo.id, again))


def _is_put_up(event: Event) -> bool:
    return isinstance(event.payload, said.PutUp)


def _settled(
    event: Event,
    by_id: dict[str, Event],
    after: Callable[[Sequence[Event], said.Payload], Event],
) -> bool:
    """Whether it is a redo by which two logs were settled, and not one of a person."""
    if not isinstance(event.payload, said.Redo) or event.payload.undo not in by_id:
        return False
    return event.id == after([by_id[event.payload.undo]], event.payload).id
