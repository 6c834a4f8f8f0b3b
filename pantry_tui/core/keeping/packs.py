"""What packing makes of the food of a pack, and of what was packed anew."""

from __future__ import annotations

import re

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.harm import is_dry, is_shop_tin, is_vacuum_packed, is_wet_pack
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared import is_cut, is_half_dried
from pantry_tui.core.safety.values import says
from pantry_tui.core.words import Group, Method, State

#: What a maker heated in its pack, for the figures of canned goods: acid or not, of meat or fish.
CANNED_ACID, CANNED_LOW, CANNED_MEAT = "canned-acid", "canned-low", "canned-meat"
#: A pack that stood on a shelf, as it says itself or as a person saw: of the products that a table
#: has under one name it is the one for a pantry.
SHELF_PACK = "shelf-pack"
#: A jam with little sugar, or none.
LOW_SUGAR = "low-sugar"
_JAMS = frozenset({Method.JAM, Method.FREEZER_JAM})
_SHUT = r"\b(tin|can|jar|bottle|pouch)s?\b"
_HEATED_IN = r"\b(jar|bottle)s?\b"
_BOXED = r"\b(jar|bottle|pouch(?:e)?|carton)s?\b"
#: Crops that something else than the heat of their pack keeps: salt, spirit, sugar, drying, oil.
_KEPT_ELSE = (
    r"\b(?:fermented|kimchi|curtido|kraut-chi|takuan|tsukemono|torshi|black garlic|brandied|"
    r"candied|leather|rumtopf|tamarind|olives|konnyaku|marrons|stem ginger|frozen|dried|chips|"
    r"powder|sea vegetables|in sugar|in oil|preserved|britches)\b"
)
#: Meals that are sold dry.
_MIXED_DRY = r"\b(?:mix|mixes|cereal|powder)\b"
#: Fish and meat that only salt or smoke keeps, in whatever jar.
_SALT_KEPT = (
    r"\b(?:anchov\w*|herrings?|roe|pickled|smoked|salted|dried|kippers|paste|sauce|ham|hams|"
    r"prosciutto|confit|pate|rillettes|brawn)\b"
)


def packed(food: FoodFacts, batch: Batch, opened: bool) -> FoodFacts:
    """A pack under vacuum keeps the air out, and so has rules of its own until it is opened; a crop
    that was cut, or dried in part, has others than a whole or a dry one."""
    if is_cut(batch):
        food = replace(food, classes=food.classes | {"cut"})
    if is_half_dried(batch):
        food = replace(food, classes=food.classes | {"half-dried"})
    found = {one for one in (_canned(batch), _shelf_pack(batch)) if one}
    if batch.method in _JAMS or "jam" in batch.food.classes:
        from pantry_tui.core.safety.low_sugar import low_sugar  # few starts judge a jam

        found |= {LOW_SUGAR} if low_sugar(batch) else set()
    if found:
        food = replace(food, classes=food.classes | found)
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


def _on_shelf(batch: Batch) -> bool:
    return says(batch.process, "sold", "shelf")


def _shelf_pack(batch: Batch) -> str:
    """The class of what was bought in a pack of a shelf, "" of all else."""
    if batch.method is not Method.BOUGHT or batch.carried:
        return ""
    shut = re.search(_SHUT, batch.size.casefold()) is not None
    return SHELF_PACK if shut or _on_shelf(batch) else ""


def _canned(batch: Batch) -> str:
    """The class of what a maker heated in a jar, bottle, pouch or carton, "" of all else: acid
    crops in glass, pulses that are sold dry or wet, and other food that was seen on a shelf of a
    shop; whatever a household filled it into since. A tin is judged as canned by its method."""
    food, size = batch.food, (batch.filled if batch.carried else batch.size).casefold()
    if batch.method is not Method.BOUGHT or is_shop_tin(batch):
        return ""
    if batch.carried and is_vacuum_packed(batch):
        return ""
    if any(key == "by" for key, _ in batch.process):
        return ""  # no maker's, but somebody's
    if is_wet_pack(batch) and is_dry(food):
        return CANNED_LOW if "bean" in food.classes else ""
    shelf = re.search(_BOXED, size) is not None and _on_shelf(batch)
    if food.group in (Group.VEGETABLE, Group.FRUIT):
        # A jar of low-acid food may be of somebody's kitchen, and nobody knows how it was canned.
        heated = shelf or (food.is_acid and re.search(_HEATED_IN, size) is not None)
        raw = is_cut(batch) or is_vacuum_packed(batch)
        if not heated or raw or is_dry(food) or re.search(_KEPT_ELSE, food.name):
            return ""
        if "pickle" in food.classes:
            return "" if food.is_acid else CANNED_ACID
        return CANNED_ACID if food.is_acid else CANNED_LOW
    if not (shelf or (food.name.startswith("canned ") and re.search(_BOXED, size))):
        return ""
    if food.group in (Group.MEAT, Group.FISH):
        return "" if re.search(_SALT_KEPT, food.name) else CANNED_MEAT
    meal = food.group is Group.MEAL or "stock" in food.classes
    return CANNED_LOW if meal and not re.search(_MIXED_DRY, food.name) else ""
