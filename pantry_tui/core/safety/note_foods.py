"""Another food that only the note names: elderberries among the blackberries, clams in the soup, or
what the food is itself (white peaches). No process is tested of a mixture but of those that are
published as one (USDA AIB 539, guides 4 and 5); what is lower in acid takes the acid from the rest.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from pantry_tui.core.canned import ANIMAL, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Acidity, Group, Method

#: A food of the tables by any of its names, None for other words.
Named = Callable[[str], FoodFacts | None]
_MIXED = (
    r"\b(?:with|added|adding|plus|and|extra|mixed?|half|third|quarter|some|few|threw in|put in|"
    r"in (?:it|them)|really|actually|instead|bits?)\b"
)
#: Beside the name of what the food is itself.
_SMALL = frozenset(
    {"a", "the", "really", "actually", "used", "were", "was", "it", "is", "they", "are", "in",
     "truth", "all", "of", "these", "flesh", "ones", "kind", "sort"}
)  # fmt: skip
#: What is put to sweet things by the spoon, and makes no other food of them.
_BY_THE_SPOON = frozenset({Group.HERB, Group.DRINK, Group.SWEET})
_OF_NO_WEIGHT = frozenset({"ginger", "water", "sugar", "salt", "vinegar", "honey"})
_FISH = r"\b(?:(?:shell ?)?fish|seafood)\b(?! (?:kettle|knife|pond|tank|market|day|meal|fertil\w*))"
_FROTH = r"\b(?:foam\w*|froth\w*)\b"
_MOST_WORDS = 3
#: What took a part of the crop, or was fed with it, is none of the food: "lost half to the deer".
_TAKER = (
    r"(?:(?:the|some|our|a|my|local|wild|neighbou?r's|hungry) )*(?:deer|rabbits?|hares?|"
    r"hens?|chickens?|geese|ducks?|pigeons?|pigs?|goats?|sheep|cows?|elk|boars?|squirrels?|snails?|"
    r"fish|turkeys?)"
)
_TAKEN = (
    r"\b(?:lost|los(?:e|ing)|eaten|taken|stripped|raided|ruined|nibbled|trampled|gone|went|fed|"
    rf"gave|given|damage\w*|hit|shared)\b(?: \w+){{0,6}}? (?:to|by|from|with) {_TAKER}\b|"
    rf"\b{_TAKER} (?:ate|got|had|took|stole|raided|nibbled|found|"
    r"trampled|stripped|left|broke|damage\w*)\b"
)


def another_food(method: Method, food: FoodFacts, clause: str, named: Named) -> bool:
    """Whether the words name a food that a jam, or what has a process of its own, was not tested
    with; `clause` in small letters, without what it is for."""
    if method is not Method.JAM and method not in PROCESSED:
        return False
    clause = re.sub(_TAKEN, " ", clause)
    if method is Method.PRESSURE and food.group is not Group.FISH and affirmed(clause, _FISH):
        return True
    mixed = re.search(_MIXED, clause) is not None
    kind = " ".join(one for one in clause.split() if one not in _SMALL)
    itself = named(f"{kind} {food.name}") if 0 < len(kind.split()) < _MOST_WORDS else None
    other_kind = itself is not None and itself.name != food.name
    if itself is not None and other_kind and _lower_in_acid(method, food, itself):
        return True
    for other, words in _foods_in(clause, named):
        own = set(re.findall(r"[a-z]+", food.name))
        if other.name == food.name or own.issuperset(other.name.split()):
            continue
        alone = not set(clause.split()) - set(words.split()) - _SMALL
        if (
            (mixed or alone)
            and affirmed(clause, rf"\b{re.escape(words)}\b")
            and _harms(method, food, other, clause, mixed=mixed and not alone)
        ):
            return True
    return False


def untested_with(method: Method, food: FoodFacts, other: FoodFacts) -> bool:
    """Whether a jam, or what has a process of its own, was tested without that other food."""
    if method is not Method.JAM and method not in PROCESSED:
        return False
    return _harms(method, food, other, "", mixed=True)


def _foods_in(clause: str, named: Named) -> Iterator[tuple[FoodFacts, str]]:
    """Each food that is named, the longest names first, with the words that name it."""
    words = re.findall(r"[^\W\d_]+(?:'s)?", clause)
    at = 0
    while at < len(words):
        for many in range(min(_MOST_WORDS, len(words) - at), 0, -1):
            text = " ".join(words[at : at + many])
            found = named(text) if len(text) > 2 else None
            if found is not None:
                yield found, text
                at += many - 1
                break
        at += 1


def _harms(method: Method, food: FoodFacts, other: FoodFacts, clause: str, *, mixed: bool) -> bool:
    if other.name in _OF_NO_WEIGHT or re.search(_FROTH, clause):
        return False
    if method is Method.PRESSURE:
        return _not_in_the_mix(food, other, mixed=mixed)
    if other.group in _BY_THE_SPOON and "chocolate" not in other.name:
        return False
    return _lower_in_acid(method, food, other)


def _lower_in_acid(method: Method, food: FoodFacts, other: FoodFacts) -> bool:
    """Whether the other needs acid, or pressure, that this one does not."""
    both = food.acidity is other.acidity is Acidity.ACIDIFIED
    return method is not Method.PRESSURE and other.acidity is not Acidity.ACID and not both


def _not_in_the_mix(food: FoodFacts, other: FoodFacts, *, mixed: bool) -> bool:
    """Whether pressure was not tested for both together: soups are, but not with fish, dairy or
    starch; beans of another name are beans."""
    if "soup" in food.classes or food.group is Group.MEAL:
        fish = other.group is Group.FISH or "fish" in other.name or "seafood" in other.name
        return (fish and food.group is not Group.FISH) or other.group in (
            Group.DAIRY, Group.EGG, Group.GRAIN, Group.NUT,
        )  # fmt: skip
    if food.classes & other.classes or not mixed:
        return False
    return other.group in ANIMAL | {Group.VEGETABLE, Group.GRAIN, Group.NUT, Group.FAT}
