"""When it was out of the cold by the hours of a note: "cooked 18:00, fridge 20:45", "taken out at
8, back at one", "in the fridge 5 hours after cooking". For a whole note in small letters, numbers
and hours in figures.

What is cooked or taken out begins the two hours (USDA FSIS) and what goes into the cold ends them.
Which words are listened for, and at what hour people have supper, is our own choice.
"""

from __future__ import annotations

import re
from enum import StrEnum

from pantry_tui.core.keeping.warm import WARM_MIN
from pantry_tui.core.safety.note_clock import HOUR, PART, UNIT


class Late(StrEnum):
    """How sure it is that it was out of the cold for over two hours."""

    NO = ""
    PERHAPS = "perhaps"
    SURELY = "surely"


_COLD = r"(?:fridge|refrigerator|ice ?box|cool(?:er| ?box| bag)|chiller|cold room|cold cellar)"
_TO = r"(?:(?:back|straight|away|it|them|all|only|finally) )*(?:in|into|to)(?: (?:the|our|a|my))?"
_HOT = (
    r"(?:re ?heated|cooked|cooking|made|making|boiled|baked|roasted|fried|stewed|simmered|braised|"
    r"grilled|smoked|ready|done|finished|off the (?:heat|stove|boil|hob|grill|fire)|"
    r"(?:out of|from) the (?:oven|smoker|pot|pan|pressure cooker))"
)
_OUT = (
    r"(?:milked|killed|caught|butchered|landed|bought|shopping|delivered|collected|picked up|"
    r"(?:took|taken|came|come|got|set|put|laid|brought|left|moved)(?: (?:it|them|this|all))? out|"
    r"(?:out of|from) the (?:fridge|refrigerator|freezer|cold)|out|served|dished up|plated|"
    r"on the (?:table|buffet|counter|side|worktop)|(?:at|to) (?:the )?(?:party|picnic|buffet|"
    r"market)|(?:came |got |arrived |back )?home|arrived|eaten|ate|carved|sliced up|unpacked)"
)
_IN = (
    rf"(?:{_TO} {_COLD}|fridged|refrigerated|chilled|{_COLD}|(?:went|going|got|was|were) "
    r"(?:it |them )?in|(?:put|cleared) (?:it |them |all )?(?:back|away|in)|"
    r"(?:came |come |brought |got )?back(?: in)?|cold|on ice|"
    r"(?:boxed|packed|wrapped|tubbed|portioned)(?: (?:it|them|up|all))*|"
    r"(?:remembered|noticed|discovered|found|thought of)(?: (?:it|them|the \w+))?|woke(?: up)?|"
    r"got up|came down)"
)
_FROZEN = rf"(?:{_TO} (?:the )?(?:deep )?freezer|frozen|freezer)"
_CLOCK = (
    rf"(?:\d{{1,2}}(?::\d\d)?[ap]m|\d{{1,2}}:\d\d|\d{{1,2}} ?o'clock|"
    rf"(?<=at )\d{{1,2}}\b{UNIT}|(?<=about )\d{{1,2}}\b{UNIT}|(?<=by )\d{{1,2}}\b{UNIT}|"
    rf"(?<=around )\d{{1,2}}\b{UNIT}|(?<=from )\d{{1,2}}\b{UNIT}|(?<=to )\d{{1,2}}\b{UNIT}|"
    rf"(?<=till )\d{{1,2}}\b{UNIT}|(?<=until )\d{{1,2}}\b{UNIT})(?!\w)"
)
_LED = (
    r"(?:(?:the|this|that|early|late|about|around|nearly|sunday|last|sometime|in|at|before|"
    r"after) )*"
)
#: An hour; of "dinner at 7" the hour, of "from 4 to 6" both.
_TIME = rf"(?<!\w)(?:{PART} (?:at|about|around) )?({PART}\b|{_CLOCK})"
_MEAL = r"(?:breakfast|brunch|lunch|tea|supper|dinner|meal)(?:time)? (?:at|about|around) \d"
_TOKEN = re.compile(
    rf"(?P<stop>;|,|\band\b|\bthen\b)|(?P<begins>\b(?:start\w*|began|begun|put on|lit|since|"
    rf"(?:on|onto|in|into) the (?:oven|stove|hob|smoker|slow cooker|grill))\b)|"
    rf"(?P<for>\b(?:for|eat|serves?|use|keeps?|reheat|until|till|meant|to be)\b)|"
    rf"(?P<froze>\b{_FROZEN}\b)|(?P<cold>\b{_IN}\b)|(?P<hot>\b{_HOT}\b)|(?P<out>\b{_OUT}\b)|"
    rf"(?P<hour>(?:\bfrom )?{_LED}{_TIME}(?: (?:to|till|until) {_LED}{_TIME})?)"
)
#: Something else kept it cold or hot, or it was cold already.
_KEPT = (
    r"\b(?:ice(?! ?box)|iced|snow|kept (?:hot|cold|chilled)|hot ?plate|chafing|slow cooker|"
    r"rice cooker|warming (?:tray|drawer)|steam table|bain marie|over ?night in|again|moved|"
    r"cool (?:box|bag)|cooler|in cold water|cold water bath)\b"
)
#: Another day is meant.
_NEXT = r"\b(?:next|following|day after|tomorrow|yesterday)\b"
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
    for each in (_EITHER, _BEFORE):
        found = re.search(each, note)
        if found and _long(found[1], found[2]) and not re.search(r"\bfor \d", note):
            return Late.PERHAPS if each == _EITHER else Late.SURELY
    found_out = _by_the_clock(note)
    waited = found_out is Late.NO and re.search(_WAITED, note) is not None
    return Late.PERHAPS if waited else found_out


