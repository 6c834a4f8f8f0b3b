"""Words of a note that dried food is soft or damp again, or never got hard where it must: fruit is
dry while it is leathery and shows no moisture, most vegetables and all herbs when they are brittle
(University of Georgia Extension, Preserving food: drying fruits and vegetables; the tests of
data/drying.csv). For notes in small letters, one clause at a time. Which words are listened for is
a choice of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import DENIED, affirmed
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.words import Group

_HARD = r"(?:leathery|hard|crisp\w*|brittle|dry|snappy|stiff|crunchy|rattl\w+)"
_SO = r"(?:(?:a|bit|little|all|rather|quite|very|too|so|rather|soft and|limp and) )*"
_SOFTER = (
    rf"\bno longer {_SO}{_HARD}\b|\b{DENIED} {_SO}{_HARD} (?:any ?more|now|since)\b|"
    r"\blost (?:its|their|the|all) (?:\w+ )?(?:crunch\w*|crisp\w*|snap|rattle)\b|"
    rf"\b(?:gone|went|got|turned|going|became|are|is|feels?|felt|were|was|come) {_SO}(?:limp|"
    r"floppy|clammy|soggy|spongy|squishy|mushy)\b|"
    r"\b(?:drew|draws?|drawn|drawing|took on|took in|taken on|takes on|pulled|sucked up|soaked up)"
    r"(?: (?:in|up|some|a lot of|much|the))* (?:water|moisture|damp|wet)\b|"
    r"\b(?:sticky|soft|limp|clammy) and (?:wet|damp|soft|moist|soggy)\b|"
    r"\b(?:wet|damp|moist|clammy|soggy) to the touch\b|\b(?:juice|water) (?:came|ran|runs|comes|"
    r"oozed)\b|\b(?:soft|limp|bendy|pliable|rubbery|leathery|flexible|damp) again\b|"
    r"\b(?:more |almost |nearly |just )?like fresh(?: ones)?$"
)
#: Of what must break.
_BENDS = (
    r"\b(?:bends?|bendy|bending|bendable|pliable|leathery|rubbery|flexible|flex(?:es)?|gummy|"
    r"floppy)\b|"
    rf"\b(?:are|is|feels?|felt|still|too|quite|very|bit|some|went|got|gone|stay\w*) {_SO}(?:soft|"
    r"chewy|limp)\b|^(?:chewy|limp|soft)(?=$| (?:and|now|again|already|to)\b)|"
    rf"\b{DENIED} {_SO}(?:snap\w*|break\w*|crumbl\w*|crack\w*|crunch\w*|rattl\w*|brittle|crisp)\b|"
    r"\binstead of (?:snapp|break|crack|crumbl)ing\b"
)
_MUST_BREAK = frozenset({
    "snap beans", "runner beans", "beets", "broccoli", "celery", "sweet corn", "garlic", "spinach",
    "chard", "kale", "horseradish", "okra", "onions", "peas", "potatoes",
})  # fmt: skip
#: It breaks, it is in a pot, or was dried again since.
_BREAKS = (
    r"(?<!not )(?<!never )(?<!no )(?<!hardly )\b(?:snap(?:s|ped)?|breaks?|cracks?|crumbles?|"
    r"rattles?)\b"
)
_OF_ELSE = (
    r"\b(?:soup|stew|pot|soak\w*|cook\w*|boil\w*|simmer\w*|soften\w*|silica|sachets?|"
    r"desiccants?|(?:dried|dry) (?:them |it )?(?:again|on|more|further|once more)|then dried|"
    r"(?:back|again) in(?:to)? the (?:dryer|dehydrator|oven)|"
    r"before (?:drying|they went)|to begin with|until|till|fresh ones)\b"
)


def soft_again(food: FoodFacts, clause: str) -> bool:
    """Whether it says so of dried food."""
    told = re.sub(PURPOSE, " ", clause)
    if affirmed(told, _SOFTER) and not re.search(_OF_ELSE, told):
        return True
    breaks = food.name in _MUST_BREAK or (food.group is Group.HERB and "dry" not in food.classes)
    return breaks and affirmed(told, _BENDS) and not re.search(rf"{_BREAKS}|{_OF_ELSE}", told)
