"""Correcting the record of a batch: the one thing that may move a date later, because it says
what actually happened. The old record stays in the log."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from pantry_tui.core import dates
from pantry_tui.core.log.events import Did
from pantry_tui.core.safety.process import doubt
from pantry_tui.errors import BadInput
from pantry_tui.reference.process import load_not_recommended, load_processes
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.pick import batch_named


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
    data: dict[str, Any] = {}
    if made is not None:
        data["made"] = _day(p, batch.id, made)
    if size is not None:
        data["size"] = " ".join(size.split())
    if note is not None:
        data["note"] = " ".join(note.split())
    if process:
        data["process"] = [list(pair) for pair in {**dict(batch.process), **dict(process)}.items()]
    if not data:
        raise BadInput("Say what to correct: --made, --size, --note or --process.")
    record = {key: value for key, value in data.get("process", batch.process)}
    doubted = doubt(
        batch.method,
        batch.food,
        data.get("size", batch.size),
        record,
        p.altitude_ft,
        load_processes(),
        load_not_recommended(),
    )
    data["doubt"] = list(doubted.problems) if doubted else []
    data["possible"] = doubted.still_possible if doubted else ""
    p.book(p.event(Did.CORRECT, batch=batch.id, **data))
    after = p.stock.batches[batch.id]
    when = dates.say(after.made) if after.made else "unknown"
    return Done(f"Corrected {batch.code} {batch.food.name}: made {when}.", after.doubt)


def _day(p: Pantry, batch_id: str, made: str) -> str | None:
    """The day made, not after anything else that happened to the batch."""
    if made.strip().lower() in ("unknown", "?"):
        return None
    day = dates.read_date(made, p.today)
    later = [
        event.day
        for event in p.events
        if event.batch == batch_id and event.did not in (Did.PUT_UP, Did.CORRECT, Did.UNDO)
    ]
    if day > min([p.today, *later]):
        raise BadInput(f"{dates.say(day)} is after something that was done to it already.")
    return day.isoformat()
