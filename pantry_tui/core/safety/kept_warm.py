"""What a note says of time in the warm: left out, found warm, thawed on a counter, in a
refrigerator that was off, open or too warm. Which words are listened for is a choice of our own,
the stricter one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping

from pantry_tui.core.keeping.warm import HOT_F, HOT_MIN, WARM_MIN
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety import note_cold as cold_words
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.measured import all_fahrenheit
from pantry_tui.core.safety.note_clock import (
    COLD_AFTER,
    cooled_slowly,
    may_be_people,
    minutes_by_the_day,
    on_show,
    open_ended,
    stood_by_its_words,
)
from pantry_tui.core.safety.note_look import says
from pantry_tui.core.safety.note_words import DEGREES
from pantry_tui.core.text import begun
from pantry_tui.core.words import COLD_F, Group, Method

#: USDA FSIS, the two-hour rule: one hour above 90 F, as in a car that stands.
WARM = "out of the cold, for over two hours in all as far as anybody knows"
PERHAPS_WARM = (
    "it may have been out of the cold for over two hours. If it was, it is discarded; if it was "
    "not, put the note right so that it says so."
)
#: Minutes of what people call it.
_SPELLS = (
    (
        r"\b(?:a|all|the whole|half the) (?:week|weekend|month|summer|autumn|fall|winter|spring|"
        r"season|year)\b|\b(?:days|weeks|months|years)\b(?! (?:old|ago)\b)|"
        r"\bsince (?:(?:last )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|"
        r"(?:the |last )*(?:weekend|week))\b",
        3 * 24 * 60,
    ),
    (r"\bover ?night\b|\ball (?:night|day)\b|\b(?:whole|half the) (?:night|day)\b", 8 * 60),
    (
        r"\b(?:a|all) (?:day|morning|afternoon)\b|"
        r"\bsince (?:yesterday|breakfast|(?:this |the |last )*(?:morning|noon|lunch|night))\b",
        5 * 60,
    ),
    (r"\b(?:most|much|half|part) of (?:the |a )?(?:day|morning|afternoon|evening|night)\b", 4 * 60),
    (r"\b(?:hours|too long|for ages|a long time)\b", 3 * 60),
)
BOOK_IT = "book it with `outage`, which says what to do. Until then it is not checked."
_SINCE_WHEN = (
    "book it with `reading` and since when, which says what to do. Until then it is not checked."
)
#: What a temperature in the record of these is the warmth of: the food where it stands, or in the
#: pot where it is hotter than anybody keeps it.
_STANDS = frozenset(
    {Method.MEAL, Method.FRESH, Method.BOUGHT, Method.FRIDGE_PICKLE, Method.IN_OIL, Method.FROZEN}
)
_COOKED_F = 120.0
EACH = {"m": 1, "h": 60, "d": 24 * 60, "w": 7 * 24 * 60}
FOR = (
    r"(?<![\d.])(\d+(?:\.\d+)?)\s*(h|m|d|w)(?:(?:rs?|ours?|ins?|inutes?|ays?|eeks?)\b|\b)"
    r"(?! ago\b)"
)
#: It came out of the freezer on a day, and nobody says that it stood in the warm.
_THAWS_SINCE = (
    r"\b(?:thawed|defrosted|thawing|defrosting|(?:out of|from) the freezer) (?:since|on) "
    r"(?:last )?(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day|yesterday|\d|the )"
)
_BEFORE_THE_COLD = (
    r"\b(?:before|until|till|then|and then) "
    r"(?:(?:it|they|the|our|going|went|was|were|putting|put|got|getting|in|"
    r"into|to|them|a) )*(?:fridge|refrigerator|freezer|cold|chill(?:ed|ing)?|refrigerat\w*)\b"
)
_AFTER_IT = r"\bafter (?:it was |they were |the )?(?:smok|cook|bak|roast|boil)\w*"
_WASHED = r"\b(?:wash|rins|dipp?|scrubb?)\w*(?: \w+)? (?:in|with|under) cold (?:tap )?water\b"
#: Butter may stand out a day or two (USDA FSIS, from memory); the stricter of them.
_BUTTER_MIN = 24 * 60
#: °F from which hot food is kept so (USDA FSIS).
_KEPT_HOT_F = 139.9


def minutes_of(clause: str) -> int | None:
    """The longest time that is named, None where none is."""
    told = [float(many) * EACH[unit] for many, unit in re.findall(FOR, clause)]
    told += [many for pattern, many in _SPELLS if not told and re.search(pattern, clause)]
    return round(max(told)) if told else None


#: What was done to a crop before it was frozen.
_BEFORE_FREEZING = (
    r"\b(?:before|pick\w*|harvest\w*|garden|field|shell\w*|blanch\w*|sort\w*|froze\w*|freez\w*|"
    r"cool\w*|dry\w*|drain\w*|wash\w*|unblanched|then|first)\b"
)
#: What a chest shows, and who opened it, in other words.
_CHEST = (
    r"\boutage\b|\b(?:un ?plugged|(?:plug|cord|lead|cable)(?: (?:was|were|had|been|got|"
    r"has|just|accidentally|by \w+))* (?:pulled|out|slipped|loose|fell|fallen|came (?:out|loose|"
    r"off)|knocked|kicked|off)|(?:pulled|kicked|knocked|yanked|tripped over)(?: out)? the (?:plug|"
    r"cord|lead|cable)|(?:socket|main switch|switch)(?: "
    r"\w+){0,2} "
    r"off)\b|\b(?:lid|door)(?: \w+){0,2} (?:not|never)(?: \w+){0,2} (?:close\w*|shut|down)\b|"
    r"\b(?:lid|door) (?:was )?propped\b|\b(?:bags?|packs?|boxes) (?:\w+ )?(?:soft|floppy|wet|"
    r"limp)\b|"
    r"\bnot (?:quite |all the way |fully )*frozen (?:any ?more|through any ?more)\b|"
    r"\b(?:puddle|water|blood)(?: \w+){0,3} (?:under|in the bottom of|below|bottom of) (?:the "
    r")?(?:chest|freezer)\b|"
    r"\b(?:ice|frost)(?: \w+){0,2} gone\b|\bice cream (?:was |is )?(?:soup|liquid|soft|runny)\b|"
    r"\bchest (?:\w+ )?warm\b"
)
#: It held, or nothing was in it yet.
_HELD = (
    r"\b(?:clean(?:ed|ing)?|empty|before (?:i |we )?(?:fill\w*|load\w*)|filled (?:later|after)|"
    r"briefly|once|twice|"
    r"(?:and|then) (?:shut|closed)|while (?:i|we) (?:sort|load|fill|look|pack)\w*|(?:one|two|1|2) "
    r"minutes?|"
    r"lamp|light|bulb|in town|not here|only|next door|still (?:hard|solid|frozen)|stayed)\b|"
    r"\bno (?:power )?(?:cuts?|problems?|outages?|failures?|trouble)\b"
)


def degrees_of(clause: str) -> list[float]:
    """Every warmth that is named with its unit, in °F."""
    told = [f"{many} {unit}" for many, unit in re.findall(DEGREES, clause)]
    return [one for each in told for one in all_fahrenheit(each)]


def found_warm(
    method: Method, record: Mapping[str, str], perishes: Callable[[], bool]
) -> Iterator[str]:
    """What a record says of how warm food stood that must be cold: of a hotter one it is how it was
    cooked."""
    typed = record.get("temperature", "")
    if typed and method in _STANDS:
        warmest = max(all_fahrenheit(typed), default=0.0)
        if COLD_F < warmest < _COOKED_F and perishes():
            yield (
                f"Its record says temperature={typed}: not checked. {begun(_SINCE_WHEN)} If that "
                "is no warmth of the food, record what is true."
            )


def warm(
    method: Method, food: FoodFacts, clause: str, perishes: Callable[[], bool]
) -> Iterator[str]:
    """What a clause says of time in the warm; `perishes`: whether it must go after two hours."""
    frozen = method is Method.FROZEN
    off = cold_words.without_cold(clause) or (frozen and affirmed(clause, _CHEST))
    if off and not re.search(_HELD, clause) and (frozen or perishes()):
        yield BOOK_IT
    elif cold_words.too_warm(clause, degrees_of(clause), frozen=method is Method.FROZEN) and (
        method is Method.FROZEN or perishes()
    ):
        yield _SINCE_WHEN
    if says(words.EXPIRED, clause) and perishes():
        yield "no figure begins with what was past its last day."
    # What went before the cold was out of it.
    told = re.sub(rf"{_BEFORE_THE_COLD}|{COLD_AFTER}|{_WASHED}", " ", clause)
    cold = re.search(words.COLD_PLACE, told) is not None
    again = says(words.REFROZEN, clause)
    if method is Method.FROZEN or "freez" in clause:
        again = again or says(words.FROZEN_BEFORE, clause)
    thawed = says(words.THAWED_WARM, clause) and not re.search(words.THAWED_SAFELY, clause)
    if again and not thawed and "fridge" not in clause and perishes():
        yield "only what thawed in the refrigerator is frozen again, and nobody says that it did."
    minutes = minutes_of(clause) or minutes_by_the_day(clause)
    if stood_by_its_words(clause) and perishes():
        yield f"{WARM}: discard."
    warmest = max(degrees_of(clause), default=0.0)
    idle = says(words.LEFT_IN_IT, clause) and method is not Method.COLD_SMOKED
    if idle and minutes and minutes > WARM_MIN and warmest < _KEPT_HOT_F and perishes():
        yield f"{WARM}: discard."
    if re.search(words.MADE_SO, clause):
        return
    if re.search(_THAWS_SINCE, clause) and not re.search(words.WARM_PLACE, clause):
        return  # how old it is then: note_days.py
    out = re.search(words.OUT_OF_THE_COLD, clause)
    if cold and not out and "not" not in clause.split():
        return
    stands = says(rf"{words.STOOD}|\bbeen out\b", clause) is not None
    if minutes is None and stands and open_ended(clause) and perishes():
        yield PERHAPS_WARM
    left = bool(thawed) or says(words.LEFT_OUT, clause) is not None
    if not left and method is not Method.FRIDGE_PICKLE:
        left = minutes is not None and says(words.STOOD, clause) is not None
    shown = minutes is not None and on_show(clause)
    left = left or shown or (minutes is not None and cooled_slowly(clause))
    hot = warmest > HOT_F or re.search(words.HOT_PLACE, clause) is not None
    most = HOT_MIN if hot else WARM_MIN
    asked = re.match(words.ASKED, clause) is not None
    if not left and not asked and not re.search(words.COOKING, re.sub(_AFTER_IT, " ", clause)):
        placed = minutes is not None and re.search(rf"{words.WARM_PLACE}|{words.ROOM}", clause)
        left = bool(placed) or says(words.AT_ROOM, clause) is not None
    found_warm = says(words.FOUND_WARM, clause) and not re.search(words.WARM_SO_FAR, clause)
    if found_warm and not asked and perishes():
        yield f"{WARM}: discard."
    if food.name == "butter" and not perishes():
        if left and (hot or minutes is None or minutes > _BUTTER_MIN):
            yield "no figure is published for butter that stood out for over a day."
        return
    too_long = left and (minutes is None or minutes > most)
    if too_long and perishes():
        yield PERHAPS_WARM if may_be_people(clause) else f"{WARM}: discard."
    elif too_long and method is Method.FROZEN and food.group is Group.VEGETABLE:
        if not re.search(_BEFORE_FREEZING, clause):
            yield PERHAPS_WARM
    elif too_long and method is Method.FRIDGE_PICKLE:
        yield "it was not heat processed, so it stays cold. What stood out has no figure."
