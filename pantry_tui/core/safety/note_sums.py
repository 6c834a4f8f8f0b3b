"""Times out of the cold in a note, added up: "an hour at noon and 90 minutes at six", "two hours
on the buffet, then another hour", "30 minutes out, five times". For a whole note as note_times.py
puts it. The two hours are two hours in all (USDA FSIS); which words are listened for is our choice.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety import kept_words as words

_PARTS = r"[;,+&]|\b(?:and|then|plus|before that|after that)\b"
_SPAN = r"(?<![\d.])(\d+(?:\.\d+)?) ?(h|m)(?:(?:rs?|ours?|ins?|inutes?)\b|\b)(?! ago\b)"
_TIMES = (
    r"\b(?:(\d{1,2}) (?:times|occasions|x|"
    r"(?:lots|spells|stints|goes|sessions|sittings|rounds)(?: of)?)\b|"
    r"(\d{1,2})x\b|x ?(\d{1,2})\b|(twice)\b|"
    r"(\d{1,2}) (?=\d+(?:\.\d+)? ?(?:h|hours?|m|mins?|minutes?)\b))"
)
_OUT = (
    r"\b(?:buffet|party|picnic|pot ?luck|fair|fete|barbecue|bbq|reception|bench|table|counter|"
    r"worktop|"
    r"being served|serving|on show|on display|"
    r"warm|room temp\w*|unrefrigerated|without (?:a )?(?:fridge|cooling))\b"
)
#: It goes on with what was said last.
_GOES_ON = (
    r"^(?:(?:cleared|put|away|back|after|first|1st|for|about|over|nearly|maybe|another|more|"
    r"again|further|extra|later|a|half|"
    r"the|on|in|"
    r"at|mon|tues?|wed|thurs?|fri|sat|sun|(?:mon|tues|wednes|thurs|fri|satur|sun)day|time|second|"
    r"next|day|afterwards|same|noon|midday|lunch|supper|dinner|evening|morning|"
    r"breakfast|total|in|all|altogether|[\d.:]+(?:[ap]m)?|\d|h|m|hrs?|hours?|mins?|minutes?|"
    r"twice|times|x) ?)+$|"
    r"\b(?:another|again|further|more)\b"
)
#: Said of what may be, or of no food of this batch.
_NOT_SO = (
    r"\b(?:before|ahead of|until|till|for) (?:(?:the|our|a|his|her) )*(?:buffet|party|picnic|"
    r"pot ?luck|fair|fete|barbecue|bbq|reception|table)\b|"
    r"\b(?:allowed|limit|rule|at most|max\w*|under|less than|within|up to|no more than|per)\b"
)


def minutes_out(note: str) -> int | None:
    """The minutes out of the cold that several times come to, None where none is told."""
    told: list[float] = []
    waiting: list[float] = []
    out = several = False
    for part in re.split(_PARTS, note):
        spans = [float(many) * (60 if unit == "h" else 1) for many, unit in re.findall(_SPAN, part)]
        goes_on = out and re.search(_GOES_ON, part.strip()) is not None
        cold = re.search(rf"{words.COLD_PLACE}|{words.COOKING}|{words.MADE_SO}|{_NOT_SO}", part)
        stands = re.search(rf"{words.STOOD}|{words.WARM_PLACE}|{_OUT}", part) is not None
        if cold or not (stands or goes_on):
            # "An hour at noon and an hour at six on the table."
            only = not cold and re.search(_GOES_ON, part.strip()) is not None
            waiting = [*waiting, *spans[:1]] if only else []
            out = out and not part.strip()
            continue
        told, waiting, out = told + waiting, [], True
        if found := re.search(_TIMES, part):
            many = 2 if found[4] else int(found[1] or found[2] or found[3] or found[5])
            # "An hour on the table, three times": of what was told last.
            told += (many if spans else many - 1) * (spans[:1] or told[-1:])
            several = several or many > 1
        else:
            told += spans[:1]
    return round(sum(told)) if told else None
