"""Whether food can hurt where no published figure covers it.

What can: meat, fish, egg, dairy, cooked food, sprouts, unfinished ferments and cures, and whatever
is low in acid and sealed without air, in oil, vacuum-packed or cooked. What cannot: whole raw
crops, dry food, sugar, salt, honey, vinegar, spirits, fat, finished acid ferments; it spoils where
anybody can see it. What is on neither list counts as what can.
"""

from __future__ import annotations

import re
from datetime import timedelta

from pantry_tui.core.canned import ANIMAL
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import hurts_cut, is_cut
from pantry_tui.core.words import Acidity, Group, Method

#: Dry, sugared or in spirit, whatever plant food it holds and however it is packed.
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED, Method.SUGAR, Method.INFUSION})
#: In vinegar, or fat without water.
_IN_VINEGAR_OR_FAT = frozenset({Method.FLAVOURED_VINEGAR, Method.RENDERED_FAT})
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
_CROPS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.NUT, Group.HERB, Group.GRAIN})
#: Dry as they are bought: classes of food that keep by having no water.
_DRY_CLASSES = frozenset({"nut", "sugar"})
_TIN = r"\b(tin|can)s?\b"
_AIRLESS = r"\b(tin|can|jar|pouch|carton)"
_SHELF_READY = r"\b(tin|can|jar|pouch|carton|bottle)"
#: No pack of fresh food is dated further ahead, beef under vacuum neither: what is was misread, or
#: speaks of a tin (common practice, no source).
LONGEST_USE_BY = timedelta(days=90)
_SPROUTS = r"(?i)\b(sprouts?|sprouted)\b"
#: Crops that are sold dry.
_SOLD_DRY = frozenset({"dry beans", "chickpeas", "spices"})


def is_vacuum_packed(batch: Batch) -> bool:
    """Whether its packs are closed without air."""
    return any(key == "vacuum" and value != "no" for key, value in batch.process)


def kept_as(batch: Batch) -> Method:
    """The method whose figures speak for it: bought food has none of its own, so a tin is judged
    as canned, and what is no dry food as fresh."""
    if is_cut(batch) and batch.method is Method.CELLAR:
        return Method.FRESH
    if batch.method is not Method.BOUGHT:
        return batch.method
    food = batch.food
    if re.search(_TIN, batch.size.casefold()):
        low_acid = food.acidity is Acidity.LOW_ACID
        return Method.PRESSURE if low_acid else Method.BOILING_WATER
    if food.group is Group.MEAL:
        return Method.MEAL
    raw = food.group in ANIMAL or _airless_crop(batch) or is_cut(batch)
    return Method.FRESH if raw else Method.BOUGHT


def _airless_crop(batch: Batch) -> bool:
    """Raw vegetables, fruit or herbs that were bought without air: judged as those of one's own."""
    food = batch.food
    raw = food.group in (Group.VEGETABLE, Group.FRUIT, Group.HERB) and "nut" not in food.classes
    low_acid = food.acidity is Acidity.LOW_ACID
    return raw and low_acid and is_vacuum_packed(batch) and food.name not in _SOLD_DRY


def use_by(batch: Batch) -> bool:
    """Whether the date on a pack is the last day on which it is safe: on what can hurt and is kept
    cold or without air, but not on a tin, whose date speaks of its quality."""
    tin = re.search(_TIN, batch.size.casefold()) is not None
    airless = is_vacuum_packed(batch) and batch.food.acidity is Acidity.LOW_ACID
    return not tin and (batch.food.group in ANIMAL or airless or bought_cold(batch))


def date_stands_alone(batch: Batch) -> bool:
    """Whether the date on a pack counts instead of the published days. On what only the cold keeps
    that is a use-by (USDA FSIS, Food Product Dating: such a date is followed, behind a sell-by or
    none the days of the chart count; UK FSA: eaten up to the use-by; both from memory), and one
    that a fresh pack can have; every other date counts beside those days."""
    if not use_by(batch):
        return True
    if batch.printed is None or ("dated", "use-by") not in batch.process:
        return False
    return batch.made is None or batch.printed - batch.made <= LONGEST_USE_BY


def bought_cold(batch: Batch) -> bool:
    """Whether it was bought in a pack or tub that only the cold keeps (fresh pesto, fruit curd):
    food that can hurt, not in what stands on a shop's shelf."""
    food = batch.food
    if batch.method is not Method.BOUGHT or not can_hurt(batch) or food.name in _SOLD_DRY:
        return False
    dry = food.group in (Group.GRAIN, Group.FAT) or "nut" in food.classes
    return not (dry or re.search(_SHELF_READY, batch.size.casefold()))


def _sprouted(food: FoodFacts) -> bool:
    """Sprouted seed, also where no table knows it; Brussels sprouts are a cabbage."""
    named = re.search(_SPROUTS, food.name) is not None and "brassica" not in food.classes
    return "sprout" in food.classes or named


def can_hurt(batch: Batch, in_progress: bool = False) -> bool:
    """Whether eating it on a guess could hurt; `in_progress` while it ferments or cures."""
    food, method = batch.food, batch.method
    if food.group in ANIMAL or _sprouted(food) or "stock" in food.classes:
        return True
    low_acid = food.acidity is Acidity.LOW_ACID
    if method in _DRY:
        return False
    if low_acid and is_vacuum_packed(batch):
        return True
    if method in _IN_VINEGAR_OR_FAT:
        return False
    if method in _FERMENTED:
        return in_progress
    if method in _BY_ITS_ACID:
        return low_acid
    if is_cut(batch) and method in _RAW | {Method.BOUGHT}:
        return hurts_cut(food)
    if method in _RAW:
        return food.group not in _CROPS
    if method is Method.BOUGHT:
        dry = food.group in (Group.GRAIN, Group.FAT) or bool(food.classes & _DRY_CLASSES)
        whole = food.group in _CROPS and not re.search(_AIRLESS, batch.size.casefold())
        return not (dry or whole or not low_acid)
    return True
