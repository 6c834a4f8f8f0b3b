"""Words of a note that jars were closed, or heated, in a way that no publication has, for notes in
small letters, one clause at a time. Why each is none: measured.py, with its publications."""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed

_OVEN = r"\b(?:ovens?|microwav\w*|dish ?washers?)\b"
#: What an oven does beside: the food was roasted first, and empty jars were warmed in it.
_OVEN_FOR_ELSE = (
    r"\b(?:roast\w*|brown\w*|toast\w*|dr(?:y|ied|ying)|melt\w*|soften\w*|pre ?heat\w*|first|before|"
    r"beforehand|wash\w*|clean\w*|rins\w*|steril\w*|(?:keep|kept|warm\w*|hot) (?:the |my )?jars|"
    r"jars (?:were )?(?:kept|warm\w*)|mitts?|gloves?|cloths?|trays?|lights?|clock|timer|"
    r"from the dish ?washer|out of the dish ?washer|till filling|until filling|while filling|"
    r"bak(?:ed|ing) (?!the jars|jars|them|it\b|full|filled|in\b|for\b|at\b|on\b|an?\b|\d)\w+)\b|"
    r"^(?:the |my |clean )?jars?(?: (?:were|came|are|went))?(?: (?:hot|warm|straight))* (?:from|"
    r"out of) "
    r"the (?:warm |hot |low )?oven(?: (?:hot|warm))?$|"
    r"\b(?:hot|warm) (?:as|like) an oven\b|\blike an oven\b"
)
_OF_FULL_JARS = r"\b(?:process\w*|canned|sealed|filled|full)\b"
_INTO_JARS = r"\b(?:pour\w*|fill\w*|bottled|jarred|ladled|spooned|packed)\b"
_CLOSED = r"\b(?:seal\w*|capped|screwed|closed|lidded|shut)\b(?! finger)"
_HEATED_AFTER = r"\b(?:process\w*|bath\w*|canner|canned|then boiled|pressure|finger)\b"
#: A waxed disc on a jam lies under a lid, or under cellophane, which seals nothing.
_OTHER_WAX = (
    r"\bwax(?:ed)? (?:beans?|cherr\w+|pencils?|crayons?|gourds?|peppers?|paper|labels?|cloth|"
    r"(?:paper )?(?:dis[ck]s?|circles?|rounds?))\b|\bbees ?wax(?:ed)? (?:cloth|wrap)\w*"
)
_WAX = (
    r"\b(?:seal\w*|cover\w*|topp\w*|clos\w*|capped|layer|poured|melted|plug\w*)\b.*\bwax|"
    r"\bwax(?:ed)? (?:lids?|layers?|caps?|seals?|covers?|tops?|on|over)\b"
)
_FILM = r"\bcell?ophane\b(?! (?:bags?|wrap\w*|bows?|gift|labels?))|\b(?:jam )?pot covers?\b"
#: A machine draws the air out, and kills nothing.
_SUCKED = (
    r"\bvacuum(?:ed)? ?(?:sealer|machine|pump)\b|\b(?:jar|lid) sealer\b|\bsealer attachment\b|"
    r"\bvacuum (?:sealed|packed) (?:with|by|using) |\bsealing machine\b|"
    r"\bseal\w* (?:with|by|using) (?:a |the |my |our )?(?:vacuum|machine|sealer|pump)|"
    r"\b(?:pumped|sucked)\b.*\bair\b"
)
_NO_CANNER = (
    r"\b(?:boil\w*|process\w*|steam\w*|heated|cann?ed|canning|done)\b.*\bin (?:\S+ ){0,3}"
    r"(?:copper(?! (?:pan|pot|kettle|jam|bowl))|cauldron|drum|bucket|tub|lard tin|coals|ashes|"
    r"camp ?fire|rice cooker|bread (?:maker|machine)|turkey fryer|pressure fryer|sous ?vide|"
    r"steam oven|egg cooker)\b"
)
#: Hot jars are turned over where nothing is heated after it.
_TURNED_OVER = (
    r"\b(?:turn\w*|flipp\w*|tipp\w*)(?: (?:the|my|them|all|jars?|bottles?|each|hot)){0,4}"
    r" (?:over|upside)\b(?=.*\b(?:seal\w*|min\w*|lids?|hot|cool\w*)\b)|"
    r"\b(?:flip|inver(?:sion|ted?)) (?:method|the jars|to seal)"
)
_OTHERWISE = (
    r"\bpressure fryer\b|\brubber bands?\b(?! (?:on|round|around) the labels?)|"
    r"\b(?:rebel|amish|outlaw) (?:cann\w*|way|method|style)\b|"
    r"\b(?:untested|unapproved|unsafe|unproven) (?:\w+ )?(?:recipe|way|method|process|times?)\b|"
    r"\b(?:recipe|method|way|process|times?) (?:is |was |were |are )?(?:untested|not tested|unsafe)"
)
_NOT_BOILED = (
    r"\b(?:not|never)(?: (?:really|quite|even|properly|fully|at all|once|actually))* "
    r"boil(?:ed|ing)?\b"
    r"(?! (?:over|down|dry|away|first|before|(?:the )?(?:jars|lids) (?:first|before)))|"
    r"\b(?:not|never) (?:at|up to|on|come to|get to|got to) (?:a |the )?(?:\w+ )?boil\b"
)
_LIDS_NOT_BOILED = r"\b(?:lids?|rings?|bands?) (?:\w+ )?(?:not|never) boil"


def another_way(clause: str) -> bool:
    """Whether the words say that the jars had another process than those that are tested."""
    if affirmed(clause, _OVEN) and (
        not re.search(_OVEN_FOR_ELSE, clause) or re.search(_OF_FULL_JARS, clause)
    ):
        return True
    if (
        "hot" in clause
        and all(re.search(one, clause) for one in (_INTO_JARS, r"\bhot\b", _CLOSED))
        and not (re.search(_HEATED_AFTER, clause))
    ):
        return True
    if (
        "boil" in clause
        and re.search(_NOT_BOILED, clause)
        and not re.search(_LIDS_NOT_BOILED, clause)
    ):
        return True
    if "wax" in clause and affirmed(re.sub(_OTHER_WAX, " ", clause), _WAX):
        return True
    if " in " in clause and affirmed(clause, _NO_CANNER):
        return True
    return any(affirmed(clause, one) for one in (_FILM, _SUCKED, _TURNED_OVER, _OTHERWISE))
