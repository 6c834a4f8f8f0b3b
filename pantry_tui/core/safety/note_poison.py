"""Words of a note that food may hold what poisons by its kind, whatever the method: a plant that
does, a wild mushroom or herb that nobody knows, leaves of rhubarb, kernels. For notes in small
letters, one clause at a time. Which words are listened for is a choice of our own.

US FDA and state extension: no wild mushroom or plant is eaten whose kind is not certain; the leaves
of rhubarb and the kernels of stone fruit are not eaten. From memory.
"""

from __future__ import annotations

import re

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Group

_PLANTS = frozenset(
    {Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.NUT, Group.DRINK, Group.RELISH}
)
_POISONOUS = (
    r"(?:hemlock|nightshade|death caps?|foxgloves?|monkshood|lily of the valley|daffodils?|yew|"
    r"toadstools?|water dropwort|lords and ladies|meadow saffron)"
)
_AMONG = (
    rf"\b(?:might|may|could) (?:also )?(?:be|have been|hold|contain)(?: \w+)? {_POISONOUS}\b|"
    rf"\b(?:or|maybe|perhaps|possibly|probably)(?: (?:maybe|perhaps|even|also|some|a|bit|of))* "
    rf"{_POISONOUS}\b|"
    rf"\b{_POISONOUS} (?:(?:got|was|were|is) )*(?:among|in|mixed)\b"
)
#: Of what grew wild; a variety of a garden's that nobody knows poisons nobody.
_UNCERTAIN = (
    r"\b(?:(?:not|never) (?:\w+ )?(?:sure|certain)|unsure|no idea|do not know|not know|wonder)"
    r"(?: (?:of|what|which|about|the))* (?:kind|sort|species|type|(?:it|they|this|these) (?:is|"
    r"are))\b|\bun ?identified\b|\b(?:kinds?|species|types?|sorts?|names?) (?:\w+ )?(?:un ?certain|"
    r"un ?known|un ?sure)\b|\b(?:un ?known|uncertain) (?:kinds?|species|types?|sorts?)\b|"
    r"\b(?:might|may|could|maybe|perhaps) (?:be |have been )?false (?:ones?|morels?|"
    r"chanterelles?)\b|"
    r"\b(?:not|never) (?:\w+ )?(?:checked|named|identified|know|sure)(?: which| the names?)?$|"
    r"\b(?:no expert|from an app|app (?:says|said)|could (?:be anything|not name)|looked like the "
    r"ones|maybe not|i (?:hope|think)(?: they (?:are|were)(?: \w+)?)?$|hope they are|"
    r"some (?:may|might|could) be)\b|^(?:un ?sure|not sure)$|"
    r"\b(?:kinds?|sorts?|species|types?|names?) (?:\w+ )?not (?:\w+ )?(?:known|sure|certain)\b|"
    r"\b(?:not|never) (?:\w+ )?(?:sure|certain|known) (?:of )?(?:which|what)(?: ones?)?$|"
    r"\b(?:nobody|no one) (?:\w+ )?(?:checked|looked|named|knew|knows|identified)(?: at| what|"
    r" which)?(?: (?:it|them|they|these|this|those))?(?: (?:is|are|was|were))?$|"
    r"\b(?:not|never) (?:\w+ )?(?:sure|certain)(?: if| that| whether)? (?:it|they|these|this) "
    r"(?:is|are|was|were) (?:all )?(?:safe|edible|the right (?:one|kind|sort)s?|good to eat|"
    r"chanterelles|ceps|porcini|morels|boletes)\b"
)
#: That it is what it is called.
_IS_IT = (
    r"\b(?:not|never) (?:\w+ )?(?:sure|certain|convinced|positive)(?: if| that| whether)? (?:it|"
    r"they|these|this|that) (?:is|are|was|were)(?: (?:really|all|the|true|even|a|in fact))* {own}|"
    r"\b(?:hope|think|guess|believe|suppose)(?: that)? (?:it|they|these|this) (?:is|are|was|were) "
    r"(?:\w+ )?{own}\b(?! (?:enough|for|that))|"
    r"\b(?:might|may|could) (?:be|have been) (?:something|anything) else\b|"
    r"\b(?:is|was) (?:it|this|that) (?:really )?{own}(?=$|; (?:no idea|not sure|who knows|unsure|"
    r"hope so|maybe|perhaps))|"
    r"\blooks? like {own}; (?:not (?:quite )?sure|unsure|no idea|i (?:hope|think)|maybe|hope)\b"
)
#: Of these a look-alike poisons; of a crop from the garden it does not.
_LOOK_ALIKES = frozenset({Group.HERB})
_PICKED_WILD = (
    r"\b(?:wild|forag\w*|woods?|forest|hedge\w*|roadside(?! st)|ditch|meadow|verge)\b"
    r"(?! (?:garlic|rice|boar|salmon|cherr\w+|strawberr\w+|blueberr\w+))"
)
_FUNGI = r"mushroom|chanterelle|porcini|\bceps?\b|morel|bolet|puffball"
#: A mixture that somebody picked, and no shop.
_WILD_MIXED = (
    r"\b(?:mixed|mixture|all sorts|various|assorted)\b.*\b(?:woods?|forest|wild|forag\w*|lawn|"
    r"meadow)\b|\bwild mix\b"
)
_KNOWN = (
    r"\b(?:bought|shop|store|market|grocer\w*|supermarket|dealer|certified|checked|"
    r"kinds? certain)\b"
)
_RHUBARB_LEAVES = (
    r"\brhubarb leaves\b|^(?:some |the )?leaves (?:in|used|on)\b|\bleaf and all\b|"
    r"\bleaves and (?:stalks|stems)\b|\b(?:with|including|and|plus|left|used|kept|some)(?: (?:the|"
    r"its|their|some|a few|few|bits?|"
    r"of|all|young|green))* (?:leaves|leaf)\b|\bleaves (?:too|as well|in it|and all|left on)\b"
)
_KERNELS = (
    r"\b(?:noyaux?|kernels?|bitter almonds?)\b(?! (?:corn|of corn|none))|"
    r"\b(?:crush\w*|ground|grind\w*|crack\w*)(?: \w+){0,2} (?:stones?|pits?)\b|"
    r"\b(?:stones?|pits?) (?:(?:were|was|got|all|some) )*(?:crush|ground|grind|crack)\w*"
)
_PIPS = (
    r"\b(?:crush\w*|ground|grind\w*|crack\w*)(?: \w+){0,2} (?:seeds|pips)\b|"
    r"\b(?:seeds|pips) (?:(?:were|was|got|all|some) )*(?:crush|ground|grind|crack)\w*"
)
#: Of elder the ripe berries of the black one alone are cooked.
_ELDER = (
    r"\b(?:leaves|bark|stems|twigs)(?: and \w+)? (?:in|and all|too|as well)\b|\band (?:leaves|"
    r"bark)\b|"
    r"\b(?:green|un ?ripe|red)(?: \w+)? (?:berries|ones)\b|\b(?:dwarf|red) elder|"
    r"\b(?:with|including|plus|left|kept) (?:(?:the|some|all|their|few|a|bits of) )*(?:stems|"
    r"stalks|"
    r"leaves|twigs|bark)\b|\b(?:stems|stalks|leaves|twigs)(?: (?:and|were|was|all|left|still))* "
    r"(?:on|in|too|left on|cooked|pressed)\b|\b(?:not|never) (?:all |quite |fully |really )*ripe\b|"
    r"\b(?:some|half|few|many|most|part|all|bit|quite|were|are|still|a third)(?: (?:of|them|the|"
    r"berries|were|are|was|still|a bit))* (?:un ?ripe|green)\b"
)
_WITHOUT = (
    r"\b(?:trimmed|cut|off|out|removed|discard\w*|compost\w*|threw|away|without|no|garden|heap|"
    r"mulch|slugs?|thrown|bin\w*)\b"
)


