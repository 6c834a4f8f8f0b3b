"""How many a note speaks of: one lid of seven, some potatoes of a sack. For notes in small letters
with every number in figures, one clause at a time; which words are listened for is our own choice.

What is said of some jars is held against all of them until somebody says which: each may be that
one. What is said of some pieces of a pile is said of those (core.safety.sisters).
"""

from __future__ import annotations

import re

from pantry_tui.core.keeping.harm import is_dry
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_spoilage import FLOOD, GONE_BAD, ILL, NERVES
from pantry_tui.core.safety.sisters import lies_loose
from pantry_tui.core.words import Group

#: Said of so many that nobody sorts them.
_OF_ALL = (
    r"\b(?:most(?:ly)?|all|every\w*|each|whole|entire(?:ly)?|nearly|almost|both|throughout|"
    r"through and through|the lot|(?:more than|over|at least) (?:half|0\.5)|[5-9]\d ?%|100 ?%)"
    r"(?!\w)"
)
#: The number behind these is not how many they are.
_NOBODY_SAYS = (
    r"\b(?:all but|all except|more|not (?:just|only)|dozens?|every|second|another|at least|"
    r"maybe|perhaps|or so|by one|various|many|lots|most|nearly|almost)\b"
)
_FEW = (
    r"(?:some|few|several|a couple|a handful|half|0\.5|the odd|an odd|"
    r"the other|(?<![\d.])\d{1,3})"
)
#: A figure of something else: days, weights, degrees.
_NO_MEASURE = (
    r"(?! ?(?:%|°|days?|weeks?|months?|years?|hours?|minutes?|min|h|d|lbs?|pounds?|oz|kg|g|psi|"
    r"inch(?:es)?|cm|mm|[cf]|times?|side|end)\b)(?![.\d])"
)
_VESSEL = (
    r"(?:lids?|jars?|pints?|quarts?|bottles?|bags?|packs?|packets?|tubs?|box(?:es)?|tins?|cans?|"
    r"pouch(?:es)?|"
    r"cartons?|parcels?|seals?|caps?|tops?|ones?|others?)"
)
_VERB = (
    r"(?:is|are|was|were|has|have|had|did|do|does|went|got|gone|came|come|lost|turned|looks?|"
    r"smell\w*|smelt|popped|pop|bulg\w*|leak\w*|fizz\w*|burst|explod\w*|fail\w*|broke|never|not)"
)
#: "One lid", "two of them", "a few have", "mould on one".
_JARS = (
    rf"\b{_FEW}{_NO_MEASURE}(?: (?:of (?:them|these|those|the|my|our)\b|"
    rf"(?:\w+ )?{_VESSEL}\b|{_VERB}\b))|"
    rf"\b{_FEW}(?: of (?:them|these|the \w+))?$"
)
#: Where on it, or where in the heap.
_SPOT = (
    r"\b(?:at|on|in|from|round|around|near|along) (?:the |1 |its |their |a )*(?:very )?"
    r"(?:tips?|ends?|necks?|bottoms?|top|edges?|corners?|sides?|middle|stem|base|outside)\b|"
    r"\b(?:here and there|in places|the bottom (?:ones|layer)|patch\w*|spots?|starting|"
    r"beginning)\b"
)
_PIECES = rf"\b{_FEW}{_NO_MEASURE}\b|{_SPOT}"
#: Soft is ripe of most fruit; of these it is where a rot begins (data/signs.csv).
_SOFT = (
    r"\b(?:gone|went|going|goes|getting|got|turn\w*|are|is|were|was|bit|quite|very|few|some|"
    r"feel\w*|"
    r"felt|became|become|start\w*|already)(?: (?:a|bit|little|quite|very|all|rather|to|go))* "
    r"(?:soft\w*|mushy|squishy|spongy)\b|"
    r"\b(?:soft|mushy|squishy|sunken) (?:spots?|patch\w*|places?|ends?|tips?|necks?|ones?|bits?|at|"
    r"in places)\b|^(?:all )?(?:soft(?:en\w*)?|mushy|squishy)$|\bcollaps\w*|"
    r"\band (?:soft|mushy|squishy)\b|\bto (?:mush|pulp|slime)\b|"
    r"\b(?:wet|black|brown)(?: and \w+)? (?:in the (?:middle|heart|core)|inside|"
    r"at the (?:core|neck))\b"
)
_SOFT_WELL = r"\b(?:when cooked|cooked|boiled|mashed|soil|sand|soften\w* (?:up )?in|skins?)\b"


