"""What a note says of a tested recipe that was changed: more of what is low in acid, meat left in
what has a process without it. For notes in small letters, one clause at a time; which words are
listened for is a choice of our own.

Peppers, onions and garlic are never more than the recipe has, and may be fewer (National Center for
Home Food Preservation, Sensational salsas, and USDA AIB 539, guide 3, for spaghetti sauce; from
memory). Jars with meat take the time of meat (USDA AIB 539, guide 5).
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.words import Acidity, Group, Method

_LOW = (
    r"(?:(?:hot|bell|sweet|red|green|yellow|chopped|diced|fresh|chil(?:i|e)|raw|of|the|these) )*"
    r"(?:onions?|peppers?|chill?i(?:es)?|chiles?|jalape[nñ]os?|habaneros?|garlic|mushrooms?|celery|"
    r"carrots?|corn|beans|zucchini|courgettes?|squash|aubergines?|eggplants?|cucumbers?|"
    r"veg(?:etables?|gies|etable)?|cabbage|shallots?)\b"
    r"(?! (?:flakes|powder|salt|sauce|jelly|vinegar|flavou?r|heat|plants?))"
)
_MORE = (
    r"(?:(?:(?:lots|loads|much|many|a few|a little|a bit|some|heaps|far|way|rather|extra) "
    r")*(?:more|extra|additional|too many|too much)|doubl(?:ed?|ing)|trip(?:led?|ling)|trebled?|"
    r"twice|quadrupled?|half again|\d+(?:\.\d+)? ?x|\d+(?:\.\d+)? times|up+ed|increased|heavy "
    r"(?:on|with)|heavier on|generous with|went (?:heavy|big) on|heaped|lots of|loads of|piled "
    r"(?:in|on))(?: (?:up|on|as (?:many|much)|the (?:amount|number|quantity) of|amount of|of))*"
)
_MORE_LOW = (
    rf"\b{_MORE} {_LOW}|\b{_LOW}(?: (?:was|were|are|is|all))? (?:doubled?|tripled?|trebled|"
    rf"increased|"
    r"upped)\b|"
    rf"\b{_LOW} ?: ?(?:double|twice|triple|more|extra)\b"
)
_LESS_TOMATO = (
    r"\b(?:less|fewer|half|0\.5|not as many|short (?:of|on)|fewer of|a third of|a quarter of)"
    r"(?: (?:of|the|as many))* tomato(?:es)?\b|\b(?:cut|reduced) the tomato(?:es)? by\b"
)
#: As it might be another time.
_WISHED = (
    r"\b(?:would|could|should|needs?|needed|wish\w*|want\w*|next|if|like|maybe|perhaps|might|"
    r"does not need|ask\w*|season|year|crop|plants?|grew|harvest\w*|bought|picked)\b"
)
_FEWER_LOW = (
    r"\b(?:half|0\.5|a third|a quarter|less|fewer|not as many|no (?:extra|more)|without extra|"
    rf"cut (?:back |down )?(?:on )?)(?: of)?(?: the)? {_LOW}"
)
_ITS_OWN = (
    r"(?:(?:roasted|charred|grilled|peeled|seeded|blanched|cored|washed|used|all|our|own|home|"
    r"grown|from|mild|the|ripe|young) )*"
)
#: What every published salsa, chutney and relish has a measure of.
_BELONGS = (
    rf"{_ITS_OWN}(?:(?:hot|bell|sweet|red|green|yellow|white|chopped|diced|minced|fresh|chil[ie]) "
    r")*(?:onions?|peppers?|chill?i(?:es)?|chil[ie]s?|jalape[nñ]os?|garlic|coriander|cilantro)"
)
_NAMED = (
    rf"^(?:(?:with|has|have|contains?|made|of|it|and|usual) )*{_BELONGS}"
    rf"(?:(?:,? and|,| &| \+| or| with) {_BELONGS})*(?: in(?: (?:it|there|them))?)?$"
)
_MIXED = r"\b(?:salsa|relish|chutney|ketchup|piccalilli|chow ?chow)\b"
_OF_RECIPE = r"salsa|sauce|relish|chutney|ketchup|piccalilli|chow ?chow"
_MEAT = (
    r"(?:meat|chicken|turkey|beef|pork|ham|sausages?|bacon|mince|ground beef|lamb|fish|giblets|"
    r"meat ?balls?)\b(?! (?:bones?|carcass\w*|feet|stock|broth|fat|flavou?r|necks?|wings?|shop|"
    r"free))"
)
_SOME = r"(?:(?:the|some|a|all|of|little|bits?|chunks?|pieces?|shreds?|scraps?|lots|cooked|more) )*"
_MEAT_IN = (
    rf"\b(?:left|kept|put|threw|returned|leaving) {_SOME}{_MEAT}(?: \w+)? in\b|"
    rf"\b{_MEAT} (?:(?:was|is|has been|still|left|kept|all|pieces|bits|chunks) )*in(?: (?:it|them|"
    r"there|the (?:jars?|stock|sauce|broth)))?$|"
    rf"(?<!made )(?<!cooked )(?<!boiled )(?<!simmered )\bwith {_SOME}{_MEAT}|"
    rf"\b(?:bits|pieces|chunks|shreds|scraps) of {_SOME}{_MEAT}|"
    rf"\b{_MEAT} (?:pieces|chunks|bits|shreds)\b|\badded {_SOME}{_MEAT}"
)
#: Among a crop.
_MEAT_INSIDE = (
    rf"\b(?:raw |cooked |fried |smoked |minced )?{_MEAT} (?:is |was |lies |went )?(?:in|among|"
    r"between) (?:it|them|there|(?:the|each|every|all|some) (?:of the )?jars?)\b"
)
_MEATLESS = r"without meat|meatless|vegetable|mushroom|tomato"


def more_of_what_is_low(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether more of it went in than the recipe has, or less of the tomatoes that are sour."""
    if method not in LIDDED or not _is_recipe(food) or re.search(_WISHED, clause):
        return False
    told = re.sub(PURPOSE, " ", without_fewer(food, clause))
    return affirmed(told, rf"{_MORE_LOW}|{_LESS_TOMATO}")


