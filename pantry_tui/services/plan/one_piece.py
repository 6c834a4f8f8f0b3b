"""What is one piece though it is held by weight: a fresh bird or roast is cooked whole, and what is
left of it is eaten within the days of cooked meat. It is not drawn from like a sack."""

from __future__ import annotations

from math import floor

from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import Climate, Group, Kind, Method, State
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.servings import weight

#: As it is sold raw.
_RAW = frozenset({Method.FRESH, Method.BOUGHT})
_ROAST = ("roast", "joint")
#: Pounds from which on one is more than a plate: a quail or a sausage is not. Our own choice.
_BIG = 1.0
#: So many times the usual weight of a bird is one bird still. Our own choice.
_ONE = 2.5


def pieces(p: Pantry, batch: Batch, container: Container) -> int:
    """How many birds or roasts what is held by weight is; 0 for what may be parted raw (chops,
    ground meat) or is eaten by the slice (ham)."""
    held = weight(container.first)
    if held is None or batch.method not in _RAW or batch.food.group is not Group.MEAT:
        return 0
    row = p.tables.index.named(batch.food.name)
    if row is not None and row.each_lb:
        if row.each_lb < _BIG:
            return 0
        return 1 if held < _ONE * row.each_lb else round(held / row.each_lb)
    return int(any(word in batch.food.name for word in _ROAST))


def cooked_days(p: Pantry, batch: Batch) -> int:
    """The published days of what is left of it in the fridge once it is cooked: the strictest; none
    where nothing is published."""
    rules = p.book_of_rules.speaking(batch.food, Method.MEAL, State.OPEN, Climate.FRIDGE)
    return min((floor(one.days) for one in rules if one.kind is Kind.SAFETY), default=0)
