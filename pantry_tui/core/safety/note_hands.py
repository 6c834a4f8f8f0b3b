"""Words of a note that food is off and no more, that glass got into it, or that who made it was ill
of what hands pass on. For notes in small letters, one clause at a time. Which words are listened
for is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed

#: The whole of a clause: lids, rings and power go off, too.
_OFF = (
    r"(?:(?:it|is|was|a|bit|little|slightly|rather|seems?|now|all|quite|very|has|gone|went|"
    r"already|really|definitely|think|i|they|are|both) )*off(?: (?:by|now|a|bit|little|already|i|"
    r"think|today|completely|again|sadly|when|opened|unfortunately))*"
)
_GLASS = (
    r"\b(?:glass|china|crockery|porcelain) (?:splinters?|shards?|slivers?|chips?|fragments?|"
    r"pieces?|bits?|dust)\b|"
    r"\b(?:splinters?|shards?|slivers?|chips?|fragments?|pieces?|bits?) (?:of (?:\w+ )?)(?:glass|"
    r"china|crockery|porcelain)\b|\b(?:shards?|slivers?) (?:\w+ )?(?:in|inside|at the bottom of)\b|"
    r"\bbit (?:on|into) (?:\w+ )?glass\b|\bglass in (?:it|the (?:jar|food|jam|soup|pot))\b|"
    r"\b(?:lamp|glass|bulb|thermometer|bottle|jar|bowl|plate|window) (?:broke|shattered|smashed|"
    r"burst|cracked) (?:over|into|onto|above|on top of|in (?:it|the (?:pot|pan|bag|box|soup|"
    r"bowl|freezer|chest)))\b|\bchip (?:was )?(?:not|never) found\b"
)
#: What is swept up somewhere else, and what is no glass.
_GLASS_OF_ELSE = (
    r"\b(?:swept|floor|bin|replaced|thrown|threw|sorted out|another|empty|emptied|almonds?|"
    r"chocolate|garlic|ginger|lemon|parmesan|ice|wood|canner)\b"
)
_SICK = (
    r"(?:(?:stomach|tummy|belly|gut) (?:flu|bug|virus)|gastro\w*|norovirus|diarr\w*|vomit\w*|"
    r"throwing up|threw up|food poisoning|hepatitis|typhoid|the runs|winter bug|infected "
    r"(?:\w+ )?(?:cut|finger|hand|wound)|open (?:sore|wound)|pus)"
)
_MADE = (
    r"(?:made|cooked|prepared|packed|put up|baked|peeled|stirred|cooking|making|kitchen|by|hands?|"
    r"that (?:day|week)|at the time|just had|still had|the cook)"
)
_SICK_COOK = (
    rf"\b{_MADE}\b.*\b{_SICK}|\b{_SICK}.*\b(?:{_MADE})\b|"
    r"\bflies (?:\w+ ){0,2}(?:on|over|in|round) (?:it|them|the (?:food|meat|pot|pan|dish|ham))\b|"
    r"\bblood (?:\w+ )?(?:got )?(?:in|into|on) (?:it|them|the (?:soup|pot|dish|dough|food|salad))\b"
)
_NOT_THEN = (
    r"\bfor (?:\w+ ){1,3}(?:who|when|while|that|with)\b|\b(?:before|last (?:month|year|week)|weeks "
    r"ago|long over|good for|mild|settles|months? ago)\b"
)


def off(clause: str) -> bool:
    """Whether a clause says that it is off, and nothing else."""
    return re.fullmatch(_OFF, clause) is not None


def glass_in(clause: str) -> bool:
    """Whether glass got into it."""
    return affirmed(clause, _GLASS) and re.search(_GLASS_OF_ELSE, clause) is None


def by_sick_hands(clause: str) -> bool:
    """Whether who made it was ill then, or hands and flies brought something in."""
    return affirmed(clause, _SICK_COOK) and re.search(_NOT_THEN, clause) is None
