"""What a note says some of the jars went without: the lemon juice, the salt, their time in the
canner. The record may be right of the others, so that the note is kept beside it; nobody knows
which jar is which, so that none of them is checked. For notes in small letters, numbers in
figures, one clause at a time. Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.acid import ACID_ADDED
from pantry_tui.core.safety.denial import LEFT_OUT, lacking
from pantry_tui.core.safety.note_share import share
from pantry_tui.core.safety.note_words import ACID
from pantry_tui.core.safety.strength import IN_VINEGAR, SALTED
from pantry_tui.core.words import Acidity, Method

_JAR = r"(?:jars?|pints?|quarts?|bottles?|ones?|lot|load|batch|row|layer|half|few|couple|\d+)"
#: Which jars, in words that name no number, or nearly all.
_THOSE = (
    rf"\b(?:last|first|second|third|fourth|fifth|final|other|odd|small|big|bigger|smaller|tall|"
    rf"short|top|bottom|front|back|older|marked|labelled) (?:\d+ |few |couple of |of the )*{_JAR}"
    r"\b(?! (?:of|time|year)\b)|"
    r"\b(?:most|almost all|nearly all|all (?:but|except)|many|a number|a few|part|parts)"
    r"(?: of)?(?: the| my| our)? ?(?:them|jars|pints|quarts|bottles|batch|ones)?\b|"
    r"\b(?:jars?|number|no\.?) (?:#? ?\d+|[a-d])\b(?! (?:of|min))|\bin (?:\d|half|some|several|"
    r"a few|a couple|the last|the first|the other|the rest)$|"
    r"\b(?:the )?(?:rest|others)(?: of (?:them|the jars))?\b|"
    r"^(?:(?:the|at|least|maybe|only) )*(?:\d{1,2}|some|several|half) (?:without|with (?:no|none)|"
    r"lacks?|lacking|missing|minus|w/o)\b"
)
#: Such words and nothing else, which go with the clause before them.
_ONLY_THOSE = (
    r"^(?:(?:so|and|in|for|of|only|just|that is|at least|about|maybe|i think|with|to|from) )*"
    r"(?:(?:the|a|these|those|my) )*"
    r"(?:(?:last|first|other|odd|small|big|\d+|some|few|several|half|couple|0\.5) ?)+"
    r"(?:(?:of (?:them|these|the|my)|jars?|pints?|quarts?|ones?|bottles?) ?)*$"
)
_NONE = r"\b(?:none|without|nothing|no|not|never|missing|lacks?|did not get|got no)\b"
_HAS_IT = r"(?:got|has|have|had|gets|received|were given|went in)"
#: All of them had it but some.
_BUT_SOME = (
    rf"(?:{ACID}|\bsalt)[^;]*\b(?:all|every|each|most)(?: of them| 1| \w*jars?)*,?;? ?"
    r"(?:but|except|save|bar|apart from|;)(?: for| in| not)?(?: the| my)?"
    r"(?: (?:last|first|small|1|2|3|4|5|few|some|other))+(?: (?:of them|jars?|pints?|quarts?|"
    r"ones?))*(?: (?:i|we) (?:think|guess))?(?=$|;)|"
    rf"\bonly \d+(?: of (?:the |them )?\d*| jars?)* {_HAS_IT} (?:the |its |their |any )*"
    rf"(?:\w+ )?{ACID}"
)
_ACID = (
    r"(?:lemon|lime)s?\b(?! (?:peel|zest|rind|grass|balm|thyme|verbena|basil|slices?|wedges?|"
    r"pepper|pith|leaf|leaves|taste|flavou?r)\b)|citric|acid(?!s|ic|ity)(?! (?:taste|smell))|"
    r"vinegar(?! (?:taste|flavou?r|smell))"
)
_SALT = r"salt\b(?! (?:pork|cod|fish|beef|water|crust|taste|flavou?r|at (?:the )?table))"
_PROCESS = r"process(?:ed|ing)?\b(?! (?:sugar|cheese))|(?:water )?bath(?:ed)?\b|canned\b"
_THINGS = rf"{_ACID}|{_SALT}|sugar\b|{_PROCESS}|seal(?:ed)?\b"


def some_lack(every: Sequence[str]) -> list[int]:
    """("forgot the lemon juice in 2 of them", "lovely") -> [0]. Which clauses say that some of the
    jars, and not all, went without what keeps them."""
    found = []
    for at, clause in enumerate(every):
        after = every[at + 1] if at + 1 < len(every) else ""
        of_them = _of_some(after) and bool(re.search(_ONLY_THOSE, after) or re.search(_NONE, after))
        if lacking(clause, _THINGS) and (_of_some(clause) or of_them):
            found.append(at)
    return found


def lacks_in_some(method: Method, food: FoodFacts, every: Sequence[str]) -> str | None:
    """The key of what some of the jars lack, "" of what no key says; None where none does, or
    where it keeps none of them."""
    told = [every[at] for at in some_lack(every)]
    together = "; ".join(every)
    if re.search(_BUT_SOME, together) and not re.search(rf"\b{LEFT_OUT}\b", together):
        told.append("without lemon" if re.search(ACID, together) else "without salt")
    sour = food.acidity is Acidity.ACIDIFIED or ACID_ADDED in food.classes
    for clause in told:
        if method in IN_VINEGAR and lacking(clause, "vinegar"):
            return "vinegar"
        needs_acid = (sour and method in LIDDED) or method is Method.VINEGAR_PICKLE
        if needs_acid and lacking(clause, _ACID):
            return "acid"
        if method in SALTED and lacking(clause, _SALT):
            return "salt"
        if method in LIDDED and lacking(clause, _PROCESS):
            return ""
    return None


def _of_some(clause: str) -> bool:
    return share(clause) > 0 or re.search(_THOSE, clause) is not None
