"""Words of a note that a refrigerator or a freezer was off, open or too warm, for notes in small
letters, one clause at a time. Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.note_look import says

#: What keeps cold, and not what is put into it: "into the fridge warm".
_COLD = (
    r"(?<!in the )(?<!into the )(?<!to the )(?<!from the )(?<!in )(?<!into )(?<!to )(?<!from )"
    r"(?<!for the )(?<!in our )(?<!in my )(?<!into our )"
    r"\b(?:fridge|refrigerator|ice ?box|deep freeze|freezer|chiller|cool ?box|cold room)"
)
#: What is opened and shut of it.
_DOOR = r"(?: ?(?:door|lid|flap))?"
_SO = (
    rf"(?: (?!{DENIED}\b|at\b|to\b|is cold|was cold|for\b)\w+)?"
    r" (?:was |were |is |had been |been |went |has |had |had |got |stood |ran |kept )*"
)
_OFF = (
    r"(?:off(?! the)|out|down(?! (?:to|at|the|in))|dead|died|dies|dying|fail\w*|broke\w*|stopped|"
    r"quit|tripp(?:ed|ing)|"
    r"conked|packed (?:up|in)|gave (?:up|out)|un ?plugged|cut|defrosted|on the blink|playing up|"
    r"faulty|(?:switched|turned|shut) (?:itself |it )?off|"
    r"lost (?:its|the|all|power|cold)(?: cold)?|"
    rf"(?:{DENIED}) (?:even |really |properly )?(?:work\w*|run\w*|cool(?:ing)?|cold|on|plugged in))"
)
_OPEN = (
    rf"(?:ajar|left (?:a bit |wide |half )?open|wide open|stood open|open(?! (?:day|top|plan|shelf|"
    rf"shelves|since|house|with|when|and|to|as|only|it|the|by hand)\b)|"
    rf"(?:{DENIED}) (?:quite |properly |fully )?(?:clos\w*|shut\w*|latch\w*|sealed?))"
)
_DAY = r"(?:mon|tues?|wednes|thurs?|fri|satur|sun|yester)day\b"
NO_POWER = (
    rf"{_COLD}{_DOOR}{_SO}{_OFF}\b|{_COLD}{_DOOR}{_SO}{_OPEN}|"
    r"\b(?:power|electric\w*|current|plug)"
    rf"(?: (?!{DENIED}\b)\w+)? (?:was |were |had been |went |has |had )?(?:off|out|down|dead|died|"
    r"fail\w*|broke\w*|un ?plugged|cut)\b|\b(?:power|electric\w*|current) (?:went|gone)(?=$| (?:in|"
    r"at|over|for|all|during|while|when|last|on|this|again|twice|about|after|around)\b)|\bpower "
    r"(?:cut|outage|failure)\b|\bblack ?out\b|\b(?:lost|no) (?:the )?power\b|\b(?:door|lid)\b(?: "
    r"\w+){0,2} ajar\b|\bleft (?:the |our )?(?:fridge|refrigerator|freezer)(?: door| lid)? (?:wide "
    r")?open\b|\b(?:broken|faulty|dead|failing|un ?plugged) (?:fridge|refrigerator|freezer)\b|"
    r"(?<!water )(?<!gas )\b(?:fuse|breaker|circuit|rcd|mains)(?: (?:was|had|has|box))* "
    r"(?:went|gone|blew|blown|tripped|off|out|popped|down)\b|"
    r"\b(?:power|electric\w*|current)(?: (?:just|only|was|had))* (?:blip\w*|flicker\w*|dipped|"
    r"hiccup\w*)\b|"
    rf"\b(?:power|electric\w*|current) (?:went|gone) (?:from )?{_DAY}|"
    rf"{_COLD}{_DOOR}(?: (?:was|were|had been|got|stood))? (?:propped|wedged|jammed|stuck) "
    r"(?:\w+ )?open\b|\b(?:door|lid) of (?:the |our )?(?:chest|freezer|fridge|refrigerator)"
    rf"(?: (?:was|were|had been))* (?:{DENIED} (?:\w+ )?(?:shut|closed)|"
    r"(?:left |propped |wedged |wide )*open)\b"
)
_WARM = (
    rf"{_COLD}(?: (?!{DENIED}\b)\w+){{0,2}}? (?:too |rather |quite |a bit |very |luke ?)*"
    r"warm(?:ed|er|ing)?\b(?! (?:from|food|soup|milk|pan|pot|dish|then|water))|"
    r"\b(?:luke ?|too )?warm (?:fridge|refrigerator|freezer)\b|"
    rf"{_COLD} (?:was |is |were |had |got )?(?:{DENIED}) (?:\w+ )?cold\b"
)
_READ = (
    r"(?:(?: (?:thermometer|temp\w*|shelf|door|inside|display|dial))? (?:was|is|were|at|reads?|"
    r"reading|showed|shows|said|says|stood|ran|runs|running|crept|went|got|rose|climbed|hit|"
    r"reached|up|down|to|only|about|around|over|above|nearly|now|all|night|day|up to)|"
    r" (?:thermometer|temp\w*|dial))+"
)
_NUMBER = (
    r"(\d+(?:\.\d+)?)(?![\d.])(?! ?(?:%|h\b|hours?|min|days?|weeks?|jars|packs|boxes|l\b|lit|lb|kg|"
    r"oz|g\b))"
)
_READ_AT = rf"{_COLD}{_READ} {_NUMBER}"
_READ_IN = (
    r"\b\d+(?:\.\d+)? ?(?:°|deg\w*)? ?[fc] (?:in|inside|of) (?:the |our )?(?:fridge|"
    r"refrigerator|freezer)\b"
)
#: How warm food was found, where nobody says what it is the warmth of.
_FOUND_AT = (
    r"^(?:(?:the|core|food|product|surface|inside|centre|center|measured|arrival|delivery|its) )*"
    r"(?:temp\w*|thermometer)(?: (?:when|was|at|on|reads?|found|checked|reading|of|the|it|food|"
    r"arrival|collected|collection|opened|today|now|delivered|delivery|is|in|taken|morning|bought|"
    rf"said|showed|says|shows|received|receipt|packed))* {_NUMBER}"
)
#: How warm what keeps it frozen ran, where nobody says what did.
_RAN_AT = rf"^(?:(?:it|which|that|and|then) )*(?:ran|running|runs|sat|stood|was set) at {_NUMBER}"
#: Food that comes to be cold there, or is warmed after it.
_OF_FOOD = (
    r"\b(?:cool\w*|chill\w*|inside the|internal|oven|heated|reheat\w*|put|went in|into|before|"
    r"cook\w*|serv\w*|until|till|never|no)\b"
)
#: °F: above it food is not cold (USDA FSIS); frozen food is none above the second.
_FRIDGE_F, _FREEZER_F, _ROOM_F = 40.0, 28.0, 100.0


def without_cold(clause: str) -> bool:
    """Whether the power was off, or the door open."""
    return says(NO_POWER, clause) is not None


def too_warm(clause: str, degrees: Sequence[float], *, frozen: bool = False) -> bool:
    """Whether what keeps it cold was warm, or read too warm; `degrees` in °F, of what has a unit.
    A bare number is one of °F, where it can be."""
    if says(_WARM, clause):
        return True
    if re.search(_OF_FOOD, clause):
        return False
    ice = re.search(r"freez", clause) or (frozen and not re.search(r"fridge|refriger", clause))
    most = _FREEZER_F if ice else _FRIDGE_F
    read = re.search(_READ_AT, clause) or re.search(_FOUND_AT, clause)
    ran = frozen and re.search(_RAN_AT, clause)
    told = list(degrees) if read or ran or re.search(_READ_IN, clause) else []
    if read and not degrees:
        told.append(float(read[1]))
    return any(most < one < _ROOM_F for one in told)
