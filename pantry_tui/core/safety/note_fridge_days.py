"""How long a note says that food had been in the refrigerator, or was old, before it was frozen:
"had been five days in the fridge before", "frozen on day 4", "bought monday, frozen friday". For
notes in small letters, numbers in figures. Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.notes import clauses, whole

_UNIT = r"(days?|nights?|weeks?|months?)"
_MANY = rf"(\d+(?:\.\d+)?|an?|half an?|several|(?:a )?few|(?:a )?couple of) {_UNIT}"
_EACH = {"day": 1.0, "night": 1.0, "week": 7.0, "month": 28.0}
_WORDS = {"several": 3.0, "few": 3.0, "couple of": 2.0, "half a": 0.5}
_FRIDGE = (
    r"(?:in|from|of) (?:(?:the|our|my|a|an|shop|bottom of|back of|warm) )*"
    r"(?:fridge|refrigerator|ice ?box|cold room|chiller)\b"
)
#: So long it was there, in either order.
_STOOD = (
    rf"\b{_MANY}(?: (?!freez)\w+){{0,4}} {_FRIDGE}",
    rf"\b{_FRIDGE}(?: (?!freez)\w+){{0,4}} {_MANY}",
    rf"\bfridge (?:had|kept|held|hid) (?:\w+ ){{1,2}}(?:for )?{_MANY}",
)
_FROZEN = r"(?:freez\w*|froze\w*|(?:it |they )?went in(?:to the freezer)?|put (?:it|them) in)"
_AGED = (
    rf"\b{_MANY} (?:old|past it|on) (?:when|before|by the time|at)(?: \w+){{0,2}} {_FROZEN}",
    rf"\b{_FROZEN}(?: \w+)? (?:only )?(?:after|when) {_MANY}(?: old| later)?$",
    rf"\b{_MANY} (?:before|until|till) (?:(?:it|they|i|we|was|were|got|being|the|to|into|"
    rf"finally) )*{_FROZEN}",
    rf"\b{_FROZEN}(?: \w+){{0,2}} {_MANY} (?:later|late|after|too late|on)\b",
    rf"\b{_MANY} (?:and )?(?:then )?(?:only then )?(?:froze|frozen|in(?:to)? the freezer)\b",
)
_ON_DAY = rf"\b{_FROZEN} (?:only )?(?:on|at) (?:its |the )?day (\d+)\b|\bday (\d+) when {_FROZEN}"
_WEEKEND = rf"\bover (?:the|a) (?:long )?weekend {_FRIDGE}|\b{_FRIDGE} over (?:the|a) weekend\b"
_ALL_WEEK = rf"\b(?:all|whole|entire) week {_FRIDGE}|\b{_FRIDGE} all week\b"
#: And nobody says how long.
_TOO_LONG = (
    rf"\b(?:too long|(?:for )?ages|for days|for weeks|days on end|longer than \w+ (?:\w+ )?should"
    rf"|longer than (?:the label|it says)|no idea how long|god knows how long|who knows how long|"
    rf"(?:nobody|no one) knows how long)(?: \w+){{0,2}} {_FRIDGE}|"
    rf"\b{_FRIDGE}(?: \w+){{0,2}} (?:too long|for ages|for days|for weeks|longer than|(?:no idea|"
    r"god knows|who knows|not sure|nobody knows) how long)\b|"
    rf"\bforgot\w*(?: \w+){{0,3}} {_FRIDGE}"
)
#: What is to be done with it, what hung to ripen, what lay in salt, and what is thawed.
_OF_ELSE = (
    r"\b(?:keeps?|lasts?|good for|eat|use (?:by|within|up)|within|once|opening|thaw\w*|"
    r"defrost\w*|will|can|up to|ages?|aged|ageing|aging|hung|hang\w*|matur\w*|ripen\w*|cur(?:ed|"
    r"ing)|brin\w*|"
    r"marinat\w*|salted|allow|needs?|ready|before (?:cooking|serving|use|eating|i cook)|meant|"
    r"instead of|rather than|not|never|no|moved from)\b"
)
_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_WEEKDAY = r"(mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?\b"
_GOT = (
    r"\b(?:bought|got|caught|landed|killed|slaughtered|butchered|shot|picked up|fetched|collected|"
    rf"delivered|minced|cooked|made)(?: \w+){{0,4}} (?:on )?{_WEEKDAY}"
)
_FROZE = rf"\b(?:frozen|froze|freezer|freezing)(?: \w+){{0,3}} (?:on |till |until )?{_WEEKDAY}"


def before_the_freezer(note: str) -> Iterator[tuple[str, float | None]]:
    """The words, and how many days they say; None where they say too many and no number."""
    every = tuple(clauses(note))
    for typed, clause in every:
        if re.search(_OF_ELSE, clause):
            continue
        if (days := _days(clause)) is not None:
            yield typed, days
        elif affirmed(clause, _TOO_LONG):
            yield typed, None
    together = "; ".join(clause for _, clause in every)
    got, froze = re.search(_GOT, together), re.search(_FROZE, together)
    if got and froze and got.start() < froze.start():
        first, last = (_DAYS.index(one[1][:3]) for one in (got, froze))
        yield whole(note), float((last - first) % 7)


def _days(clause: str) -> float | None:
    if found := re.search(_ON_DAY, clause):
        return max(0.0, float(found[1] or found[2]) - 1)
    for pattern in (*_STOOD, *_AGED):
        if found := re.search(pattern, clause):
            many, unit = found[1], found[2].removesuffix("s")
            number = _WORDS.get(many.removeprefix("a ").removesuffix("n"), 1.0)
            return (float(many) if many[0].isdigit() else number) * _EACH[unit]
    if re.search(_ALL_WEEK, clause):
        return 7.0
    return 2.0 if re.search(_WEEKEND, clause) else None
