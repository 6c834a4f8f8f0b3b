"""When it was out of the cold by the hours of a note: "cooked 18:00, fridge 20:45", "taken out at
8, back at one", "in the fridge 5 hours after cooking". For a whole note in small letters, numbers
and hours in figures.

What is cooked or taken out begins the two hours (USDA FSIS) and what goes into the cold ends them.
Which words are listened for, and at what hour people have supper, is our own choice.
"""

from __future__ import annotations

import re
from enum import StrEnum
from itertools import chain

from pantry_tui.core.keeping.warm import HOT_F, HOT_MIN, WARM_MIN
from pantry_tui.core.safety.kept_warm import degrees_of
from pantry_tui.core.safety.kept_words import HOT_PLACE, WARM_PLACE
from pantry_tui.core.safety.note_clock import HOUR, PART, UNIT
from pantry_tui.core.safety.note_sums import minutes_out


class Late(StrEnum):
    """How sure it is that it was out of the cold for over two hours."""

    NO = ""
    PERHAPS = "perhaps"
    SURELY = "surely"
    #: Two hours of the day, and nobody knows what was done at them.
    UNCLEAR = "unclear"


_COLD = r"(?:fridge|refrigerator|ice ?box|cool(?:er| ?box| bag)|chiller|cold room|cold cellar)"
_TO = r"(?:(?:back|straight|away|it|them|all|only|finally) )*(?:in|into|to)(?: (?:the|our|a|my))?"
_HOT = (
    r"(?:re ?heated|cooked|cooking|made|making|boiled|baked|roasted|fried|stewed|simmered|braised|"
    r"grilled|smoked|steamed|poached|strained|ladled|poured|potted|ready|done|finished|"
    r"off (?:the )?(?:smoker|heat|stove|boil|hob|grill|fire)|"
    r"(?:hob|kettle|cooker|stove|gas|oven|heat|pan|pot|burner) (?:(?:was|went|turned|switched|"
    r"is) )*off|"
    r"(?:out of|out|from) the (?:oven|smoker|stove|hob|heat|grill|pot|pan|pressure cooker))"
)
#: Where it stands while people eat.
_FEAST = (
    r"(?:part(?:y|ies)|picnic|buffet|pot ?luck|barbecue|bbq|cook ?out|reception|wedding|funeral|"
    r"(?:(?:easter )?egg )?hunt|(?:cake |market )?stall|bring and share|wake|bake sale|fair|fete|"
    r"open house)"
)
_STOOD = (
    r"(?:(?:took|taken|came|come|got|set|put|laid|brought|left|moved)(?: (?:it|them|this|all))? "
    r"out|out|served|dished up|plated|"
    r"(?:on|onto) the (?:\w+ )?(?:table|counter|side|worktop|bench|porch|sill)|"
    rf"{WARM_PLACE}|counter|worktop|(?:at |to |on )?(?:the )?{_FEAST}|on display|stood|standing|"
    rf"sat|sitting|"
    r"left|cooling|cooled(?! (?:down |off |enough )?(?:by|at|until|till)\b))"
)
_OUT = (
    r"(?:milked|killed|caught|butchered|landed|bought|shopping|delivered|dropped(?: it| off)*|"
    r"collected|picked up|"
    r"(?:out of|from) (?:the )?(?:fridge|refrigerator|freezer|cold)|(?:at|to) (?:the )?market|"
    r"(?:came |got |arrived |back )?home|arrived|eaten|ate|carved|sliced up|unpacked)"
)
_IN = (
    rf"(?:{_TO} {_COLD}|fridged|refrigerated|chilled|{_COLD}|(?:went|going|got|was|were) "
    r"(?:it |them )?in|(?:put|cleared) (?:it |them |all )?(?:back|away|in)|"
    r"(?:came |come |brought |got )?back(?: in)?|cold|on ice|"
    r"in(?= (?:at|by) (?:about )?\d| ~\d)|cleared|tidied (?:up|away)|(?:taken|brought|carried|"
    r"fetched) in(?:side|doors)?|stowed|"
    r"forgot to (?:chill|refrigerate|fridge|put (?:it|them) (?:away|in))(?: (?:it|them))? "
    r"(?:until|till)|cooled (?:down |off |enough )?(?=(?:by|at)\b)|"
    r"(?:boxed|packed|wrapped|tubbed|portioned)(?: (?:it|them|up|all|away))*|"
    r"(?:remembered|noticed|discovered|found|thought of)(?: (?:it|them|the \w+))?|woke(?: up)?|"
    r"got up|came down)"
)
_FROZEN = rf"(?:{_TO} (?:the )?(?:deep )?freezer|frozen|freezer)"
_CLOCK = (
    rf"(?:~\d{{1,2}}(?::\d\d)?(?:[ap]m)?|\d{{1,2}}(?::\d\d)?[ap]m|\d{{1,2}}:\d\d|"
    rf"\d{{1,2}} ?o'clock|"
    rf"(?<=at )\d{{1,2}}\b{UNIT}|(?<=about )\d{{1,2}}\b{UNIT}|(?<=by )\d{{1,2}}\b{UNIT}|"
    rf"(?<=around )\d{{1,2}}\b{UNIT}|(?<=from )\d{{1,2}}\b{UNIT}|(?<=to )\d{{1,2}}\b{UNIT}|"
    rf"(?<=till )\d{{1,2}}\b{UNIT}|(?<=until )\d{{1,2}}\b{UNIT})(?!\w)"
)
_LED = (
    r"(?:(?:the|this|that|early|late|about|around|nearly|sunday|last|sometime|in|at|before|"
    r"after) )*"
)
#: An hour; of "dinner at 7" the hour, of "from 4 to 6" both.
_TIME = rf"(?<!\w)(?:{PART} (?:was |is )?(?:(?:at|about|around) )?(?=~?\d))?({PART}\b|{_CLOCK})"
_MEAL = (
    r"(?:breakfast|brunch|lunch|tea|supper|dinner|meal)(?:time)? (?:was |is )?"
    r"(?:(?:at|about|around) )?~?\d"
)
_TOKEN = re.compile(
    rf"(?P<stop>;|,|\band\b|\bthen\b)|(?P<begins>\b(?:start\w*|began|begun|put on|lit|since|"
    rf"(?:on|onto|in|into) the (?:oven|stove|hob|smoker|slow cooker|grill))\b)|"
    rf"(?P<for>\b(?:for(?: [\w']+){{0,2}} {_FEAST}\b|for|eat|serves?|use|keeps?|reheat|until|till|"
    rf"meant|to be)\b)|"
    rf"(?P<froze>\b{_FROZEN}\b)|(?P<cold>\b{_IN}\b)|(?P<hot>\b{_HOT}\b)|"
    rf"(?P<out>\b{_OUT}\b)|(?P<stood>\b{_STOOD}\b)|"
    rf"(?P<hour>(?:\bfrom )?{_LED}{_TIME}(?: (?:to|till|until) {_LED}{_TIME})?)"
)
#: Something else kept it cold or hot, or it was cold already.
_KEPT = (
    r"\b(?:ice(?! ?box)|iced|snow|kept (?:hot|cold|chilled)|hot ?plate|chafing|"
    r"(?:slow|rice) cooker(?! (?:(?:was|went|turned|switched) )*off)|warming (?:tray|"
    r"drawer)(?! (?:(?:was|went|turned|switched) )*off)|"
    r"(?:kept|held|holding) (?:\w+ )?(?:at|above|over) (?:(?:1[4-9]|2\d)\d ?°? ?f|[6-9]\d ?°? ?c)|"
    r"steam table|"
    r"bain marie|over ?night in|"
    r"cool (?:box|bag)|cooler|in cold water|cold water bath)\b"
)
#: It was in the cold before.
_BEFORE_THAT = rf"\b(?:again|moved(?! (?:it |them |all )?{_TO} {_COLD}))\b"
#: Another day is meant.
_NEXT = r"\b(?:next|following|day after|tomorrow|yesterday)\b"
#: What is begun for an hour stands ready at it.
_SERVED_AT = re.compile(
    r"\b(made|cooked|ready|baked|done|prepared|dished up|served) for "
    r"(?=(?:about )?(?:\d{1,2}(?::\d\d)?[ap]m\b|1[3-9]:\d|2[0-3]:\d|noon\b))"
)
_FOR_A_MEAL = re.compile(
    r"\b(?:made|cooked|ready|baked|prepared) for (?:the |our )?"
    r"((?:breakfast|brunch|lunch|tea|supper|dinner) (?:at |about )?(?=~?\d))"
)
#: °F from which a warmth is the oven's or the pot's.
_COOKS_F = 120.0
#: When it was cleared away, and then since when it had stood there.
_TOLD_BACK = (["cold", "stood"], ["cold", "out"], ["cold", "meal"])
#: Hours that are of something else: what is cured or gathered, the shop's, the clock's.
_CALM = (
    rf"\b(?:brin\w*|marinat\w*|cur(?:e|ed|ing)|smok\w*|pick(?:ed|ing)|harvest\w*|gather\w*|dug|"
    r"soak\w*|pro[ov]\w*|ris(?:e|ing|en)|ferment\w*|cultur\w*|incubat\w*|dried|drying|dehydrat\w*|"
    rf"{_COLD}|freezer|frozen|froze|chill\w*|cold|open(?:s|ed|ing)?|closed?|hours of|label\w*|"
    r"timers?|oven|slow cooker|simmer\w*|cook\w*|roast\w*|bak\w*|brais\w*|shop|store|bus|train|"
    r"called|phone\w*|checked|looked|weighed|wrote|recipe|batch|lot|jar|pack|page|no|tel)\b"
)
#: Parts of the day stand for an hour that another household may have two hours off.
_VAGUE_MIN = 4 * 60
_MOST_MIN = 20 * 60
_SPAN = r"(\d+(?:\.\d+)?) ?(h|m)(?:(?:rs?|ours?|ins?|inutes?)\b|\b)"
_OF_COOKING = (
    r"(?:it |they |the |that |being |was |were |had |been |we |i |all )*(?:cook\w*|bak\w*|roast\w*|"
    r"boil\w*|fry\w*|fried|made|making|serv\w*|dinner|supper|lunch|brunch|breakfast|"
    r"(?:the )?meal|eating|ate|done|ready|finish\w*|shopping|party|buffet|picnic|milking|buying|"
    r"bought|taking it out|coming (?:out|home)|out of the oven)\b"
)
#: "Put in the fridge 5 hours after cooking", and "five hours later".
_AFTER = (
    rf"\b(?P<how>(?:\w+ )?)(?:{_TO} )?(?:{_COLD})"
    r"(?: (?:at|only|about|over|nearly|some|around|just|full|time|it|in|went|then|a))* "
    rf"{_SPAN} (?:after {_OF_COOKING}|later\b)"
)
_AFTER_SURE = (
    r"\b(?:put (?:it |them )?(?:away|in)|fridged|went in|not (?:chilled|refrigerated) until)"
    rf"(?: (?:only|about|over|nearly|some|around|just))* {_SPAN} (?:after {_OF_COOKING}|later\b)"
)
#: How long it cooled, or how long it had been there.
_EITHER = rf"\b(?:chilled|refrigerated|cooled)(?: \w+)? {_SPAN} after {_OF_COOKING}"
_BEFORE = (
    rf"{_SPAN} (?:or (?:so|more) )?(?:passed |went by |elapsed )?(?:before|until|till) "
    rf"(?:\w+ ){{0,4}}(?:{_COLD}|fridged|refrigerated|chilled)\b"
)


