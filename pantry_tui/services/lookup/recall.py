"""Where all of a batch is or went, with what it was made from and what was made of it."""

from __future__ import annotations

from collections import defaultdict

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import standing
from pantry_tui.core.model import Batch
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Kept
from pantry_tui.services.stock import tables
from pantry_tui.services.stock.pick import batch_named, name_of
from pantry_tui.store import log
from pantry_tui.store.store import reading


def recall(p: Pantry, code: str) -> list[Kept]:
    """Where every container of a batch is or went, and to whom it was given; after them those of
    all that was made from it, and of what it was made from."""
    batch = batch_named(p, code)
    kin = [p.stock.batches[id_] for id_ in tables.kin(p, [batch.id])]
    return [one for each in kin for one in _kept(p, each)]


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
