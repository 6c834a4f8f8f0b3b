"""What containers of a size are called."""

from __future__ import annotations

from functools import cache

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.text import clean, singular
from pantry_tui.core.words import Method


@cache
def noun(size: str) -> str:
    """ "pint jar" -> "jars"; "box of 12" -> "boxes"; "" -> "containers"."""
    words = clean(size).split(" of ")[0].split()
    if not words or not words[-1].isalpha():
        return "containers"
    return saying.plural(singular(words[-1].lower()))


def counted_as(food: str, method: Method, size: str) -> str:
    """What so many of a food are called: what stands in no vessel goes by its name, 24 eggs."""
    bare = not size and method not in LIDDED and food.endswith("s")
    return food if bare else noun(size)