#: An hour of the day, and no number of jars.
_CLOCK = r"\d{1,2}(?::[0-5]\d)?(?: ?(?:[ap]m|o'clock))?"
_HOUR = (
    rf"(?: from \S+| (?:from )?{_CLOCK})? (?:to|till|until|at|since|by|before|after) {_CLOCK}$|"
    rf"\b(?:from|since|between) {_CLOCK} (?:to|till|until|and) {_CLOCK}\b"
    rf"(?! (?:{_VESSEL}|of (?:them|these|the))\b)|"
    r"\b\d{1,2}(?::[0-5]\d(?:[ap]m)?| ?(?:[ap]m|o'clock))\b"
)
#: "2 of 8", "2 out of the 8": how many there were is no number of those that are meant.
_OUT_OF = r"\b(\d{1,3}) ?(?:/|(?:out )?of) ?(?:the |my |our |these |those |all )?(\d{1,3})\b(?!/)"


def _of_them(clause: str) -> str:
    """("2 of 8 never sealed") -> "2 of them never sealed", and of 8 of 8 "all"."""
    return re.sub(_OUT_OF, lambda x: f"{x[1]} of them" if int(x[1]) < int(x[2]) else "all", clause)


def share(clause: str) -> int:
    """("1 lid popped up") -> 1, ("some are fizzing") -> 2. At least how many of several containers
    a clause speaks of; 0 where it speaks of all, or of no number."""
    clause = re.sub(_HOUR, "", _of_them(clause))
    if re.search(_OF_ALL, clause) or not (found := re.search(_JARS, clause)):
        return 0
    figure = re.search(r"\d+", re.sub(r"0\.5", " ", found[0]))
    return int(figure[0]) if figure else 2


def how_many(note: str) -> int | None:
    """At least how many containers all of a note speaks of, its numbers taken together ("one popped
    Monday, one Tuesday" is two); None where it leaves open how many more."""
    from pantry_tui.core.safety.notes import clauses  # which reads clauses with this module

    if re.search(_NOBODY_SAYS, note.casefold()):
        return None
    told = (re.sub(_HOUR, " ", clause) for _, clause in clauses(note))
    plain = _of_them("; ".join(told))
    figures = (re.search(r"\d+", one[0]) for one in re.finditer(rf"\b{_FEW}{_NO_MEASURE}", plain))
    return sum(2 if one is None else int(one[0]) for one in figures)


def to_cull(batch: Batch, clause: str) -> bool:
    """Whether it is bad pieces of a pile that a clause speaks of, which are taken out."""
    if not lies_loose(batch) or re.search(rf"{_OF_ALL}|{FLOOD}|{ILL}|{NERVES}", clause):
        return False
    if is_dry(batch.food) or "nut" in batch.food.classes:  # mouldy kernels are never sorted
        return False
    if re.search(_PIECES, clause):
        bad = rf"{words.SPOILT}|{GONE_BAD}"
        seen = words.SHELL_BROKEN if batch.food.group is Group.EGG else bad
        told = re.sub(words.SO_OF_ITSELF, " ", clause)
        if affirmed(told, seen) and not re.search(words.NOT_SPOILT, clause):
            return not re.search(words.CULLED, clause)
    return _goes_soft(batch.food) and affirmed(clause, _SOFT) and not re.search(_SOFT_WELL, clause)


def _goes_soft(food: FoodFacts) -> bool:
    hard = food.group is Group.VEGETABLE and "tomato" not in food.classes
    return hard or food.name == "apples"
