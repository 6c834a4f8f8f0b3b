"""Words of a note on what went into the jars, for notes in small letters, one clause at a time:
water in the pickle, a vinegar of which nobody knows the strength, hardly any sugar, soda, a food
that was mashed or stuffed."""

from __future__ import annotations

import re

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Acidity, Group, Method

#: Water that was washed, cooled, soaked or heated with, or that the recipe itself has.
_OTHER_WATER = (
    r"\b(?:soak\w*|rins\w*|wash\w*|drain\w*|ice|iced|cold bath|canner|canning|kettle|well|tap|hard|"
    r"soft|spring|bottled|rain|salt(?:ed)?|steam\w*|blanch\w*|cover the jars|jars|lids?|as the|"
    r"measured|recipe's|by the|boiling water|melon|sparkling|chestnuts?|bath)\b"
)
_OVER_THE_RECIPE = r"\bthan (?:the|in the|it|they|what)\b"
_WATER_ADDED = (
    r"\b(?:add(?:ed|ing)?|with|topp\w*|plus|put|poured|thinn\w*|stretch\w*|fill\w*|extra|more|half|"
    r"mostly|parts?|splash|drop|cups?|bit|some|much|ran out)\b.*\bwater\b|"
    r"\bwater (?:was )?(?:added|on top|instead)\b|"
    r"\b(?:doubl|trebl|tripl)\w* (?:up )?(?:on )?(?:the |its )?water\b|\btwice the water\b"
)
_DILUTED = (
    r"\b(?:weak|thin|watery)(?:er)? brine\b|\b(?:dilut\w*|water(?:ed|ing) (?:\w+ ){0,3}down|watery|"
    r"(?:thinn|stretch|weaken)\w* (?:the )?(?:brine|vinegar|liquid|pickle|it)|"
    r"(?:brine|vinegar) (?:was )?(?:thin|thinned|weak|weakened|stretched))\b"
)
_USED_BRINE = (
    r"\blast year's brine\b|\b(?:half|quarter|third|low(?:er)?|reduced) strength\b|"
    r"\b(?:re ?us\w*|old|left ?over|second hand|same|used)\b(?: \w+){0,2} (?:brine|pickle juice)\b|"
    r"\bbrine\b(?: \w+){0,2} (?:from (?:last|the last|a|another|the (?:jar|first))|again|re ?used|"
    r"twice|a second time)\b"
)
#: Of unknown strength, or made for something else.
_OTHER_VINEGAR = (
    r"\bkombucha\b|\bverjuice\b|\b(?:cleaning|drinking|salad|seasoned|weak|mild|milder|low acid|"
    r"home ?brew\w*|brewed|home ?made) (?:\w+ )?vinegar\b|"
    r"\bvinegar (?:from|of|out of) (?:our|my|own|the (?:orchard|garden|neighbou?r\w*))\b|"
    r"\bvinegar (?:that )?(?:i|we) (?:made|brew\w*)|"
    r"\b(?:made|brew\w*) (?:the |our |my |own )*vinegar\b|\b(?:wine|cider|beer|whey|juice|sumac|"
    r"tamarind|lemons?|cream of tartar|citric acid) instead\b|"
    r"\b(?:instead|in place) of (?:the )?vinegar\b|"
    r"\bvinegar\b.*\b(?:made|brewed) (?:myself|ourselves)"
)
_LITTLE_VINEGAR = (
    r"\b(?:hardly|barely|scarcely) (?:any |a )?(?:\w+ of )?vinegar\b|"
    r"\b(?:almost|next to|nearly) no vinegar\b|"
    r"\b(?:very|so|too|only a) little (?:of the )?vinegar\b|"
    r"\b(?:splash|dash|drop|spoon|spoonful|hint|capful) of vinegar\b|"
    r"\b(?:third|quarter) (?:of the )?vinegar\b"
)
#: Weaker than 5 % as they are mostly sold (rice, coconut, cane, palm: common knowledge, no source),
#: unless they are said not to be; no recipe is developed with those of wine and fruit, 3 to 6 %
#: (University of Wisconsin Extension).
_WEAK_KINDS = (
    r"\b(?:rice|sushi|coconut|cane|palm|date|honey|beer|"
    r"black) (?:\w+ )?vinegar\b(?!.*\b[5-9]\s*(?:%|per))|"
    r"\b(?:wine|sherry|champagne|raspberry|fruit|berry|tarragon|herb) vinegar\b|\bbalsamic\b"
)
#: Half of what a recipe asks: less than 5 % by as much (NCHFP, Preparing fermented and pickled
#: foods: vinegar is not thinned below its recipe).
_HALF_VINEGAR = (
    r"^(?:(?:only|just|about|used|put|took|with|in|i|we|made|went) )*(?:half|0\.5|1/2)"
    r"(?: of)?(?: (?:the|as much|my|our|usual|amount|of))* vinegar"
    r"(?: (?:only|this time|in it|of the recipe|in the recipe|it asks|asked for|as usual))?$|"
    r"\bvinegar (?:(?:was|is|cut|reduced|down) )*(?:halved|(?:by|in|to) (?:a )?(?:half|0\.5))\b|"
    r"\bhalv(?:ed|ing) (?:the |my |our )?vinegar\b"
)
_HALF = r"(?:\bhalf|\b0\.5|1/2|½)(?: (?:of )?(?:\w+ )?)?"
#: Both halves named: equal parts.
_TWO_HALVES = rf"{_HALF} ?vinegar\b.*{_HALF} ?water\b|{_HALF} ?water\b.*{_HALF} ?vinegar\b"
_EQUAL_PARTS = (
    r"(?:the )?(?:brine )?(?:was |at |of |is )?(?:1 ?(?:to|:) ?1|half (?:and )?half|50/50|50:50|"
    r"equal "
    r"(?:parts|amounts))(?: brine| mix)?"
)
_RATIO = (
    r"(?<![\d.])(\d{1,2}(?:\.\d)?)\s*(?:cups?|parts?|pints?|quarts?|l|lit\w+)?\s*(vinegar|"
    r"water)?\s*"
    r"(?::|to|and|plus|,)?\s*(\d{1,2}(?:\.\d)?)\s*(?:cups?|parts?|pints?|quarts?|l|"
    r"lit\w+)?\s*(vinegar|"
    r"water)?"
    r"(?: (?:to|and) (vinegar|water))?"
)
#: Hardly any, whatever else makes it sweet.
_HARDLY_SUGAR = (
    r"\bsugar ?(?:free|less(?! than))\b|\bunsweetened\b|\bketo\b|"
    r"\b(?:stevia|splenda|sucralose|aspartame|"
    r"saccharin\w*|xylitol|erythritol|monk ?fruit|allulose|sweeteners?)\b|"
    r"\bartificial\w* sweet\w*|\b(?:hardly|barely|scarcely)(?: any)? sugar\b|"
    r"\b(?:almost|next to|nearly|practically) no sugar\b|"
    r"\b(?:very|so|too|extremely) little (?:of the )?sugar\b|"
    r"\b(?:third|quarter|fifth|tenth|fraction|0\.[1-3]\d*) (?:of )?(?:the )?sugar\b|"
    r"\bonly (?:a )?(?:\d+ )?(?:spoon\w*|pinch|dash|tsp|tbsp|tablespoons?|teaspoons?)"
    r"(?: of)? sugar\b"
)
#: It takes away the acid that keeps the food.
_SODA = r"\b(?:baking soda|bicarb\w*|soda)\b(?! (?:water|bread|crackers?|bottle|pop))(?<!club soda)"
_CLEANED = r"\b(?:clean|wash|scrub|rins)\w*"
_MASHED = (
    r"\b(?:mashed|pure[ée]e?d?|pulped|blended|liquidi[sz]ed|whizzed|smooth(?:ed)?)\b(?! well\b)|"
    r"\b(?:put|run|pressed|passed|rubbed) through (?:the |a )?(?:sieve|mill|mincer|blender)\b"
)
#: What is smooth by its own name has its own process.
_SMOOTH = (
    r"sauce|butter|juice|puree|jam|jelly|ketchup|soup|paste|salsa|relish|chutney|syrup|crushed"
)
#: A recipe of its own, with a longer time.
REDUCED_SODIUM = (
    r"\b(?:(?:reduced|low|less|lower|little|no)[ -](?:in )?(?:sodium|salt)|salt free)\b"
)
_STUFFED = r"\b(?:stuffed|breaded|battered|in (?:batter|bread ?crumbs))\b"
_SMOKED = r"\bsmoked\b(?! (?:paprika|salt|garlic|pepper|chilli|tea))"
_SOUR = (Method.VINEGAR_PICKLE, Method.FRIDGE_PICKLE)


