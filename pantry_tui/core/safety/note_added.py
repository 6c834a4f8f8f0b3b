"""What a note says was put into oil, honey, vinegar, butter or fat, in any of the languages that
are read (core.safety.other_tongues)."""

from __future__ import annotations

import re

from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.safety.other_tongues import in_english


def plants_in(clause: str) -> bool:
    """Whether plants that are low in acid and moist lie in it; `clause` in small letters."""
    return _in_it(clause, words.PLANTS, words.ONLY_PLANTS)


def animal_in(clause: str) -> bool:
    """Whether meat, fish, egg or what is made of milk lies in it."""
    return _in_it(clause, words.ANIMAL, words.ONLY_ANIMAL)


def _in_it(clause: str, things: str, alone: str) -> bool:
    told = re.sub(PURPOSE, " ", in_english(clause)).strip()
    if not affirmed(told, things):
        return False
    return bool(re.search(words.PUT_IN, told) or re.fullmatch(alone, told))
