"""How a shop keeps what was bought: on a shelf, in the cold, or as nobody can say.

A shelf is believed where the pack is a tin, where what is in it cannot hurt, where salt, sugar or
spirit keeps it, where a publication gives its shut pack weeks or months in a pantry, or where a
person saw it there (`sold=shelf`), but for raw meat, fish and eggs.
"""

from __future__ import annotations

import re
from enum import StrEnum

from pantry_tui.core.keeping.harm import (
    CROPS,
    SHELF_READY,
    SOLD_DRY,
    can_hurt,
    is_tin,
    is_vacuum_packed,
    is_wet_pack,
)
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.prepared import is_cut
from pantry_tui.core.safety.values import says
from pantry_tui.core.words import Climate, Group, Method, State


class Sold(StrEnum):
    """`EITHER`: a pack that stands on a shelf or in the cold of a shop, and nobody said which."""

    OWN = "own"
    SHELF = "shelf"
    COLD = "cold"
    EITHER = "either"


#: The detail of a record that says where it stood in the shop.
SOLD = "sold"
#: Dry, salted or in spirit as they are sold, in whatever pack (common practice, no source).
_STANDS = frozenset(
    {
        "soy sauce", "mustard", "miso", "gochujang", "hoisin sauce", "oyster sauce", "bouillon",
        "sauce mixes", "salted vegetables", "salted herbs", "mushroom ketchup", "coffee", "tea",
        "water", "cream liqueur",
    }
)  # fmt: skip
#: Dried or hard-cured meat and fish: some of it hangs on a shelf, some lies in the cold.
_DRIED = frozenset(
    {
        "hard sausages", "biltong", "charqui", "kilishi", "dried beef", "pemmican", "dried fish",
        "dried salted fish", "salt cod", "prosciutto", "basturma", "sujuk",
        "salt pork",
    }
)  # fmt: skip
#: Shelf-stable as they are sold (USDA FSIS, Shelf-Stable Food Safety; read as a reprint).
_PUBLISHED = frozenset({"jerky", "country hams"})
#: Days in a pantry from which a published figure means a shelf: less is a way home, or a counter;
#: and days in a refrigerator up to which one speaks of a fresh kind. This program's choices.
_SHELF_DAYS, _FRESH_DAYS = 21, 21
_DRY = frozenset({Group.GRAIN, Group.FAT, Group.NUT})
_RAW = frozenset({Group.MEAT, Group.FISH, Group.EGG})
#: Of which some are sold as a powder.
_POWDERS = frozenset({Group.DAIRY, Group.MEAL, Group.EGG})


def sold(batch: Batch, book: Rulebook) -> Sold:
    """How a shop keeps it; `OWN` where it was not bought."""
    if batch.method is not Method.BOUGHT:
        return Sold.OWN
    where = _as_it_stood(batch, book)
    if says(batch.process, SOLD, "chilled"):
        return where if is_tin(batch) else Sold.COLD
    if says(batch.process, SOLD, "shelf") and not not_believed(batch, where):
        return Sold.SHELF
    return where


def opened_dry(batch: Batch, book: Rulebook) -> bool:
    """Whether the wide table keeps it in a pantry for weeks once it is opened, though it is of what
    can hurt: powdered milk, soup mix, which are dry as they are sold. Nothing in oil or brine, and
    nothing that a household packed anew, whose pack nobody knows."""
    food = batch.food
    if batch.method is not Method.BOUGHT or batch.carried or is_wet_pack(batch):
        return False
    if food.group not in _POWDERS or "in-oil" in food.classes:
        return False
    return any(
        rule.method is Method.BOUGHT and rule.state is State.OPEN and rule.use is not None
        and Climate.PANTRY in rule.climates and rule.days >= _SHELF_DAYS
        for rule in book.wide(food.name)
    )  # fmt: skip


def not_believed(batch: Batch, where: Sold) -> bool:
    """Whether a shelf is not believed of it: raw meat, fish and eggs in no pack that stands."""
    said = says(batch.process, SOLD, "shelf")
    return said and where is Sold.COLD and batch.food.group in _RAW


def _as_it_stood(batch: Batch, book: Rulebook) -> Sold:
    """How it is sold as far as food and pack say it."""
    if is_tin(batch) or _stands_by_itself(batch):
        return Sold.SHELF
    ready = _may_stand(batch)
    shelf, cold, fresh = _published(batch, book)
    if not _moist(batch):
        return Sold.COLD if fresh and not ready else Sold.SHELF
    if (shelf and (ready or not cold)) or _bottled_crop(batch):
        return Sold.SHELF
    return Sold.EITHER if ready or batch.food.name in _DRIED else Sold.COLD


def _published(batch: Batch, book: Rulebook) -> tuple[bool, bool, bool]:
    """Whether the wide table keeps its shut pack in a pantry, whether in a refrigerator, and
    whether a sauce or drink only for a short time. What it says of a crop is said of a whole one,
    that of cooked crops aside."""
    food = batch.food
    crop = food.group in CROPS and "cooked" not in food.classes
    shut = [
        rule
        for rule in (() if crop else book.wide(food.name))
        if rule.method is Method.BOUGHT and rule.state is State.SEALED and rule.use is not None
    ]
    shelf = any(Climate.PANTRY in rule.climates and rule.days >= _SHELF_DAYS for rule in shut)
    cold = [rule.days for rule in shut if Climate.FRIDGE in rule.climates]
    poured = food.group in (Group.RELISH, Group.DRINK)
    return shelf, bool(cold), poured and any(days <= _FRESH_DAYS for days in cold)


def _moist(batch: Batch) -> bool:
    """Whether it may be of what only the cold keeps: what can hurt and is not dry, and juice, which
    may be raw."""
    food = batch.food
    dry = food.name in SOLD_DRY or food.group in _DRY or "nut" in food.classes
    return not dry and ("juice" in food.classes or is_cut(batch) or can_hurt(batch))


def _bottled_crop(batch: Batch) -> bool:
    """A crop in a jar or bottle was heated in it (USDA FSIS names bottled food shelf-stable); one
    that was cut, or is packed without air, may be raw."""
    raw = is_cut(batch) or is_vacuum_packed(batch)
    pack = re.search(r"\b(jar|bottle)", batch.size.casefold()) is not None
    return batch.food.group in CROPS and pack and not raw


def _may_stand(batch: Batch) -> bool:
    """Whether its pack is one of those in which shops keep things on a shelf. A carton of eggs, of
    raw meat or fish is the box round them."""
    size = (batch.filled or batch.size).casefold()
    if batch.food.group in _RAW:
        size = re.sub(r"\bcartons?\b", "box", size)
    return re.search(SHELF_READY, size) is not None or _boxed_drink(batch)


def _boxed_drink(batch: Batch) -> bool:
    """Milk, cream and drinks in a box."""
    food = batch.food
    poured = food.group is Group.DRINK or re.search(r"\b(milk|cream)\b", food.name) is not None
    return poured and "box" in batch.size.casefold()


def _stands_by_itself(batch: Batch) -> bool:
    """Whether salt, sugar, spirit or a tin of which only its name speaks keeps it in any pack."""
    food = batch.food
    hurts = food.classes & {"stock", "animal", "cooked", "in-oil", "bean"}
    sugared = food.group is Group.SWEET and not hurts
    return sugared or food.name in _STANDS | _PUBLISHED or food.name.startswith("canned ")
