"""What packing makes of the food of a pack, and of what was packed anew."""

from __future__ import annotations

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.harm import is_vacuum_packed
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import is_cut, is_half_dried
from pantry_tui.core.words import Group, State


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


def came_as(state: State, batch: Batch) -> State:
    """In which state food came into a batch. Packed under vacuum anew it is shut, whatever it was
    taken out of: what a pack without air asks for counts beside the clock of what was opened,
    which runs on in its part (core.keeping.descent). No pack is a jar that was processed."""
    if not batch.carried or state is not State.OPEN or batch.method in LIDDED:
        return state
    told = any(key == "state" for key, _ in batch.process)
    return state if told or not is_vacuum_packed(batch) else State.SEALED