def _long(many: str, unit: str) -> bool:
    return float(many) * (60 if unit == "h" else 1) > WARM_MIN


class _Hour:
    """An hour that was told: minutes since midnight, whether it is one of all 24, and whether it is
    told in figures."""

    def __init__(self, told: str) -> None:
        self.sure = told[:1].isdigit()
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


def _by_the_clock(note: str) -> Late:
    """By what was done at which hour, in turn."""
    total, vague, asked, meal = 0, False, False, False
    began: list[_Hour] = []
    for kind, first, last in _told(note):
        if kind in ("hot", "out", "meal"):
            began.append(last if kind == "hot" else first)
            meal = meal or kind == "meal"
            continue
        if not began:
            continue
        spans = [one.until(first) for one in began]
        longest, shortest = max(spans), min(spans)
        if longest >= _MOST_MIN:
            began = []
            continue
        vague = vague or not all(one.sure for one in (*began, first))
        asked = asked or meal or kind == "froze" or longest > WARM_MIN >= shortest
        total += longest
        began = []
    if total <= (_VAGUE_MIN if vague else WARM_MIN):
        return Late.NO
    return Late.PERHAPS if asked else Late.SURELY


def _told(note: str) -> list[tuple[str, _Hour, _Hour]]:
    """What was done, and from which hour to which, in the order in which it is told."""
    found: list[tuple[str, _Hour, _Hour]] = []
    does, hours, passed, begins = "", None, False, False
    for token in [] if re.search(_NEXT, note) else _TOKEN.finditer(note):
        kind = "hour" if token["hour"] else token.lastgroup or ""
        if kind == "stop":
            does, hours, passed, begins = "", None, False, False
        elif kind == "begins":
            begins = True
        elif kind == "for":
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
            elif not re.match(r"(?:at|in the) |\d", token[0]):
                hours = None  # "lunch in the fridge"
        elif hours is not None:
            found.append((kind, *hours))
            does, hours = "", None
        else:
            does, passed = kind, passed and kind == does
    if [one[0] for one in found] == ["cold", "hot"]:
        found.reverse()
    return found
