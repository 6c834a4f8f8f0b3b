"""The hour behind a day, which is passed over: of what was made the day counts."""

from __future__ import annotations

import re

from pantry_tui.core.line.day_words import PARTS_OF_DAY
from pantry_tui.core.line.tokens import Line

_HALVES = (("am",), ("pm",), ("a", ".", "m", "."), ("p", ".", "m", "."), ("a", ".", "m"))


def hour_after(line: Line, i: int) -> int:
    """How many words say the evening of "sunday evening" or the hour of "today at 6 pm", where
    nothing else begins with them: of what was made the day counts."""
    at = i + line.says(i, "at")
    end = at
    if line.word(at) in PARTS_OF_DAY:
        end = at + 1
    elif line.number(at) is not None:
        end = at + 1
        minutes = line.at(end)  # a colon parts the line
        if minutes is not None and minutes.joined and re.fullmatch(r"\d\d", minutes.said):
            end += 1
        half = next((n for n in _HALVES if line.says(end, *n)), ())
        if not half and end == at + 1:
            return 0
        end += len(half)
    return end - i if end > at and ends(line, end - 1) else 0


def ends(line: Line, i: int) -> bool:
    """Whether its part of the line ends there."""
    return line.at(i + 1) is None or line.tokens[i + 1].part != line.tokens[i].part
