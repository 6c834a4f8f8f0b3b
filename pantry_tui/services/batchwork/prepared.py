"""What was done to a crop before it was put by, said beside its name: diced, peeled, dry packed.

"Diced onions" are onions and no whole onions: what the word changes goes into the record, as
`prepared`, and is judged there. Words that make another thing of the food stay unread.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.prepared import (
    CROPS,
    DRY_PACKED,
    HALF_DRIED,
    NOT_TESTED,
    dried_in_part,
)
from pantry_tui.core.safety.prepared_words import CUT
from pantry_tui.core.words import Group, Method

_OPENED_EGG = frozenset({"peeled", "shelled", "sliced", "chopped", "halved", "diced", "quartered"})
_RAW = (Method.CELLAR, Method.FRESH, Method.BOUGHT)
#: Before these it is a measure, or a kind of bean.
_PARTS = frozenset({"half", "quarter"})
_MEASURED = frozenset({"runner", "runners", "bushel", "bushels", "peck", "dozen"})
#: Green potatoes are not eaten, so the colour is no colour (data/keeping.csv says the same).
_GREEN = frozenset({"potatoes", "new potatoes"})


def is_raw_crop(facts: FoodFacts | None, method: Method | None) -> bool:
    """Whether it is a vegetable or fruit that nothing was done to but to cut it."""
    return facts is not None and method in _RAW and facts.group in CROPS


def _without_measures(words: list[str]) -> list[str]:
    """Without the half of half a dozen, and of half runner beans."""
    behind = [*words[1:], ""]
    return [
        word
        for word, after in zip(words, behind, strict=True)
        if not (word in _PARTS and after in _MEASURED)
    ]


def prepared(typed: str, facts: FoodFacts | None, method: Method | None) -> tuple[str, list[str]]:
    """The words that belong into the record of `typed`, a food by more than its own name, and
    those that nobody can take for the food."""
    if facts is None or not typed:
        return "", []
    words = re.findall(r"[^\W\d_]+", typed.casefold())
    plain = " ".join(words)
    if facts.group is Group.EGG and "hard" not in facts.name:
        return "", [word for word in words if word in _OPENED_EGG]
    unread = ["green"] if facts.name in _GREEN and "green" in words else []
    if method in PROCESSED:
        dry = next((one for one in DRY_PACKED if one in plain), "")
        said = [dry, *(word for word in words if word in NOT_TESTED)]
    elif is_raw_crop(facts, method):
        said = [word for word in _without_measures(words) if word in CUT]
    elif method is Method.DRIED and facts.group in CROPS and dried_in_part(plain):
        said = [HALF_DRIED]
    else:
        said = []
    return " ".join(filter(None, said)), unread
