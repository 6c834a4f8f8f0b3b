"""Words of a note that jars were spoilt, or cracked, when they were put up, for notes in small
letters, one clause at a time. What each means on a jar: data/signs.csv, with its publications."""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Method

#: How what is spoilt smells.
OFF = (
    r"(?:off|bad|foul|funny|weird|odd|strange|wrong|awful|horrible|nasty|rott(?:en|ing)|putrid|"
    r"rancid|musty|mou?ldy|yeasty|boozy|(?:like|of) (?:cheese|paint|putty|ammonia|vomit|feet|eggs|"
    r"rot\w*|sulphur|sulfur|sewage|mou?ld|beer|yeast|alcohol))"
)
_SPOILT = (
    r"\b(?:mou?ld(?:y|s|ed|ing)?|fuzz\w*|furry|slim[ey]\w*|putrid|rancid|stinks?|stinking|stank|"
    r"reeks?|swollen lids?|lids? (?:\w+ )?(?:swollen|swelled|domed)|bulg\w*|leak\w*|seep\w*|ooz\w*|"
    r"spurt\w*|gush\w*|fizz\w*|spoil(?:ed|t)(?! for)|rott?(?:en|ing|ed)|fermenting|"
    r"(?:start|began|begun)\w* (?:to |of )?ferment\w*|"
    r"(?:gone|going|went) (?:off(?! the)|bad|sour))\b|"
    rf"\b(?:smell\w*|smelt|odou?r)(?: \w+){{0,3}} {OFF}\b|\b{OFF} (?:smell|odou?r)"
)
SOURED = r"\b(?:smell\w*|smelt)(?: \w+){0,3} sour\b|\bsour smell"
_GAS = r"\b(?:hiss\w*|bubbl\w*|foam(?:s|y|ing)|froth\w*)\b"
#: Steam hisses, what boils bubbles and foams, and air bubbles are let out with a knife.
_GAS_OF_ELSE = (
    r"\b(?:canner|steam|weight|valve|gauge|air|remov\w*|knife|pot|pan|hot|fill\w*|pour\w*|boil\w*|"
    r"cook\w*|skim\w*|stir\w*|heat\w*|water|free|wrap|pectin|butter|released?|jiggl\w*)\b"
)
_GLASS = (
    r"\bcrack\w* (?:\w+ )?(?:jars?|glass|rims?|lids?|bottles?)\b|"
    r"\b(?:jars?|glass|rims?|bottles?)(?: \w+){0,3} (?:crack\w*|chip(?:s|ped)?)\b|"
    r"\bchip\w* (?:on |in |at |the )*(?:rims?|jars?|glass)|\bhair ?line crack"
)
#: Bells and power go off; spoilt fruit was sorted out, and the canner or its gasket leaks steam.
_OF_ELSE = (
    r"\b(?:threw|thrown|throw|toss\w*|sort\w*|culled|discard\w*|compost\w*|picked out|timer|alarm|"
    r"for (?:chips|cracks)|bell|lights?|"
    r"(?:steam|water|gasket|canner|valve) leak\w*|leaky|tap|hens?|pigs?)\b"
)


#: What stood in flood water (data/signs.csv); a bed that was flooded is none.
FLOOD = (
    r"\bflood\w*|\b(?:creek|river|sea|sewage|sewer|drains?|storm ?water|high water)"
    r"(?: water)? (?:came|rose|got|went|reached|backed|ran)\b|\b(?:was|were|stood|sat|lay) under "
    r"(?:the )?water\b"
)
OF_THE_LAND = r"\b(?:beds?|garden|fields?|allotment|plot|patch|canner|boil\w*|brine|process\w*)\b"


def spoilt(method: Method, clause: str) -> bool:
    """Whether the words say that the food was spoilt, or the glass cracked."""
    if re.search(_OF_ELSE, clause):
        return False
    if affirmed(clause, FLOOD) and not re.search(OF_THE_LAND, clause):
        return True
    if affirmed(clause, _SPOILT) or affirmed(clause, _GLASS):
        return True
    if method is not Method.VINEGAR_PICKLE and affirmed(clause, SOURED):
        return True
    return affirmed(clause, _GAS) and not re.search(_GAS_OF_ELSE, clause)
