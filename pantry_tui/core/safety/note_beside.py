"""What a note says beside the food, in words that a fault has as well: where the jars stand, whose
seed it was, what is on a label, what the food is for, who is ill at home, and what is gone since.
Taken out of a note before any of it is read; for notes in small letters, numbers in figures, one
clause at a time beside all of it.

No publication is about notes. Food that stayed frozen hard is as it was, and a freezer that is kept
shut holds for a day when it is half full (USDA FSIS, Freezing and Food Safety; Keep your food safe
during emergencies).
"""

from __future__ import annotations

import re

#: What warms, wets, soils or gnaws what stands beside it, or is spoilt itself.
_HARM = (
    r"\b(?:stove|oven|cooker|range|radiator|heater|heating|boiler|furnace|chimney|flue|pipes?|fire"
    r"\w*|hot|warm\w*|sun\w*|window\w*|raw|drip\w*|thaw\w*|damp|wet|flood\w*|drains?|sewage|"
    r"mou?ld\w*|rot\w*|spoil\w*|bad|off|leak\w*|burst|broken|bulg\w*|swollen|open\w*|dead|smell\w*|"
    r"mouse|mice|rats?|droppings|nest|moths?|weevil\w*|ants|bait|poison\w*|paint\w*|bleach|petrol|"
    r"chemicals?|table|counter|worktop|kettle|sink|car|boot|trunk|garden|porch|steps?|bed|sofa|desk|"
    r"garage|shed|tent|bench|pool|grill|barbecue|outside|outdoors|jars? that|ones? that|1 that|and|"
    r"with|in|into|inside|of|from)\b"
)
_SHELF = (
    r"(?:shel(?:f|ves)|cupboards?|racks?|rows?|corner|crates?|hand side|larder|pantry|cellar|box|"
    r"door|wall|stack|pile)"
)
_STANDS = (
    rf"^(?:(?:{_SHELF}|they|it|is|are|kept|stands?|standing|stored|stacked|on|at|the|top|bottom|"
    rf"(?:left|right)(?= (?:hand|{_SHELF}))|hand|back|front|upper|lower|middle|far|just|all|up|low|"
    r"high) )*"
)
#: A thing of the larder that stands before the jars, and none that is in them: nothing is put
#: "behind" another in a jar, and what lies "under" fat or oil may be in it.
_WHERE = (
    rf"{_STANDS}(?:behind|in front of|next to|beside|to the (?:left|right) of) "
    rf"(?:(?:the|our|my|all|big|old|little|other) )*(?P<thing>\w+(?: \w+){{0,3}})$"
)
#: People, who may be called anything.
_NAMED = r"\b(?:mr|mrs|ms|dr)\b\.? (?!said|says|thinks?|found|told)\w+(?:'s)?"
_PEST = r"(?:mouse|mice|rat|moth|bee|fly|ant|spider|beetle|bug|worm|snail|slug|wasp|squirrel)s?"
_DRAWN = r"(?:pictures?|drawings?|stickers?|stamps?|paintings?|logos?)"
_PICTURED = (
    rf"\b{_DRAWN} (?:of|with) (?:(?:a|an|the|1|little|small|big|2|3) )*{_PEST}\b|"
    rf"\b{_PEST} {_DRAWN}\b"
)
#: A jar that has its name of that.
_CALLED = (
    rf"^(?:(?:it|is|in|this|the|a|our|old|my|big|small) )*{_PEST} (?:jars?|tins?|pots?|box|tub)$"
)
_AFTER_IT = (
    rf"(?:^|; )(?:(?:so|is|it|called|named) )*(?:after|for|because of) (?:the|its) {_DRAWN}"
    r"(?: (?:on|of) (?:it|the (?:label|lid|front|side|jar|tin)))?(?:$|;)"
)
#: What eats cloth, or wood, is in neither food nor tin.
_WORN = (
    r"\bmoth ?eaten (?:old )?(?:tins?|blankets?|cloth|rugs?|coats?|curtains?|cushions?|jumpers?|"
    r"cosy|cosies|books?)\b|"
    r"\bworm ?eaten (?:old )?(?:shel(?:f|ves)|table|dresser|cupboard|beams?|barrel|bench|door)\b"
)
#: What is to be done with it one day: not a state that it is in.
_FOR_IT = (
    r"\b(?:for|ready for|worth) (?:cracking|peeling|opening|thawing)\b(?! (?:open|already|now))|"
    r"^(?:then |please |we |to )*crack (?:them|these|it|all|2|3|4|5|6) (?:straight )?(?:in(?:to)?|"
    r"for|over|onto|on) (?:the |a |our |my )?(?!(?:\w+ )?(?:jars?|tubs?|bowls?|cups?|box(?:es)?|"
    r"bags?|dish|glass|jug)\b)"
)
#: Whom it is kept for.
_KEPT_FOR = (
    r"^(?:(?:to|1|2|3|\w+ (?:jar|box|bag|pack|tub)|(?:jar|box|bag|pack|tub)|please|all|this|these|"
    r"it|them|is|are) )*(?:keep|kept|save|saved|saving|set aside|put by|put aside|reserved?|take|"
    r"meant|cook|bring)(?: (?:it|this|them|these|1|2|some|all))? (?:for|to) \w+(?: \w+)?$"
)
_WHO_IS_ILL = (
    r"^(?:as |since |because |who |while )*(?:she|he|they|who|her \w+|his \w+)(?: is| are|'s|'re) "
    r"(?:still |very |rather |a bit |quite )*(?:ill|sick|poorly)(?: (?:in bed|at home|again|this "
    r"week|at the moment|with (?:a |the )?(?:cold|flu|measles|fever)))*$"
)
_EATEN = r"\b(?:ate|eat\w*|tast\w*|tried|after|since|had|gave|given|from|made|threw|vomit\w*)\b"
#: What had thawed and is with the rest no more.
_THAWED_AND_GONE = (
    r"^(?:(?:the|all|both|few|any|half|part|partly|\d+) )*(?:thawed|defrosted|softened|soft|melted)"
    r"(?: out)? (?:ones?|1|1s|bags?|packs?|box(?:es)?|pieces)(?: (?:at|on|near) the (?:top|door|"
    r"bottom|front|back))?(?: (?:are|is|were|was|have|has|been|got|all|already))* (?:gone|used(?: "
    r"up)?|eaten(?: up)?|cooked|thrown (?:out|away)|binned|discarded|finished|taken out)$"
)
#: For how long a freezer surely holds.
_HELD_HOURS = 24
_POWER_OUT = (
    r"^(?:the )?(?:power|electricity|current|freezer|chest)(?: cut)?(?: (?:was|went|had been|has "
    r"been))? (?:out|off|down|cut|gone)? ?(?:for )?(?:(?:about|only|just|some|nearly|under) )*"
    r"(\d+(?:\.\d+)?|an?|half an|a few) (?:minutes?|mins?|hours?|hrs?)$"
)
_STAYED_HARD = (
    r"(?:^|; )(?:(?:all|everything|it|they|meat|food|and|but|the|bags|packs) )*(?:(?:was|were|is|"
    r"are) still|stayed|remained|kept|still)(?: (?:all|rock|fully|quite|hard|solid\w*))* "
    r"(?:frozen|rock hard|rock solid)(?: (?:hard|solid|through|throughout|all the time))?(?:$|;)"
)
_NOT_ALL = r"\b(?:not|soft\w*|thaw\w*|melt\w*|drip\w*|except|most\w*|nearly|almost|some|wet|but)\b"