def may_poison(food: FoodFacts, clause: str, note: str) -> bool:
    """Whether a clause says so; all of the `note` may say that it grew wild."""
    if food.group not in _PLANTS:
        return False
    if affirmed(clause, _AMONG):
        return True
    fungi = re.search(_FUNGI, food.name) is not None
    elder = "elderberr" in food.name
    wild = fungi or elder or re.search(_PICKED_WILD, note.casefold()) is not None
    # Each by itself: "not checked" is not checked.
    denied = re.sub(r"\b(?:nobody|no one)\b", "not", note.casefold())
    known = any(affirmed(one, _KNOWN) for one in re.split(r"[;,.!?\n]", denied))
    if wild and not known and affirmed(clause, _UNCERTAIN):
        return True
    if fungi and not known and affirmed(clause, _WILD_MIXED):
        return True
    alike = wild or food.group in _LOOK_ALIKES
    if alike and not known and _may_be_another(food, clause, note):
        return True
    if re.search(_WITHOUT, clause):
        return False
    if "rhubarb" in food.name:
        return affirmed(clause, _RHUBARB_LEAVES)
    if elder and affirmed(clause, _ELDER):
        return True
    if food.group is Group.FRUIT and "berr" not in food.name:
        return affirmed(clause, rf"{_KERNELS}|{_PIPS}")
    return "jam" in food.classes and affirmed(clause, _KERNELS)


def _may_be_another(food: FoodFacts, clause: str, note: str) -> bool:
    """Whether nobody is certain that it is what it is called."""
    own = [re.escape(one.removesuffix("s")) for one in food.name.split() if len(one) > 2]
    own += ["(?:black )?elder"] if "elderberr" in food.name else []
    asks = _IS_IT.replace("{own}", rf"(?:\w+ )?(?:{'|'.join(own)})\w*")
    told = " ".join(re.sub(r"[,.?!]+", "; ", note.casefold()).split()).replace(" ;", ";")
    if clause not in told:
        told = clause
    return re.search(asks, clause) is not None or re.search(asks, told) is not None
