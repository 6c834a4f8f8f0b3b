"""Correcting the record of a batch: the one thing that may move a date later, because it says
what actually happened. The old record stays in the log."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import standing
from pantry_tui.core.safety.process import doubt
from pantry_tui.errors import BadInput
from pantry_tui.reference.process import load_not_recommended, load_processes
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.store import log


@booked
def correct(
    p: Pantry,
    code: str,
    *,
    made: str | None = None,
    size: str | None = None,
    note: str | None = None,
    process: Sequence[tuple[str, str]] = (),
) -> Done:
    """Put right what was recorded at the put-up. `process` adds to or replaces single keys.

    Raises BadInput for an unknown code, an impossible day, or nothing to correct.
    """
    batch = batch_named(p, code)
    if made is None and size is None and note is None and not process:
        raise BadInput("Say what to correct: --made, --size, --note or --process.")
    day = _day(p, batch.id, made) if made is not None else None
    record = {**dict(batch.process), **dict(process)}
    shown = batch.size if size is None else " ".join(size.split())
    doubted = doubt(
        batch.method,
        batch.food,
        shown,
        record,
        p.altitude_ft,
        load_processes(),
        load_not_recommended(),
    )
    p.book(
        said.Correct(
            batch.id,
            made=day,
            unknown_day=made is not None and day is None,
            size=None if size is None else shown,
            note=None if note is None else " ".join(note.split()),
            process=tuple(record.items()) if process else None,
            doubt=doubted.problems if doubted else (),
            possible=doubted.still_possible if doubted else "",
        )
    )
    after = p.stock.batches[batch.id]
    when = dates.say(after.made) if after.made else "unknown"
    return Done(f"Corrected {batch.code} {batch.food.name}: made {when}.", after.doubt)


def _day(p: Pantry, batch_id: str, made: str) -> date | None:
    """The day made, not after anything else that happened to the batch."""
    if made.strip().lower() in ("unknown", "?"):
        return None
    day = dates.read_date(made, p.today)
    later = [
        event.day
        for event in standing(log.of_batch(p.store.db, batch_id))
        if not isinstance(event.payload, said.PutUp | said.Correct)
    ]
    if day > min([p.today, *later]):
        raise BadInput(f"{dates.say(day)} is after something that was done to it already.")
    return day
