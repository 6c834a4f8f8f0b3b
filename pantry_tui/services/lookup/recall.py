"""Where all of a batch is or went, with what it was made from and what was made of it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import standing
from pantry_tui.core.model import Batch
from pantry_tui.services.named_parts import named_in
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Kept
from pantry_tui.services.stock import tables
from pantry_tui.services.stock.pick import batch_named, name_of
from pantry_tui.store import log
from pantry_tui.store.store import reading


def recall(p: Pantry, code: str) -> list[Kept]:
    """Where every container of a batch is or went, and to whom it was given; after them those of
    all that was made from it, and of what it was made from, also where a note alone says so."""
    batch = batch_named(p, code)
    return [one for id_ in _linked(p, batch.id) for one in _kept(p, p.stock.batches[id_])]


def _linked(p: Pantry, batch: str) -> Sequence[str]:
    """A batch with all that is of its kin, by its descent or by what notes name."""
    with_it: dict[str, list[str]] = defaultdict(list)
    for one in p.batches():
        for other in named_in(p, one):
            with_it[other.id].append(one.id)
            with_it[one.id].append(other.id)
    found = dict.fromkeys(tables.kin(p, [batch]))
    waiting = list(found)
    while waiting:
        near = [one for one in with_it[waiting.pop(0)] if one not in found]
        new = [one for one in dict.fromkeys(tables.kin(p, near)) if one not in found]
        found |= dict.fromkeys(new)
        waiting += new
    return tuple(found)


def _kept(p: Pantry, batch: Batch) -> list[Kept]:
    given, into = _given(p, batch.id), _into(p, batch)
    return [
        Kept(
            name_of(p, container),
            container.state.value if container.here else container.fate,
            p.where(container) if container.here else "",
            given.get(container.id, "") or into.get(container.id, ""),
            container.ended,
            tuple(seen.sign for seen in container.signs),
        )
        for container in sorted(p.containers_of(batch), key=lambda c: c.number)
    ]


def _into(p: Pantry, batch: Batch) -> dict[str, str]:
    """Container -> the lid codes of what was made from it."""
    found: dict[str, list[str]] = defaultdict(list)
    for id_ in batch.into:
        child = p.stock.batches[id_]
        for part in child.parts:
            found[part].append(f"{child.code} {child.food.name}")
    return {part: ", ".join(codes) for part, codes in found.items()}


def _given(p: Pantry, batch: str) -> dict[str, str]:
    """Container -> to whom it was given."""
    with reading(p.path):
        events = standing(log.of_batch(p.store.db, batch))
    gifts = (event.payload for event in events if isinstance(event.payload, said.Give))
    return {id_: gift.to for gift in gifts for id_ in gift.containers}