def without_fewer(food: FoodFacts, clause: str) -> str:
    """The clause without what of a recipe there was less of, or which of its own it names."""
    if not _is_recipe(food):
        return clause
    told = re.sub(_FEWER_LOW, " ", clause)
    if re.search(_MIXED, food.name) and re.search(_NAMED, told):
        return " "
    return re.sub(rf"^{_ITS_OWN}{_LOW}$", " ", told) if "salsa" in food.name else told


def meat_in_it(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether meat is in what is canned by the time of what has none."""
    stock = "stock" in food.classes or re.search(r"\b(?:stock|broth)\b", food.name) is not None
    meatless = re.search(_MEATLESS, food.name) is not None and food.group is not Group.MEAT
    if method in PROCESSED and food.group in (Group.VEGETABLE, Group.FRUIT):
        return affirmed(re.sub(PURPOSE, " ", clause), _MEAT_INSIDE)
    if method not in PROCESSED or not (stock or meatless):
        return False
    return affirmed(re.sub(PURPOSE, " ", clause), _MEAT_IN)


def _is_recipe(food: FoodFacts) -> bool:
    """Whether it is made by a recipe that more of some part takes its acid from."""
    if "soup" in food.classes or (food.group is Group.MEAL and "sauce" not in food.name):
        return False
    made = re.search(rf"\b(?:{_OF_RECIPE})s?\b", food.name) is not None
    sour = food.acidity is Acidity.ACIDIFIED and food.group is Group.RELISH
    return made or sour or "tomato" in food.classes or "pepper jelly" in food.name
