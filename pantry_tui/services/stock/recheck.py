"""Canned batches of which nobody knew the altitude are checked again once it is said."""

from __future__ import annotations

from pantry_tui.core.log.payloads import Correct
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.process import doubt
from pantry_tui.reference.process import load_not_recommended, load_processes
from pantry_tui.services.pantry import Pantry

#: How the record of a batch says that nobody knew (core.safety.record).
_UNKNOWN = ("altitude", "unknown")


def for_altitude(p: Pantry) -> tuple[str, ...]:
    """Check each of them for the altitude of the household; what is said of those that it leaves
    in doubt. Inside the transaction of whoever books the altitude."""
    return tuple(
        said
        for batch in list(p.stock.batches.values())
        if _UNKNOWN in batch.process and (said := _checked(p, batch))
    )


def _checked(p: Pantry, batch: Batch) -> str:
    record = tuple(pair for pair in batch.process if pair != _UNKNOWN)
    found = doubt(
        batch.method,
        batch.food,
        batch.size,
        dict(record),
        p.altitude_ft,
        load_processes(),
        load_not_recommended(),
    )
    problems = found.problems if found else ()
    p.book(
        Correct(
            batch.id,
            process=record,
            doubt=problems,
            possible=found.still_possible if found else "",
        )
    )
    return f"{batch.code} {batch.food.name}: {problems[0]}" if problems else ""
