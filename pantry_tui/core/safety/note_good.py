"""What a careful canner writes of jars that are as they should be, which has words in it that a
fault has as well: taken out of a note before it is read on. For notes in small letters, numbers in
figures, one clause at a time.

A vacuum draws lids down while jars cool, for hours (NCHFP, Recommended jars and lids); of the
liquid less than half may be lost (Clemson HGIC, Common canning problems); a pressure canner is
opened some minutes after its pressure is down (USDA AIB 539, guide 1). A half teaspoon of butter
keeps a jam from foaming, by the manuals of who makes canners: a knob of it is no more than that, by
our own choice.
"""

from __future__ import annotations

import re

from pantry_tui.core.words import Method

_LONG = r"(?:about |some |nearly |over |under |only |just |the |first |next |full )*"
_HOURS = r"(?:\d{1,2}(?:\.\d+)?|an?|a few|several) (?:minutes?|mins?|hours?|hrs?)"
_PING = (
    r"(?:ping(?:s|ed|ing)?|pop(?:s|ped|ping)?(?: down)?|click(?:s|ed|ing)?|"
    r"sealed|snapped down|sucked (?:down|in)|went (?:ping|pop|down))"
)
#: The time of a seal, not of a process; a lid that popped up has its own word.
_PINGED = (
    rf"(?<=\b)({_PING})(?: (?:all|by themselves|one (?:by|after) \w+))*"
    rf" (?:within|in|after|inside|for) {_LONG}{_HOURS}\b(?! (?:in|of|at|under|by|over|on)\b)"
)
_TO_PING = rf"\b(?:took|needed|waited) {_LONG}{_HOURS} (?:to|for (?:it|them|1) to) {_PING}\b"
#: Less than half.
_PART = (
    r"(?:a |1 |less than |just |under |nearly |perhaps |maybe |some |an? (?:estimated )?)*"
    r"(?:third|quarter|fifth|sixth|eighth|tenth|little|bit|1/[3-9]|0\.(?:[1-3]\d*))"
)
_NO_MORE = (
    r"(?<!more than )(?<!more than a )(?<!more than 1 )(?<!over )(?<!over a )(?<!over 1 )"
    r"(?<!at least a )(?<!at least 1 )(?<!half and )"
)
_LIQUID = r"(?:liquid|juice|brine|water|syrup|broth)"
_LOST_LITTLE = (
    rf"{_NO_MORE}\b{_PART} of (?:the |its |their )?{_LIQUID}"
    r"(?: (?:was|is|has|had|got|been))* (?:lost|gone|missing|siphoned(?: (?:out|off))?)\b"
    r"(?! (?:\w+ )?(?:from|in|out of) (?:the )?(?:canner|pot|bath|kettle))|"
    rf"\b{_LIQUID} (?:(?:is|was|has|went|gone|a bit|just|about|only|by) )*(?:down|lower|low) "
    r"(?:(?:by|about|only|some) )*(?:a |an |1 )?(?:half|quarter|third|little|bit|0\.\d+|"
    r"[1-3]/[2-8]|1)(?: (?:an?|of an))? ?(?:inch|in\b|cm)"
)
#: Once its pressure is down.
_OPENED = (
    rf"\b(?:waited|rested|left (?:it|them|the canner)|let (?:it|them|the canner) (?:sit|stand|rest|"
    rf"cool))(?: for)? (?:another )?{_LONG}{_HOURS} (?:more )?before (?:i |we )?(?:open\w*|lift\w*|"
    r"unload\w*|unlock\w*|remov\w*|taking|took)(?: (?:it|off|out|up|the|canner|lid|cover|weight|"
    r"jars|them))*$"
)
#: They boil on as they come out.
_CAME_OUT = (
    r"\b(?:when|as|after|once) (?:they|it|the jars?) (?:came|come|were lifted|were taken) out of "
    r"(?:the )?(?:canner|pot|water|bath|kettle)\b"
)
_BUBBLES = (
    r"\b(?:(?:a few|few|some|little|small|tiny|still) )*bubbl\w+ (?:rose|rising|moved|came up|went "
    r"up|rose up)? ?(?:as|while) (?:they|it|the jars?) (?:cooled|were (?:still )?(?:hot|"
    r"cooling))\b|"
    r"\b(?:still )?bubbling(?= (?:when|as) (?:they|it|the jars?) (?:came|come|were lifted|were "
    r"taken) out\b)|"
    r"\b(?:(?:a few|few|some|little|small|tiny|1|air) )*bubbles? (?:are |is |were |was )?"
    r"(?:trapped|caught|set|stuck)(?= (?:in|between|among|under the fruit)\b|$)"
)
#: The clouds of what was put in, without any other sign (NCHFP, Problems with pickles).
_CLOUDY = (
    r"\b(?:a bit |slightly |little |brine |liquid |is |went )*cloudy (?:because of|from|due to) "
    r"(?:the |our |my |using )*(?:table salt|iodi[sz]ed salt|salt with \w+|anti ?caking|hard water|"
    r"starch|ground spices?|spices?)\b"
)
#: Ground, it is a spice.
_GROUND = (
    r"\b(?:(?:a few|few|some|tiny|little|small|black|dark) )*(?:specks?|flecks?|grains?|grinds?|"
    r"twists?|turns?) of (?:(?:black|white|ground|fresh|freshly) )*pepper\b(?! (?:flesh|strips?))"
)
#: ("2 tablespoons a quart, as the book says")
_BY_THE_BOOK = (
    r"(?<!not )(?<!almost )(?<!nearly )(?<!half )(?<!never )\bas (?:it is |they are )?(?:published|"
    r"in (?:the|our) (?:book|recipe|guide|table)|(?:the|our) (?:book|table|recipe|guide|chart) "
    r"(?:says|has it|asks|wants|tells))$"
)
#: What was over, what was not needed, what floats of itself, the foam that went.
_NO_PART = (
    r"\bhalf (?:a|1) (?:jar|pint|quart|batch) (?:was )?left(?: over)?\b|"
    r"\bdid(?: not|n't) need (?:the|a|my|our) (?:second|other|big|bigger|spare) \w+|"
    r"\b(?:(?:a|1|few|some|the|2) )*(?:seeds?|pips?)(?: or 2)? float(?:s|ed|ing)?\b|"
    r"\b(?:(?:thick|thin|white|much|all|the|pink) )*foam (?:came|was|all|taken|lifted|spooned|"
    r"skimmed)(?: \w+)? off$|"
    # Jars are kept hot so until they are filled.
    r"\b(?:jars? )?(?:(?:were|kept|hot|warm|warmed|heated|sterili[sz]ed) )+(?:from|in|out of) the "
    r"oven (?:when|as|before|until|till) (?:(?:i|we|they|were|being) )*fill\w*|"
    r"^(?:first |in |soaked in |cucumbers |lay in )*(?:ice|iced|salt|salted|salty) water (?:for )?"
    rf"{_LONG}{_HOURS}"
    r"(?: (?:first|before|then|and) ?(?:rinsed|packing|canning|drained|that)?)?$"
)
#: Power and gas that failed at another time, or did not; and water from the main.
_ELSEWHEN = (
    r"(?:(?:the |a |1 |next |following |some |2 |3 |few )*(?:days?|weeks?|months?|evening|morning|"
    r"hours?) (?:before|after(?!noon)|later|earlier|ago)|(?:the )?(?:next|following) (?:day|"
    r"evening|"
    r"morning|night|week|month|year)|last (?:week|month|year|winter|spring|summer|autumn)|"
    r"just after|long before|in the week after|"
    r"after (?:we|they|i|the jars|everything|all)(?: had| were| was)? (?:\w+ ){0,2}(?:finish\w*|"
    r"out|"
    r"done|cool\w*|over|sealed)|while (?:we|i) (?:was|were) (?:away|on holiday)|just as i began)"
)
_SUPPLY = (
    r"\b(?:power|electric\w*|current|gas(?: bottle)?|propane|black ?out|brown ?out|outage|fuses?|"
    r"breaker|bottle)\b"
)
_OTHER_TIME = (
    rf"^(?!.*\b(?:relit|restart\w*|half ?way|mid ?way)\b).*{_SUPPLY}.*\b{_ELSEWHEN}\b.*$|"
    r"\bno (?:(?:power|gas|electricity) )?(?:cuts?|outages?|problems?|failures?|black ?outs?)\b|"
    r"\bno power needed\b|\bwater mains? (?:was |were )?(?:off|out|down)(?: for \w+ \w+)?\b"
)
#: The heat goes off when the time is over, and pressure falls by itself (USDA AIB 539, guide 1).
_WHEN_DONE = (
    r"(?:when (?:the time|it|they) (?:was|were) (?:up|over|done)|after (?:the )?(?:full )?(?:\d+ "
    r"minutes|time(?: was up)?)|at the end|afterwards)"
)
_TURNED = (
    r"(?:(?:turned|switched|shut|took|taken|slid|moved|lifted) )?(?:(?:off )?(?:the |my |our "
    r")?(?:heat|"
    r"gas|stove|burner|hob|canner)(?: off| away)?(?: the (?:heat|burner|stove|hob|gas))?)"
)
_LET_DOWN = (
    rf"^(?:\w+ )?{_TURNED} {_WHEN_DONE}$|"
    rf"^{_TURNED} and (?:(?:it|i|we|then|just|the|canner) )*(?:waited|let|left|rested)\b(?: \w+)*$|"
    r"^(?:the )?(?:stove|burner|hob|heat|gas) (?:(?:was|is|turned|switched) )*off (?:while|as) "
    r"(?:it|"
    r"they|the (?:canner|jars|pressure)) (?:cool\w*|came down|fell|dropped|rested)$|"
    r"\b(?:waited|waiting) (?:for|until|till|while) (?:the )?(?:pressure|gauge|dial|needle|canner)"
    r"(?: (?:to|had|has))?(?: (?:drop\w*|fall\w*|fell|came down|come down|went down|go down))?"
    r"(?: (?:to|at) (?:zero|0))?(?: by itself| on its own)?(?: before \w+(?: it| up)?)?$|"
    r"\b(?:let )?(?:the )?(?:pressure|gauge|dial|needle) (?:back |come back |fall |fell |drop |"
    r"dropped |came |come |went )(?:down )?(?:back )?(?:to (?:zero|0)(?: by itself| on its own)?|"
    r"by "
    r"itself|on its own)(?: before the (?:lid|weight|cover) came off)?\b"
)
_NOT_OVER = (
    r"\b(?:half ?way|mid ?way|part ?way|early|too soon|twice|during|in the middle|relit|re "
    r"?start\w*)"
    r"\b|\bbefore (?:the )?(?:time|end|it was (?:up|over|done))\b"
)
#: Rings come off, or lie on loosely (NCHFP, Using boiling water canners).
_RINGS = (
    r"\b(?:(?:left|kept|put|screwed|had|the|all|my) )*(?:rings?|bands?)(?: on)? (?:(?:were|was|"
    r"left|"
    r"are|a bit|only|quite|just|on) )*(?:loose|loosely|loosened|finger tight)\b"
    r"(?! (?:and|with|but|in|at|after|on the shelf))(?: (?:when|before) (?:they|it) (?:went|go) "
    r"in)?|"
    r"\blid (?:was )?(?:left )?off the (?:canner|pot) (?:while|until|till|as) (?:it|they|the "
    r"water) "
    r"(?:came|heated|warmed|got)(?: (?:up|to|the|a|boil|hot|warm))*"
)
#: More than its time, and not that it lacked some.
_AND_MORE = (
    r"^(?!.*\b(?:should|needs?|needed|lack\w*|miss\w*|short|would|want\w*|forgot|left|less|not)\b)"
    r"(?:.*\b)?(?:(?:then|and|plus|gave (?:it|them)|for|another|an extra|extra|about) )*\d+ min\w* "
    r"(?:more|extra|longer|on top)(?: for (?:luck|safety|good measure))?$|"
    r"^(?:then |and |plus |gave (?:it|them) |for )*(?:another|an extra) \d+ min\w*$"
)
_OF_ALL = (
    _RINGS,
    _AND_MORE,
    _NO_PART,
    _GROUND,
    _BY_THE_BOOK,
    _PINGED,
    _TO_PING,
    _LOST_LITTLE,
    _OPENED,
    _BUBBLES,
    _CAME_OUT,
    _CLOUDY,
)
#: It lay so on its way or its shelf, closed: nobody has it so in a canner for a day.
_LAY_DOWN = (
    r"\b(?:jars?|1|2|3|some|few|it|they|(?:tall|big|small) jar)(?: \w+){0,2} on (?:its|their) "
    r"sides?"
    r"(?= (?:for (?:a|1|2|3|some|the|\d+) (?:\w+ )?(?:hours?|days?|nights?|weeks?)|on the way|in "
    r"the (?:box|crate|bag|car|boot|trunk|suitcase|basket|shelf|cupboard|drive)|over ?night))"
)
#: For one of that size, and no jar of that size.
_A_JAR = r"\b((?:tea|table)?spoon(?:ful)?s?|tsp|tbsp) (?:a|1) (quart|pint)\b"
_KNOB = re.compile(
    r"\b(?:(?:with|and|plus|added|adding|a|an|the|1|just|only|tiny|small|little|0\.25|0\.5|1/2|1/4|"
    r"half) )*(?:bit|dab|knob|pat|touch|dot|nut|sliver|speck|smidgen|scrap|walnut|hazelnut|pea|"
    r"tsp|teaspoons?)(?: of (?:the )?)?\s?butter(?: (?:in(?: it| there)?|to|against|for|so that|"
    r"keeps?|kept|stop\w*|prevent\w*|reduce\w*|the|foam\w*|down|from|it))*"
    r"|\bbutter (?:the size of|as big as) an? (?:pea|bean|nut|hazelnut|walnut)"
    r"(?: (?:against|for|to|in|stop|keep|the|foam\w*|down|it))*"
    r"|\bbutter (?:(?:against|for|to|stop|keep|prevent|the|any) )+foam\w*(?: down)?"
)
_MUCH_BUTTER = (
    r"\b(?:cups?|sticks?|pounds?|lb|oz|ounces?|grams?|g|tbsp|tablespoons?|lots|much|\d+)"
    r"(?: of)?(?: the)? butter\b(?! (?:beans?|nuts?|paper|jars?))"
)
#: A freezer that was empty while its ice was melted off.
_EMPTY_FREEZER = (
    r"(?i)\b(?:defrosted|thawed(?: out)?|melted)(?: (?:out|the|our|my|old|big))* (?:chest|"
    r"freezer)\b"
    r"(?=[^;.!?\n]*\b(?:before|first|beforehand|clean\w*|empt\w*|then (?:filled|loaded)|ahead)\b)"
    r"[^;,.!?\n]*|"
    r"\b(?:chest|freezer) (?:(?:was|had been|got) )*(?:defrosted|thawed out)\b"
    r"(?=[^;.!?\n]*\b(?:clean\w*|empt\w*|then (?:filled|loaded)|before (?:filling|loading|they|the "
    r"(?:bags|packs|boxes|beans|meat|berries))|long before)\b)[^;,.!?\n]*"
)
_OF_ITSELF = (
    r"(?i)\b(?:it ?self|power|by accident|mistake|notic\w*|found|knew|saw|switched|unplugged|again|"
    r"re ?fr\w+|soft|wet|bags? (?:out|on)|meanwhile|while)\b"
)


def without_a_cleaned_freezer(note: str) -> str:
    """A whole note, as it was typed, without the freezer that was defrosted before it was "
    "filled."""
    return note if re.search(_OF_ITSELF, note) else re.sub(_EMPTY_FREEZER, " ", note)


def without_what_is_well(clause: str) -> str:
    """The clause without what is as it should be."""
    clause = re.sub(_A_JAR, r"\1 per \2", clause)
    for pattern in _OF_ALL:
        clause = re.sub(pattern, " ", clause)
    return re.sub(_LAY_DOWN, " ", clause)


def without_the_end(clause: str) -> str:
    """The same of jars that were heated: without what is of another time, or of the end."""
    if re.search(_NOT_OVER, clause):
        return clause
    return re.sub(rf"{_OTHER_TIME}|{_LET_DOWN}", " ", clause)


def without_a_knob(method: Method, clause: str) -> str:
    """The same without the butter against the foam of a jam."""
    return _KNOB.sub(" ", clause) if method is Method.JAM else clause


def buttered(clause: str) -> bool:
    """Whether there is more butter in a jam than that, `clause` without a knob of it."""
    return re.search(_MUCH_BUTTER, clause) is not None
