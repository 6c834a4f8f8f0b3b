"""What a note says that makes dry food wet: soaked, stirred into milk, made into a batter, covered
with oil. For what was done to a batch (note_states.py), in small letters. Which words are listened
for is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed

_SOAKED = (
    r"(?:soaked|soaking|steeped|steeping|re ?hydrated|hydrated|re ?constituted|sprouted|sprouting|"
    r"germinat\w+)"
)
_DRIED_AGAIN = (
    r"\b(?:before|then|and) (?:\w+ )?(?:dr(?:y|ied|ying)|dehydrat\w+)|"
    r"\bdried (?:again|after|since)"
)
#: Before it was dried, or a dip.
DRIED_SINCE = (
    rf"{_DRIED_AGAIN}|\bdip\b|"
    r"\bin (?:\w+ )?(?:lemon|acid|ascorbic|juice|pineapple|brine|salt|honey|syrup|sugar|"
    r"vinegar|rum|brandy|spirit|soy|marinade)"
)
#: Heat that drives the water off again, or that oil was for.
_ROASTED = r"\b(?:roast|toast|bak(?:ed|ing)|fried|fry|crisped|dried|dehydrat)\w*"
_LIQUID = (
    r"(?:water|(?:oat |soy |almond |coconut )?milk|butter ?milk|cream|yogh?urts?|kefir|eggs?|juice|"
    r"oils?|syrup|broth|stock|wine|beer|vinegar|rum|brandy|coffee|tea)\b"
    r"(?! (?:powder|mill|chocolate|proof|free|of tartar|chestnuts?|noodles?|cracker|shaker|cubes?|"
    r"seeds?|flour|replacer|substitute))"
)
_OF_IT = (
    r"(?:(?:the|a|an|some|its|our|own|warm|cold|hot|boiling|tepid|fresh|salted|sweet|little|bit|"
    r"lots?|plenty|splash|more|much|apple|orange|olive|walnut|sunflower|vegetable|sour|beaten|"
    r"whole|of|and|cups?|sugar|salt|yeast|butter|\d+(?:\.\d+)?|l|ml|pints?|quarts?) )*"
)
#: It was put together with what wets it.
_MIXED = (
    r"\b(?:mixed|stirred|blended|whisked|beaten|combined|shaken|slaked|moistened|drenched|"
    r"covered|topped up|filled up|submerged|drowned|made up|thinned|worked|rubbed|whizzed)(?: up)? "
    rf"(?:with|in|into|under|to) {_OF_IT}{_LIQUID}|"
    r"\b(?:put|left|standing|stood|sitting|stands|lying|swimming|kept)(?: (?:to soak|"
    r"over ?night))? "
    rf"(?:in|under) {_OF_IT}{_LIQUID}|"
    rf"^(?:(?:now|already|all|is|are|it is|stored|kept|packed) )*(?:in|under|with) {_OF_IT}"
    rf"{_LIQUID}(?: and {_LIQUID})?$|"
    rf"\b(?:with|plus|and) {_OF_IT}{_LIQUID}(?: and {_OF_IT}{_LIQUID})? (?:added|stirred in|"
    r"mixed in|in it|poured (?:on|over|in))|"
    rf"\b{_LIQUID}(?: and {_LIQUID})? (?:was |were |has been |already |all )*(?:added|stirred in|"
    r"mixed in|beaten in|poured (?:on|over|in)|in it|worked in)\b|"
    rf"\badded {_OF_IT}{_LIQUID}|\b(?:put|left|set) to soak\b|\bwetted\b"
)
_KIND = (
    r"(?:(?:a|an|the|is|half|all|of|it|it is|now|already|made|mixed|as|ready|some|left ?over|"
    r"rest of the|bread|"
    r"pizza|pancake|waffle|cr[eê]pe|pie|pastry|pasta|cookie|biscuit|cake|drop|dumpling|noodle|"
    r"yorkshire|sour ?dough|flour|wet|thick|thin|fresh|raw) )*"
)
#: What flour and a mix are by then.
_BATTER = (
    rf"^{_KIND}(?:batter|dough|slurry|starter|levain|poolish|biga)(?: (?:of it|already|now))?$|"
    r"\b(?:made|mixed|stirred|turned|worked|beaten|rolled|kneaded)(?: up)? (?:into|to|as) (?:a |"
    r"the |"
    r"some )?(?:\w+ )?(?:batter|dough|paste|slurry|pastry|porridge)\b|\bkneaded\b|\b(?:dough|"
    r"batter) (?:is |was |has |made|mixed|ready|rising|resting|proving|from)"
)
#: What oats, nuts and grain are by then.
_SOFT = (
    rf"^{_KIND}(?:over ?night (?:oats?|muesli)|bircher(?: muesli)?|"
    r"(?:nut|walnut|almond|cashew|hazelnut|oat|rice|soy) ?milk)$"
)
#: What fruit is dipped in before it is dried.
_DIPPED = r"\b(?:lemon|lime|citrus|pineapple|orange|ascorbic|citric)\b"
#: What dough is like that is made of it some day.
_WANTS = r"\b(?:dough|batter|starter)s? (?:needs?|wants?|likes?|takes?|should|must|may|can|will)\b"
#: Dry, though no table of dry food has it.
_POWDER = r"\b(?:powder(?:ed)?|mix(?:es)?|granules|bouillon|flakes|instant|dried)\b"


def made_wet(food: FoodFacts, clause: str, done: str, *, dry: bool, sample: str) -> bool:
    """Whether it is wet by now, by what a clause says was `done`; `dry`: it is dry as it is bought,
    else dried by somebody, who may have dipped it first. `sample` is the pattern of what is a taste
    of it alone."""
    dried_since = re.search(_DRIED_AGAIN if dry else DRIED_SINCE, done) is not None
    told = _SOAKED if dry else _SOAKED.replace("soaked|soaking|steeped|steeping|", "")
    if not dried_since and affirmed(done, rf"\b{told}\b{sample}"):
        return True
    wants = re.search(_WANTS, clause) is not None
    if dry and affirmed(done, rf"{_BATTER}|{_SOFT}") and not wants:
        return True
    if dried_since or (not dry and re.search(_DIPPED, done)):
        return False
    return affirmed(done, _MIXED) and not re.search(_ROASTED, re.sub(food.name, " ", done))


def is_powder(food: FoodFacts) -> bool:
    """Whether it is a powder, a mix or flakes, dry in its pack."""
    return re.search(_POWDER, food.name) is not None
