"""What a note says of jars of low-acid food that were boiled or steamed in a pot, where its record
says pressure: no boiling reaches the heat that kills the spores of botulism (USDA AIB 539, guide
1). For notes in small letters, one clause at a time; which words are listened for is a choice of
our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.measured import all_minutes
from pantry_tui.core.words import Group, Method

#: Minutes for which nothing is boiled to be packed hot: most vegetables; beets, dry beans, meat. A
#: line of our own.
_LONG, _LONGER = 30, 61
_SLOW = r"beet|beans? \(dry\)|dry beans|chickpeas|lentils|pulses|pumpkin|squash"
#: What is itself boiled in a pot for hours.
_OF_A_POT = r"stock|broth|soup|sauce|stew|chilli|chili|pie filling|hominy|ketchup|butter"
_TIME = (
    r"(?<![\d.])(\d+(?:\.\d+)?(?:\s*(?:-|to)\s*\d+(?:\.\d+)?)?\s*(?:h|hrs?|hours?|mins?|"
    r"minutes?))\b"
)
_HEATED = (
    r"\b(?:boil\w*|simmer\w*|steam(?:ed|ing)?|cook(?:ed|ing)?|bubbled|poached|rolling boil|"
    r"on the boil|"
    r"heated|bathed|on the (?:stove|hob|fire))\b"
)
_KIN = (
    r"(?:grand(?:ma|mother|mum|pa)|gran|granny|nan|nana|nanny|oma|babcia|mother|mum|mom|mamma?|"
    r"aunt\w*|aunt \w+|neighbou?r)"
)
_WHOSE = (
    rf"(?:(?:the|a|an|my|our|his|her|{_KIN}'s|big|bigger|biggest|large|huge|tall|deep|old|open|"
    rf"normal|"
    r"ordinary|plain|enamel\w*|copper|iron|cast iron|tin|steel|heavy|covered|lidded) )*"
)
_POT = (
    r"(?:(?:stock|soup|pasta|lobster|jam|preserving|maslin|spaghetti|crab|tamale|cooking|wash|weck|"
    r"kilner|canning|water) ?)?(?:pots?|pans?|kettles?|boilers?|copper|cauldron|sauce ?pan|stock "
    r"?pot|dutch oven|wash ?(?:tub|boiler)|casserole|wok|urn)\b(?! (?:on|of|plants?|roast|with "
    r"soil|luck|noodles))"
)
#: One that is bought to boil jars in.
_FOR_JARS = (
    r"\b(?:weck|kilner|preserving|wash) ?(?:pots?|pans?|kettles?|boilers?|urns?|kessel|topf)\b|"
    r"\bopen kettle\b|\bboil\w* (?:the |my |all )*(?:filled|full|packed|sealed) jars\b|"
    r"\beinkoch\w*|\beinweck\w*|\bkettle cann\w*|\b(?:in|with) (?:a |the |my |our )?(?:boiler|"
    r"copper)\b"
)
_DONE = (
    r"\b(?:did (?:them|it|these|the \w+)|cooked|boiled|done|processed|canned|put up|heated|"
    r"steamed|bathed|simmered|finished|"
    r"preserved|made|kept)\b(?: \w+){0,5}? (?:in|on|with|using)"
)
_IN_A_POT = (
    rf"{_DONE} {_WHOSE}{_POT}|^(?:(?:for |about |all |jars? |them |\d+(?:\.\d+)? ?(?:h|hrs?|"
    rf"hours?)) ?)*(?:in|on|with|using) (?:the (?:\w+ )?(?:stove|hob|fire) (?:in|"
    rf"with) )?{_WHOSE}{_POT}"
    r"(?: (?:for|about|all|over|on the stove|\d+|h|hrs?|hours?|day|night|\.))*$|"
    r"^(?:big|large|stock|soup|open|old) ?(?:pot|pan|kettle)$"
)
#: Cooked on its way into the jars, or out of them; empty jars are boiled too.
_ON_THE_WAY = (
    r"\b(?:first|before\w*|then (?:pack|fill|can|jar|press|process)\w*|blanch\w*|until|till|"
    r"tender|soft\w*|"
    r"hot pack\w*|packed hot|bones?|soak\w*|steril\w*|warm\w*|hot jars|jars hot|keep|lids?|serv\w*|"
    r"tast\w*|eat\w*|supper|dinner|down|brown\w*|fr(?:y|ied)|sear\w*|brais\w*|roast\w*|for stew|"
    r"pre ?cook\w*|par ?boil\w*|peel\w*|skins?|shell\w*|strain\w*|leftovers?|broth|liquid|"
    r"covering|brine|poured|pressure|water (?:was )?boiled|boil\w* (?:the )?water)\b"
)
_OF_JARS = r"\b(?:jars?|pints?|quarts?|process\w*|cann(?:ed|ing)|bath\w*|filled|sealed|them all)\b"
_AS_BEFORE = (
    rf"\b(?:like|as|the way|how) (?:my |our |the )?{_KIN} (?:did|does|used to|always|taught|"
    rf"showed|made)|"
    rf"\b(?:boil|cook|process|cann|steam)\w*\b.* (?:like|as) (?:my )?{_KIN}$|"
    r"\bhot water (?:cann|bath|process)\w*|"
    rf"\b{_KIN}'s (?:old )?(?:way|method)\b|\bthe old (?:fashioned )?way\b|\bold fashioned way\b"
)


def boiled_instead(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether the words say that jars had no pressure, but a boil."""
    if method not in (Method.PRESSURE, Method.BOILING_WATER):
        return False
    if affirmed(clause, _AS_BEFORE) and "recipe" not in clause:
        return True
    if method is not Method.PRESSURE:
        return False
    if affirmed(clause, _FOR_JARS) and not re.search(r"\bjars\b.*\bfrom\b|\bhot\b", clause):
        return True
    if re.search(_ON_THE_WAY, clause):
        return False
    minutes = max(_minutes(clause), default=None)
    jars = re.search(_OF_JARS, clause) is not None
    if _is_of_a_pot(food) and not jars:
        return False
    least = _LONG if food.group is Group.VEGETABLE and not re.search(_SLOW, food.name) else _LONGER
    least = _LONG if jars else least
    if minutes is not None and minutes >= least and affirmed(clause, _HEATED):
        return True
    short = minutes is not None and minutes < least
    return not short and affirmed(clause, _IN_A_POT)


def cooked_first(food: FoodFacts, clause: str) -> bool:
    """Whether its time is that of the pot in which it was made."""
    return (
        _is_of_a_pot(food)
        and not re.search(_OF_JARS, clause)
        and re.search(rf"{_HEATED}|{_POT}|\bbones?\b", clause) is not None
    )


def _is_of_a_pot(food: FoodFacts) -> bool:
    named = re.search(rf"\b(?:{_OF_A_POT})\b", food.name) is not None
    return named or food.group is Group.MEAL or bool(food.classes & {"stock", "soup"})


def _minutes(clause: str) -> list[float]:
    return [most for one in re.findall(_TIME, clause) for most in all_minutes(one)]
