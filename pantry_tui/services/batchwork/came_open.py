"""What came into the store opened on an earlier day, as a list says."""

from __future__ import annotations

from datetime import date

from pantry_tui.core.log.payloads import Open
from pantry_tui.core.vessels import Vessel
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.seen import At, when


def open_since(p: Pantry, code: str, day: date) -> None:
    """All of a batch is open where it stands since that day, at an hour that nobody knows; an open
    vessel (a crock) is never opened. Raises BadInput for no batch."""
    batch = batch_named(p, code)
    closed = [one.id for one in p.containers_of(batch) if one.vessel is Vessel.CLOSED]
    if closed:
        p.book(Open(batch.id, tuple(closed), ""), **when(At(day)))
