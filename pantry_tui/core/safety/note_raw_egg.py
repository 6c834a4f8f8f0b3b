"""Whether a note says that a sauce or a sweet of raw egg was made at home: mayonnaise, aioli,
hollandaise, tiramisu, mousse. What a shop sells of them is made of pasteurised egg, and keeps for
months; a home's has three to four days (the federal storage table of 2018, aioli, homemade). Which
words are listened for is a choice of our own, the stricter one."""

from __future__ import annotations

import re
from functools import lru_cache

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_states import Now, Told, done_of
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.words import Group, Method

#: What is made of egg that is never cooked through, by any of its names.
_OF_RAW_EGG = (
    r"\b(?:mayonnaise|mayo|aiol[ií]|allioli|ali oli|tartare? sauce|remoulade|rouille|hollandaise|"
    r"b[eé]arnaise|c(?:ae|e)sar (?:dressing|sauce)|tiramis[uù]|mousse|egg ?nog|zabaglione|sabayon|"
    r"semifreddo|parfait|advocaat|royal icing|cookie dough)\b"
)
_RAW_EGG = (
    r"\b(?:raw|uncooked|un ?pasteuri[sz]ed|fresh|runny|beaten) (?:\w+ )?(?:eggs?|yolks?|whites?)\b|"
    r"\b(?:eggs?|yolks?|whites?) (?:is |are |was |were |went in |in it )?(?:raw|uncooked)\b"
)
_AT_HOME = (
    r"\b(?:(?:home|self|hand) ?made|(?:own|home) (?:make|recipe)|"
    r"(?:made|whisked|whipped|beaten|blended|mixed|stirred)(?: up)?(?: (?:it|this|them|by|all))* "
    r"(?:at home|(?:our|my|her|him)sel(?:f|ves)|me|us|hand|from scratch|here)|"
    r"(?:i|we|mum|mother|granny|grandma|dad) (?:made|whisked|whipped|beat|blended|mixed) "
    r"(?:it|this|them|up)|(?:our|my) own(?! (?:shop|use|jar|box|bowl|tub)))\b"
    r"(?! (?:style|type|label|taste|jars?|box|look|bread|pasta|burgers?|chips))"
)
_LIKE = r"\b(?:like|as good as|beside|next to|instead of|than|tastes?|style)\b.*"
_SHOP = frozenset({Method.BOUGHT, Method.FRESH, Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE})
_MADE = frozenset({Group.RELISH, Group.SWEET, Group.DAIRY, Group.MEAL, Group.DRINK, Group.EGG})
#: Eggs of which nobody knows how old they are: a nest that was come upon.
NEST_FOUND = (
    r"\bnests?\b(?!.*\bempty\b).*\b(?:unknown|unsure|no idea|not (?:know|sure)|nobody knows|how "
    r"old|abandoned|deserted)\b|"
    r"\b(?:hidden|stray|secret|lost|abandoned|deserted|old|stolen|forgotten|unknown|wild) nests?\b"
    r"(?! ?box)|\b(?:found|discovered|came (?:up)?on|stumbled)\b(?: \w+){0,3} nests?\b"
    r"(?! ?box)|\b(?:found|discovered|laid)(?: (?:them|these|it|some))? (?:in|under|behind|among|"
    r"beneath) (?:the |a |some |our )?(?:hay\w*|straw|hedge\w*|bush\w*|barn|shed|nettles|grass|"
    r"wood ?pile|log ?pile|compost|brambles?|undergrowth|weeds)\b|"
    r"\b(?:age (?:is |was )?unknown|unknown age|of no known age|"
    r"(?:no idea|not know|not sure|unsure|nobody knows|no telling|unknown) (?:of )?"
    r"(?:how (?:old|long)|when (?:it|they|she|these) (?:was|were|laid)|the age))\b"
)


@lru_cache(maxsize=512)
def raw_egg_at_home(method: Method, food: FoodFacts, note: str) -> tuple[Told, ...]:
    """That it is of raw egg and was made at home, with the clause that says so; none where the note
    does not say both, of a food that is none of it by its name."""
    if method not in _SHOP or food.group not in _MADE or "whole-egg" in food.classes:
        return ()
    every = [(typed, _of_it(clause)) for typed, clause in clauses(note)]
    home = [typed for typed, clause in every if affirmed(clause, _AT_HOME)]
    raw = [typed for typed, clause in every if affirmed(clause, _RAW_EGG)]
    kind = re.search(_OF_RAW_EGG, food.name) is not None
    named = kind or any(affirmed(clause, _OF_RAW_EGG) for _, clause in every)
    if home and (raw or named):
        return (Told(Now.OF_RAW_EGG, home[0]),)
    return (Told(Now.OF_RAW_EGG, raw[0]),) if raw and kind else ()


def _of_it(clause: str) -> str:
    return re.sub(_LIKE, " ", done_of(clause))
