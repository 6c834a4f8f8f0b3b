"""What left the stock and stands there again: nobody knows how it was kept meanwhile."""

from __future__ import annotations

from collections.abc import Iterable

from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.rules import SHELF_STABLE
from pantry_tui.core.log.batch_payloads import Fate
from pantry_tui.core.model import Batch, Container, When

#: Fates of which nobody saw it leave: a count that finds it finds what had only been overlooked.
UNSEEN = (Fate.UNRECORDED, Fate.MISSING)
#: What is seen on the others, by how they left. `undo` of that takes it away where it never did.
WAS_AWAY = "given away and found again, so nobody knows how cold it was kept"
_SEEN_LEAVING = {
    Fate.GIVEN: WAS_AWAY,
    Fate.USED: "booked as used and found again, so nobody knows what was done with it",
    Fate.REPACKED: "booked as repacked and found again, so nobody knows what is in it",
    Fate.DISCARDED: "booked as discarded and found again, so what was wrong with it still is",
}


def seen_on(batch: Batch, fate: str) -> str:
    """What is seen on a container of a batch that left so, once it is found again; "" for nothing.
    What was discarded is never trusted again, a gift where only the cold keeps it, all else where
    it can hurt."""
    if fate not in _SEEN_LEAVING:
        return ""
    shelf_gift = fate == Fate.GIVEN and batch.method in SHELF_STABLE
    if fate != Fate.DISCARDED and (shelf_gift or not can_hurt(batch)):
        return ""
    return _SEEN_LEAVING[Fate(fate)]


def seen_on_found(batch: Batch, containers: Iterable[Container]) -> list[str]:
    """What is seen on each that is found as if it were new while others of its batch are gone: it
    can only be one of those. Of such as are trusted nothing is."""
    return [seen for one in containers if (seen := seen_on(batch, one.fate))]


def found_at(left: When | None, counted: When) -> When:
    """When what left at one moment came to where it was counted at another: at any moment between
    them, and the strictest counts."""
    if left is None or left.first > counted.last:
        return counted
    return When(left.first, counted.last, min(left.day, counted.day), counted.zone)
