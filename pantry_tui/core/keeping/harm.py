"""Whether food can hurt where no published figure covers it.

What can: meat, fish, egg, dairy and what is made with them, cooked food, sprouts, unfinished
ferments and cures, and whatever is low in acid and sealed without air, in oil, vacuum-packed or
cooked. What cannot: whole raw crops, dry food, sugar, salt, honey, vinegar, spirits, finished acid
ferments; it spoils where anybody can see it. What is on neither list counts as what can, and so
does what is a crop, or acid, by a household's own word alone, until it is dry or in spirits.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import ANIMAL
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.acid import ACID_ADDED
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.prepared import hurts_cut, is_cut, is_half_dried
from pantry_tui.core.safety.values import YES
from pantry_tui.core.words import Group, Method

#: Dry or in spirit, whatever plant food it holds and however it is packed.
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED, Method.INFUSION})
#: Acid, salt or strong only once it is done. A paste of beans or grain is no acid ferment: it is
#: packed without air, and only what it is made of may be acid.
_FERMENTED = frozenset(
    {Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.SALTED}
)
#: They turn sugar into alcohol, and that into vinegar: of drinks, sweets, fruit and grain.
#: Mushrooms or a bean paste that are called so have neither.
_OF_SUGAR = frozenset({Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT})
_WORKED = frozenset({Group.DRINK, Group.SWEET, Group.FRUIT, Group.GRAIN})
#: What sugar keeps: sugar and honey themselves, and crops that it dries. Garlic, herbs and roots
#: sunk in honey or syrup are shut off from the air, and a syrup holds water enough.
_SUGARED = frozenset({Group.FRUIT, Group.NUT, Group.GRAIN})
#: Sealed without air, or chilled: harmless only where the food is acid itself.
_BY_ITS_ACID = frozenset(
    {
        Method.BOILING_WATER, Method.PRESSURE, Method.JAM, Method.FREEZER_JAM,
        Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE, Method.FROZEN,
    }
)  # fmt: skip
_PICKLED = frozenset({Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE})
#: Fruit or vegetables that were made into something.
_MADE = "dish"
_RAW = frozenset({Method.CELLAR, Method.FRESH})
#: Crops that grow moist: all but nuts and grain.
GREENS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB})
CROPS = GREENS | {Group.NUT, Group.GRAIN}
#: Dry as they are bought: classes of food that keep by having no water.
_DRY_CLASSES = frozenset({"nut", "sugar", "dry"})
#: Grain that was made into something moist.
_MOIST_GRAIN = frozenset({"baked", "bread", "animal", "cooked", "moist"})
#: In these packs pulses and rice are sold cooked and wet, coffee and tea made.
_WET_PACKS = {
    "bean": r"\b(jar|pouch|carton)",
    "rice": r"\b(pouch|carton)",
    "dry": r"\b(tin|can|bottle|carton|pouch|cup)s?\b",
}
#: Grain of which tins are sold cooked or moist (spaghetti, rice pudding, brown bread), and its one
#: kind of baked goods that is dry through (common practice, no source).
_WET_TINS = _MOIST_GRAIN | {"bean", "rice"}
_WET_TINS_NAMED = frozenset({"pasta", "noodles", "egg noodles", "hot cereal", "polenta", "yeast"})
_DRY_BAKED = frozenset({"cookies"})
#: Broth, what is made with meat, fish, egg or dairy whatever its group, cooked low-acid food, food
#: in oil: however a household says that it is kept.
_HURTS = frozenset({"stock", "animal", "cooked", "in-oil"})
_TIN = r"\b(tin|can)s?\b"
_AIRLESS = r"\b(tin|can|jar|pouch|carton)"
SHELF_READY = r"\b(tin|can|jar|pouch|carton|bottle)"
#: In the name of what no table knows: it is made with them, whatever group a household says.
_ANIMAL_WORDS = (
    r"(?i)\b(eggs?|eggy|yolks?|cream|creamy|milk|cheese|cheesy|yogh?urt|custard|meat|fish|beef|pork|"
    r"bacon|ham|chicken|turkey|duck|goose|lamb|mutton|venison|prawns?|shrimps?|oysters?|clams?|broth|"
    r"anchov(?:y|ies)|salmon|tuna|liver|blood|gelatine?)\b"
)
#: Honey is acid; what is low in acid has garlic, herbs or roots lying in it. They bring water, and
#: spores live in honey, and no method that it is put up under makes it a spirit or a ferment.
_HONEY = r"\bhoney\b"
_SPROUTS = r"(?i)\b(sprouts?|sprouted)\b"
#: Crops that are sold dry.
SOLD_DRY = frozenset({"dry beans", "chickpeas", "spices"})


def is_vacuum_packed(batch: Batch) -> bool:
    """Whether its packs are closed without air, or may be, since nobody knows: that air is shut out
    is the stricter case wherever it keeps nothing longer."""
    return any(key == "vacuum" and not denies(value) for key, value in batch.process)


def surely_vacuum_packed(batch: Batch) -> bool:
    """The same where somebody says so: what it is where a pack without air keeps longer."""
    return any(key == "vacuum" and value.casefold() in YES for key, value in batch.process)


def is_dry(food: FoodFacts) -> bool:
    """Dry as it is bought, opened or not: grain, pulses, spices, nuts, sugar, salt."""
    named = food.name in SOLD_DRY or bool(food.classes & _DRY_CLASSES)
    moist = bool(food.classes & _MOIST_GRAIN) and food.name not in _DRY_BAKED
    return named or (food.group is Group.GRAIN and not moist)


def stands_opened(batch: Batch) -> bool:
    """Whether what was bought is dry or in spirit, in a pack of which nobody can think otherwise:
    opened, moved and packed anew it stands where it stands, and nothing of it perishes there."""
    food = batch.food
    if food.group in ANIMAL or food.group is Group.MEAL:
        return False  # powdered milk, soup mix: no figure speaks for them outside their packs
    if is_wet_pack(batch) or (is_shop_tin(batch) and not _is_never_wet(food)):
        return False
    return is_dry(food) or "spirit" in food.classes


def is_wet_pack(batch: Batch) -> bool:
    """Whether pulses or rice were bought in what holds them cooked, as far as anybody knows."""
    if batch.method is not Method.BOUGHT or _packed_at_home(batch):
        return False
    return _wet_in(batch.food, batch.filled if batch.carried else batch.size)


def _wet_in(food: FoodFacts, size: str) -> bool:
    """Whether a pack of a shop holds it wet."""
    kinds = food.classes if food.group is Group.DRINK else food.classes - {"dry"}
    return any(re.search(one, size.casefold()) for kind, one in _WET_PACKS.items() if kind in kinds)


def _packed_at_home(batch: Batch) -> bool:
    """Whether a household put what is sold dry into this pack, and not out of a pack that holds it
    wet. What it was before bounds it beside (core.keeping.descent)."""
    food, of = batch.food, batch.filled
    tin = re.search(_TIN, of.casefold()) is not None and not _is_never_wet(food)
    return batch.carried and is_dry(food) and not (tin or _wet_in(food, of))


def is_tin(batch: Batch) -> bool:
    """Whether its pack is a tin."""
    return re.search(_TIN, batch.size.casefold()) is not None


def is_shop_tin(batch: Batch) -> bool:
    """Whether it is a tin that was shut by a maker, or was taken out of one: one into which a
    household put what is dry is a box."""
    out_of = batch.carried and re.search(_TIN, batch.filled.casefold()) is not None
    tin = is_tin(batch) or (out_of and not is_vacuum_packed(batch))
    return tin and not _packed_at_home(batch)


def _is_never_wet(food: FoodFacts) -> bool:
    """Whatever it is packed in: sugar, spices, cocoa, oats, crackers, nuts; fruit, vegetables and
    drinks have tins of both."""
    if food.group in (Group.VEGETABLE, Group.FRUIT, Group.DRINK):
        return False
    grain = food.group is Group.GRAIN and food.name not in _WET_TINS_NAMED
    baked = food.classes & _WET_TINS and food.name not in _DRY_BAKED
    return bool(food.classes & _DRY_CLASSES) or (grain and not baked)


def kept_as(batch: Batch) -> Method:
    """The method whose figures speak for it: bought food has none of its own, so a tin is judged
    as canned, and what is no dry food as fresh."""
    if is_cut(batch) and batch.method is Method.CELLAR:
        return Method.FRESH
    if batch.method is not Method.BOUGHT:
        return batch.method
    food = batch.food
    if is_shop_tin(batch) and not (_is_never_wet(food) or food.group is Group.DAIRY):
        # Nobody cans milk at home, so that no figure for canned food speaks of it.
        return Method.BOILING_WATER if food.is_acid else Method.PRESSURE
    if stands_opened(batch):
        return Method.BOUGHT
    if food.group is Group.MEAL:
        return Method.MEAL
    raw = food.group in ANIMAL or _airless_crop(batch) or is_cut(batch)
    return Method.FRESH if raw else Method.BOUGHT


def _airless_crop(batch: Batch) -> bool:
    """Raw vegetables, fruit or herbs that were bought without air: judged as those of one's own."""
    food = batch.food
    raw = food.group in GREENS and "nut" not in food.classes
    packed = is_vacuum_packed(batch) and not food.is_acid
    return raw and packed and food.name not in SOLD_DRY


