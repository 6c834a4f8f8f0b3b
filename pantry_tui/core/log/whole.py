"""The whole log folded into stock."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import fold_batch
from pantry_tui.core.log.fold_place import fold_place
from pantry_tui.core.model import Batch, Container, Stock


def fold(events: Iterable[Event]) -> Stock:
    """The stock that the whole log leaves behind, all places and batches."""
    of_batch: dict[str, list[Event]] = defaultdict(list)
    of_place: dict[str, list[Event]] = defaultdict(list)
    for event in standing(events):
        for batch in said.touches(event.payload):
            of_batch[batch].append(event)
        if where := said.place_of(event.payload):
            of_place[where].append(event)
    places = {id_: place for id_, mine in of_place.items() if (place := fold_place(mine))}
    batches: dict[str, Batch] = {}
    containers: dict[str, Container] = {}
    for id_, mine in of_batch.items():
        found = fold_batch(id_, mine)
        if found is not None:
            batches[id_] = found[0]
            containers |= {container.id: container for container in found[1]}
    return Stock(places, batches, containers)
