"""Words of a note that food was in a fire, for notes in small letters, one clause at a time.

Near the heat of a fire cans and jars may look well and be spoilt, and smoke, fumes and what put it
out get into food and under lids: it is discarded (USDA FSIS, Fires and food safety; from memory).
Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed

_BUILDING = (
    r"(?:house|shed|barn|garage|kitchen|cellar|shop|store|warehouse|attic|roof|flat|chip pan|"
    r"chimney|forest|brush|bush|wild|camper|building|larder|pantry|basement|neighbou?r'?s?)"
)
_FIRE = (
    rf"\b{_BUILDING} ?fires?\b(?! (?:alarm|drill|door|exit|escape|wood|side|insurance|station|"
    r"engine|extinguisher|place|pit))|"
    r"\b(?:went|came|been|was|were|is|are|survived|lived|got|saved|rescued|salvaged|left|near|"
    r"close)(?: \w+){0,2} (?:through|in|from|after|of|out of|by|to)? ?(?:a|the|our|that|last) "
    r"(?:\w+ )?fire\b(?! ?(?:alarm|drill|place|wood|pit|side|station|door|escape))|"
    r"\bsurvived (?:\w+ )?(?:a|the|our) (?:\w+ )?fire\b|\bafter the (?:\w+ )?fire$|"
    rf"\b(?:{_BUILDING}|shelf|shelves|rack|house next door)(?: (?:that|which|they|it|stood|in|"
    r"on|had|has|was|were|all|nearly|half|once))* (?:burn(?:ed|t)(?! (?:as|for|wood|coal|gas|oil))|"
    r"caught fire|went up in (?:flames|smoke)|on fire)\b|"
    rf"\bburn(?:ed|t)(?: down| out)? {_BUILDING}\b|"
    r"\b(?:smoke|fire|heat) damaged?\b|\bfire ?(?:men|fighters|brigade|hose)\b|"
    r"\b(?:labels?|lids?|rings?|bands?|caps?|boxes|cartons?|gaskets?|seals?)(?: (?:\w+ )?(?:is|are|"
    r"was|were|had|have|all|got|look|looked|bit|partly|a|of (?:1|2|some|the jars)))* "
    r"(?:blister\w*|melt\w*|char(?:red|ring)|scorched|singed|burnt|sooty|soot|bubbled)\b|"
    r"\b(?:blistered|melted|charred|scorched|singed|burnt|sooty) (?:labels?|lids?|rings?|bands?|"
    r"caps?|gaskets?)\b"
)
#: Fire that cooks.
_THAT_COOKS = (
    r"\b(?:cook\w*|cann(?:ed|ing)|boil\w*|smok(?:ed|ing) (?:over|on|in)|roast\w*|open fire|camp ?"
    r"fire|over (?:a|the) (?:\w+ )?fire|grill\w*|fire roasted|bonfire|wood|lit|light|skins?|"
    r"peppers?|wax|chocolate|butter|new|changed|thrown out|replaced|before)\b"
)


def in_a_fire(clause: str) -> bool:
    """Whether a clause says that it was in a fire, or near one."""
    return affirmed(clause, _FIRE) and re.search(_THAT_COOKS, clause) is None
