"""What was given away and stands there again: nobody knows how it was kept meanwhile."""

from __future__ import annotations

from collections.abc import Iterable

from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.rules import SHELF_STABLE
from pantry_tui.core.log.batch_payloads import Fate
from pantry_tui.core.model import Batch, Container

#: What is seen on it. `undo` of the gift takes it away where it never left the house.
WAS_AWAY = "given away and found again, so nobody knows how cold it was kept"


def were_away(batch: Batch, containers: Iterable[Container]) -> int:
    """How many of a batch are out of the house, of what only the cold keeps; 0 of what stands on
    any shelf and of what cannot hurt."""
    if batch.method in SHELF_STABLE or not can_hurt(batch):
        return 0
    return sum(one.fate == Fate.GIVEN for one in containers)
