"""What was done to a crop before it was put by: cut or peeled it is no whole crop any more, and
dry packed or shredded it is in no tested jar.

Cut or peeled produce is chilled within two hours; melons, tomatoes and leafy greens that are cut
let germs grow (US FDA, selecting and serving produce safely, and the Food Code). From memory: the
stricter choice.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared_words import CUT, FINER, plainly
from pantry_tui.core.words import Acidity, Group, Method

#: The keys of a record under which it stands: people say how a crop was cut under either.
PREPARED, _FORM = "prepared", "form"
_UNPROCESSED = frozenset({Method.CELLAR, Method.FRESH, Method.BOUGHT})
CROPS = frozenset({Group.VEGETABLE, Group.FRUIT})
#: Dried in part, it is still moist: no publication puts it on a shelf.
HALF_DRIED = "half dried"
_IN_PART = re.compile(r"\b(?:half|semi|part|partly|partially) ?dr(?:ied|y)\b")
#: Packed without liquid: no tested process (USDA AIB 539 for sweet potatoes; University of
#: Wisconsin Extension for all vegetables).
DRY_PACKED = ("dry pack", "packed dry", "dry canned", "dry canning")
#: Forms that pack more tightly than what was tested, or keep the skin on; from memory (National
#: Center for Home Food Preservation), the stricter choice.
NOT_TESTED = frozenset(
    {"unpeeled", "shredded", "grated", "julienned", "matchsticks", "spiralised", "smooth", "mashed",
     "pureed", "puree"}
)  # fmt: skip
#: Skins keep the heat out and germs in: tomatoes were tested without (Kansas State Research and
#: Extension, You Asked It, for the National Center for Home Food Preservation).
UNPEELED = "unpeeled"
_WITH_SKINS = re.compile(r"\b(?:with (?:the |their )?skins?|skins? on|unpeeled)\b")
#: Classes and names of what nobody peels: its process was tested with its skin.
_NO_PEEL = frozenset({"bean", "leafy", "okra", "asparagus", "peas"})
#: Past its ripeness a crop has less acid than what was tested (University of California ANR, Help
#: Desk 2023, for tomatoes; other crops from memory, the stricter choice).
OVERRIPE = "overripe"
_OVERRIPE = re.compile(r"\bover ?(?:ripe|mature)\b")
#: Fallen fruit may hold patulin, which no heat destroys (University of Minnesota Extension, 2020;
#: University of Illinois Extension).
WINDFALL = "windfall"
#: Eggs are frozen out of their shells, which crack (USDA FSIS, Shell Eggs from Farm to Table).
IN_SHELL = "in the shell"
SHELLS_CRACK = (
    "Eggs are not frozen in the shell: it cracks, and lets germs in. What was beaten first is put "
    "up as beaten eggs."
)
_IN_SHELL = re.compile(r"\bin (?:the |their )?shells?\b")
#: A raw bird that was stuffed goes into the oven at once (USDA FSIS, Turkey Basics: Stuffing).
RAW_STUFFED = "raw-stuffed"
#: Classes of which what is cut can hurt, and names of melons.
_HURTS = frozenset({"tomato", "leafy"})


def _told(said: Mapping[str, str], *keys: str) -> str:
    """What a record says of it, in words as they are known here."""
    return " ".join(plainly(said.get(key, "")) for key in keys).strip()


def is_cut(batch: Batch) -> bool:
    """Whether it is a raw crop that was cut or peeled."""
    # The form of what was canned names its process.
    keys = (PREPARED, _FORM) if batch.method in _UNPROCESSED else (PREPARED,)
    words = _told(dict(batch.process), *keys).split()
    return batch.food.group in CROPS and bool((CUT | FINER).intersection(words))


def dried_in_part(typed: str) -> bool:
    """Whether the words, small and parted by single spaces, say that it is still moist."""
    return _IN_PART.search(typed) is not None


def with_skins(typed: str) -> bool:
    """Whether the words, small and parted by single spaces, say that it was not peeled."""
    return _WITH_SKINS.search(typed) is not None


def in_shell(typed: str) -> bool:
    """Whether the words say that it was left in its shell."""
    return _IN_SHELL.search(typed) is not None


def is_overripe(typed: str) -> bool:
    """Whether the words say that it was past its ripeness."""
    return _OVERRIPE.search(typed) is not None


def is_half_dried(batch: Batch) -> bool:
    """Whether it was dried in part."""
    told = _told(dict(batch.process), PREPARED, _FORM)
    return batch.method is Method.DRIED and dried_in_part(told)


def is_large(food: FoodFacts | None) -> bool:
    """Whether it is a crop of which one is cut for several meals: a piece of it, or what a weight
    was drawn from, is no whole one."""
    return food is not None and "large" in food.classes


def hurts_cut(food: FoodFacts) -> bool:
    """Whether it can hurt once it is cut."""
    melon = "melon" in food.name or food.name == "cantaloupes"
    return melon or bool(food.classes & _HURTS) or food.name in ("lettuces", "salad greens")


def beyond_help(method: Method, food: FoodFacts, said: Mapping[str, str]) -> str:
    """What is left to do with what no recipe puts right, "" of all else."""
    if WINDFALL in _told(said, PREPARED):
        return "Discard it."
    stuffed = RAW_STUFFED in food.classes and method in (Method.FRESH, Method.FROZEN)
    return "Cook it at once, or discard it." if stuffed else ""


def _falls(food: FoodFacts) -> bool:
    """Whether it is, or is made of, what falls off a tree: no bean and no strawberry does."""
    crop = food.group is Group.VEGETABLE and food.acidity is Acidity.LOW_ACID
    return not crop and "berry" not in food.classes


def not_tested(method: Method, food: FoodFacts, said: Mapping[str, str]) -> list[str]:
    """What stands against a batch by how its food was prepared."""
    told = _told(said, PREPARED)
    if WINDFALL in told and _falls(food):
        return ["Fallen fruit may hold a poison of moulds that no heat destroys: do not use it."]
    if RAW_STUFFED in food.classes and method in (Method.FRESH, Method.FROZEN):
        return ["Stuffed raw poultry is cooked at once: it is neither kept nor frozen."]
    if method is Method.FROZEN and food.group is Group.EGG and in_shell(told):
        return [SHELLS_CRACK]
    if any(one in told for one in DRY_PACKED):
        return ["Packed without liquid: no process is tested for that."]
    sour = food.acidity is not Acidity.LOW_ACID or method is Method.BOILING_WATER
    if method in PROCESSED and sour and food.group in CROPS and is_overripe(told):
        return [f"Overripe {food.name} may have too little acid: no process is tested for them."]
    if method in PROCESSED and "tomato" in food.classes and with_skins(told):
        return [f"No process is tested for {food.name} with their skins."]
    if method is not Method.PRESSURE or food.group is not Group.VEGETABLE:
        return []
    peeled = not food.classes & _NO_PEEL and food.name not in _NO_PEEL
    skins = [UNPEELED] if peeled and with_skins(told) else []
    found = [*skins, *(one for one in told.split() if one in NOT_TESTED and one != UNPEELED)]
    return [f"No process is tested for {food.name} that are {found[0]}."] if found else []