def weakened(method: Method, clause: str, note: str = "") -> bool:
    """Whether the words say that a pickle has more water, or another vinegar, than its record; a
    `note` whose other half is vinegar may serve in a refrigerator."""
    if method not in _SOUR:
        return False
    if re.search(_TWO_HALVES, note.casefold()) and re.fullmatch(r"(?:half|0\.5) water", clause):
        return False
    if any(affirmed(clause, one) for one in (_OTHER_VINEGAR, _LITTLE_VINEGAR, _USED_BRINE)):
        return True
    if affirmed(clause, _DILUTED) or _mostly_water(clause):
        return True
    if _enough_vinegar(method, clause):
        return False
    if method is Method.VINEGAR_PICKLE and (
        affirmed(clause, _WEAK_KINDS) or re.fullmatch(_EQUAL_PARTS, clause)
    ):
        return True
    if method is Method.FRIDGE_PICKLE and re.search(r"\bhalf\b.*\bhalf\b|\bequal\b", clause):
        return False  # equal parts may serve in a refrigerator (common practice)
    return affirmed(clause, _WATER_ADDED) and (
        not re.search(_OTHER_WATER, clause) or re.search(_OVER_THE_RECIPE, clause) is not None
    )


def half_the_vinegar(clause: str, note: str) -> bool:
    """Whether a clause halves the vinegar, and its note does not say that the rest is water, which
    equal parts may be."""
    if re.search(_TWO_HALVES, note.casefold()):
        return False
    return re.search(_HALF_VINEGAR, clause) is not None


