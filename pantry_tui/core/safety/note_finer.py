"""What a note says of meat, fish, ham or cheese that was cut finer than its record has it: minced,
stuffed, sliced, grated. For what was done to a batch (note_states.py), in small letters. Which
words are listened for is a choice of our own.

Minced and stuffed raw meat, and meat in cubes, keeps one day in the refrigerator, where a roast
keeps three, and sliced ham three (foodsafety.gov, Cold Food Storage Chart, USDA FSIS for stew meat,
from memory; data/keeping.csv).
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Group

#: The ham and sausage of which slices are lunch meat, as their heads are in data/heads.csv.
_COLD_CUTS = frozenset(
    {"hams", "canadian bacon", "corned beef", "pastrami", "summer sausages", "hard sausages",
     "lunch meats"}
)  # fmt: skip
_CHEESE = r"\b(?:hard |soft |goat |blue |vegan )?cheeses?\b"
#: What is rubbed on it, or lies beside it, is minced too.
_OF_ELSE = (
    r"(?! (?:ginger|garlic|onions?|herbs?|parsley|cumin|coriander|pepper|spices?|allspice|cloves|"
    r"cinnamon|mustard|nutmeg|chill?i\w*|shallots?|up (?:herbs|spices)|almonds?|nuts?|coffee|"
    r"floor|feed|beef for|corn|level|bait|breeding))"
)
_MINCED = (
    rf"\b(?:minced|ground|"
    rf"mince(?:meat)?(?= *$| now)|hamburgers?|burgers?|meat ?balls?|patties|tartare?|"
    rf"sausage ?meat|chopped (?:up )?(?:fine\w*|small)|finely chopped)\b{_OF_ELSE}|"
    r"\b(?:through|into|in) (?:the |a |our )?(?:mincer|grinder|meat grinder|food processor)\b"
)
#: Stew meat.
_CUBED = (
    r"\b(?:diced|cubed|cut (?:up )?(?:in)?to (?:\w+ )?(?:cubes|dice|chunks)|in (?:\w+ )?(?:cubes|"
    rf"chunks))\b{_OF_ELSE}"
)
#: The verb or the thing alone, so that no "mince half of it" and no "rubbed with ground cumin".
_SO = (
    r"^(?:(?:it|all|half|some|of|this|that|these|they|the|meat|beef|pork|lamb|now|already|home|"
    r"freshly|coarsely|finely|coarse|fine|put|run|went|is|are|was|were|been|has|have|had|cut|made|"
    r"turned|part|partly|most|\d+|lb|g|kg|into|in|to|as|for me|we|i|butcher|himself|up|through|by) "
    r")*"
)
_ENDS = (
    r"(?= *$| (?:up|at|by|on|in|it|them|all|this|that|myself|ourselves|now|of (?:it|them)|today|"
    r"yesterday|already|"
    r"fresh\w*|fine\w*|coarse\w*|twice|once|half|some|with (?:the|our|my) (?:mincer|grinder)|and|"
    r"for|the (?:meat|beef|pork|lamb|lot|rest)|(?:mon|tues|wednes|thurs|fri|satur|sun)day|this|"
    r"last)\b)"
)
_STUFFED = (
    r"\b(?:stuffed|filled)\b(?= *$| (?:with|and|it|them|full|already|today|for|by|raw|the)\b)"
    r"(?! (?:in(?:to)?|it in|them in)\b)|\bstuffing (?:is |was |already |all )*(?:in|inside)\b|"
    r"\b(?:with|has|have|had) (?:the |its |a |some |bread |sage )*(?:stuffing|"
    r"filling)(?: in(?:side)?)?$"
)
_SLICED = (
    r"\b(?:sliced|shaved|carved|spiral(?: ?(?:cut|sliced))?|cut (?:up|in(?:to)? (?:\w+ )?slices|at "
    r"the|by the|thin|thick)|(?:deli|counter) (?:cut|sliced)|cut at (?:the |a )?(?:deli|counter|"
    r"shop)|diced|cubed|chopped|in (?:\w+ )?(?:slices|cubes|pieces)|slices)\b"
)
_GRATED = r"\b(?:grated|shredded|crumbled|in crumbs)\b"
#: A taste of it, or another thing beside it.
_SAMPLE = (
    r"\b(?:sliced|shaved|carved|cut|diced|chopped|grated|shredded) (?:1|an?|some|few|another|off|"
    r"back)\b|"
    r"\b(?:onions?|garlic|herbs?|apples?|sacking|paper|cloth)\b"
)
_TO_COME = r"\b(?:well|thinly when|easily|nicely|beautifully|noodles?|pasta)\b"


def finer(food: FoodFacts, done: str) -> str:
    """How it was cut: "minced", "cubed", "stuffed", "sliced" or "grated"; "" where no word says
    more than the name of the food."""
    if food.group in (Group.MEAT, Group.FISH):
        raw = not food.classes & {"ground-meat", "raw-stuffed", "jerky"}
        if food.name in _COLD_CUTS:
            cut = affirmed(done, _SLICED) and not re.search(rf"{_TO_COME}|{_SAMPLE}", done)
            return "sliced" if cut else ""
        if raw and affirmed(done, _STUFFED):
            return "stuffed"
        ground = re.search(rf"{_SO}(?:{_MINCED}){_ENDS}", done)
        if raw and ground and affirmed(done, _MINCED):
            return "minced"
        cubed = re.search(rf"{_SO}(?:{_CUBED}){_ENDS}", done)
        return "cubed" if raw and cubed and affirmed(done, _CUBED) else ""
    if food.group is Group.DAIRY and re.search(_CHEESE, food.name):
        if re.search(_SAMPLE, done):
            return ""
        told = re.sub(_TO_COME, " never ", done)
        if affirmed(told, _GRATED):
            return "grated"
        return "sliced" if affirmed(told, _SLICED) and told == done else ""
    return ""
