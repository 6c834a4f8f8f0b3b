"""What containers of a size are called."""

from __future__ import annotations

from functools import cache

from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.text import clean, singular


@cache
def noun(size: str) -> str:
    """ "pint jar" -> "jars"; "box of 12" -> "boxes"; "" -> "containers"."""
    words = clean(size).split(" of ")[0].split()
    if not words or not words[-1].isalpha():
        return "containers"
    return saying.plural(singular(words[-1].lower()))
