"""The food of a pack, with what its packing makes of it."""

from __future__ import annotations

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.harm import is_vacuum_packed
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import is_cut, is_half_dried
from pantry_tui.core.words import Group


def packed(food: FoodFacts, batch: Batch, opened: bool) -> FoodFacts:
    """A pack under vacuum keeps the air out, and so has rules of its own until it is opened; a crop
    that was cut, or dried in part, has others than a whole or a dry one."""
    if is_cut(batch):
        food = replace(food, classes=food.classes | {"cut"})
    if is_half_dried(batch):
        food = replace(food, classes=food.classes | {"half-dried"})
    if opened or not is_vacuum_packed(batch):
        return food
    extra = {"vacuum-packed"} | ({"vacuum-fish"} if food.group is Group.FISH else set())
    return replace(food, classes=food.classes | extra)
