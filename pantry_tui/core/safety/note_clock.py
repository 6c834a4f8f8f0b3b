"""What a note says of time out of the cold by parts of the day and by the clock: "from lunch till
supper", "cooked at 4pm" and "went in at 11pm", "not in the refrigerator till morning". For notes in
small letters, numbers in figures.

At what hour people have supper nobody says: the hours are our own choice, and where they only are
guessed at a longer time is asked for before food is thrown away.
"""

from __future__ import annotations

import re

HOUR = {
    "dawn": 6, "breakfast": 8, "morning": 9, "brunch": 11, "noon": 12, "midday": 12, "lunch": 12,
    "lunchtime": 12, "afternoon": 15, "teatime": 17, "tea": 17, "supper": 18, "dinner": 18,
    "suppertime": 18, "dinnertime": 18, "evening": 19, "dusk": 19, "dark": 20, "night": 22,
    "bedtime": 22, "midnight": 24,
}  # fmt: skip
PART = (
    r"(?:dawn|breakfast|morning|brunch|noon|mid ?day|lunch(?: ?time)?|afternoon|tea(?: ?time)?|"
    r"supper(?: ?time)?|dinner(?: ?time)?|evening|dusk|dark|night|bed ?time|midnight)"
)
UNIT = (
    r"(?! ?(?:h|hrs?|hours?|m|mins?|minutes?|d|days?|w|weeks?|months?|years?|lbs?|kg|oz|g|pints?|"
    r"quarts?|jars?|packs?|tubs?|bags?|f|c|people|inch\w*|cm)\b)(?! ?[%°/])(?![\d.])"
)
_CLOCK = rf"\d{{1,2}}(?::\d\d)?(?: ?(?:am|pm|o'clock))?\b{UNIT}"
_SURE_CLOCK = rf"(?:\d{{1,2}}(?::\d\d)? ?(?:am|pm|o'clock)\b|(?<=at )\d{{1,2}}(?::\d\d)?\b{UNIT})"
_LED = r"(?:(?:the|this|that|next|following|early|late|about|around|nearly|sunday|last) )*"
_TO = r"(?:to|till|til|until|through(?: to)?|right through(?: to)?|up to|and|-)"
_RANGE = (
    rf"\b(?:from|since|after|between|at)? ?{_LED}({PART}|{_CLOCK})(?: (?:right|all the way))? "
    rf"{_TO} {_LED}({PART}|{_CLOCK})"
)
#: The end of it alone, and nobody says when it began.
_UNTIL = (
    rf"\b(?:until|till|til) {_LED}({PART}|day)\b(?! to (?!get|be)\w+)(?! (?:use|meal|and night))"
)
#: Until, or since, an hour, and nobody says for how long that was.
_OPEN_ENDED = (
    r"\b(?:until|till|til|since|from) (?:about |after |nearly |gone )?"
    rf"\d{{1,2}}(?::\d\d)?(?:[ap]m)?\b{UNIT}"
    rf"(?! (?:to|till|until|-))|\bfrom {_LED}{PART}\b(?! (?:to|till|until|-) (?:{PART}|\d))|"
    r"\b(?:until|till|since) (?:\w+ ){1,5}(?:at|around) \d{1,2}\b"
)
#: Somebody was up so late.
_SAT_UP = r"\b(?:sat|stayed|was|were|been) (?:up|awake)\b|\b(?:keep|kept|saved?|for|chilled)\b"
_NEXT = (
    r"(?:(?:the |only |on )*(?:next|following) (?:day|morning|afternoon|evening)|"
    r"the (?:day|morning) after)\b"
)
_COLD = r"(?:fridge|refrigerator|ice ?box|freezer|cold|chiller)"
_CHILLED = r"(?:fridged|refrigerated|(?:in|into|to) (?:the |our )?(?:fridge|refrigerator|ice ?box))"
_WENT_IN_LATE = (
    rf"\b{_CHILLED}(?: (?:it|them|only|first thing))* {_NEXT}(?=$| (?:because|as|by mistake))|"
    rf"\b(?:not|nobody|no one) (?:\w+ ){{0,6}}(?:{_COLD}|fridged|refrigerated|chilled|"
    r"put (?:(?:it|them) )?away)(?: \w+)? "
    rf"(?:until|till|til|before) {_LED}(?:{PART}|day)\b|"
    rf"\bonly (?:\w+ ){{0,3}}(?:{_CHILLED}|chilled)(?: (?:it|them|in|at))* {_LED}(?:{PART}|day)\b"
)
#: It was cold already, or came out of there.
_COLD_BEFORE = r"\b(?:moved|back|from the|out of|over ?night in|ice|again)\b"
#: Minutes of a night, and of nobody knows how much of a day.
_OVERNIGHT, _SOME_HOURS = 8 * 60, 5 * 60
_HALF_DAY = r"\bhalf (?:a |the )?day\b|\b0\.5 (?:a )?day\b"
#: In a lunch box it stood at the warmth of a school or a workplace.
_CARRIED = (
    r"\b(?:lunch ?box|packed lunch|lunch|sandwich box)\b.*\b(?:uneaten|untouched|"
    r"(?:came|come|brought) (?:back|home))\b|"
    r"\b(?:came|come|brought|carried|returned) (?:\w+ )?(?:back|home)(?: \w+){0,3} "
    r"(?:uneaten|untouched|from (?:school|work|the office|kindergarten|nursery))\b|"
    r"\b(?:uneaten|untouched) (?:\w+ )?(?:lunch(?: ?box)?|packed lunch)\b|"
    r"\b(?:back|home) from (?:school|work) (?:uneaten|untouched)\b"
)
#: What keeps it hot was off.
_NOT_KEPT_HOT = (
    r"\b(?:crock(?: ?pot)?|slow cooker|rice cooker|cooker|hot ?plate|warming (?:tray|drawer)|"
    r"warmer|chafing dish|steam table|oven)\b(?: \w+){0,4}? (?:un ?plugged|tripped|fail\w*|died|"
    r"broke(?: down)?|quit|lost power|(?:was|were|had been|been|went|gone|turned itself|"
    r"switched itself) off|not (?:plugged in|on|switched on|turned on|working)|never (?:came|"
    r"went|switched|turned) on)\b|\b(?:un ?plugged|dead|broken) (?:crock(?: ?pot)?|slow cooker|"
    r"rice cooker|warmer|hot ?plate)\b"
)
_THEN_COLD = r"\b(?:then|and) (?:\w+ )?(?:chill|fridge|refrigerat|freez|froz|cool)\w*|\bpreheat"
#: How long it cooled, and that it did so slowly.
_COOLED = r"\b(?:took|taken|needed|spent)\b.*\bto (?:cool|get cold|go cold|chill)\b|\bto cool$"
#: When it was cold at last, not that it still was.
COLD_AFTER = (
    r"(?<!still )(?<!stayed )(?<!kept )(?<!remained )(?<!fridge )(?<!freezer )(?<!ice )"
    r"\b(?:cold|cool|cooled|chilled)(?: (?:down|through|enough))? (?:only |at last )?after "
    r"(?:about |over |nearly |some |almost )?(?=\d)"
)
#: Where food stands to be eaten from, and since which hour it did: no "for the buffet".
_ON_SHOW = (
    r"(?<!for )(?<!for the )(?<!for our )(?<!for a )\b(?:buffet|on (?:display|show|sale)|"
    r"(?:market |cake )?stall|picnic|pot ?luck|served|set out|put out|laid out|on the table)\b"
)
_SHOWN_FOR = (
    r"\b(?:served|on (?:display|show|sale)|set out|laid out) (?:for|over) (?:\w+ )?\d|"
    r"^(?!.*\b(?:before|ahead|until|till|for) (?:the |our |a )?buffet).*\bbuffet\b"
)
#: So many people, or from one hour to another.
_SERVED_MANY = r"\bserved (?:about )?(\d{1,2}) (?:to|-) (\d{1,2})\b(?!:)(?! ?(?:[ap]m|o'clock))"
#: Nobody was there to put it away.
_FORGOTTEN = (
    r"\b(?:left (?:it|them|this|out|standing|(?:the|a) (?:pot|pan|soup|stew|rice|dish|food|tray|"
    r"leftovers|meat|chicken|box|bowl)\b)|cooling|cool|cooled|standing|stood|out|side|counter|"
    r"stove|hob|table)\b.*\b(?:fell asleep|dozed off|forgot (?:all )?about (?:it|them|the \w+)|"
    r"forgot (?:it|them)$|went to (?:bed|sleep|work))\b"
)
_STILL_WARM = (
    r"\b(?:still|found(?: it| them)?) (?:still )?(?:luke ?)?(?:warm|hot) (?:the |in the |this |at |"
    r"by |after |when (?:i|we) )*(?:next|following|morning|breakfast|noon|day|got up|woke|"
    r"came down|bed ?time|midnight|night|went to bed|(?:[3-9]|\d\d+) (?:hours|hrs|h))\b"
)


