"""Words of a note that the acid of tomatoes, figs and the like went into their pot, or was shared
out, and not into each jar by its measure. For notes in small letters, one clause at a time.

So much for each jar, of bottled juice, citric acid or vinegar, is published (USDA AIB 539, guides 2
and 3): what was stirred into a pot or cooked with it is no amount of any jar, and the juice of a
lemon differs from fruit to fruit. Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.acid import ACID_ADDED
from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.note_words import ACID, PURPOSE
from pantry_tui.core.words import Acidity, Group, Method

#: By its own measure.
_BY_JAR = (
    r"\b(?:per|a|an|each|every|to the|for every|for each|by the) "
    r"(?:(?:single|half|1|\d+ ?(?:ml|l|oz)) ?)*"
    r"(?:jars?|pints?|quarts?|ones?|bottles?)\b|\bjar by jar\b|\b(?:each|every 1)$|"
    r"\b(?:in|into|to) (?:all|both)(?: of)?(?: the| our| my| \d+)* (?:jars?|pints?|quarts?|them)\b|"
    r"\b(?:in|into) the jars\b|\bevery 1\b"
)
_NOT_BY_JAR = rf"\b(?:{DENIED}|instead of|rather than)(?: \w+){{0,2}} (?:{_BY_JAR})"
#: Over them all.
_SHARED = (
    r"\b(?:between|among(?:st)?|across|over|through|for|to) (?:(?:all|of|the|our|my|these|those|"
    r"whole|entire|full|\d+) )*"
    r"(?:lot|load|batch|everything|jars|them all|all of (?:them|it)|all|pints|quarts)\b|"
    r"\b(?:split|shared|divided|spread|distributed)(?: out| up)?(?: \w+){0,2}$|"
    r"\b(?:split|shared|divided|spread|distributed) (?:out |up )?(?:between|among|over|across)\b|"
    r"\ball (?:together|at once)\b|\bin (?:1|a single) go\b"
)
_POT = (
    r"(?:pots?|pans?|kettle|sauce ?pan|stock ?pot|cauldron|batch|sauce|mix(?:ture)?|pur[eé]e|"
    r"vat|tub|bowl|boil|simmer|syrup(?: pot)?|whole (?:lot|thing|pot)|lot|tomatoes|figs)"
)
_IN_THE_POT = (
    r"\b(?:in|into|to|per|with|onto|each|every|a|for) (?:(?:the|a|an|my|our|whole|big|large|"
    rf"entire|full|first|cooking|boiling|simmering|hot|preserving|jam|1) )*{_POT}\b"
    r"(?! (?:of water|water))|"
    r"\b(?:while|as|when|before) (?:it|they|the \w+) (?:(?:was|were) )?(?:cook|simmer|boil|"
    r"heat)\w*|"
    r"\b(?:cooked|simmered|boiled|stewed|milled) (?:(?:it|them|down|up|along|together) )*with\b"
)
#: Of no measure at all.
_BY_EYE = (
    r"\b(?:to taste|by (?:eye|feel|taste|guess)|glugs?|squirts?|slug|drizzle|pinch(?:es)?|some)\b|"
    r"\bjuice of (?:(?:a|an|about|some|the|half|1|2|3|4|5|6|0\.5) )*lem?ons?\b|"
    r"\bjuice of (?:(?:a|about|some|half|1|2|3|4|5|6|0\.5) )*limes?\b|"
    r"\b(?:slices?|wedges?|rounds?) of (?:lemon|lime)\b|\b(?:lemon|lime) (?:slices?|wedges?)\b"
)
_SOUR = rf"{ACID}|\b(?:lemon|lime) (?:slices?|wedges?)\b"
#: More than the measure, or none that was put in.
_BESIDE = (
    r"\b(?:on top of|besides?|as well as|in addition|extra|a bit more|some more|more of it|"
    r"next to|wiped?|wiping|clean\w*|rims?|canner|water bath|brown(?:ing)?|dip\w*|"
    r"(?:lemon|lime) (?:basil|thyme|balm|tree|house|grass|verbena))\b"
)
#: Bottled juice is what is asked for, and what is put beside its measure is more of it.
_AS_ASKED = (
    r"\b(?:only )?bottled (?:lemon|lime)(?: juice)?(?: only)?$|^only bottled$|"
    r"^.*\b(?:on top of|besides?|as well as|in addition to) (?:the |its |our )?(?:bottled|measured|"
    r"usual|full|2 tbsp|tablespoons?)\b.*$"
)


def as_asked(clause: str) -> str:
    """The clause with the acid that is asked for as a plain one."""
    return re.sub(_AS_ASKED, "lemon", clause)


def by_jar(food: FoodFacts) -> bool:
    """Whether its tested processes put acid into each jar: what has a recipe has it in the pot."""
    own = ACID_ADDED in food.classes or "tomato" in food.classes
    recipe = food.group is Group.RELISH or bool(food.classes & {"pickle", "jam"})
    return own and food.acidity is Acidity.ACIDIFIED and not recipe


def not_in_each_jar(method: Method, food: FoodFacts, clause: str, before: str, note: str) -> bool:
    """Whether a clause says so; `before` is the clause that stands before it, and `note` all of it,
    in small letters, which may say that each jar had its own."""
    if method not in PROCESSED or not by_jar(food):
        return False
    told = re.sub(PURPOSE, " ", clause) if re.search(r"\bgood|serve|eat\b", clause) else clause
    own = re.search(_SOUR, told) is not None
    if not own and re.search(_SOUR, before) and re.match(rf"(?:{_SHARED}|all )", told):
        told, own = f"{before} {told}", True
    if not own or re.search(_BESIDE, told):
        return False
    if re.search(_NOT_BY_JAR, note):
        return True
    measured = re.search(_BY_JAR, note) is not None
    if re.search(_BY_EYE, told) and not re.search(r"\bbottled\b", note):
        return True
    return not measured and re.search(rf"{_SHARED}|{_IN_THE_POT}", told) is not None
