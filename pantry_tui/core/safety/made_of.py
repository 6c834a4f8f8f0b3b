"""What went into a batch from older ones counts as a note "with" its name would: garlic that is
booked out of its own batch is as much in the oil as garlic of which only the note tells. What is
the food itself, or a plain ingredient of it, is none.

No publication is about such lines: which parts are plain ingredients is a choice of our own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import NamedTuple

from pantry_tui.core.canned import ANIMAL, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.note_before import QUOTES
from pantry_tui.core.words import Acidity, Group, Method

#: How a sentence begins that speaks of a part.
_MADE = "It is made with "
_NOTED = re.compile(rf"(?s){QUOTES}(?:'(?:[^'\\]|\\.)*'|\"(?:[^\"\\]|\\.)*\")")
_RIGHTED = re.compile(
    r"(?: If that is not so, record the process again, with a note that is right\.| Record what is "
    r"true as \w+=\.\.\., and put the note right with it\.)$"
)
#: Parts of no tested recipe of that food are told so.
UNTESTED = "no process is tested of both together."
#: What a recipe of vinegar or tomatoes has beside them.
_IN_RELISH = frozenset(
    {"onion", "shallot", "garlic", "pepper", "chill", "celer", "ginger", "tomato", "tomatillo",
     "cucumber", "cabbage"}
)  # fmt: skip
#: Pressed, and what is filtered off holds no piece of it.
_PRESSED = re.compile(r"\b(?:olive|nut|walnut|hazelnut|almond|seed|coconut)s?\b")
_RAW = frozenset({Method.FRESH, Method.CELLAR, Method.DRIED})
#: Meat out of which a fat is melted, and strained.
_MELTED = {
    "lard": frozenset({"pork", "bacon"}),
    "bacon grease": frozenset({"bacon"}),
    "goose fat": frozenset({"geese", "chickens"}),
    "tallow": frozenset({"beef roasts", "lamb"}),
}
#: Sauces that are made of oil.
_OILY = re.compile(r"\b(?:pesto|dressing|vinaigrette|mayonnaise|aioli|tapenade|hummus)\b")
#: Their process is of what has no meat.
_MEATLESS = re.compile(r"\b(?:meatless|mushroom|tomato(?:es)?|vegetable (?:stock|broth))\b")
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
#: Beside its own name, for a plant or an animal of which no list of words has the name.
_KINDS = {
    Group.VEGETABLE: "vegetables", Group.HERB: "herbs", Group.MEAT: "meat", Group.FISH: "fish",
    Group.EGG: "eggs", Group.DAIRY: "cheese",
}  # fmt: skip


#: That what a clause names lies in the jar, and does not stand beside it or came with it.
_LIES_IN = (
    r"\b(?:with|plus|added|adding|mixed|stirred|folded|threw|thrown|put|tucked|layered|chopped|"
    r"(?:bits?|pieces?|chunks?|slices?|strips?|flakes) of|"
    r"in (?:it|them|there|(?:the|this|each|every) (?:jars?|crocks?|boxe?s?|bottles?|batch)))\b"
)
_BESIDE = (
    r"\b(?:bought|stored?|keeps?|kept|stands?|stood|standing|shelved|traded|swapped|paid|ordered|"
    r"delivered|came|arrived|picked|beside|shelf|shelves|fridge|freezer|crate|drawer|dinner|supper|"
    r"lunch|breakfast|recipe|not with|day|same|like|tastes?|instead of|rubbed?|shared|sent|given|"
    r"gave|aunt|"
    r"uncle|mrs?|gran(?:ny|dma|dad|dpa)?|cousin)\b"
)
#: What may stand behind the name of a food; behind other words it is another thing: a fish kettle,
#: beef tomatoes, a turkey baster.
_AFTER = frozenset(
    {"and", "or", "in", "into", "added", "too", "plus", "with", "as", "pieces", "bits", "chunks",
     "flakes", "cubes", "strips", "slices", "kernels", "florets", "rinds", "dice", "meat",
     "stirred", "mixed", "folded", "through",
     "among", "between", "this", "was", "were", "is", "are"}
)  # fmt: skip
#: Words for meat that are no food of the tables, and what is as they are.
_STANDS_FOR = {
    "meat": "ham", "meats": "ham", "spam": "ham", "foie gras": "liver", "poultry": "chickens",
    "seafood": "shrimp", "shellfish": "shrimp", "rillettes": "pate", "terrine": "pate",
    "crackling": "bacon", "cracklings": "bacon", "gammon": "ham", "mettwurst": "sausages",
    "wurst": "sausages", "hack": "ground beef", "leber": "liver", "leberwurst": "pate",
}  # fmt: skip
#: Beside the name of a food that is all that is said.
_SMALL = frozenset(
    {"a", "the", "some", "of", "it", "is", "are", "all", "bit", "bits", "little", "few", "and",
     "used", "diced", "sliced", "chopped", "fried", "smoked", "raw", "cooked", "our", "own",
     "fresh"}
)  # fmt: skip
#: They are said of much that is no food.
_OTHER_MEANING = ("heart", "tongue", "cheek", "hare", "game", "goose", "duck", "lamb", "turkey")
#: Of the pantry's shelf: a pinch of it is in many a jam.
_BY_THE_SPOON = frozenset({"ginger", "horseradish", "garlic"})
_A_PINCH = (
    r"\b(?:pinch|hint|touch|dash|drop|shake|grind\w*|little|spoonful|teaspoon|"
    r"tsp)(?: of)?(?: \w+)? "
    r"[\w ]*chil\w+|\bpepper\b(?! (?:pieces?|strips?|bits?))"
)
#: So kept, fish or shrimp seasons a ferment.
_SEASONING = r"\b(?:salt\w*|dried|dry|sauce|paste|powder|flakes?|ferment\w*|pickled)\b"
_MOST_WORDS = 3


#: No figure is published for what works with such food in it.
IN_A_FERMENT = "no figure is published for what works with meat, fish, egg or cooked food in it."
FERMENTS = frozenset({Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.PASTE})
_ANIMAL = frozenset({Group.MEAT, Group.FISH, Group.EGG})
_SEASONS = frozenset({Method.SALTED, Method.DRIED, Method.FREEZE_DRIED})
_COOKED = frozenset({Method.MEAL, Method.PRESSURE, Method.HOT_SMOKED, Method.COLD_SMOKED})

#: What these keep in the cold they keep by acid, sugar or spirit, and no figure for them was
#: published with animal or cooked food in them.
_BY_ACID = frozenset(
    {
        Method.JAM, Method.FREEZER_JAM, Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE,
        Method.FLAVOURED_VINEGAR, Method.SUGAR, Method.INFUSION,
    }
)  # fmt: skip
#: What dry, salted or smoked crops keep they keep without meat in them; of meat with fish in it
#: nobody dries, salts or smokes both alike.
_OF_ITS_KIND = frozenset(
    {
        Method.DRIED, Method.FREEZE_DRIED, Method.SALTED, Method.HOT_SMOKED, Method.COLD_SMOKED,
    }
)  # fmt: skip
_CROPS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.NUT})
#: What a crop is before anything was done to it.
_AS_PICKED = frozenset({Method.CELLAR, Method.FRESH, Method.BOUGHT})
NO_RAW_CROP = (
    "what was canned, dried, frozen, cooked or sweetened is no raw crop again, and nothing else "
    "becomes one. Put right what it is, or what it is from."
)
#: A knob of it keeps a jam from foaming.
_KNOB = re.compile(r"\b(?:butter|ghee)\b")
KEEPS_COLD_ALONE = (
    "no figure is published for meat, fish, egg or milk in it, which keep cold alone."
)
NO_COLD = "in the cold, too, no figure is published for both together."


class Used(NamedTuple):
    """A food of which some went in, and how that was kept."""

    food: FoodFacts
    method: Method


def strange(food: FoodFacts, parts: Iterable[Used]) -> Iterator[Used]:
    """The parts that are neither the food nor a plain ingredient of it."""
    return (one for one in dict.fromkeys(parts) if not _plain(food, one))


def as_note(used: Used) -> str:
    """What a note would say of it."""
    home_made = used.method is Method.VINEGAR_FERMENT and "vinegar" in used.food.name
    dry = used.method in _DRY and "dried" not in used.food.name
    how = "home made " if home_made else "dried " if dry else ""
    return f"with {how}{used.food.name}"


def as_kind(used: Used) -> str:
    """The same by its kind, "" where that says nothing: what is dry brings no water."""
    kind = "" if used.method in _DRY else _KINDS.get(used.food.group, "")
    return f"with {kind}" if kind else ""


def of_part(sentence: str, used: Used) -> str:
    """A sentence that quotes a note, as it is said of a part."""
    told = _RIGHTED.sub("", _NOTED.sub(_made(used), sentence, count=1))
    head = told.removesuffix(": not checked.")
    return told if head == told else f"{head}: {UNTESTED}"


def made_with(used: Used, why: str = UNTESTED) -> str:
    """That it is in there, and what stands against that."""
    return f"{_made(used)}: {why}"


def in_a_ferment(method: Method, food: FoodFacts, used: Used) -> bool:
    """Whether animal or cooked food went into crops that work, as no published ferment has it; what
    is salted, dried or a sauce seasons one (kimchi)."""
    if method not in FERMENTS or food.group in _ANIMAL or used.method in _SEASONS:
        return False
    cooked = used.method in _COOKED or used.food.group is Group.MEAL
    raw = used.food.group in _ANIMAL and "sauce" not in used.food.name
    return cooked or raw


def no_raw_crop(method: Method, food: FoodFacts, used: Used) -> bool:
    """Whether a whole crop of a cellar is said to come from what is none: out of a jar or a pot,
    dried, or of another kind."""
    if method is not Method.CELLAR or food.group not in _CROPS:
        return False
    return used.method not in _AS_PICKED or used.food.group not in _CROPS


def in_acid(method: Method, food: FoodFacts, used: Used) -> bool:
    """Whether animal or cooked food went into what acid, sugar or spirit keeps, or into crops that
    are dried, salted or smoked; or fish into such meat."""
    if method in _OF_ITS_KIND:
        strange = _ANIMAL - {food.group} | ({Group.MEAL} if food.group in _CROPS else set())
        of_a_kind = food.group in _CROPS or food.group in _ANIMAL
        return of_a_kind and "animal" not in food.classes and used.food.group in strange
    if method not in _BY_ACID or food.group in ANIMAL or "animal" in food.classes:
        return False
    return used.food.group in ANIMAL and _KNOB.search(used.food.name) is None


def not_by_cold(method: Method, doubts: Iterable[str]) -> str:
    """What the cold does not put right of a jar that it saved: no jam or pickle was published with
    such a thing in it, opened or not; "" where nothing is."""
    if method not in _BY_ACID:
        return ""
    for one in doubts:
        if one.endswith((KEEPS_COLD_ALONE, NO_COLD)):
            return one
        if says_of_part(one) and one.endswith(UNTESTED):
            return f"{one.partition(': ')[0]}: {NO_COLD}"
    return ""


def told_in(clause: str, named: Callable[[str], FoodFacts | None]) -> Iterator[Used]:
    """The foods of which a clause of a note says that they lie in it, by any of their names, or
    which are all that it says; `clause` in small letters."""
    from pantry_tui.core.safety.denial import affirmed
    from pantry_tui.core.safety.note_words import PURPOSE
    from pantry_tui.core.safety.other_tongues import in_english

    told = re.sub(_A_PINCH, " ", re.sub(PURPOSE, " ", in_english(clause)))
    if re.search(_BESIDE, told) is not None:
        return
    lies_in = re.search(_LIES_IN, told) is not None
    words = re.findall(r"[^\W_]+(?:'s)?", told)
    at = 0
    while at < len(words):
        for many in range(min(_MOST_WORDS, len(words) - at), 0, -1):
            run, after = " ".join(words[at : at + many]), words[at + many : at + many + 1]
            food = named(_STANDS_FOR.get(run, run)) if len(run) > 2 else None
            if food is None:
                continue
            others = {*words[:at], *words[at + many :]} - _SMALL
            only = not others and not run.startswith(_OTHER_MEANING)
            at += many - 1
            alone = not after or after[0] in _AFTER
            if (lies_in or only) and alone and affirmed(told, rf"\b{re.escape(run)}\b"):
                yield Used(food, _kept_then(told))
            break
        at += 1


def in_a_process(method: Method, food: FoodFacts, used: Used) -> bool:
    """Whether animal food went into jars that are processed by the time of what is acid."""
    sour = method in PROCESSED and food.acidity is not Acidity.LOW_ACID
    return sour and used.food.group in _ANIMAL and "animal" not in food.classes


def in_a_jam(method: Method, food: FoodFacts, used: Used) -> bool:
    """Whether a crop that is low in acid went into a jam, where fruit's acid and sugar keep it; in
    the cold, too, none is published so."""
    jam = method in (Method.JAM, Method.FREEZER_JAM)
    low = used.food.group is Group.VEGETABLE and used.food.acidity is Acidity.LOW_ACID
    dry = used.method in _DRY or used.food.name in _BY_THE_SPOON
    return jam and low and not dry and food.acidity is Acidity.ACID


def _kept_then(told: str) -> Method:
    return Method.SALTED if re.search(_SEASONING, told) else Method.FRESH


def says_of_part(sentence: str) -> bool:
    """Whether it speaks of a part."""
    return sentence.startswith(_MADE)


def _made(used: Used) -> str:
    return f"{_MADE}{as_note(used).removeprefix('with ')}"


def _plain(food: FoodFacts, used: Used) -> bool:
    part = used.food
    if part.name == food.name or _stems(part.name) <= _stems(food.name):
        return True
    if part.group is food.group is Group.MEAT and _stems(part.name) & _stems(food.name):
        return True  # ground out of a roast
    plant = part.group in (Group.VEGETABLE, Group.HERB) or "bean" in part.classes
    if "stock" in food.classes or re.search(r"\b(?:stock|broth)\b", food.name):
        # Strained: what gave its taste is taken out again.
        return plant or (part.group in (Group.MEAT, Group.FISH) and not _MEATLESS.search(food.name))
    if food.group is Group.MEAL or "soup" in food.classes:
        # Soups, stews and beans are cooked of them, and processed by the time of the slowest.
        meat = part.group is Group.MEAT and not _MEATLESS.search(food.name)
        return plant or meat or part.group is Group.FAT or "stock" in part.classes
    if food.group is Group.FAT:
        melted = part.name in _MELTED.get(food.name, ())
        pressed = food.name.endswith("oil") or food.name.endswith("oils")
        raw = used.method in _RAW and _PRESSED.search(part.name) is not None
        return melted or (pressed and raw)
    if part.group is Group.FAT:
        return _OILY.search(food.name) is not None
    if food.name.startswith("mixed "):
        return part.group is food.group
    sour = food.group is Group.RELISH and food.acidity is Acidity.ACIDIFIED
    return sour and bool(_stems(part.name) & _IN_RELISH)


def _stems(name: str) -> set[str]:
    """Its words without the endings of more than one."""
    words = re.findall(r"[^\W\d_]+", name.casefold())
    return {re.sub(r"(?<=..)(?:(?<=o)es|ies|y|i|s)$", "", word) for word in words}
