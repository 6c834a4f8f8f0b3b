"""Words for what people put into oil, honey, vinegar and butter, in the languages of their
kitchens, put into English before a note is read: garlic, onions, herbs, mushrooms, ginger, chili,
meat, fish, egg, milk. Common words, no source."""

from __future__ import annotations

import re

#: German, French, Spanish, Italian, Dutch. No word that is another one in English.
_FOODS = {
    "garlic": "knoblauch|knoblauchzehen|ail|ajo|ajos|aglio|knoflook",
    "ramps": "bärlauch|baerlauch|daslook",
    "onions": "zwiebeln?|schalotten?|oignons?|cebollas?|cipoll[ae]|uien|ui|sjalot(?:ten)?",
    "herbs": "kräutern?|kraeutern?|herbes|hierbas|erbe|kruiden",
    "rosemary": "rosmarin|romarin|rosmarino|rozemarijn",
    "thyme": "thymian|thym|tomillo|tijm",
    "basil": "basilikum|basilic|albahaca|basilico|basilicum",
    "sage": "salbei|sauge|salvia|salie",
    "parsley": "petersilie|persil|perejil|prezzemolo|peterselie",
    "chives": "schnittlauch|ciboulette|cebollino|erba cipollina|bieslook",
    "ginger": "ingwer|gingembre|jengibre|zenzero|gember",
    "mushrooms": "pilzen?|champignons|steinpilzen?|setas|hongos|funghi|paddenstoelen",
    "chillies": "peperoncin[oi]|guindillas?|piments?",
    "meat": "fleisch|viande|carne|vlees|schinken|jambon|speck|spek|tocino|lardons",
    "fish": "fisch|poissons?|pescado|pesce|sardellen|anchois|anchoas|acciughe",
    "egg": "eiern?|œufs?|oeufs?|huevos?|uov[oa]|eieren",
    "milk": "milch|lait|leche|melk",
}
#: No words of English, so that they are read beside any food.
_ALWAYS = {
    "with": "mit|avec",
    "without": "ohne|senza|zonder",
    "in it": "drin|darin|dedans|dentro|erin",
}
_SMALL = {
    "in it": "rein",
    "with": "con|met|à l'|a l'|au|aux|à la|all'|al",
    "without": "sans|sin",
    "no": "keine?|keinen|kein|geen",
    "fresh": "frische[mnrs]?|frais|fraîche|fresc[ao]|fresco|verse",
    "and": "und|et|en|y|e",
}
_ANY_FOOD = re.compile(rf"(?<!\w)(?:{'|'.join(_FOODS.values())})(?!\w)")


def _each(words: dict[str, str]) -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple(
        (re.compile(rf"(?<!\w)(?:{word})(?:(?<=')|(?!\w))"), f"{meant} ")
        for meant, word in words.items()
    )


_PLAIN, _BESIDE = _each(_ALWAYS), _each(_SMALL | _FOODS)


def in_english(clause: str) -> str:
    """("mit frischem knoblauch") -> "with fresh garlic": a clause in small letters; of one that
    names no food of another language only what is no word of English is put."""
    pairs = (*_PLAIN, *_BESIDE) if _ANY_FOOD.search(clause) else _PLAIN
    for words, meant in pairs:
        clause = words.sub(meant, clause)
    return " ".join(clause.split())
