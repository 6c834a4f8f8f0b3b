"""What a note says of smoked or cured food that had no brine, no salt or no cure, for notes in
small letters. Which words are listened for is a choice of our own, the stricter one.

Smoke alone keeps nothing: no smoked fish is published without salt (smoke.py), and what is cured or
smoked without heat is kept by its salt and its cure. Meat that hot smoke cooks is no such food, and
has the days of cooked meat without any (USDA FSIS, Smoking meat and poultry; from memory).
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import DENIED, LEFT_OUT, NONE, affirmed, lacking
from pantry_tui.core.safety.note_words import SALT_CUT
from pantry_tui.core.words import Group, Method

_FLESH = frozenset({Group.FISH, Group.MEAT})
_CURES = frozenset({Method.COLD_SMOKED, Method.SALTED})
#: What was done with it, and what it was done with.
_DONE = r"(?:salted|brined|cured|dry cured|dry salted|dry brined|pickled|corned)"
_DO = r"(?:salt(?:s|ing)?|brin(?:es?|ing)|cur(?:es?|ing))"
#: Salt on another thing, or of another kind: "unsalted butter", "no brine left on the skin".
_OF_ELSE = (
    r"(?! (?:butter|nuts|stock|broth|crackers|water|crust|left|remain\w*|on\b|to (?:serve|taste)|"
    r"dripp\w*|shaker|at (?:the )?table|needed (?:at|to|when|on)|pork|cod|beef|"
    r"taste|tasting|flavou?r|smell|spilled|spilt|burns?))"
)
_TOO = r"(?! (?:too|very|over|overly|much|so|as|twice|again|enough|heavily|hard|long|for|at table))"
_NOT_DONE = (
    rf"\b(?:un|non ?)(?:salted|brined|cured)\b{_OF_ELSE}|\b(?:salt|brine|cure) ?less\b|"
    rf"\b(?:salt|brine|cure|nitrite|nitrate) free\b{_OF_ELSE}|"
    # "Not salted", "was never brined", "only smoked, not cured".
    rf"\b(?:{DENIED}|{NONE}|cannot) (?:(?:been|be|being|even|really|actually|ever|get|got|yet|"
    rf"properly|at all|first|dry) )*{_DONE}\b{_TOO}|"
    rf"\b{_DONE} (?:{DENIED}|{NONE}) (?:at all|1 bit|either)\b|"
    # "Did not brine it", "never got round to salting".
    rf"\b(?:{DENIED}|{LEFT_OUT}|{NONE}) (?:(?:to|about|get|got|getting|round|around|bother\w*|with|"
    rf"have|had|time|for|manage\w*|the|any|it|them|fish|meat|even|really|actually|ever|step|of) )*"
    rf"{_DO}\b{_TOO}{_OF_ELSE}(?! (?:step )?(?:was|is|too|much|over))|"
    rf"\b(?:{DENIED}|{NONE}) (?:see|saw|seen|touch\w*|near|been (?:in|near)|"
    rf"(?:went|go|got|put|came)(?: (?:it|them))? (?:in|into|near)) (?:\w+ )?"
    r"(?:salt|brine|cure)\b|"
    rf"\b(?:brin|salt|cur)(?:e|ing) (?:step )?(?:was |were |is |got )?(?:all )?"
    rf"(?:{LEFT_OUT}|{DENIED} (?:done|used|needed))|\bplain smoked\b|\bsmoked plain\b"
)
#: Another salt was on it: a dry one in the place of a brine.
_SALTED = (
    r"\b(?:dry (?:brin|salt|cur)\w*|salt(?:ed)? dry|(?:dry |salt |sugar )?rub(?:bed)?(?: \w+){0,3} "
    r"(?:salt|cure)|(?:in|under|with|of|packed in|buried in|layered with) (?:\w+ ){0,2}salt|"
    r"salted (?:instead|overnight|first|lightly|well|for|on)|"
    r"(?:salt|cure|cured|salted|brined) (?:for )?\d+(?:\.\d+)? ?(?:h|hours?|days?|weeks?|%|g)\b|"
    r"\d+(?:\.\d+)? ?% (?:\w+ )?(?:salt|brine|cure)|\d+ ?(?:g|grams|oz|tbsp|"
    r"cups?) (?:of )?(?:\w+ )?salt|salt (?:only|alone)|(?:just|only|plain) salt)\b"
)
#: None of the cure alone: of fish, which salt keeps, and of a ham in plain salt that is no lack.
_OF_CURE = (
    rf"\b(?:{DENIED}|{NONE}) (?:(?:added|any|pink|curing|the|of) )*"
    r"(?:nitrites?|nitrates?|pink salt|curing salts?|cure|prague powder|saltpetre|saltpeter)\b|"
    r"\buncured\b|\bnot cured\b|\b(?:nitrite|nitrate|cure) free\b"
)
_BRINE = r"brine|brining|cure|curing(?! salt)|salting"
_CURE = r"(?:pink |curing )salts?\b|nitrites?\b|nitrates?\b|prague powder|saltpet(?:re|er)\b"

#: The shortest that is published for the thinnest fish in the strongest brine lies above it
#: (extension leaflets on smoking fish; from memory).
_BRIEF_MIN = 15
#: A cure of meat is told in days (NCHFP, review of cured and smoked meats; from memory).
_BRIEF_CURE_MIN = 60
_BRIEFLY = (
    r"\b(?:brin|cur|salt)(?:ed|ing|e)?(?: (?:it|them|for|only|about|just|barely|under|time|a))* "
    r"(\d+(?:\.\d+)?) ?(?:m|mins?|minutes?)\b|"
    r"\b(\d+(?:\.\d+)?) ?(?:m|mins?|minutes?) (?:in (?:the |a )?(?:\w+ )?)?(?:brine|cure|salt)\b"
)
TOO_BRIEF = (
    "nothing is published that was in its salt so briefly. What it holds of it is recorded as "
    "salt=3.5%."
)
NO_SALT_FISH = "no smoked fish is published without salt."
NO_SALT_MEAT = "nothing is published that is cured, or smoked without heat, without its salt."
NO_CURE = "meat that is smoked without heat needs a cure with nitrite."


def unsalted(method: Method, food: FoodFacts, clause: str, note: str) -> str:
    """A sentence where a clause says that it was not brined, salted or cured, "" where it does not.
    `note`: all of it in small letters, which may name another salt."""
    if food.group not in _FLESH or not _is_kept_by_salt(method, food):
        return ""
    smoked_fish = food.group is Group.FISH and method is not Method.SALTED
    cold_meat = food.group is Group.MEAT and method is Method.COLD_SMOKED
    if cold_meat and (affirmed(clause, _OF_CURE) or lacking(clause, _CURE)):
        return NO_CURE
    brief = _BRIEF_MIN if smoked_fish else _BRIEF_CURE_MIN
    if (told := re.search(_BRIEFLY, clause)) and float(told[1] or told[2]) < brief:
        return "" if re.search(_SALTED, note) else TOO_BRIEF
    things = rf"{_BRINE}|curing salts?\b" if smoked_fish else _BRINE
    if re.search(_SALTED, note) or not _says_none(clause, things):
        return ""
    return NO_SALT_FISH if smoked_fish else NO_SALT_MEAT


def _is_kept_by_salt(method: Method, food: FoodFacts) -> bool:
    if method in _CURES:
        return True
    cured = food.group is Group.FISH or "cured-meat" in food.classes
    return method is Method.HOT_SMOKED and cured


def _says_none(clause: str, things: str) -> bool:
    if re.search(_NOT_DONE, clause) or affirmed(clause, SALT_CUT):
        return True
    return bool(lacking(clause, rf"(?:{things}){_OF_ELSE}(?!\w)"))
