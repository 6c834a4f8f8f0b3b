"""Words of a note that dry beans were neither soaked nor boiled. For notes in small letters, one
clause at a time. Which words are listened for is a choice of our own.

Raw kidney beans are poisonous, and more so as a slow cooker warms them (US FDA, Bad Bug Book, on
phytohaemagglutinin: boiled 30 minutes; from memory). Of dry beans in jars every process is tested
with beans that were soaked and boiled for half an hour (USDA AIB 539, guide 4): dry ones drink the
water off, and are heated less.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.keeping.harm import is_dry
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import DENIED, affirmed
from pantry_tui.core.words import Method

#: Of these nobody gets ill, or they were cooked in their tin.
_OTHER_BEANS = (
    r"\b(?:green|runner|broad|french|string|snap|wax|baked|tinned|canned|jarred|cooked|jelly|"
    r"coffee|cocoa|vanilla|soya? ?bean sprouts?|bean sprouts?|butter) beans?\b|"
    r"\b(?:tins?|cans?|jars?) of (?:\w+ ){0,2}beans\b|\bno beans\b|\bwithout beans\b|"
    r"\bbeans (?:(?:are|were|is|was|all|came|straight) )*(?:from|out of) (?:a |the )?(?:tins?|"
    r"cans?|jars?)\b|\bgreen beans\b"
)
_BEANS = r"\bbeans?\b"
_SLOW = (
    r"\b(?:slow(?:ly)? cook\w*|crock ?pot|multi ?cooker|on (?:the )?low(?: setting)?\b|hay ?box|"
    r"thermos|sous ?vide|wonder ?bag)"
)
_UNBOILED = (
    rf"\b(?:{DENIED}|without)(?: \w+)? boil\w*(?! (?:over|dry|down|away|enough water))|"
    r"\bun ?boiled\b|\b(?:skipped|forgot|left out) (?:the |to )?boil\w*"
)
_RAW = (
    r"\b(?:raw|uncooked|un ?soaked|from dry|dry|dried|straight (?:in|into)|not (?:cooked|soaked)|"
    r"soaked (?:only|then|and))\b"
)
_STILL_HARD = (
    r"\bbeans? (?:(?:is|are|were|was|a|bit|still|rather|quite|all|some) )*(?:hard|firm|crunchy|"
    r"raw|chalky|tough)\b"
)
#: So short a clause goes on with what stands before it.
_FEW_WORDS = 5
_BOILED = r"\bboil(?:ed|ing)?\b"
_UNSOAKED = (
    rf"\b(?:{DENIED}|no|without|skip\w*|forgot\w*|instead of|too late to|left out|omitted|time to)"
    r"(?: (?:the|a|any|to|have|time|them|beans|it|long|over ?night|been|were|was|enough|really))* "
    r"(?:pre ?)?soak(?:ed|ing)?\b(?! (?:water|liquid|up))|\bun ?soaked\b|"
    r"\bsoak(?:ing)? (?:was |were )?(?:forgotten|skipped|left out|omitted|missed)\b|"
    r"\b(?:raw|dry|dried|uncooked)(?: \w+){0,2} (?:straight |right |directly )?(?:in|into) (?:the |"
    r"each |every |my )?jars?\b|\bpacked (?:\w+ )?dry\b|\bstraight (?:from the (?:bag|sack|pack) )?"
    r"(?:in|into) the jars?\b"
)
_SOAKED = r"(?<!not )(?<!never )(?<!un)\bsoaked (?:over ?night|\d|for|all|since|the night|first)"


def raw_beans(method: Method, food: FoodFacts, clause: str, note: str) -> bool:
    """Whether dry beans in a dish were never boiled, by a clause in all of its `note`."""
    own = "bean" in food.classes and is_dry(food)
    told = re.sub(_OTHER_BEANS, " ", note)
    if method not in (Method.MEAL, Method.FROZEN) or not (own or re.search(_BEANS, told)):
        return False
    clause = re.sub(_OTHER_BEANS, " ", clause)
    short = len(clause.split()) < _FEW_WORDS
    of_them = own or short or re.search(rf"{_BEANS}|\bthem\b", clause) is not None
    unboiled = affirmed(clause, rf"(?:{_UNBOILED})") or re.search(_UNBOILED, clause) is not None
    dish = method is Method.MEAL or re.search(_SLOW, told) is not None
    if unboiled and dish and of_them:
        return True
    boiled = affirmed(re.sub(_UNBOILED, " ", told), _BOILED)
    if re.search(_SLOW, told) is None or boiled:
        return False
    return of_them and re.search(rf"{_RAW}|{_STILL_HARD}", clause) is not None


def unsoaked(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether dry beans went into jars as they were."""
    dry = "bean" in food.classes and is_dry(food)
    if method not in PROCESSED or not dry or re.search(_SOAKED, clause):
        return False
    return re.search(_UNSOAKED, clause) is not None


def of_the_soak(food: FoodFacts, clause: str, before: str) -> bool:
    """Whether a time is that of their soaking."""
    dry = "bean" in food.classes and is_dry(food)
    soak = r"\bsoak"
    return dry and re.search(soak, clause if re.search(soak, clause) else before) is not None
