"""What a note says was seen or smelt on food that no lid and no process keeps, and what that means
on its container: data/signs.csv, with its publications. Which words are listened for is a choice of
our own, the stricter one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator

from pantry_tui.core.canned import ANIMAL
from pantry_tui.core.keeping.harm import is_dry
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_fire import in_a_fire
from pantry_tui.core.safety.note_hands import off
from pantry_tui.core.safety.note_look import says
from pantry_tui.core.safety.note_spoilage import (
    FLOOD,
    GONE_BAD,
    ILL,
    NOT_RIGHT,
    OF_THE_LAND,
    SOURED,
    SPOTTED,
    WORKED,
    gassy,
    ill_of_else,
)
from pantry_tui.core.safety.said import meant
from pantry_tui.core.safety.signs import THROWN, Sign, SignVerdict, signs_for
from pantry_tui.core.words import Group, Method

_DO = {SignVerdict.DO_NOT_TASTE: "do not taste it", SignVerdict.DISCARD: "discard"}
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
#: What makes no gas while it is sound.
_STILL = frozenset({Method.IN_OIL, Method.FRIDGE_PICKLE, Method.SUGAR, Method.FLAVOURED_VINEGAR})
#: It fizzes, or gas pushes its lid up.
_PUSHED_UP = (
    r"\bfizz(?:es|ed|ing|y)?\b|"
    r"\b(?:lids?|tops?|caps?) (?:(?:is|are|was|were|has|have|looks?|a|bit|slightly|now|all) )*"
    r"(?:bulg\w*|dom(?:ed|es|ing)|swollen|swell\w*|blown|pushed up)\b|"
    r"\b(?:bulging|swollen|domed) (?:lids?|tops?|caps?)\b"
)
#: What has spots and colours of its own, raw or by frost, cure and time.
_MARKED = frozenset(
    {Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.EGG, Group.MEAT, Group.FISH, Group.NUT}
)
_MARKED_BY_FROST_OR_AGE = frozenset(
    {Method.FROZEN, Method.CELLAR, Method.SALTED, Method.HOT_SMOKED, Method.COLD_SMOKED}
)
#: Classes of what is chilled, whatever its group.
_CHILLED = frozenset({"stock", "animal", "cooked", "in-oil", "sprout", "moist"})

#: Where alcohol belongs.
_BREWED = frozenset({Method.ALCOHOL_FERMENT, Method.VINEGAR_FERMENT, Method.INFUSION})
#: Of flesh; a cured ham that shimmers like a rainbow is sound (USDA FSIS, The color of meat and
#: poultry; from memory).
_GREENED = (
    r"\bgr[ae]y(?:ish)? green(?:ish)?\b|\bgreen(?:ish)? gr[ae]y\b|\bgreenish\b|"
    r"\b(?:gone|turned|turning|going|tinged) green\b|"
    r"\bgreen (?:tinge|tint|edges?|spots?|patch\w*|at the|in places)\b"
)
_BUBBLES = r"\bbubbl(?:es?|ing|y)\b"
#: It bubbles while it is hot.
_COOKING = (
    r"\b(?:hot|heat\w*|bak\w*|oven|grill\w*|cook\w*|simmer\w*|boil\w*|pot|pan|stove|hob|until|"
    r"till|golden|cheese|serv\w*|broil\w*|fr(?:y|ied)|soda|tea|squeak|wine|batter|dough|yeast)\b"
)
#: What is sour of itself.
_SOUR = r"sour|kraut|borsch|pickl|vinegar|lemon|tom yum|solyanka|adobo"
_SOUR_NOW = r"^(?:(?:it|now|is|has|a|bit|very|gone) )*(?:tast(?:es?|ed|ing) sour|sour taste)$"
#: The mould that a blue cheese is made with.
_OF_A_BLUE = (
    r"^(?:(?:it|has|the|its|with|only|all) )*blue (?:mou?lds?|veins?)(?: (?:is|are|in it|inside|"
    r"through|throughout|in the veins))* (?:as (?:it|they|there) should(?: be)?|where it should be|"
    r"(?:that |which )?belongs?(?: (?:there|to it|in it))?|as (?:it was )?made)$"
)
_SPOILT = rf"{words.SPOILT}|{WORKED}"

_Told = Iterator[str]


def perishes_by_kind(food: FoodFacts) -> bool:
    """Whether what it is made of goes off, however it is kept."""
    return food.group in ANIMAL or bool(food.classes & _CHILLED)


def spoilt(
    method: Method, food: FoodFacts, clause: str, signs: Callable[[], Iterable[Sign]]
) -> _Told:
    """A sign of spoiling that throws it away, as the table of signs has it."""
    told = words.SPOILT if method in _BREWED or food.group is Group.DRINK else _SPOILT
    if perishes_by_kind(food) and food.group is not Group.DAIRY and method is not Method.LACTIC:
        told = rf"{told}|{SOURED}"
        if food.group in (Group.MEAT, Group.FISH) and method not in _DRY:
            told = rf"{told}|{_GREENED}"
        if food.group in (Group.MEAT, Group.FISH, Group.MEAL) and not re.search(_SOUR, food.name):
            told = rf"{told}|{_SOUR_NOW}"
    if food.group in (Group.MEAT, Group.FISH) and method not in _DRY:
        told = rf"{told}|{words.STICKY}"
    if says(FLOOD, clause) and not re.search(OF_THE_LAND, clause):
        yield "what flood water carried cannot be kept out for certain: do not taste it."
    elif in_a_fire(clause):
        yield "the heat of a fire spoils food in its pack, and its smoke gets in: discard."
    elif off(clause):
        yield from _bad(method, food, clause, signs)
    elif says(ILL, clause) and not ill_of_else(clause):
        yield from _means(method, food, clause, signs)
    elif says(told, re.sub(words.SO_OF_ITSELF, " ", clause)) or _made_gas(method, food, clause):
        yield from _bad(method, food, clause, signs)
    elif method is Method.MEAL and says(_BUBBLES, clause) and not re.search(_COOKING, clause):
        yield (
            "cold food makes no gas while it is sound. If it does, discard it; if it bubbled in "
            "the pot, put the note right so that it says so."
        )


def vaguely_bad(
    method: Method, food: FoodFacts, clause: str, signs: Callable[[], Iterable[Sign]]
) -> _Told:
    """The same of a colour or a vague word, which is heard last: a pack that swelled says more."""
    vague = rf"{GONE_BAD}|{NOT_RIGHT}"
    vague = rf"{vague}|{SPOTTED}" if _shows_in_spots(method, food) else vague
    if says(vague, re.sub(words.SO_OF_ITSELF, " ", clause)):
        yield from _bad(method, food, clause, signs)


def _bad(
    method: Method, food: FoodFacts, clause: str, signs: Callable[[], Iterable[Sign]]
) -> _Told:
    """What it means, where it is still there."""
    if re.search(words.NOT_SPOILT, clause):
        return
    if "cheese" in food.name and re.search(_OF_A_BLUE, clause):
        return
    # Of loose crops the bad ones are taken out; in a jar or a bag mould and insects are in all.
    culled = re.search(words.CULLED, clause) is not None
    loose = method in (Method.CELLAR, Method.FRESH) and not is_dry(food)
    if not (culled and (loose or re.search(words.BEFORE_PACKING, clause))):
        yield from _means(method, food, clause, signs)


def _means(
    method: Method, food: FoodFacts, clause: str, signs: Callable[[], Iterable[Sign]]
) -> _Told:
    sign = meant(signs_for(signs(), method, food, open_=False), clause, food.name)
    if sign is None and not (perishes_by_kind(food) or _made_gas(method, food, clause)):
        yield "what that means for it is not sure. Look it over, and say what it shows with `sign`."
    if sign is None and perishes_by_kind(food):
        yield f"what smells or looks so is spoilt: {_DO[SignVerdict.DISCARD]}."
    if sign is not None and sign.verdict in THROWN:
        yield as_sign(sign)


def _made_gas(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether it works that should not; honey and syrup do where they took up water."""
    sweet = method in (Method.BOUGHT, Method.FRESH) and (
        food.name == "honey" or "syrup" in food.name
    )
    if (sweet or method is Method.SUGAR) and affirmed(clause, r"\bferment(?:s|ed|ing)?\b"):
        return True
    return (sweet or method in _STILL) and (gassy(clause) or affirmed(clause, _PUSHED_UP))


def _shows_in_spots(method: Method, food: FoodFacts) -> bool:
    """Whether coloured spots on it are no marks of its own: what was made, in its vessel. A cheese
    may be a blue one."""
    if food.name == "cheese":
        return False
    if method in (Method.FRESH, Method.BOUGHT):
        return food.group not in _MARKED
    return method not in _MARKED_BY_FROST_OR_AGE


def as_sign(sign: Sign) -> str:
    """What a sign that throws it away says, a sentence."""
    return f"{sign.means[:1].lower()}{sign.means[1:].rstrip('.')}: {_DO[sign.verdict]}."