#: The same by where it was.
_FROM_TO = rf"\b{_SPAN} (?:from|between) (?:the )?\w+ (?:to|and|until) (?:the )?{_COLD}\b"
#: It waited for something that has no hour.
_WAITED = (
    rf"\bonly (?:\w+ ){{0,4}}{_TO} {_COLD} (?:when|after|once)\b"
    r"(?! (?:\w+ ){0,3}(?:cool\w*|cold|steam\w*|\d))"
)


def chilled_late(note: str) -> Late:
    """Whether a note has when it was cooked or taken out, and that the cold came hours later."""
    if found := re.search(_AFTER_SURE, note):
        return Late.SURELY if _long(found[1], found[2]) else Late.NO
    if found := re.search(_AFTER, note):
        put = found["how"].strip() in ("put", "went", "got", "only", "moved", "came", "")
        late = _long(found[2], found[3])
        return (Late.SURELY if put else Late.PERHAPS) if late else Late.NO
    if re.search(_KEPT, note):
        return Late.NO
    hot = re.search(HOT_PLACE, note) or any(HOT_F < one < _COOKS_F for one in degrees_of(note))
    most = HOT_MIN if hot else WARM_MIN
    summed = Late.SURELY if (minutes_out(note) or 0) > most else Late.NO
    if re.search(_BEFORE_THAT, note):
        return summed
    for each in (_EITHER, _BEFORE, _FROM_TO):
        found = re.search(each, note)
        if found and _long(found[1], found[2]) and not re.search(r"\bfor \d", note):
            return Late.PERHAPS if each == _EITHER else Late.SURELY
    note = _FOR_A_MEAL.sub(r"\1", _SERVED_AT.sub(r"\1 at ", note))
    found_out = summed if summed is not Late.NO else _by_the_clock(note, most)
    waited = found_out is Late.NO and re.search(_WAITED, note) is not None
    return Late.PERHAPS if waited else found_out


