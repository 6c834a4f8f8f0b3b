"""Whether a jam was made with little sugar, or none, by its record or its note.

Sugar is what keeps an opened jam: with less of it a jar spoils sooner (National Center for Home
Food Preservation, Questions on jams and jellies), so its days once open are the shorter ones.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import Batch
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.words import Method

_JAMS = frozenset({Method.JAM, Method.FREEZER_JAM})
#: What may stand between "half" or "less" and the sugar.
_OF = r"(?:(?:of|the|its|usual|normal|added|amount|on|as|much|recipe s) ){0,4}"
_SWEETENERS = r"stevia|splenda|sucralose|xylitol|erythritol|aspartame|saccharin|sweetener"
_LITTLE = re.compile(
    rf"\b(?:low(?:er|ered)?|reduced|less|little|half|halved|third|quarter|no|without|zero|scant|"
    rf"minimal|light(?:er)?|not much|skimped|cut|left out|forgot) {_OF}sugar\b|"
    r"\bsugar (?:free|(?:was |is )?(?:halved|reduced|cut|left out|omitted))\b|"
    rf"\b(?:sugarless|unsweetened)\b|\b(?:{_SWEETENERS})s?\b"
)
#: Beside the sugar that tells of another thing: its kind, its crystals, what is left in the bag.
_ANOTHER = re.compile(
    r"\bsugar (?:(?:was|is|were) (?!halved|reduced|cut|left out|omitted)|crystals?|left over|"
    r"lumps?|snaps?|spilled|spilt|half|and half|on (?:the )?(?:rims?|lids?|shelf|shelves))"
)
#: What is meant for another batch, or denied.
_NOT_THIS = re.compile(
    r"\b(?:next (?:time|year|batch)|would|could|should|try|tried before|needs?|wants?|wish|maybe|"
    r"perhaps|instead of|unlike|compared|who eats?|last (?:year|time|batch)|"
    rf"not (?:a )?(?:low|reduced|less|half|sugar)|no (?:low|less|{_SWEETENERS})s?\b|"
    rf"(?:without|never) (?:any )?(?:{_SWEETENERS}))"
)
_PARTS = re.compile(r"[.;,!?()\n]|\bbut\b")


def low_sugar(batch: Batch) -> bool:
    """Whether it is a jam of which somebody says so; what only might be is none."""
    food = batch.food
    if batch.method not in _JAMS and "jam" not in food.classes:
        return False
    if any(key == "sugar" and denies(value) for key, value in batch.process):
        return True
    return bool(batch.note) and notes_low_sugar(batch.note)


def notes_low_sugar(note: str) -> bool:
    """Whether words say that little sugar is in it, or none."""
    return any(_says(part) for part in _PARTS.split(note.casefold()))


def _says(part: str) -> bool:
    plain = " ".join(re.sub(r"[^a-z0-9%]+", " ", part).split())
    told = _LITTLE.search(plain) is not None
    return told and not (_ANOTHER.search(plain) or _NOT_THIS.search(plain))
