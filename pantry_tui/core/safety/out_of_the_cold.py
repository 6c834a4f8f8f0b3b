"""Time out of the cold in a person's words: it is no sign that anybody sees, but where it stood,
and its two hours are reckoned from that (USDA FSIS, the two-hour rule)."""

from __future__ import annotations

import re

_LEFT_OUT = re.compile(
    r"(?i)\b(?:left|stood|sat|forgotten|forgot)\b.*\b(?:out(?:side)?|counter|worktop|table|car|"
    r"boot|sun|kitchen|porch|bench|warm|overnight|unchilled|hours?|h)\b|"
    r"\bout of the (?:fridge|refrigerator|freezer|cold)\b|\bunchilled\b|\bnot refrigerated\b|"
    r"\b(?:at|to) room temp(?:erature)?\b|\bin the (?:warm|hot car|sun)\b"
)


def says_left_out(text: str) -> bool:
    """("left on the counter for 5 hours", "out of the fridge overnight") -> True."""
    return _LEFT_OUT.search(text) is not None


def book_the_move(name: str) -> str:
    """What to do beside: the container and what is typed."""
    return (
        "Time out of the cold is reckoned by where it stood: book that with "
        f'`pantry-tui move {name} PLACE --at "DAY HH:MM"`, and its way back in the same way.'
    )