def _long(many: str, unit: str) -> bool:
    return float(many) * (60 if unit == "h" else 1) > WARM_MIN


class _Hour:
    """An hour that was told: minutes since midnight, whether it is one of all 24, whether it is
    told in figures, and whether these may be of something else (note_times.py)."""

    def __init__(self, told: str) -> None:
        self.guessed = told.startswith("~")
        told = told.lstrip("~")
        self.sure = told[:1].isdigit() or told in ("noon", "midday", "midnight")
        found = re.match(r"(\d{1,2})(?::(\d\d))? ?(am|pm)?", told)
        self.colon = found is not None and found[2] is not None
        if found is not None:
            hour = int(found[1]) % 12 if found[3] else int(found[1])
            self.minute = (hour + (12 if found[3] == "pm" else 0)) * 60 + int(found[2] or 0)
            self.whole = bool(found[3]) or hour > 12 or told.startswith("0")
        else:
            self.minute, self.whole = HOUR[re.sub(" ", "", told)] * 60, True

    def until(self, end: _Hour) -> int:
        """The minutes to another."""
        both = self.whole and end.whole
        both = both or (self.colon and end.colon and (self.whole or end.whole))
        return (end.minute - self.minute) % ((24 if both else 12) * 60)


def _by_the_clock(note: str, most: int) -> Late:
    """By what was done at which hour, in turn; `most`: minutes that it may be out of the cold."""
    total, vague, asked, unclear = 0, False, re.search(_NEXT, note) is not None, False
    began: list[_Hour] = []
    loose: list[_Hour] = []
    #: It stood from one hour to another, and nobody has said yet when it came into the cold.
    stood = 0
    for kind, first, last in _told(note):
        span = first.until(last)
        if kind == "loose":
            times = (*began, *loose)
            unclear = unclear or span > most or any(one.until(first) > most for one in times)
            loose.append(last)
            continue
        if kind in ("hot", "out", "stood", "meal"):
            unclear = unclear or any(one.until(first) > most for one in loose)
            if kind in ("stood", "meal") and span:
                total, began = total + stood, [] if stood else began
                stood = span
                asked = asked or first.guessed or last.guessed
                vague = vague or not (first.sure and last.sure)
            began.append(last if kind == "hot" else first)
            asked = asked or kind == "meal"
            continue
        if not began:
            unclear = unclear or any(one.until(first) > most for one in loose)
            continue
        end = began[-1] if kind == "then" else first  # not before the last hour that was told
        spans = [one.until(end) for one in began]
        longest, shortest = max(*spans, stood), min(spans)
        vague = vague or not all(one.sure for one in (*began, end))
        asked = asked or any(one.guessed for one in (*began, end))
        asked = asked or (kind == "then" and longest > stood)
        began, loose = [], []
        if longest >= _MOST_MIN:
            continue
        asked = asked or kind == "froze" or (kind != "then" and longest > most >= shortest)
        total, stood = total + longest, 0
    if total + stood <= (max(_VAGUE_MIN, most) if vague else most):
        return Late.UNCLEAR if unclear else Late.NO
    return Late.PERHAPS if asked else Late.SURELY


