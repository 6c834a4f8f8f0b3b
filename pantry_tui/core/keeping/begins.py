"""Which process begins anew with food that is still good, so that its own figures count from then
on, and which only keeps on what was kept before.

Published processes begin with raw food that is sound and within its days: fresh, from a cellar, or
frozen and thawed in a refrigerator (USDA FSIS, Freezing and Food Safety, for cooking; the National
Center for Home Food Preservation for drying, smoking, pickling and canning; that meat and fish
which were frozen may be canned, from memory). None of them begins with what was cooked, canned or
put in oil before: toxins that grew in it no heat, salt, acid or drying takes away. There the limit
that ran runs on, and the earlier end counts.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.keeping.harm import CROPS, SHELF_READY, is_wet_pack, kept_as
from pantry_tui.core.keeping.printed import COOKED, KEPT, KEPT_CLASSES
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.record import WAYS, known
from pantry_tui.core.words import Group, Method

#: How raw food waits for what is made of it.
_WAITS = frozenset({Method.FRESH, Method.CELLAR, Method.FROZEN, Method.BOUGHT})
_CURED = frozenset({Method.SALTED})
#: What a cook begins with: also what is cured or dry.
_COOKED_FROM = _CURED | {Method.DRIED, Method.FREEZE_DRIED}
_MEATS = frozenset({Group.MEAT, Group.FISH})
_SUGARS = frozenset({Group.DRINK, Group.SWEET})
#: The food groups with which the published process of a method begins, raw.
_OF: dict[Method, frozenset[Group]] = {
    Method.MEAL: CROPS | _MEATS | {Group.EGG},
    Method.PRESSURE: CROPS | _MEATS,
    Method.BOILING_WATER: CROPS | {Group.DRINK},
    Method.JAM: CROPS | {Group.DRINK},
    Method.FREEZER_JAM: CROPS | {Group.DRINK},
    Method.VINEGAR_PICKLE: CROPS,
    Method.FRIDGE_PICKLE: CROPS | {Group.EGG, Group.FISH},
    Method.LACTIC: CROPS | {Group.DAIRY},
    Method.VINEGAR_FERMENT: CROPS | _SUGARS,
    Method.ALCOHOL_FERMENT: CROPS | _SUGARS,
    Method.PASTE: CROPS,
    Method.DRIED: CROPS | _MEATS,
    Method.FREEZE_DRIED: CROPS,
    Method.SALTED: CROPS | _MEATS,
    Method.HOT_SMOKED: _MEATS,
    Method.COLD_SMOKED: frozenset({Group.FISH}),  # it cooks nothing: of meat no publication begins
    Method.SUGAR: CROPS,
    Method.INFUSION: CROPS,
    Method.FLAVOURED_VINEGAR: CROPS,
    Method.RENDERED_FAT: frozenset({Group.MEAT, Group.FAT}),
}
_ALSO_OF: dict[Method, frozenset[Method]] = {
    Method.MEAL: _COOKED_FROM,
    Method.HOT_SMOKED: _CURED,
    Method.COLD_SMOKED: _CURED,
    Method.DRIED: _CURED,
}
#: What a low-acid vegetable that was frozen may still begin: nothing of it is canned or pickled by
#: a tested process, which begins with the fresh one.
_OF_THAWED = frozenset({Method.MEAL, Method.DRIED})
#: Cooked, cured, or made with what was.
_MADE = frozenset({"cooked", "smoked", "fish-made", "raw-cured", "stock", "animal"})
_RAW_EGGS = frozenset({"eggs", "duck eggs", "quail eggs", "egg whites", "egg yolks"})


def _is_raw(food: FoodFacts, *, cured: bool) -> bool:
    """Raw, or where it may be, cured and not cooked. Of an animal's food that no table names nobody
    knows."""
    if food.group is Group.EGG:
        return food.name in _RAW_EGGS
    if food.classes & _MADE or food.name in COOKED or (food.group in _MEATS and not food.known):
        return False
    return cured or not (food.name in KEPT or food.classes & KEPT_CLASSES)


def _out_of_a_jar(of: Batch) -> bool:
    """Bought in what holds it cooked or brined, as far as anybody knows."""
    jar = re.search(SHELF_READY, of.size.casefold()) is not None
    return of.method is Method.BOUGHT and (is_wet_pack(of) or jar)


def begins_with(method: Method, of: Batch) -> bool:
    """Whether a published process of a method begins with food as this batch is, while it is good:
    then no limit that ran on the batch runs on."""
    food = of.food
    if method is Method.PRESSURE and "stock" in food.classes and of.method is Method.MEAL:
        return True  # chilled, skimmed, heated and canned (USDA AIB 539, meat stock)
    if food.group not in _OF.get(method, ()) or _out_of_a_jar(of):
        return False
    kept, also = kept_as(of), _ALSO_OF.get(method, frozenset())
    if kept not in _WAITS | also:
        return False
    low_acid_crop = food.group in (Group.VEGETABLE, Group.HERB) and not food.is_acid
    if kept is Method.FROZEN and low_acid_crop and method not in _OF_THAWED:
        return False
    return _is_raw(food, cured=bool(also))


#: Made ready, and wet: what comes out of it into a jar can be eaten as it is.
_READY = LIDDED | {Method.FREEZER_JAM, Method.FRIDGE_PICKLE, Method.LACTIC, Method.FROZEN}
#: What a shop sells ready in a jar and is no ingredient, as vinegar, honey and juice are.
_READY_CLASSES = frozenset({"jam", "pickle"})


def refilled(batch: Batch, of: Batch) -> bool:
    """Whether it may be only what its part was, in another jar, whatever that is called: a jar with
    a lid of which no process is told, out of something with which no published process begins."""
    if batch.method not in LIDDED or _processed(batch, of) or begins_with(batch.method, of):
        return False
    if of.method is Method.LACTIC and batch.method in PROCESSED:
        return False  # sauerkraut is fermented first, and canned then (USDA AIB 539, guide 6)
    if of.method is Method.BOUGHT:
        crop = of.food.group in (Group.VEGETABLE, Group.FRUIT)
        return _out_of_a_jar(of) and (crop or not of.food.classes.isdisjoint(_READY_CLASSES))
    return kept_as(of) in _READY


def _processed(batch: Batch, of: Batch) -> bool:
    """Whether its record tells of a process, and not of the one that its part had."""
    own = (pair for pair in batch.process if not (batch.carried and pair in of.process))
    told = known(tuple(pair for pair in own if not denies(pair[1])))
    return not told.isdisjoint((*WAYS, "psi"))
