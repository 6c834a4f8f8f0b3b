"""What was done to a crop before it was put by: cut or peeled it is no whole crop any more, and
dry packed or shredded it is in no tested jar.

Cut or peeled produce is chilled within two hours; melons, tomatoes and leafy greens that are cut
let germs grow (US FDA, selecting and serving produce safely, and the Food Code). From memory: the
stricter choice.
"""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Group, Method

#: The key of a record under which it stands.
PREPARED = "prepared"
CROPS = frozenset({Group.VEGETABLE, Group.FRUIT})
CUT = frozenset(
    {"sliced", "slices", "slice", "diced", "cubed", "cubes", "cube", "chopped", "halved", "halves",
     "quartered", "chunks", "chunk", "strips", "julienned", "shredded", "grated", "wedges", "rings",
     "coins", "batons", "peeled", "cored", "cut", "florets", "balls", "matchsticks", "spiralised",
      "podded", "shelled", "blanched", "parboiled", "pitted", "stoned",
      "half", "quarter", "quarters", "piece", "pieces", "strip", "wedge", "ring", "baton", "floret"}
)  # fmt: skip
#: Dried in part, it is still moist: no publication puts it on a shelf.
HALF_DRIED = "half dried"
_IN_PART = ("half dried", "semi dried", "part dried", "partly dried", "partially dried")
#: Packed without liquid: no tested process (USDA AIB 539 for sweet potatoes; University of
#: Wisconsin Extension for all vegetables).
DRY_PACKED = ("dry pack", "dry packed", "dry canned", "dry canning")
#: Forms that pack more tightly than what was tested, or keep the skin on; from memory (National
#: Center for Home Food Preservation), the stricter choice.
NOT_TESTED = frozenset({"unpeeled", "shredded", "grated", "julienned", "matchsticks", "spiralised"})
#: Classes of which what is cut can hurt, and names of melons.
_HURTS = frozenset({"tomato", "leafy"})


def is_cut(batch: Batch) -> bool:
    """Whether it is a raw crop that was cut or peeled."""
    words = dict(batch.process).get(PREPARED, "").casefold().split()
    return batch.food.group in CROPS and bool(CUT.intersection(words))


def dried_in_part(typed: str) -> bool:
    """Whether the words, small and parted by single spaces, say that it is still moist."""
    return any(one in typed for one in _IN_PART)


def is_half_dried(batch: Batch) -> bool:
    """Whether it is a crop that was dried in part."""
    return batch.method is Method.DRIED and HALF_DRIED in dict(batch.process).get(PREPARED, "")


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
    told = said.get(PREPARED, "").casefold()
    if any(one in told for one in DRY_PACKED):
        return ["Packed without liquid: no process is tested for that."]
    if method is not Method.PRESSURE or food.group is not Group.VEGETABLE:
        return []
    found = [word for word in told.split() if word in NOT_TESTED]
    return [f"No process is tested for {food.name} that are {found[0]}."] if found else []