def _sprouted(food: FoodFacts) -> bool:
    """Sprouted seed, also where no table knows it; Brussels sprouts are a cabbage."""
    named = re.search(_SPROUTS, food.name) is not None and "brassica" not in food.classes
    return "sprout" in food.classes or named


def _by_what_it_is(food: FoodFacts) -> bool:
    """Whatever was done to it. Also by its name, where no table knows what is in it; a crop may be
    called after anything."""
    named = not food.known and food.group not in CROPS
    return bool(food.classes & _HURTS) or (
        named and re.search(_ANIMAL_WORDS, food.name) is not None
    )


def _is_jam(food: FoodFacts) -> bool:
    """Whether a jam is made of it, so that a recipe may stand for it: of fruit, or a jam itself. Of
    wine, chutney or pie filling put up as one nobody knows what is in it."""
    crop = food.group in CROPS and _MADE not in food.classes and ACID_ADDED not in food.classes
    return crop or "jam" in food.classes or food.name == "freezer jams"


def can_hurt(batch: Batch, in_progress: bool = False) -> bool:
    """Whether eating it on a guess could hurt; `in_progress` while it ferments or cures."""
    food, method = batch.food, batch.method
    if food.group in ANIMAL or _sprouted(food) or _by_what_it_is(food):
        return True
    low_acid = not food.is_acid
    if low_acid and food.group is Group.SWEET and re.search(_HONEY, food.name):
        return True
    if method in _DRY:
        return is_half_dried(batch)
    if food.told:
        return True
    if method is Method.SUGAR:
        return low_acid and food.group not in _SUGARED and "sugar" not in food.classes
    if low_acid and is_vacuum_packed(batch):
        return True
    if method is Method.FLAVOURED_VINEGAR:
        # Crops lie in the vinegar; a sauce or another dish is as sour as whoever made it did.
        made = food.group not in CROPS or _MADE in food.classes
        return made and (low_acid or ACID_ADDED in food.classes)
    if method in _FERMENTED:
        worked = method not in _OF_SUGAR or food.group in _WORKED or not low_acid
        return in_progress or not worked
    if method is Method.PASTE:
        return in_progress or low_acid
    if method is Method.RENDERED_FAT:
        # Fat is on neither list; plants cooked in it are in oil.
        return True
    if method in (Method.JAM, Method.FREEZER_JAM):
        return low_acid or not _is_jam(food)
    if method in _PICKLED:
        # A sauce that is called a pickle: nobody knows that the acid it needs was added.
        dish = food.group is Group.RELISH or _MADE in food.classes
        return low_acid or (dish and ACID_ADDED in food.classes and "pickle" not in food.classes)
    if method in _BY_ITS_ACID:
        return low_acid
    if "moist" in food.classes and method in _RAW | {Method.BOUGHT}:
        return low_acid
    if is_cut(batch) and hurts_cut(food) and method in _RAW | {Method.BOUGHT}:
        return True
    if method in _RAW:
        return food.group not in CROPS
    if method is Method.BOUGHT:
        dry = food.group in (Group.GRAIN, Group.FAT) or bool(food.classes & _DRY_CLASSES)
        if is_wet_pack(batch):
            return True
        if "spirit" in food.classes or _packed_at_home(batch):
            return False
        # Cut or whole: what lies in a jar or tin was shut off from the air.
        whole = food.group in CROPS and not re.search(_AIRLESS, batch.size.casefold())
        return not (dry or whole or not low_acid)
    return True
