"""Hours of the day in a note, in the one way in which the rest of it is read: "half past eleven",
"6 p.m.", "18.30", "8 in the evening" as 11:30, 6pm, 18:30, 8pm. For notes in small letters.
"""

from __future__ import annotations

import re

_NUMBERS = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve",
)  # fmt: skip
_N = rf"(\d{{1,2}}|{'|'.join(_NUMBERS)})"
_MINUTES = {"five": 5, "ten": 10, "twenty": 20, "twenty five": 25, "a quarter": 15, "quarter": 15}
_OF_AN_HOUR = r"(\d{1,2}|twenty five|twenty|five|ten|(?:a )?quarter)"
_AT = r"(?:at|by|since|from|till|until|before|after|about|around|nearly|gone)"
#: No hour, but so many of something.
_NO_UNIT = (
    r"(?! ?(?:lbs?|pounds?|kg|kilos?|oz|g|grams|pints?|quarts?|jars?|packs?|tubs?|bags?|boxes|"
    r"litres?|l|ml|cups?|inch\w*|cm|%|°)\b)"
)


def in_figures(text: str) -> str:
    """Every hour of the day in figures."""
    if not re.search(r"\d|past|quarter|half| to |night|morning|evening", text):
        return text
    text = re.sub(r"(?<=\d) ?([ap])\.? ?m\b\.?", r"\1m", text)
    text = re.sub(rf"\bhalf past {_N}\b", lambda x: _clock(x[1], 30), text)
    text = re.sub(rf"(\b{_AT} )half {_N}\b(?!/){_NO_UNIT}", lambda x: _half(x[1], x[2]), text)
    text = re.sub(
        rf"\b{_OF_AN_HOUR} (?:minutes? |mins? )?past {_N}\b",
        lambda x: _clock(x[2], _minutes(x[1])),
        text,
    )
    text = re.sub(
        rf"\b(?:a )?quarter (?:to|of) {_N}\b{_NO_UNIT}", lambda x: _clock(x[1], -15), text
    )
    text = re.sub(
        rf"(\bat )(?:about )?{_OF_AN_HOUR} to {_N}\b",
        lambda x: x[1] + _clock(x[3], -_minutes(x[2])),
        text,
    )
    text = re.sub(r"\b(1[3-9]|2[0-3]) ?h ?([0-5]\d)\b", r"\1:\2", text)
    text = re.sub(r"\b([01]\d|2[0-3])([0-5]\d) ?(?:h|hrs|hours)\b", r"\1:\2", text)
    text = re.sub(r"(?<=\bat )(\d{1,2}) ?h\b(?!\w)", r"\1:00", text)
    # 20.11 is a day of November, 20.45 an hour.
    text = re.sub(
        rf"(?<![\d.,£$€])(1[3-9]|2[0-3])\.(00|1[3-9]|[2-5]\d)(?![\d.]){_NO_UNIT}", r"\1:\2", text
    )
    text = re.sub(r"(?<![\d.])(\d{1,2})\.([0-5]\d)(?=[ap]m\b)", r"\1:\2", text)
    text = re.sub(rf"(?<=\bat )(\d)\.(00|1[3-9]|[2-5]\d)(?![\d.]){_NO_UNIT}", r"\1:\2", text)
    text = re.sub(
        rf"\b{_N}(:[0-5]\d)?(?: o'clock)? (?:in the (morning|afternoon|evening)|at night)\b",
        lambda x: f"{_figure(x[1])}{x[2] or ''}{'am' if x[3] == 'morning' else 'pm'}",
        text,
    )
    hour = r"\d{1,2}(?::[0-5]\d)(?:[ap]m)?|\d{1,2}[ap]m"
    text = re.sub(rf"(?<![\d:.])({hour}) ?[-–—] ?(?=\d)", r"\1 to ", text)
    return re.sub(rf"(?<![\d:.])(\d{{1,2}}) ?[-–—] ?(?=(?:{hour})\b)", r"\1 to ", text)


def _figure(told: str) -> int:
    return int(told) if told.isdigit() else _NUMBERS.index(told) + 1


def _minutes(told: str) -> int:
    return int(told) if told.isdigit() else _MINUTES[told]


def _clock(hour: str, minutes: int) -> str:
    whole = _figure(hour) * 60 + minutes
    return f"{(whole // 60) or 12}:{whole % 60:02d}"


def _half(before: str, hour: str) -> str:
    """("at half eight") -> half past eight."""
    return f"{before}{_clock(hour, 30)}"
