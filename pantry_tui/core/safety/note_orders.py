"""Words of a note by which somebody set food aside: not to be eaten, to be thrown away, for animals
or the compost, recalled. For notes in small letters, one clause at a time.

No publication is about that: who wrote it knew why, so it is held, whatever its record says. Which
words are listened for is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed

#: What is said of it, and nothing of when, how or of which part.
_ALL_OF_IT = (
    r"(?: (?:it|them|this|these|those|that|any|anything|of|from|in|the|all|lot|jars?|packs?|tubs?|"
    r"box(?:es)?|bags?|bottles?|tins?|cans?|batch|1|here|ever|again|please|whatever|at|under|"
    r"circumstances?|or|nor|and|even|eat|eaten|open|opened|taste|use|used|serve|give|feed|now|"
    r"away|out))*(?=$| (?:because|since|as|till tested|until tested)\b)"
)
_VERB = (
    r"(?:eat(?:en|ing)?|open(?:ed)?|us(?:e|ed|ing)|tast(?:e|ed|ing)|serv(?:e|ed|ing)|"
    r"consum(?:e|ed|ing|ption)|touch(?:ed)?|drink|drunk)"
)
#: Whose habit it is: "the children do not eat it".
_HABIT = (
    r"\b(?:i|we|you|they|who|people|children|folks?|(?!(?:says|this|is|was|jars|lids|unless) )\w+s)"
    r" do not\b"
)
_FORBIDDEN = (
    rf"\b(?:do not|must not|should not|may not|cannot|can not|not to|"
    rf"nobody (?:may|should|must|is to)) (?:be |ever |to )*{_VERB}{_ALL_OF_IT}|"
    rf"^never (?:ever )?(?:be )?(?:eat|open|use|taste|serve){_ALL_OF_IT}|"
    rf"^no (?:eating|opening|tasting){_ALL_OF_IT}"
)
_UNFIT = (
    r"\b(?:not|never|no longer|hardly|un)(?: (?:really|quite|longer|any more))? ?"
    r"(?:fit|safe|suitable|good|ok|okay|meant|intended)"
    r"(?: (?:to (?:eat|be eaten)|for (?:people|humans?|human (?:consumption|food|use)|eating|"
    r"consumption|the table|food|anybody|any1|anyone|use)))"
    r"(?! (?:raw|until|till|before|yet|cold|fresh|uncooked|un))|"
    r"^(?:(?:it|this|is|are|all|probably|maybe|really|they|may|be|very|likely) )*"
    r"(?:not safe|unsafe|un safe|unfit|inedible|uneatable|not edible)$|"
    r"\bnot for (?:people|humans?|human (?:consumption|food|use)|eating|consumption|"
    r"the table|food)\b(?! (?:raw|until|till|before|yet|cold|fresh))|"
    r"\b(?:condemned|quarantined?)\b(?! (?:house|building|barn|cellar|week))"
)
_WHAT = r"(?: (?:it|them|this|these|all|the|lot|jars?|now|at|once))*$"
#: As it is told to do; "a jar broke, thrown out" was done, to another.
_THROWN = (
    r"^(?:(?:please|so|then|just|better|marked|says|must|should|need to|have to|i) )*"
    r"(?:toss|bin (?:it|them|this|all)|dump|discard|destroy|compost|trash|get rid of|condemn|"
    r"(?:throw|chuck|toss)(?: (?:it|them|this|these|all|the lot|the jars?))? "
    rf"(?:away|out|in the bin)){_WHAT}|"
    r"\b(?:to|must|should|needs? to|ha(?:s|ve) to) be (?:tossed|binned|dumped|discarded|destroyed|"
    rf"composted|trashed|thrown|chucked)(?: (?:away|out|in the bin))?{_WHAT}"
)
_DOUBTFUL = (
    r"^(?:(?:very|bit|a|all|rather|highly|most|it|this|is|are|they|looks?|seems?|smells?|marked|"
    r"now|of|these|batch|lot|jars?|lids?|process|seals?) )*"
    r"(?:suspect|suspicious|dubious|questionable|dodgy|iffy)(?: (?:jars?|lids?|seals?|batch|lot|"
    r"process|packs?|1s?|tins?|all))?$"
)
#: In the plural: a relish for the duck is eaten with it.
_ANIMALS = (
    r"(?:pigs|hogs|chickens|hens|chooks|ducks|geese|goats|sheep|cows|cattle|calves|rabbits|dogs?|"
    r"pupp(?:y|ies)|cats?|kittens?|pets?|birds|poultry|livestock|animals|horses?|pon(?:y|ies)|"
    r"donkeys?|worms|foxes|badgers|crows)"
)
_AWAY = rf"(?:{_ANIMALS}|compost(?: (?:heap|bin|pile))?|bins?|heap|landfill|bait)"
_NOT_FOR_PEOPLE = (
    r"^(?:(?:only|just|strictly|all|fit|kept|meant|it|this|is|are|these|they|now|goes?|going|"
    r"set|aside|reserved|saved|1s?|jars?) )*(?:for|to) (?:the |our |my |feeding |1 )*"
    rf"{_AWAY}(?: (?:only|alone|food|feed|now))?$|"
    rf"(?<!for )(?<!the )\b(?:{_AWAY}|(?:pig|hog|hen|chicken|animal) (?:food|feed)) only\b|"
    rf"\b(?:only|just|strictly|reserved) (?:fit )?(?:for|to) (?:the |our |my )*{_AWAY}\b|"
    rf"\bfor (?:the |our |my )*{_AWAY} (?:only|alone)\b|"
    r"^(?:(?:only|just|as|is|it|now) )*(?:pig|hog|hen|chicken|dog|cat|pet|animal|poultry) "
    r"(?:food|feed|swill)$|^(?:pig )?swill$"
)
RECALLED = (
    r"\b(?<!i )(?<!we )recalled\b(?! (?:the|that|my|how|from memory|by (?:me|us|heart)))|"
    r"\b(?:recall (?:list|notice|letter|number|order)|under (?:a )?recall|(?:product|safety|food) "
    r"recall|part of (?:a |the )?recall)\b"
)
_EACH = (_UNFIT, _THROWN, _DOUBTFUL, _NOT_FOR_PEOPLE, RECALLED)


def set_aside(clause: str) -> bool:
    """Whether somebody says that nobody is to eat it."""
    if re.search(_FORBIDDEN, re.sub(_HABIT, " ", clause)) or re.search(_UNFIT, clause):
        return True
    return any(affirmed(clause, one) for one in _EACH)