def _told(note: str) -> list[tuple[str, _Hour, _Hour]]:
    """What was done, and from which hour to which, in the order in which it is told; "loose" what
    is in figures beside no word that is known, "then" what came into the cold at no hour."""
    found: list[tuple[str, _Hour, _Hour]] = []
    does, hours, passed, begins, at = "", None, False, False, 0
    for token in chain(_TOKEN.finditer(note), _TOKEN.finditer(";")):
        kind = "hour" if token["hour"] else token.lastgroup or ""
        if kind == "stop":
            end = token.start() if token.string is note else len(note)
            # "Reheated at 12 and 18": the same was done at both.
            alike = note[at - 1 : at + 2] == "and"
            calm = alike or re.search(_CALM, note[at:end]) is not None
            if hours is not None and hours[0].sure and not calm:
                found.append(("loose", *hours))
            if hours is None and does == "cold" and not passed and found:
                found.append(("then", *found[-1][1:]))
            does, hours, passed, begins, at = "", None, False, False, end + 1
        elif kind == "begins":
            begins = True
        elif kind == "for":
            if does == "hot" and token[0] in ("until", "till"):
                continue  # "simmered till 5"
            denied = re.search(r"\b(?:not|never|only)\b[^;,]*$", note[: token.start()])
            passed = not (denied and does in ("cold", "froze"))
        elif kind == "hour":
            told = [one for one in token.groups()[-2:] if one]
            since = begins or (does == "hot" and token[0].startswith("from ") and len(told) == 1)
            hours = None if since or passed else (_Hour(told[0]), _Hour(told[-1]))
            passed = False
            meal = "" if does or not re.search(_MEAL, token[0]) else "meal"
            if hours is not None and (does or meal):
                found.append((does or meal, *hours))
                does, hours = "", None
            elif not re.match(r"(?:at|in the) |~?\d", token[0]) and not (hours and hours[-1].sure):
                hours = None  # "lunch in the fridge"
        elif hours is not None:
            found.append((kind, *hours))
            does, hours = "", None
        else:
            does, passed = kind, passed and kind == does
    told_back = re.search(r"\b(?:cleared|tidied)\b", note) is not None
    kinds = [one[0] for one in found]
    if kinds == ["cold", "hot"] or (told_back and kinds in _TOLD_BACK):
        found.reverse()
    return found
