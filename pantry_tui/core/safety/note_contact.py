"""What a note says came into food that is put by: glass, a mouth, an animal, the heat of one meal
after another; and potatoes that are past it. For notes in small letters, one clause at a time.
Which words are listened for is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re

from pantry_tui.core.safety.note_hands import by_sick_hands, glass_in
from pantry_tui.core.safety.note_look import says

_ANIMAL = (
    r"(?:dogs?|cats?|pupp(?:y|ies)|kittens?|pets?|hens?|goats?|birds?|ferrets?|raccoons?|foxes|fox|"
    r"rats?|mice|mouse)"
)
_OF_IT = (
    r"(?: *$| (?:it|them|this|the (?:soup|stew|meat|rice|food|milk|top|lot|surface|roast|ham|pie|"
    r"butter|cream|pot|pan|bowl|dish|tray|plate|lid|batter|dough|cake|cheese|gravy|"
    r"sauce)|from it|out of it|at it)\b)"
)
_MOUTHS = (
    rf"\b{_ANIMAL}(?: \w+)? (?:lick(?:ed|ing)|slobbered|drooled|drank|nibbled|chewed|walked|"
    rf"stood|stepped|ate|been|got|had)(?: (?:on|in|into|over|through|at|from|of|out|to))*{_OF_IT}|"
    rf"\b{_ANIMAL} (?:had|got|put|stuck) (?:its|his|her|their|a) (?:\w+ )?(?:face|nose|tongue|"
    rf"paws?|snout|head|mouth|foot|feet) in|\blicked by (?:the |our |a )?{_ANIMAL}\b|"
    r"\b(?:sneez\w*|cough\w*|spat|spit|dribbl\w*|drool\w*) (?:right |all )*(?:in|into|on|over) "
    r"(?:it|them|this|the (?:soup|stew|meat|rice|food|milk|pot|pan|tub|bowl|jar|box|lot))\b|"
    r"\b(?:eaten|fed|drunk|drank|ate|sipped|swigged)(?: (?:straight|right|directly|some))* "
    r"(?:from|out of)(?= *$| (?:with|by)\b| (?:it|the (?:tub|jar|pot|carton|bottle|box|bowl|pan|"
    r"dish|bag|tin|can|pack\w*))\b)|\bdouble dipp\w*|"
    r"\b(?:licked|used|dirty) (?:spoon|fork|finger)s?(?: \w+){0,2} (?:in|into)\b"
)
_SHARP = r"(?:glass|china|crockery|pottery|metal|porcelain)"
_BITS = r"(?:chips?|splinters?|shards?|slivers?|bits?|pieces?|fragments?|shavings?)"
_GLASS = (
    rf"\b{_SHARP} {_BITS}\b(?: \w+){{0,3}} (?:in|into|inside)\b|"
    rf"\b{_BITS} of (?:\w+ )?{_SHARP}\b|\bbroken glass\b(?: \w+){{0,2}} (?:in|into|near)\b"
)
_AGAIN = (
    r"(?<!be )\b(?:re ?heated|(?:re ?)?warmed(?: up| through)?|heated up)"
    r"(?: (?:it|already|now|up|at least|for|the))* (?:twice|thrice|again and again|many times|"
    r"several times|a few times|\d+ times|more than (?:once|1)|"
    r"(?:second|2nd|third|3rd|fourth|4th|umpteenth) time)\b|"
    r"\b(?:second|2nd|third|3rd|fourth|4th) (?:re ?heat(?:ing)?|warming)\b"
)
_LONG_SPROUTS = (
    r"\blong (?:\w+ )?(?:sprouts|shoots|eyes)\b|"
    r"\b(?:sprouts|shoots)\b(?: \w+){0,3} (?:long|\d+ ?(?:cm|in|inch\w*)|finger\w*|everywhere)\b|"
    r"\b(?:sprouted|sprouting) (?:badly|long|heavily|a lot)\b"
)
_SHRIVELLED = r"\b(?:shrivel\w*|wrinkl\w*|wizened|gone rubbery|rubbery)\b"


def came_in(clause: str, told: str, *, perishes: bool, cooked: bool) -> str:
    """What the words say got into it, a sentence; "" where they say nothing of the kind. `told` is
    without what it is for. `perishes`: germs grow in it; `cooked`: a meal that was put by."""
    if says(_GLASS, told) or glass_in(told):
        # Common practice, no source: nobody finds every splinter.
        return "nobody finds every splinter: discard."
    if perishes and says(_MOUTHS, told):
        return "no figure is published for what had a mouth or an animal in it, where germs grow."
    if perishes and by_sick_hands(clause):
        # US CDC, Norovirus: who had it makes no food for two days after; from memory.
        return "no figure is published for what sick hands or flies were at, where germs grow."
    if cooked and says(_AGAIN, clause):
        # UK Food Standards Agency, Chilling: leftovers are reheated once (from memory).
        return "cooked food is reheated once, and no figure is published for more."
    return ""


def past_it(clause: str) -> str:
    """What the words say of potatoes that sprouted: the id of a sign where they are not fit to eat,
    "look" where somebody has to see, or nothing."""
    long, old = says(_LONG_SPROUTS, clause), says(_SHRIVELLED, clause)
    if re.search(r"\b(?:rubbed|broke\w*|cut|picked|knocked|pulled|brussels?)\b", clause):
        return ""
    return "potato-old" if long and old else "look" if long or old else ""
