"""The pH that a note names of a ferment: above 4.6 it has not worked enough to be eaten, as in its
record (core.keeping.unripe). For notes in small letters, numbers in figures. Which words are
listened for is a choice of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.measured import PH_LINE

_PH = (
    r"(?:\bp\.? ?h\b\.?|\b(?:acidity|litmus|test|indicator)(?: (?:test|strips?|paper))+\b|"
    r"\bacidity(?= \d))"
)
_NUMBER = (
    r"(?<![\d.])([2-9](?:\.\d{1,2})?)(?![\d.])"
    r"(?! ?(?:%|°|per ?cent|days?|weeks?|months?|hours?|h|d|jars?|of (?:them|the)|strips?|tsp|"
    r"tbsp|g|kg|lb|oz|cups?|f|c|am|pm)\b)(?! ?[%°])"
)
_READ = rf"{_PH}[^\d;]{{0,40}}?{_NUMBER}|{_NUMBER} (?:on|by|in|at) (?:the |a )?(?:{_PH}|strip)"
#: As it was while it worked, which says nothing of the end.
_AT_FIRST = (
    r"\b(?:start(?:ed|ing|s)?|began|begin\w*|at first|first|initial\w*|fresh|raw|cabbage|tap|"
    r"water|before|(?:on |at |after )?day [0-6]|(?:on |after )?[1-6] days?|so far|to begin|"
    r"went in|(?:fell|falls|dropped|drops|sank|came|went|going|go|down) (?:\w+ )?from|"
    r"target|aim\w*|goal|should|must|needs? to|want\w*|until|till|wait\w*|limit|safe)\b"
)
#: It is below the figure, and so sour enough where that is 4.6 or less.
_BELOW = r"\b(?:below|under|less than|lower than|<)"
_NEVER_BELOW = (
    rf"\b(?:{DENIED}|hardly|barely|nowhere) (?:\w+ ){{0,3}}(?:below|under|less than|lower than|"
    rf"down to|to) (?:{_PH} ?)?(?:of )?{_NUMBER}|"
    rf"{_PH}[^\d;]{{0,20}}\b(?:above|over|more than|higher than|>) ?{_NUMBER}"
)


def not_sour_enough(typed: str) -> bool:
    """Whether a note, as it was typed, names a pH above the line and none below it."""
    if not re.search(r"(?i)\bp\.? ?h\b|strip|paper|acidity", typed):
        return False
    from pantry_tui.core.safety.notes import clauses  # loaded where a note is read

    note = "; ".join(one for _, one in clauses(re.sub(r"(?i)\bp\. ?h\.?", "ph", typed)))
    if not re.search(_PH, note):
        return False
    for clause in note.split("; "):
        stayed = re.search(_NEVER_BELOW, clause) if re.search(_PH, clause) else None
        if stayed and float(next(filter(None, stayed.groups()))) >= PH_LINE - 0.11:
            return True
    told = [one for one in note.split("; ") if not re.search(_AT_FIRST, one)]
    read = [
        float(next(filter(None, found.groups())))
        for one in told
        for found in re.finditer(_READ, one)
        if not re.search(_BELOW, found[0])
    ]
    sour = [float(one) for one in re.findall(_NUMBER, note) if float(one) <= PH_LINE]
    return bool(read) and max(read) > PH_LINE and not sour
