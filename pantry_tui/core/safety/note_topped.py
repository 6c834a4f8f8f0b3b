"""Words of a note that an older pot, jar or brine was topped up, and that a ferment was filled up
with water. For notes in small letters, numbers in figures, one clause at a time. Which words are
listened for is a choice of our own.

What is put to a pot of before is as old as the pot. A crock is topped up with brine, one and a half
tablespoons of salt to a quart (USDA AIB 539, guide 6): water alone makes the brine weaker.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Group, Method

_DAY = r"(?:(?:mon|tues|wednes|thurs|fri|satur|sun|yester)day)"
_MONTH = (
    r"(?:january|february|march|april|may|june|july|august|september|october|november|december|"
    r"spring|summer|autumn|winter|christmas|easter)"
)
_AGO = rf"(?:last (?:week|month|year|time|{_DAY}|{_MONTH})(?:'?s)?)"
_OLD = rf"(?:older|old|left ?over|perpetual|{_AGO}|{_DAY}'?s)"
_POT = (
    r"(?:pots?|jars?|crocks?|tubs?|box(?:es)?|batch|brine|kraut|sauerkraut|stew|soup|stock|oil|"
    r"jam|pan|bottle|pickles?|starter|curry|chill?i|sauce|broth|1|ones?)"
)
_TOP = r"(?:top(?:ped)? up|re ?filled|filled up|kept going|eked out|stretched)"
_TOPPED_UP = (
    rf"\btop(?:ped)? up (?:with )?(?:(?:the|an|our|my|some|a|bit|of|what was left of|rest) )*"
    rf"{_OLD}\b|"
    rf"\b(?:what was left|left ?overs?|the rest|remains|rest) (?:of|from) (?:{_OLD}|"
    rf"{_DAY})\b(?:.*\b(?:new|"
    rf"fresh|more)\b|.*\bin it\b)|"
    rf"\b{_OLD} (?:\w+ ){{0,2}}(?:mixed|stretched|topped up|eked out|stirred in|kept going)\b|"
    rf"\b(?:added|put|stirred|mixed|poured)(?: \w+)? (?:to|into|with|in) (?:the |an |our "
    rf")?{_OLD}\b|"
    rf"\b(?:new|fresh|more)(?: \w+)? (?:in|to|into|on|with) (?:the |an )?{_OLD}\b|\bperpetual\b|"
    r"\btop(?:ped)? up (?:the |our )?\w+ from last\b|"
    rf"\b(?:same|opened|open|started|begun|half full|half empty|always the same)(?: \w+)? {_POT}\b"
    rf"(?:.*\b{_TOP})|"
    rf"\b{_TOP}(?: \w+){{0,2}} (?:the |an? |our |my )?(?:same|opened|started|begun) {_POT}\b|"
    rf"\badded(?: \w+){{0,4}} (?:to|into) (?:the |an? |our |my )?(?:same|opened|started|begun) "
    rf"{_POT}\b|"
    rf"\b{_POT} (?:\w+ )?(?:from|of|since) (?:the )?(?:{_MONTH}|{_AGO}|{_DAY})\b(?=.*\b{_TOP})|"
    rf"\b{_TOP}.*\b{_POT} (?:from|of|since) (?:the )?(?:{_MONTH}|{_AGO})\b|"
    rf"\badded\b.*\b{_POT} (?:from|of|since) (?:the )?(?:{_MONTH}|{_AGO})\b|"
    rf"\b(?:brine|oil|vinegar) (?:is |was )?(?:from|of) (?:the )?(?:{_MONTH}|{_AGO})\b|"
    r"\b(?:pot|jar|crock|stew|soup) (?:has |had |was |is )?(?:been )?(?:going|on the go|kept going)"
    rf" (?:since|for|from)\b|\b(?:same|the) {_POT} kept going\b|\bnever (?:quite )?emptied\b|"
    r"^(?:then |was |it was |all )*topped up (?:again|since|twice|often|now and then|a few times)$|"
    rf"\b{_TOP} (?:again and again|over and over|every (?:day|week)|each (?:day|week)|all "
    r"(?:summer|year|winter))\b|"
    r"\b(?:added|put|stirred|mixed)(?: (?:fresh|new|more|the|some|today's|a|few))+ \w+ (?:to|into|"
    r"with|in) (?:what|the rest|whatever) (?:was |is )?(?:left|that was left)\b|"
    rf"\b(?:re ?filled|topped up) (?:the |a |our |my )?(?:pots?|jars?|crocks?|tubs?)"
    r"(?: up)? with (?:fresh|new|more|this week's|today's) (?!brine|vinegar|oil|liquid|water|sugar|"
    r"salt)\w+|"
    rf"\b(?:rest|some|bit|what was left) of {_AGO} (?:\w+ )?{_POT}\b|"
    rf"\b(?:made|stretched|cooked|eked out|begun|started) (?:up )?(?:with|from|of|on) (?:the |"
    rf"some |"
    rf"a bit of )*{_OLD} (?:\w+ )?{_POT}\b"
)
#: Of a pot of food: more of it, and no garnish.
_MORE_OF_IT = (
    r"\btop(?:ped)? up with (?:(?:some|a|bit|of|the) )*(?:fresh|new|more|today)\b"
    r"(?! (?:cream|herbs?|parsley|basil|pepper|water|milk))"
)
#: Of a jar that is eaten from; while it is filled nobody says so.
_THE_POT = rf"\b(?:topped up|re ?filled) (?:the |my |our )?{_POT}$|\bsame {_POT}; {_TOP}"
#: What a crock is topped up with once more.
_NEW_CROP = (
    r"\b(?:topped up|filled up|re ?filled)(?: \w+)? with (?:fresh|new|more|this week's) "
    r"(?:cabbage|cucumbers?|veg\w*|beans|radish\w*|carrots?|kraut)\b|"
    r"\b(?:new|fresh|more|this week's) (?:cabbage|cucumbers?|veg\w*|kraut) (?:on|on top of|in|into|"
    r"over|to) (?:the )?(?:old|first|half)\b"
)
#: What is taken of day by day, and has a day from which it counts.
_COUNTED = frozenset({Method.MEAL, Method.IN_OIL, Method.FRIDGE_PICKLE, Method.FREEZER_JAM})
_WORKING = frozenset({Method.LACTIC, Method.PASTE})
_WATERED = (
    r"\b(?:topped(?: it| them)?(?: up)?|filled(?: it| them)?(?: up)?|made up|eked out|thinned|"
    r"diluted|stretched|watered|covered)(?: (?:the|it|them|brine|crock|jar|jars|liquid|pot|up|rest|"
    r"down))* (?:with|by|using) (?:(?:plain|tap|fresh|cold|boiled|cooled|just|only|well|rain|"
    r"spring|"
    r"bottled|some|a|bit|cup|of|filtered|the|more|half) )*water\b|"
    r"\b(?:added|adding|poured|splashed|put|tipped)(?: (?:in|on|over|a|an|some|bit|little|cup|cups|"
    r"glass|splash|of|more|plain|tap|half|1|2|3|cold|boiled))* water\b|"
    r"\b(?:plain|tap|just|only) water (?:to|over|on|added|in|poured|instead)\b|"
    r"\bwater (?:on top|over it|added|poured|to cover|to keep|to top)\b|"
    r"\b(?:cups?|glass(?:es)?|splash|pints?|jug) of (?:\w+ )?water (?:to|over|on|in|added|for)\b|"
    r"\b(?:diluted|watered down|thinned|weakened) (?:the |its |our )?brine\b|"
    r"\bbrine (?:was |is )?(?:diluted|watered|thinned|weakened)\b"
)
_NOT_ITS_BRINE = (
    r"\b(?:salt\w*|brine (?:of|at|with) \d|\d(?:\.\d+)? ?%|bags?|weights?|air ?lock|moat|seal|rim|"
    r"gutter|channel|rins\w*|wash\w*|scrub\w*|own water|its water|bath|before eating|to serve|"
    r"soak\w*|ice|evaporat\w*|cools?|fridge|saucer|tray|bucket)\b"
)


def topped_up(method: Method, clause: str, note: str) -> bool:
    """Whether what is younger was put to what is older, in food whose days count from one of them,
    by a clause; all of the `note` may say which pot it was."""
    if method in _WORKING:
        return affirmed(clause, rf"{_TOPPED_UP}|{_NEW_CROP}")
    if method not in _COUNTED:
        return False
    if re.search(_TOPPED_UP, clause):
        return True
    if method is Method.MEAL:
        return re.search(_MORE_OF_IT, clause) is not None
    pot = re.search(_THE_POT, clause) is not None or (
        clause.startswith("topped up") and re.search(rf"\bsame {_POT}\b", note) is not None
    )
    refilled = re.search(r"\bre ?filled$", clause) is not None
    return pot or (refilled and re.search(r"\bnever (?:quite )?emptied\b", note) is not None)


def opened_jar(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether what was in an older jar or pot went into jars that are closed by a process."""
    stirred = "stock" in food.classes or food.group is Group.MEAL
    if method is not Method.JAM and not (stirred and method is Method.PRESSURE):
        return False
    return affirmed(clause, _TOPPED_UP)


def watered(clause: str) -> bool:
    """Whether water without salt was put to a brine."""
    return affirmed(clause, _WATERED) and not re.search(_NOT_ITS_BRINE, clause)
