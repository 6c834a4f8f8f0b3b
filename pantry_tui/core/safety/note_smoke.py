"""Words of a note that the heat of a smoke, or of a dryer, failed or was too little, for notes in
small letters, one clause at a time. Which words are listened for is a choice of our own, the
stricter one.

Hot smoke is what cooks (core.safety.strength has how hot it comes inside), and what is not dry when
the dryer stops is moist and warm. Cold smoke that stopped is smoke too little: nothing is published
for less.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from pantry_tui.core.safety.denial import DENIED, NONE, affirmed
from pantry_tui.core.safety.note_look import says

_SMOKER = (
    r"(?:smoker|smoke ?house|smoke(?: (?:box|generator|gun))?|fire(?: ?box)?|flames?|coals?|"
    r"charcoal|briquettes|"
    r"embers?|gas(?: (?:bottle|cylinder))?|propane|pellets?|burner|element|heat(?:er|ing)?|grill|"
    r"barbecue|bbq|thermostat|auger|hopper|wood|logs?|chips|chunks|saw ?dust|dust|fuel|generator|"
    r"electric\w*|power|fuse|plug|kiln|hot ?plate)"
)
_DRYER = (
    r"(?:dehydrator|dryer|drier|drying (?:box|oven|cabinet|rack)|freeze ?dryer|oven|stove|fan|"
    r"machine|pump|vacuum|cycle|motor|heat(?:er|ing)?|element|thermostat|fire|gas|power|"
    r"electric\w*|"
    r"current|fuse|plug|timer|sun)"
)
#: It ended by itself.
_ENDED = (
    rf"(?: (?!{DENIED}\b)\w+){{0,2}}? "
    r"(?:(?:went|gone|go|goes|going|was|were|blew|blown|burn(?:t|ed)|ran|run|runs|cut|cuts|gave|"
    r"conked|fizzled|petered|died|all) out|died|dies|dead|dying|fail(?:s|ed|ure)?|broke(?:n|s)?|"
    r"stopped|stalled|quit|tripped|blew|gone(?= *$| (?:after|too|in|by|before) )|"
    r"packed up|packed in|gave up|cooled (?:down|off)|"
    r"(?:went|gone|turned|got|was|ran) (?:(?!low\b)\w+ )?(?:cold|off|empty|dead)|(?:was|too|got|"
    r"went) low|empty|unplugged|"
    r"(?:fell|dropped|died|cut|faded) (?:off|away|down|too low|right down|short)|"
    r"(?:kept|keeps) (?:going|dying|cutting|tripping|stopping)(?: out| off)?|"
    r"switch\w* (?:itself |it )?off|turn\w* (?:itself|it|them) off|"
    r"went(?= *$| (?:while|when|during|in|at|over|for|half|part|mid|all|before|after \d|on)\b)|"
    r"lost|(?:would|did|could) not (?:stay|keep|hold|take|catch|light|draw|burn)\b)"
)
#: By then it was done.
_DONE_BY_THEN = (
    r"(?! (?:the|of the (?:shed|garage))\b)"
    r"(?! (?:after(?:wards)?|when|once|as)(?: (?:it|they|all|the \w+)(?: (?:was|were))?)?"
    r" ?(?:$|done|dry|dried|finished|ready|cooked|out|labell?ed|packed|jarred))"
    r"(?! by itself (?:after|when|at))(?! (?:at|when) (?:done|\d+ ?(?:°|f\b|c\b|deg)))"
)
_RAN_OUT = (
    r"\b(?:(?:ran|run|running|were|was|am) (?:clean |right |all )?(?:out of|short (?:of|on))|"
    r"lost(?: (?:the|our|my))?) (?:the |any |more |dry |alder |apple |hickory |oak |beech |"
    r"cherry |wood |smoking )*(?:fire|gas|charcoal|coals?|propane|pellets?|fuel|heat|wood|logs?|"
    r"chips|chunks|saw ?dust|dust|smoke|power|electric\w*|steam|vacuum)\b|\b(?:no|without|not "
    r"enough|too little|hardly any|barely any|almost no) (?:more )?(?:fire|heat|smoke|fuel|wood|"
    r"chips|pellets)\b(?! (?:alarm|taste|flavou?r|smell|ring|left|needed|for next|damage|detector|"
    r"point))"
)
_PUT_OUT = (
    r"\b(?:rain|wind|storm|snow|water|gust|somebody|someone|he|she|kids?|dog|cat|son|"
    r"daughter)\b(?: \w+){0,2} (?:put|blew|doused|killed|drowned|knocked|trod|turned|switched) "
    r"(?:\w+ ){0,2}(?:the )?(?:fire|flames?|coals?|smoker|gas|heat|power|dehydrator|dryer|oven)(?: "
    r"(?:out|off))?\b(?! (?:after|when|once))"
)
#: It was taken out, or stopped, before its time.
_TOO_EARLY = (
    r"(?:(?:too|far|rather|bit|little|hour|day|hours|minutes|very|bit too|way|way too) )*"
    r"(?:early|soon)\b(?! (?:in|this|that|morning|evening|next|season|spring|summer|autumn|catch|"
    r"run|crop|harvest|apples|bird|as (?:it|they)|enough|after (?:it|they|reach\w*)))"
)
_CUT_SHORT = (
    r"\b(?:took|taken|pull\w*|lift\w*|remov\w*|stopp?\w*|quit|unload\w*|came (?:off|out)|"
    r"brought (?:it|them) (?:in|off|out|down)|broke (?:it )?off|^(?:off|out))\b"
    r"(?: (?:heat|fire|flames?|in|it|them|these|all|this|the|fish|meat|trout|salmon|apples|"
    r"smoking|drying|smoke|smoker|"
    r"dehydrator|dryer|racks?|trays?|off|out|down|up|from|of|a|an|1|2|3|few|half)){0,6}? "
    rf"{_TOO_EARLY}|"
    r"\b(?:cut|cutting) (?:\w+ ){0,3}short\b|\b(?:cut|stopped) short\b|\btoo short\b(?! (?:for|"
    r"of))|\bgave up on (?:it|them|the)\b|\bonly \d+ of the \d+ (?:hours|minutes)\b|\b(?:turned|"
    r"switched) (?:(?:it|them|smoker|dehydrator|dryer|oven|the) )*off (?:by (?:mistake|accident)|"
    r"too soon)\b|\b(?:kids?|somebody|someone|he|she|son|daughter|husband|wife|guests?)(?: \w+)? "
    r"(?:turned|switched|unplugged) (?:it|them|that)\b|\b(?:took|taken|pulled|stopped|gave up|"
    r"quit)\b(?: \w+){0,4} (?:half ?way|part ?way|mid ?way)\b|\b(?:took|taken|pulled|stopped|off|"
    r"out)\b(?: \w+){0,4} before (?:it|they|the \w+) "
    rf"(?:was|were|had|got) (?:\w+ )?(?:done|ready|dry|dried|cooked|finished|hot|reached)\b|"
    rf"\b{DENIED} (?:\w+ )?(?:long|time) enough (?:in|on|over) (?:the )?(?:smoke\w*|fire|heat|"
    rf"dehydrator|"
    r"dryer|drier|oven|racks?|sun)\b|"
    r"(?<!in )\bhalf (?:the|of the|its|their) (?:\w+ )?time\b|"
    r"\bran out of (?:time|night|daylight|day|sun|patience)\b|"
    r"\b(?:smok|dr)(?:ed|ing|ied|ying) (?:was )?(?:stopped|broken off|interrupted|cut off)\b|"
    r"\binterrupt\w*"
)
NOT_HOT = rf"\b{DENIED} (?:\w+ ){{0,3}}(?:hot|warm) enough\b"
SMOKE_FAILED = (
    rf"\b{DENIED} (?:\w+ )?(?:enough|much|any) heat\b|{NOT_HOT}|"
    r"\bunsure\b.*\b(?:hot enough|done|cooked)\b|"
    rf"\b{DENIED} sure\b.*\b(?:hot enough|done|cooked)\b|"
    rf"{_RAN_OUT}|{_PUT_OUT}|{_CUT_SHORT}|"
    r"\b(?:only |barely |just )warm smoked\b|"
    r"\b(?:fire|heat|smoker|coals?) (?:\w+ )?(?:too (?:low|cool|cold|weak|small))\b|"
    rf"\b{DENIED} (?:\w+ )?(?:came|come|got|get|gets|reach\w*|made it)(?: up)?(?: to)?(?: the)? "
    r"(?:right |safe |full )*temp\w*|"
    r"\b(?:half|part|partly) (?:done|cooked|smoked)\b|\btranslucent\b|"
    rf"\b{DENIED} (?:quite|fully|properly|really) (?:done|cooked|smoked)\b|"
    rf"\b{DENIED} (?:done|cooked)\b(?= *$| (?:in|at|inside|enough|when|yet)\b)|"
    rf"\b{_SMOKER}{_ENDED}\b{_DONE_BY_THEN}|\b(?:smoker|smoke|fire) (?:tripped|did not|would not)\b"
)
#: Without heat, unless that came next.
SMOKED_COLD = (
    r"\b(?:cold smok\w*|smoked (?:it |them |only |really |all |quite )*cold)\b"
    r"(?! (?:\w+ ){0,3}(?:first|before|then|hot))(?! \w+ first)"
)
#: Meat in which worms of trichinosis live, wild as it is.
OF_WILD = (
    r"\b(?:wild|feral) (?:boars?|pigs?|hogs?|swine)\b|"
    r"\b(?:bear|boar|walrus|cougar) (?:meat|jerky|ham|loin|haunch|shoulder|leg|roast|sausage)\b|"
    r"\b(?:of|from) (?:(?:a|the|our|his|young|old|black|brown|grizzly) )*(?:bear|boar|walrus|"
    r"cougar)\b(?! (?:creek|lake|valley|hill|mountain|river|farm|hunt))|"
    r"^(?:(?:it is|is|all|half|some|black|brown|grizzly|this is) )*(?:bear|boar|walrus|cougar)$"
)
#: A smoke without heat that stopped.
_COLD_SMOKE_FAILED = rf"{_RAN_OUT}|{_PUT_OUT}|{_CUT_SHORT}|\b{_SMOKER}{_ENDED}\b{_DONE_BY_THEN}"
_DRYING_FAILED = (
    rf"\b{_DRYER}{_ENDED}\b{_DONE_BY_THEN}|{_CUT_SHORT}|{_PUT_OUT}|"
    r"\b(?:dehydrator|dryer|drier|machine) (?:was |had been )?(?:off|cold|dead)\b|"
    r"\b(?:power|electric\w*) (?:cut|failure|outage)\b|\bblack ?out\b|"
    r"\b(?:ran|run|were|was) (?:clean )?out of (?:gas|power|fuel|wood|heat)\b|"
    r"\b(?:rain|drizzl|storm)\w*\b(?: \w+){0,2} (?:on|day|came|stopped|got|before)\b|"
    r"\blost (?:the )?(?:power|heat|electric\w*)\b|"
    rf"\b{DENIED} (?:quite |yet |fully )?(?:finished|done)\b(?! (?:it|this|that|so|better|before))|"
    rf"\b{DENIED} (?:really |quite )?(?:got|get|went|became|came) (?:really |quite |fully )?dry\b|"
    r"\bstill (?:had|has|needed|needs) (?:\w+ ){0,3}(?:to go|more|longer|hours?|minutes)\b|"
    r"\bsun (?:went (?:in|away)|disappeared|did not)\b"
)
_DRYING_DONE = (
    r"(?<!half )(?<!not )(?<!part )(?<!never )\b(?:dry|dried|done|leathery|crisp|brittle|ready|"
    r"finished) (?:by|when|before|at|after)\b|"
    r"\bstopped (?:it |them |drying )?(?:by itself|itself|at \d|when|once|after)\b|\bwhen (?:they|"
    r"it|all|the \w+) (?:was|were) (?:\w+ )?(?:dry|dried|done|leathery|crisp|brittle|ready|"
    r"finished)\b|\bafter (?:they|it|all|the \w+) (?:was|were|had) (?:\w+ )?(?:dry|dried|done|"
    r"dried|ready|packed|finished)\b|\bwhen (?:i )?(?:label|pack|jarr)\w*"
)
#: It was finished by other heat, so that nobody knows how long it stood between.
_FINISHED = (
    r"\b(?:finish\w*|cook\w*|bak\w*|roast\w*|dried|done|through|went) (?:\w+ ){0,3}?"
    r"(?:(?:off |up )?(?:in|under|on) (?:the |a )?(?:oven|grill|broiler|stove|hob|pan)|indoors)\b|"
    r"\bre ?(?:lit|light\w*|start\w*|fill\w*|fuell?\w*)\b|\b(?:lit|lighted|started|back on|"
    r"dried|smoked) (?:it |them |up )?(?:again|on|anew|some more|further)\b|\bback on\b"
)
#: It was cold as it was dried or smoked: said of the food or of what should have heated it, and no
#: word of spice ("not hot") or of a kitchen.
NEVER_HOT = (
    r"^(?:(?:the|it|they|these|this|all|but|and|just|only|really|meat|fish|beef|venison|turkey|"
    r"strips|slices|jerky|fillets?|trout|salmon|eels?|mackerel|herrings?|smoker|smoke|smoking|fire|"
    r"dryer|drier|dehydrator|oven|chamber|inside|middle|centre|center|core|of) )*"
    r"(?:never(?: (?:got|gets?|was|were|went|became|came|ran))?|"
    r"did not(?: (?:get|become|go|come|run))|hardly (?:got|came|went)|barely (?:got|came|went))"
    r"(?: (?:really|even|quite|properly|up|very|at all|any|even a bit))* (?:hot|warm)"
    r"(?: (?:at all|through|inside|enough|in there|in the middle|to the middle))*$|"
    r"^(?:(?:it|they|meat|fish|was|were|all|just|only) )*(?:dried|smoked) (?:\w+ )?without "
    r"(?:any )?(?:heat|warmth)$"
)
_NUMBER = r"(\d+(?:\.\d+)?)\s*(?:°|deg(?:rees)?\b)?\s*(?:f|c)\b"
#: Its warmth stayed below that.
_NEVER_SO_HOT = (
    rf"\b(?:{DENIED}|{NONE}|cannot|fail\w* to|unable to|hardly|barely|short of|shy of|almost|"
    rf"nearly|"
    r"missed)\b(?: (?!over\b|below\b|under\b|by\b)\w+){0,6}? "
    rf"{_NUMBER}|\b(?:below|under|beneath|less than) (?:the |a )?{_NUMBER}"
)
_AIR = r"\b(?:smoker|chamber|air|oven|grill|dehydrator|dryer|barrel|box|pit|fridge|freezer)\b"
_NO_LESS = (
    rf"\b(?:{DENIED}) (?:\w+ )?(?:below|under|beneath|less|lower|drop\w*|fell|fall\w*|cool\w*)\b"
)
#: Said of what it came to, not of how gently it was dried.
_CAME_TO = (
    r"\b(?:g[eo]t|gets|gotten|reach\w*|c[oa]me|climb\w*|go|went|ma[dk]e|r[oi]se|hit|over|above)\b"
)


def smoke_failed(clause: str) -> bool:
    """Whether the heat of a hot smoke was none, or too little."""
    return says(SMOKE_FAILED, clause) is not None


def cold_smoke_failed(clause: str) -> bool:
    """Whether a smoke without heat stopped before its time."""
    return says(_COLD_SMOKE_FAILED, clause) is not None


def drying_failed(clause: str) -> bool:
    """Whether the dryer stopped, or it was taken out of it, before it was dry."""
    return says(_DRYING_FAILED, clause) is not None and not re.search(_DRYING_DONE, clause)


def finished_after(clauses: Iterable[str]) -> bool:
    """Whether any clause says that other heat finished it."""
    return any(affirmed(one, _FINISHED) for one in clauses)


def never_so_hot(clause: str) -> bool:
    """Whether a warmth is named that it did not reach."""
    if re.search(_NO_LESS, clause) or re.search(_AIR, clause):
        return False
    return re.search(_NEVER_SO_HOT, clause) is not None


def never_came_to(clause: str) -> bool:
    """The same of what was dried, which may be dried gently by intent."""
    return never_so_hot(clause) and re.search(_CAME_TO, clause) is not None
