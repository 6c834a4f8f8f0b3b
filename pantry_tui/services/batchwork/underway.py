"""What ferments, cures, infuses or dries: on which day it is, of how many, and what it asks for."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from pantry_tui.core.batchwork.tending import ready_after
from pantry_tui.core.keeping.weather import warmth_f
from pantry_tui.core.model import Batch
from pantry_tui.core.words import State
from pantry_tui.reference.tending import load_tending
from pantry_tui.services.batchwork import tending
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.ready import ready
from pantry_tui.store.store import reading


class Underway(NamedTuple):
    """A batch in progress of which the day made is known. `of` is the day of its last job (`to`:
    taste, strain ...) by the table of jobs, None where that has none; `done` the days,
    from that it was made on, on which a job was done last; `jobs` those to come, late ones too."""

    code: str
    food: str
    method: str
    place: str
    made: date
    day: int
    of: int | None
    to: str
    done: tuple[int, ...]
    jobs: tuple[tuple[str, date], ...]


def underway(p: Pantry, text: str = "") -> list[Underway]:
    """All that is in progress and holds every word of `text`, the longest under way first."""
    ready(p)
    with reading(p.path):
        sql = "SELECT DISTINCT code FROM lines WHERE state = ? ORDER BY code"
        codes = [row[0] for row in p.store.db.execute(sql, (State.IN_PROGRESS.value,))]
    found = [_one(p, batch_named(p, code)) for code in codes]
    words = text.lower().split()
    return sorted(
        (
            one
            for one in found
            if one and all(word in f"{one.code} {one.food} {one.method}".lower() for word in words)
        ),
        key=lambda one: (one.made, one.code),
    )


def _one(p: Pantry, batch: Batch) -> Underway | None:
    standing = [c for c in p.containers_of(batch) if c.here and c.state is State.IN_PROGRESS]
    if batch.made is None or not standing:
        return None
    made, first = batch.made, standing[0]
    warmth = warmth_f(first.place, p.places)
    rows = load_tending().get(batch.method, ())
    jobs = {(one.job, one.due) for one in tending.of_batch(p, batch)}
    ripe = p.judging.ripe(batch, first, p.clock.now, p.places)
    of, to = ready_after(rows, batch, warmth, ripe) or (None, "")
    return Underway(
        batch.code,
        batch.food.name,
        batch.method.value,
        p.where(first),
        made,
        (p.today - made).days,
        of,
        to,
        tuple(sorted({(day - made).days for _, day in batch.tended if day >= made})),
        tuple(sorted(jobs, key=lambda one: (one[1], one[0]))),
    )
