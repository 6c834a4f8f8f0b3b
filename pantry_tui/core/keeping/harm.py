"""Whether food can hurt where no published figure covers it.

What can: meat, fish, egg, dairy, cooked food, sprouts, unfinished ferments and cures, and whatever
is low in acid and sealed without air, in oil, vacuum-packed or cooked. What cannot: whole raw
crops, dry food, sugar, salt, honey, vinegar, spirits, fat, finished acid ferments; it spoils where
anybody can see it. What is on neither list counts as what can.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import Batch
from pantry_tui.core.words import Acidity, Group, Method

_ANIMAL = frozenset({Group.MEAT, Group.FISH, Group.EGG, Group.DAIRY, Group.MEAL})
#: Dry, sugared, salted, in spirit or vinegar, or fat: whatever plant food it holds.
_KEPT_DRY_OR_SOUR = frozenset(
    {
        Method.DRIED, Method.FREEZE_DRIED, Method.SUGAR, Method.INFUSION, Method.FLAVOURED_VINEGAR,
        Method.RENDERED_FAT,
    }
)  # fmt: skip
#: Acid only once it is done.
_FERMENTED = frozenset(
    {Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.PASTE, Method.SALTED}
)
#: Sealed without air, or chilled: harmless only where the food is acid itself.
_BY_ITS_ACID = frozenset(
    {
        Method.BOILING_WATER, Method.PRESSURE, Method.JAM, Method.FREEZER_JAM,
        Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE, Method.FROZEN,
    }
)  # fmt: skip
_RAW = frozenset({Method.CELLAR, Method.FRESH})
_CROPS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.GRAIN})
_TIN = re.compile(r"\b(tin|can|jar|pouch|carton)")


def is_vacuum_packed(batch: Batch) -> bool:
    """Whether its packs are closed without air."""
    return any(key == "vacuum" and value != "no" for key, value in batch.process)


def can_hurt(batch: Batch, in_progress: bool = False) -> bool:
    """Whether eating it on a guess could hurt; `in_progress` while it ferments or cures."""
    food, method = batch.food, batch.method
    if food.group in _ANIMAL or "sprout" in food.classes or "stock" in food.classes:
        return True
    low_acid = food.acidity is Acidity.LOW_ACID
    if method in _KEPT_DRY_OR_SOUR:
        return False
    if method in _FERMENTED:
        return in_progress
    if method in _BY_ITS_ACID:
        return low_acid
    if method in _RAW:
        return food.group not in _CROPS or is_vacuum_packed(batch)
    if method is Method.BOUGHT:
        dry = food.group in (Group.GRAIN, Group.FAT) or "nut" in food.classes
        sealed = bool(_TIN.search(batch.size.casefold())) or is_vacuum_packed(batch)
        whole = food.group in _CROPS and not sealed
        return not (dry or whole or not low_acid)
    return True
