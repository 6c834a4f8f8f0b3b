"""How people write times, put into one way before a whole note is read: a clock as "16:45" or
"4pm", from one to another as "10:00 to 14:00", so long as "2.5 hours". What may be another number
as well bears a ~ ("~10:00"). For notes in small letters with numbers in figures; what one clause
can tell by itself: note_hours.py.

Whether 12.15 is an hour, and 1300, the rest of the note tells: two of them are. Choices of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.note_clock import PART, UNIT

#: What people of another kitchen write beside a time.
_GERMAN = (
    ("im kühlschrank|in den kühlschrank|kühlschrank|kuehlschrank", "fridge"),
    ("gefriertruhe|tiefkühler|eingefroren", "freezer"),
    ("(?:auf dem |am )?(?:tisch|anrichte|theke|arbeitsplatte|fensterbank)", "on the table"),
    ("vom herd|vom ofen|aus dem (?:ofen|topf)", "off the heat"),
    ("gekocht|fertig", "cooked"),
    ("stand|gestanden|draußen|draussen", "stood"),
    ("danach|dann", "then"),
    ("grillabend|grillfest|fest|feier", "party"),
    ("von", "from"),
)
_GERMAN_NUMBERS = ("eine", "zwei", "drei", "vier", "fünf", "sechs")
_DAY = r"(?:[01]?\d|2[0-4])"
_DASH = r" ?(?:[-–—]|to|till?|til|until|bis(?: zu[mr]?)?) ?"
#: Words beside which a bare number is an hour.
_WHAT = (
    r"(?:out|in|back|away|fridged?|refrigerated|chilled|cold|cooked|made|ready|done|served|baked|"
    r"boiled|cleared|home|eaten|ate|finished|dished up|table|counter|dinner|supper|lunch)"
)
#: What stands, so that two numbers behind it are from when to when.
_STANDS = (
    r"\b(?:out|stood|standing|stands|sat|sitting|left|cooled|cooling|counter|worktop|table|side|"
    r"buffet|party|picnic|hunt|bring and share|fair|fete|potluck|barbecue|bbq|"
    r"tea|lunch|brunch|dinner|supper|served|serving|display|stall)\b"
)
_NO_CLOCK = (
    r"(?! ?(?:h\b|hrs?\b|hours?|lb|pounds?|kg|g\b|oz|grams?|ml|l\b|lit|pints?|quarts?|jars?|people|"
    r"persons?|guests|heads?|servings?|portions?|cups?|inch|cm|mm|in\b|ft|feet|psi|mg|kcal|cal|w\b|"
    r"watts?|degrees|[°%£$€/x]|f\b|c\b|min|m\b|days?|weeks?|months?|years?|packs?|tubs?|bags?))"
)
_H00 = rf"(?<![\d.])({_DAY})h([0-5]\d)\b(?! ?m)"
_DOTTED = rf"(?<![\d.,:£$€])(?<!ph )({_DAY})\.([0-5]\d)(?![\d.]){_NO_CLOCK}"
_FOUR = (
    r"(?<![\d.,:£$€/-])(?<!of )(?<!crop )(?<!year )(?<!harvest )([01]\d|2[0-3])([0-5]\d)"
    rf"(?![\d.:/-]){_NO_CLOCK}"
)
_COLON = r"(?<![\d:.])(?:\d{1,2}:[0-5]\d(?:[ap]m)?|\d{1,2}[ap]m|noon|mid ?day|midnight)\b"
_AT = (
    rf"\b(?:at|from) \d{{1,2}}\b{UNIT}|"
    r"(?<![\d.])\d{1,2}-(?=\d{1,2}\.(?:00|15|30|45)(?![\d.]))"
)
_CLOCK = r"\d{1,2}(?::[0-5]\d)?(?:[ap]m)?"
_HHMM = r"([01]\d|2[0-3])([0-5]\d)"
_SPAN = r"(?:hours?|hrs?|hr|h)"
_LONG = r"(?:hours?|hrs?)"
#: What may follow on a length of time.
_NEXT = r"before|then|in|on|out|at|until|till|and|or|to|later|total|altogether|long|by|of|for|with"
_MINUTES = r"(?:minutes?|mins?|min|m)\b"


def plainly(note: str) -> str:
    """Every time in the one way."""
    if not re.search(r"\d", note):
        return note
    note = " ".join(re.sub(r"[()]", " ", note).split())
    for here, english in _GERMAN:
        note = re.sub(rf"\b(?:{here})\b", english, note)
    return how_long(_bare(_ranges(_notations(_uhr(_about(note))))))


def how_long(text: str) -> str:
    """("2.5-hour", "2 h 30", "1,5 h", "2 hours and 15 minutes") -> "2.5 hour", "2.5 hours" ..."""
    text = re.sub(r"\b(another|extra|further|more) (?=hour\b)", r"\1 1 ", text)
    text = re.sub(rf"(?<=\d)-(?={_SPAN}\b|minutes?\b|mins?\b)", " ", text)
    text = re.sub(rf"(?<![\d,.])(\d+),(\d{{1,2}})(?= ?(?:{_SPAN}|std|stunden?)\b)", r"\1.\2", text)
    text = re.sub(
        r"\b(eine|zwei|drei|vier|fünf|sechs) (?=stunden?\b)",
        lambda x: f"{_GERMAN_NUMBERS.index(x[1]) + 1} ",
        text,
    )
    text = re.sub(r"\b(\d+(?:\.\d+)?) ?(?:stunden?|std)\b", r"\1 hours", text)
    text = re.sub(rf"(?<![\d:.])(\d):([0-5]\d) ?{_SPAN}\b", r"\1 h \2", text)
    return re.sub(
        rf"(?<![\d.:])(?:(\d+) {_SPAN},? ?|(\d+) ?{_LONG},? ?|([0-6])h ?)(?:and )?([0-5]?\d)"
        rf"(?: ?{_MINUTES}|(?![\d.:%°-])(?=$|[;,.)]| (?:{_NEXT})\b))",
        lambda x: f"{round(int(x[1] or x[2] or x[3]) + int(x[4]) / 60, 2):g} hours",
        text,
    )


def _about(note: str) -> str:
    """("5ish", "11-ish", "gegen 5") A guess."""
    return re.sub(r"\b(\d{1,2}(?::[0-5]\d)?(?:[ap]m)?)[ -]?ish\b", r"~\1", note)


def _uhr(note: str) -> str:
    """("12-16 uhr", "um 18 uhr 30") -> 12:00 to 16:00, at 18:30."""
    note = re.sub(
        rf"\b({_DAY})(?:[.:]([0-5]\d))?{_DASH}({_DAY})(?:[.:]([0-5]\d))? ?uhr\b",
        lambda x: f"{int(x[1])}:{x[2] or '00'} to {int(x[3])}:{x[4] or '00'}",
        note,
    )
    return re.sub(
        rf"\b(?:um )?({_DAY})(?:[.:]([0-5]\d))? ?uhr\b(?: ([0-5]\d)\b(?!:))?",
        lambda x: f"{int(x[1])}:{x[2] or x[3] or '00'}",
        note,
    )


def _notations(note: str) -> str:
    """12h00, 12.15 and 1300, where there are two hours, and one is surely none of a length or a
    day."""
    clocks = len(re.findall(rf"{_COLON}|{_AT}|(?<![\d.])(?<!for )(?:1[3-9]|2[0-3])h\b", note))
    told = re.findall(_H00, note)
    if told and clocks + len(told) > 1 and (clocks or any(int(hour) > 9 for hour, _ in told)):
        note = re.sub(_H00, r"\1:\2", note)
    # "From 9:30, put away 16h": by itself, or after "for", it is so long.
    if re.search(_COLON, note):
        note = re.sub(r"(?<![\d.])(?<!for )(1[3-9]|2[0-3])h\b", r"\1:00", note)
    told = re.findall(_DOTTED, note)
    whole = clocks or any(past == "00" or int(past) > 12 for _, past in told)
    if told and clocks + len(told) > 1 and whole:
        note = re.sub(_DOTTED, r"\1:\2", note)
    beside = rf"(?<!\w){_WHAT}(?: (?:at|by|from|about))? {_FOUR}"
    if len(re.findall(_FOUR, note)) > 1 or re.search(beside, note):
        note = re.sub(_FOUR, r"\1:\2", note)
    return note


def _ranges(note: str) -> str:
    """("out noon-4", "cooled on the counter 10-14") from when to when."""
    note = re.sub(rf"\b({PART}) ?[-–—] ?(?=\d|{PART}\b)", r"\1 to ", note)
    note = re.sub(rf"(?<![\d.])({_DAY}) ?[-–—] ?(?={PART}\b)", r"\1:00 to ", note)
    note = re.sub(rf"\b((?:noon|mid ?day|midnight) to )({_DAY})\b(?!:){UNIT}", r"\1\2:00", note)
    note = re.sub(
        rf"(?<![\d.:~/-])({_CLOCK}){_DASH}({_CLOCK})(?![\d:/-])",
        lambda x: f"{_whole(x[1])} to {_whole(x[2])}" if re.search("[:m]", x[1] + x[2]) else x[0],
        note,
    )
    note = re.sub(rf"(?<![\d-]){_HHMM}[-–—]{_HHMM}(?![\d-])", _from_to, note)
    return re.sub(
        rf"({_STANDS}(?: (?!for\b|serv|\d)[a-z]+){{0,4}}) (?:from )?({_DAY})"
        rf"(?: ?[-–—] ?| (?:till?|til|until|bis) )({_DAY})(?![\d:./])"
        rf"{_NO_CLOCK}",
        r"\1 ~\2:00 to ~\3:00",
        note,
    )


def _whole(clock: str) -> str:
    return clock if re.search("[:m]", clock) else f"{clock}:00"


def _from_to(found: re.Match[str]) -> str:
    """("0900-1230"), but for two years."""
    first, last = found[1] + found[2], found[3] + found[4]
    if all("1900" <= one < "2040" for one in (first, last)):
        return found[0]
    return f"{found[1]}:{found[2]} to {found[3]}:{found[4]}"


def _bare(note: str) -> str:
    """("out 6, in 9") Numbers by themselves behind such words, where there are two
    or another hour."""
    alone = rf"(\b{_WHAT}) ({_DAY})(?=$|[;,])"
    many = len(re.findall(alone, note))
    two = many > 1 or (many and re.search(_COLON, note))
    return re.sub(alone, r"\1 ~\2:00", note) if two else note