def _hour(told: str) -> tuple[int, bool]:
    """The minutes since midnight of a time, and whether it is one of the whole day."""
    told = told.strip()
    if found := re.match(r"(\d{1,2})(?::(\d\d))? ?(am|pm)?", told):
        hour = int(found[1]) % 12 if found[3] else int(found[1])
        late = 12 if found[3] == "pm" else 0
        return (hour + late) * 60 + int(found[2] or 0), bool(found[3]) or hour > 12
    return HOUR[told.replace(" ", "")] * 60, True


def _between(first: str, last: str) -> int:
    (begun, whole), (ended, also) = _hour(first), _hour(last)
    return (ended - begun) % ((24 if whole and also else 12) * 60)


def minutes_by_the_day(clause: str) -> int | None:
    """The time that a clause names by parts of the day, None where it names none."""
    if found := re.search(_RANGE, clause):
        return _between(found[1], found[2])
    if re.search(_HALF_DAY, clause):
        return _SOME_HOURS
    if re.search(_SAT_UP, clause) or not (end := re.search(_UNTIL, clause)):
        return None
    return _OVERNIGHT if end[1] in ("morning", "day", "dawn", "breakfast") else _SOME_HOURS


def open_ended(clause: str) -> bool:
    """("sat out till 4") Whether one end of a time is told, and the other is not."""
    return re.search(_OPEN_ENDED, clause) is not None


def cooled_slowly(clause: str) -> bool:
    """Whether a time in the clause is one of cooling."""
    return re.search(rf"{_COOLED}|{COLD_AFTER}", clause) is not None


def on_show(clause: str) -> bool:
    """Whether the hours of a clause are those for which it stood to be eaten from."""
    if re.search(_SHOWN_FOR, clause):
        return True
    return re.search(_ON_SHOW, clause) is not None and re.search(_RANGE, clause) is not None


def may_be_people(clause: str) -> bool:
    """("served 8 to 12") Whether its hours may be a number of people."""
    many = re.search(_SERVED_MANY, clause)
    return many is not None and int(many[1]) < int(many[2])


def stood_by_its_words(clause: str) -> bool:
    """Whether words that need no time say that it stood out of the cold for hours."""
    if re.search(_THEN_COLD, clause):
        return False
    if re.search(_WENT_IN_LATE, clause) and not re.search(_COLD_BEFORE, clause):
        return True
    cold = re.search(r"\b(?:ice|iced|cool ?(?:bag|box|er)|fridge|refrigerator)\b", clause)
    return any(
        re.search(one, clause) for one in (_CARRIED, _NOT_KEPT_HOT, _STILL_WARM, _FORGOTTEN)
    ) and not (cold)