def _mostly_water(clause: str) -> bool:
    """("1 to 3", "1 cup vinegar 2 cups water") Whether two parts are named of which the water is
    the larger; what comes first without a name is the vinegar."""
    if re.search(
        r"\b(?:(?:two|2) thirds|three quarters|3 quarters|2/3|3/4|0\.75) (?:of )?water\b", clause
    ):
        return True
    parts = _parts(clause)
    return parts is not None and parts[0] < parts[1]


def _enough_vinegar(method: Method, clause: str) -> bool:
    """("2 parts vinegar, 1 part water") Whether both are named and it is more of the vinegar; in a
    refrigerator as much will do (common practice)."""
    if not ("water" in clause and "vinegar" in clause):
        return False
    parts = _parts(clause)
    most = parts is not None and parts[0] > parts[1]
    return most or (parts is not None and parts[0] == parts[1] and method is Method.FRIDGE_PICKLE)


def _parts(clause: str) -> tuple[float, float] | None:
    """Of vinegar and of water."""
    alone = re.fullmatch(r"\d{1,2}\s*(?::|to)\s*\d{1,2}", clause)
    named = "water" in clause and "vinegar" in clause
    found = re.search(_RATIO, clause) if alone or named else None
    if found is None:
        return None
    first, second = float(found[1]), float(found[3])
    if found[2] == "water" or (found[4] == "water" and found[5] == "vinegar"):
        first, second = second, first
    return first, second


def hardly_sweet(method: Method, clause: str) -> bool:
    """Whether the words say that a jam holds hardly any sugar."""
    return method is Method.JAM and affirmed(clause, _HARDLY_SUGAR)


def another_form(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether the words say that the food was made into what its process was not tested for, or
    that soda was put to what its acid keeps."""
    sour = method in LIDDED and (food.is_acid or food.acidity is not Acidity.LOW_ACID)
    if sour and affirmed(clause, _SODA) and not re.search(_CLEANED, clause):
        return True
    if method not in PROCESSED:
        return False
    crop = food.group in (Group.VEGETABLE, Group.FRUIT) and not re.search(_SMOOTH, food.name)
    if crop and affirmed(clause, _MASHED):
        return True
    flesh = food.group in (Group.MEAT, Group.FISH)
    smoked = flesh and "smoked" not in food.name and affirmed(clause, _SMOKED)
    return smoked or affirmed(clause, _STUFFED)