def without_what_is_beside(clause: str, note: str) -> str:
    """The clause without what is said of something else; `note`: all of its clauses."""
    stands = re.fullmatch(_WHERE, clause)
    if stands and not re.search(_HARM, stands["thing"]):
        return "on a shelf"
    if re.search(_CALLED, clause) and re.search(_AFTER_IT, note):
        return ""
    if re.search(_WHO_IS_ILL, clause) and _kept_for_somebody(note):
        return ""
    if re.search(_THAWED_AND_GONE, clause):
        return ""
    if _held(clause, note):
        return ""
    return re.sub(rf"{_NAMED}|{_PICTURED}|{_WORN}|{_FOR_IT}", " for it ", clause).strip()


def _kept_for_somebody(note: str) -> bool:
    every = note.split("; ")
    return any(re.search(_KEPT_FOR, one) for one in every) and not re.search(_EATEN, note)


def _held(clause: str, note: str) -> bool:
    """Whether the power failed for no longer than a freezer holds, and all of it stayed hard."""
    cut = re.search(_POWER_OUT, clause)
    if cut is None or re.search(_NOT_ALL, note) or not re.search(_STAYED_HARD, note):
        return False
    return not cut[1][0].isdigit() or float(cut[1]) <= _HELD_HOURS or "min" in clause
