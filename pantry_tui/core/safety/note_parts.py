"""How much vinegar and how much water a whole note names, in one clause or in two. For notes in
small letters, numbers in figures.

Quick dill pickles are published with one and a half quarts of vinegar of 5 % to two of water (USDA
AIB 539 of 1994, guide 6), so equal parts are stronger; in a refrigerator equal parts will do
(common practice). Of everything else more vinegar than water is taken to be as a recipe has it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.measured import read_percent
from pantry_tui.core.words import Method

_NUMBER = r"(\d{1,2}(?:\.\d+)?|half an?|half|an?|1)"
_MEASURE = r"(?:(?:cups?|parts?|pints?|quarts?|l|lit\w+|ml|of|a|the) )*"
_OF_VINEGAR = rf"\b{_NUMBER} {_MEASURE}(?:\w+ )?vinegar\b"
_OF_WATER = rf"\b{_NUMBER} {_MEASURE}water\b"
#: A measure has to be the same for both.
_UNIT = r"\b(cup|part|pint|quart|l|lit|ml)\w*\b"
_EQUAL = (
    r"\b(?:equal (?:parts|amounts|vinegar and water|water and vinegar)|half and half|half half|"
    r"50/50|50:50|1 ?(?:to|:) ?1|"
    r"(?:vinegar and water|water and vinegar) (?:equal|half each|the same)|same amount of|"
    r"(?:1|a) of each|half each|water the same|0\.5 and 0\.5)\b"
)
#: Of what says no more than that.
_BRINE_ALONE = (
    r"(?:(?:vinegar|water|brine|cups?|parts?|pints?|quarts?|l|lit\w+|ml|half|and|to|of|each|equal|"
    r"amounts?|same|the|a|an|white|cider|distilled|apple|with|in|mix|plus|is|was|at|"
    r"\d+(?:[./:]\d+)?|"
    r"%|5%|percent|per cent|acid\w*|it|liquid|went|for|1) ?)+"
)
_WEAK = (
    r"\b(?:[0-4](?:\.\d+)?) ?(?:%|per ?cent)|\b(?:weak|home ?made|kombucha|old|rice|wine|"
    r"balsamic)\b|"
    r"\b(?:by|to) (?:taste|eye|feel)\b"
)
_PERCENT = 5.0
_FIVE = r"\b(?:[5-9]|10)(?:\.\d+)? ?(?:%|per ?cent)"


def strong_enough(
    method: Method, food: FoodFacts, said: Mapping[str, str], every: Sequence[tuple[str, str]]
) -> bool:
    """Whether a whole note names as much vinegar to its water as is published, and no weak one;
    `said` is what the record says of its vinegar, which has to be of 5 % where equal parts are of
    a process."""
    note = "; ".join(clause for _, clause in every)
    if "vinegar" not in note or "water" not in note or re.search(_WEAK, note):
        return False
    five = re.search(_FIVE, note) or (read_percent(said.get("vinegar", "")) or 0) >= _PERCENT
    dills = food.name == "dill pickles" and bool(five)
    equal_will_do = method is Method.FRIDGE_PICKLE or dills
    sour, water = re.search(_OF_VINEGAR, note), re.search(_OF_WATER, note)
    if sour and water:
        units = {one[1] for found in (sour, water) for one in re.finditer(_UNIT, found[0])}
        much, little = _number(sour[1]), _number(water[1])
        return len(units) < 2 and (much > little or (much == little and equal_will_do))
    return equal_will_do and re.search(_EQUAL, note) is not None


def is_of_the_brine(clause: str) -> bool:
    """Whether a clause tells of its vinegar and its water, and of nothing else."""
    return re.fullmatch(_BRINE_ALONE, clause) is not None


def _number(told: str) -> float:
    if told.startswith("half"):
        return 0.5
    return 1.0 if told in ("a", "an") else float(told)
