"""What a note says that a person has to look at before anybody knows: potatoes that light has
turned green, a ferment above its brine, what is not dry yet. Which words are listened for is a
choice of our own, the stricter one; what each means: data/signs.csv.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import ANIMAL, LIDDED
from pantry_tui.core.keeping.harm import is_dry
from pantry_tui.core.model import Batch
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety.denial import DENIAL
from pantry_tui.core.safety.note_soft import soft_again
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.words import Group, Method

MOIST = "what is not dry has no published figure on a shelf"
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
_BOUGHT = frozenset({Method.BOUGHT, Method.FRESH})


_IN_VACUUM = frozenset(
    {Method.BOUGHT, Method.HOT_SMOKED, Method.COLD_SMOKED, Method.SALTED, Method.FRESH}
)
AIR_IN = (
    r"\bvacuum (?:\w+ )?(?:lost|gone|broke\w*|failed|leaked|went)\b|\blost (?:its |the )?vacuum\b|"
    r"\bvacuum (?:seal )?(?:did|has|had|is|was) not (?:hold|held|taken?|there)\b|"
    r"\b(?:air|let air) (?:got |has got |came )?in(?:to)? (?:the )?(?:pack|bag|pouch|vacuum)\b"
)


def says(pattern: str, clause: str) -> re.Match[str] | None:
    """The first match that no word before it denies."""
    for found in re.finditer(pattern, clause):
        before = " ".join(clause[: found.start()].split()[-3:])
        if not re.search(DENIAL, before) and not clause[found.end() :].startswith(" free"):
            return found
    return None


def to_look_at(batch: Batch) -> str:
    """A sentence that quotes it, "" where it says nothing of the kind."""
    if not batch.note:
        return ""
    potatoes = batch.food.name in words.GREENS_POISON
    brined = batch.method in (Method.LACTIC, Method.PASTE)
    dried = batch.method in _DRY
    damp = not dried and is_dry(batch.food) and "sugar" not in batch.food.classes
    damp = damp and batch.food.group is not Group.FRUIT
    for typed, clause in clauses(batch.note):
        if batch.method in _IN_VACUUM and batch.food.group in ANIMAL and says(AIR_IN, clause):
            return (
                f"Its note says {typed!r}: without its vacuum it is ordinary wrapped food. Count "
                "its days from the day on which that was lost, not to the date on the pack."
            )
        kept_out = re.search(words.NOT_SPOILT, clause) is not None
        seen = re.sub(PURPOSE, " ", clause)
        rodents = not kept_out and says(words.RODENTS, seen) is not None
        if batch.method in LIDDED and rodents:
            return (
                f"Its note says {typed!r}: wash the jars and check every seal, gloves on: "
                "droppings carry disease. Discard what has a gnawed or loose lid."
            )
        if rodents:
            return (
                f"Its note says {typed!r}: discard every pack that is soft, gnawed or soiled, and "
                "look at what stands beside it. Gloves on: droppings carry disease."
            )
        insects = (dried or damp) and not kept_out and says(words.INSECTS, seen)
        if insects and not re.search(words.BEFORE_PACKING, clause):
            return (
                f"Its note says {typed!r}: pick it over, freeze it at 0 F for 7 days and pack it "
                "tight. Many insects or webbing: discard."
            )
        if potatoes and says(words.GREENED, clause):
            return (
                f"Its note says {typed!r}: light raises the plant poisons under the skin. Discard "
                "what is mostly green; of the rest cut it away generously and peel."
            )
        if dried and (says(words.STILL_MOIST, clause) or soft_again(batch.food, clause)):
            return f"Its note says {typed!r}: {MOIST}. Dry it again and condition it."
        if damp and batch.method in _BOUGHT and says(words.STILL_MOIST, clause):
            return (
                f"Its note says {typed!r}: what is dry grows moulds, and their poisons, where it "
                "is damp. Discard what is clumped, musty or discoloured; dry the rest at once."
            )
        if brined and says(words.SOFTENED, clause):
            return (
                f"Its note says {typed!r}: with a clean sour smell it is poor and fit to eat. "
                "Look it over: with slime, mould or a foul smell discard the batch."
            )
        if brined and re.search(words.ABOVE_BRINE, clause):
            return (
                f"Its note says {typed!r}: air lets mould grow. Press it down and top it up with "
                "brine; with mould, slime or a foul smell discard the batch."
            )
    return ""
