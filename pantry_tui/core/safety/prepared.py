"""What was done to a crop before it was put by: cut or peeled it is no whole crop any more, and
dry packed or shredded it is in no tested jar.

Cut or peeled produce is chilled within two hours; melons, tomatoes and leafy greens that are cut
let germs grow (US FDA, selecting and serving produce safely, and the Food Code). From memory: the
stricter choice.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.prepared_words import CUT, FINER, plainly
from pantry_tui.core.words import Group, Method

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
NOT_TESTED = frozenset({"unpeeled", "shredded", "grated", "julienned", "matchsticks", "spiralised"})
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


def not_tested(method: Method, food: FoodFacts, said: Mapping[str, str]) -> list[str]:
    """What stands against a canned batch by how its food was prepared."""
    told = _told(said, PREPARED)
    if any(one in told for one in DRY_PACKED):
        return ["Packed without liquid: no process is tested for that."]
    if method is not Method.PRESSURE or food.group is not Group.VEGETABLE:
        return []
    found = [word for word in told.split() if word in NOT_TESTED]
    return [f"No process is tested for {food.name} that are {found[0]}."] if found else []
