"""What a note says of a warning against food, of waters that were closed, and of an animal that was
not killed to be eaten, or hung in the warm. For notes in small letters, numbers in figures, one
clause at a time. Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import COLD_F, Group

#: US FDA and USDA FSIS, recalls: what is called back is not eaten.
_RECALLED = "what is recalled, or warned of, is not eaten, whatever it looks like: discard."
#: US FDA, seafood: no heat destroys the poisons of algae; from memory.
_CLOSED = "the poisons of algae and the germs of closed waters are not cooked away: discard."
#: USDA FSIS: an animal that died by itself is no food; from memory.
_DIED = "an animal that died by itself, or looked ill, is not eaten: discard."
_FOUND = (
    "no figure is published for an animal that was found dead, or that a car or another animal "
    "killed: nobody knows how long it lay warm."
)
#: USDA FSIS, the two-hour rule: above 40 F.
_HUNG = "raw meat hangs at 40 F or colder, and no figure is published for the warm: discard."

_GERM = r"(?:salmonella|listeria|(?:e\.? ?)?coli|botulism|botulinum|norovirus|hepatitis|cyclospora)"
_WARNING = r"(?:warnings?|alerts?|scares?|outbreaks?|notices?|advisory|recalls?|withdrawals?)"
_WHO = (
    r"(?:fda|usda|fsis|fsa|cdc|efsa|health department|ministry|food agency|authorit\w+|government|"
    r"recall\w*|maker|factory|company|producer|shop|store|supermarket|news|papers?|radio|tv)"
)
_WARNED = (
    rf"\b{_GERM}(?: \w+){{0,2}} {_WARNING}\b|\b{_GERM} (?:in|found in|with) (?:this|these|the same|"
    rf"our|that) \w+|\b(?:news|papers?|radio|tv|warned)\b.*\b(?:of|for|about|because of) {_GERM}\b|"
    rf"\bon (?:the |an |their )?(?:\w+ )?{_WHO}(?: \w+)? ?list\b|\b(?:on|in) the {_WHO} recall\w*|"
    rf"\b{_WHO}(?: \w+){{0,2}} (?:warn(?:s|ed)|called (?:it|them|this|these|the \w+) back|wants? "
    r"(?:it|them) back|took it off|pulled (?:it|them)|says? (?:do )?not (?:to )?eat|asks? for it "
    r"back)\b|"
    r"\b(?:warning|alert|notice) (?:about|for|on|against|of) (?:this|these|the same|our) (?:\w+ )?"
    r"(?:brand|lot|batch|make|maker|code|number|product|packs?|tins?|cans?)\b|"
    r"\b(?:food )?(?:safety|health) (?:alert|warning|notice)\b|"
    r"\b(?:withdrawn|pulled|taken off) (?:from )?(?:sale|the (?:shops?|shelves|market))\b|"
    r"\bsame (?:lot|brand|batch)(?: \w+){0,2} (?:made|sickened|poisoned)\b"
)
_NOT_OURS = (
    r"\bnot (?:on (?:it|the list|any)|ours?|mine|this(?: 1)?|listed|affected|in it|our lot)\b|"
    r"\b(?:another|other|different) (?:brand|lot|maker|make|kind|batch|code)\b|"
    r"\b(?:none|nothing) (?:of (?:it|ours|this) )?(?:found|listed|there|on it|recalled)\b"
)
_WATERS = (
    r"\b(?:red tides?|alga[el]? ?blooms?|algal blooms?|biotoxins?|paralytic|norovirus|vibrio|"
    r"closed (?:area|waters?|bay|beds?|beach|season)|sewage)\b|"
    r"\b(?:area|bay|waters?|beach|harvest\w*|beds?|creek|estuary|coast|fishery|inlet|sound)"
    r"(?: (?:\w+ )?(?:was|were|is|are|been|had been|got))? (?:closed|shut|off limits|polluted|"
    r"contaminated|under (?:a )?warning)\b|"
    r"\b(?:shellfish|toxin|harvest\w*|mussel|oyster|water) (?:warning|closure|alert|advisory|ban)\b"
)
_OVER = r"\b(?:lifted|re ?opened|open again|ended|was over)\b|\bclosed (?:tight|shells)"
_ILL = (
    r"\b(?:died|dropped dead|cause unknown|drowned|dead (?:on|in) (?:the )?(?:morning|coop|run|"
    r"field|barn|stall|pen|nest|arrival)|found (?:it |them |her |him )?dead)\b|"
    r"\b(?:deer|animal|buck|doe|hog|boar|rabbit|hare|bird|hen|chicken|duck|turkey|goose|pig|calf|"
    r"lamb|sheep|it|she|he) (?:had )?(?:was|acted|looked|behaved|seemed|acting|walked)"
    r"(?: \w+)? (?:sick|strange\w*|odd(?:ly)?|ill|weak|tame|lame|confused|thin and)\b"
)
_KILLED = (
    r"\broad ?kill\b|\b(?:hit|struck|run over|killed) by (?:a |the |my |our )*(?:\w+ )?(?:car|"
    r"truck|lorry|van|train|tractor|fox|dogs?|cat|hawk|coyote|marten|weasel|wolf|wolves|lightning|"
    r"mower|bear)\b|"
    r"\b(?:fox|dog|cat|hawk|coyote|weasel|mink|marten|raccoon|eagle) (?:got|killed|caught|took|bit|"
    r"mauled) (?:it|her|him|them|1|the (?:hen|chicken|duck|rabbit|goose|turkey|bird))\b|"
    r"\bfound (?:it )?(?:lying|on the road|by the road|in the (?:woods|ditch|field|trap|snare))\b|"
    r"\b(?:found|recovered|gutted|dressed|tracked|cleaned)(?: \w+)? (?:only )?(?:the )?next (?:day|"
    r"morning)\b|\b(?:not|never) (?:gutted|dressed|bled|cleaned)(?: \w+)? (?:until|till|before|for|"
    r"at all)\b|\bgut ?shot\b.*\b(?:warm|night|hours?)\b"
)
_FOR_DAYS = r"\b(?:\d+ (?:days?|nights?|weeks?)|an? (?:week|day|night)|over ?night|week|days)\b"
_HANGS = r"\b(?:hung|hanging|hangs|aged|ageing|aging|matured)\b"
_WARM = (
    r"\b(?:warm|hot|mild) (?:\w+ )?(?:barn|shed|garage|porch|weather|days?|nights?|week|spell|"
    r"autumn|fall|october|november|september|room|kitchen|attic)\b|\b(?:heat|summer|august|july)\b|"
    r"\bin the (?:warm|sun|kitchen)\b|\bhung\b.*\bwarm\b"
)


def warned(food: FoodFacts, clause: str, note: str) -> Iterator[str]:
    """What a clause says so against any food, a sentence each; `note` is all of it."""
    if affirmed(clause, _WARNED) and not re.search(_NOT_OURS, note):
        yield _RECALLED
    shell = "shellfish" in food.classes
    if shell and affirmed(clause, _WATERS) and not re.search(_OVER, note):
        yield _CLOSED


def of_the_animal(
    food: FoodFacts, clause: str, note: str, degrees: Sequence[float]
) -> Iterator[str]:
    """The same of what an animal died of, and of how its meat hung; `degrees`: the °F in a
    clause."""
    if food.group is not Group.MEAT:
        return
    if affirmed(clause, _ILL):
        yield _DIED
    if affirmed(clause, _KILLED):
        yield _FOUND
    hung = re.search(_HANGS, clause) is not None and re.search(_FOR_DAYS, note) is not None
    warm = any(COLD_F < one < 140 for one in degrees) or re.search(_WARM, note) is not None
    if hung and warm:
        yield _HUNG


def ours(clause: str, note: str) -> str:
    """A clause without the recall of what is another's by the whole note."""
    if not re.search(_NOT_OURS, note):
        return clause
    return re.sub(r"\brecall\w*|\bcalled back\b", " ", clause)
