"""Which foods a row of the tables speaks of: the one reader of its keys.

`*` is any food, `group:G` a food group, `acid:G` what of a group is acid or acidified (never by a
household's own word), `low:G` the rest of it, `class:C` a class (`bean`, `root`, `garlic` ...),
anything else a food's own name. "K not L" is what K speaks of and L does not.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Group

#: How close a key is to a food: the food itself, its class, its group, any food, another food.
ITSELF, CLASS, GROUP, ANY, OTHER = 3, 2, 1, 0, -1

#: Which groups a class can belong to: a food that is not in the tables might be any class of its
#: group, so it takes all their rules and the strictest wins.
CLASS_GROUPS: dict[str, tuple[Group, ...]] = {
    "tomato": (Group.VEGETABLE, Group.FRUIT), "citrus": (Group.FRUIT,), "berry": (Group.FRUIT,),
    "stone-fruit": (Group.FRUIT,), "bean": (Group.VEGETABLE,), "root": (Group.VEGETABLE,),
    "leafy": (Group.VEGETABLE,), "brassica": (Group.VEGETABLE,), "allium": (Group.VEGETABLE,),
    "garlic": (Group.VEGETABLE, Group.RELISH), "fresh-herb": (Group.HERB, Group.RELISH),
    "ground-meat": (Group.MEAT,), "whole-cut": (Group.MEAT,), "poultry": (Group.MEAT,),
    "cured-meat": (Group.MEAT,), "sausage": (Group.MEAT,), "jerky": (Group.MEAT,),
    "fatty-fish": (Group.FISH,), "lean-fish": (Group.FISH,), "shellfish": (Group.FISH,),
    "soup": (Group.MEAL,), "stock": (Group.MEAL, Group.DRINK), "pie": (Group.MEAL, Group.GRAIN),
    "bread": (Group.GRAIN,), "baked": (Group.GRAIN,), "nut": (Group.NUT, Group.FRUIT, Group.FAT),
    "sugar": (Group.SWEET,), "leather": (Group.FRUIT,), "juice": (Group.DRINK, Group.FRUIT),
}  # fmt: skip


#: In the name of a dish: that there is cooked rice in it, which keeps for the shorter time.
_RICE = (
    r"(?i)\b(rice(?! (?:noodle|vinegar|wine|flour|paper)s?)|risotto|pila[fuv]|paella|biryani|"
    r"congee|jambalaya|kedgeree|arancini|sushi|onigiri|jollof|khichdi|nasi|bibimbap|arroz)\b"
)

#: What a food was made into: a table that lists a food knows whether it is that.
_FORMS = frozenset({"juice", "leather"})


def split(key: str) -> tuple[str, str]:
    """("class:bean") -> ("class", "bean"); a food's name has the kind "" and is itself."""
    kind, colon, named = key.partition(":")
    return (kind, named) if colon else ("", key)


def parts(key: str) -> list[str]:
    """("group:vegetable not class:sprout") -> both keys, the one that it speaks of first."""
    return key.split(" not ")


def class_of(key: str) -> str:
    """The class that a key names, "" for another key."""
    kind, named = split(key)
    return named if kind == "class" else ""


def near(key: str, food: FoodFacts, *, guess: bool = True) -> int:
    """How close a key is to a food (`ITSELF` ... `OTHER`).

    A food that is not in the tables might be any class of its group: with `guess` the rows of all
    of them speak for it, as close as those of its group.
    """
    key, *others = parts(key)
    if any(near(other, food, guess=False) > OTHER for other in others):
        return OTHER
    if key == "*":
        return ANY
    kind, named = split(key)
    if kind == "acid":
        return GROUP if food.is_acid and named == food.group.value else OTHER
    if kind == "low":
        return GROUP if not food.is_acid and named == food.group.value else OTHER
    if kind == "group":
        return GROUP if named == food.group.value else OTHER
    if kind == "class":
        if named in food.classes or (named == "rice" and _with_rice(food)):
            return CLASS
        return GROUP if guess and might_be(named, food) else OTHER
    return ITSELF if food.name == named else OTHER


def _with_rice(food: FoodFacts) -> bool:
    """Whether a dish that no publication speaks of has rice in it, by its name."""
    return food.group is Group.MEAL and not food.known and re.search(_RICE, food.name) is not None


def might_be(class_: str, food: FoodFacts) -> bool:
    """Whether a food of which no publication speaks could be of this class."""
    return not food.known and food.group in CLASS_GROUPS.get(class_, ())


def plainly_other(class_: str, food: FoodFacts) -> bool:
    """Whether a class is plainly another thing than a food that a table lists, although no
    publication speaks of it: a pear is no juice, no leather and no nut. Of a food of which there
    is the household's word alone nobody knows."""
    groups = CLASS_GROUPS.get(class_, ())
    return not food.told and (class_ in _FORMS or food.group not in groups[:1])
