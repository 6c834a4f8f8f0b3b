"""Signs: what a person sees, smells or hears on a container, what it means and what to do.

A sign only ever makes things worse: harmless changes nothing. Verdicts and disposal routes are
this project's reading of the publications each sign names, on the strict side.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from enum import StrEnum

from pantry_tui.core import scope
from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import DENYING
from pantry_tui.core.text import singular
from pantry_tui.core.words import SEVERITY, Method, Trust, Verdict


class SignVerdict(StrEnum):
    """What a sign says by itself, worst first."""

    DO_NOT_TASTE = "do not taste"
    DISCARD = "discard"
    COOK_FIRST = "cook first"
    LOOK_AGAIN = "look again"
    USE_NOW = "use now"
    HARMLESS = "harmless"


_WORST_FIRST = tuple(SignVerdict)

#: From these on, a food that is not in the tables is not taken for one of a named class.
_LENIENT = (SignVerdict.USE_NOW, SignVerdict.HARMLESS)
#: The sign of what nobody can name by looks, never tasted to find out (US disease agency, in
#: Monterey's copy); that of an open vessel begins with it.
UNSURE = "unsure"
THROWN = (SignVerdict.DO_NOT_TASTE, SignVerdict.DISCARD)


class Seal(StrEnum):
    """On which containers a sign can be seen. The open and the closed route of disposal differ,
    so many signs stand twice."""

    ANY = "any"
    CLOSED = "closed"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Sign:
    """One row of data/signs.csv. `foods` hold `*`, `group:G`, `class:C` or a food's name."""

    id: str
    methods: tuple[Method, ...]
    foods: tuple[str, ...]
    seal: Seal
    words: str
    means: str
    verdict: SignVerdict
    steps: tuple[str, ...]
    disposal: str
    suspect_batch: bool
    hazard: str
    source: str
    trust: Trust


def strictness(sign: Sign) -> int:
    """0 for the worst of `SignVerdict`: the least of several is the worst."""
    return _WORST_FIRST.index(sign.verdict)


#: How to get rid of it, by route. The figures stand in the publications of `DISPOSAL_SOURCES`:
#: closed and in two bags, the US disease agency and Washington State; 30 minutes at the boil in
#: 8 quarts under 1 inch of water, USDA as Missouri and Clemson carry it (older texts have other
#: times, not used); bleach 1 to 8 for 15 minutes, the US disease agency, read (a stronger mix
#: is only remembered and not used).
DISPOSAL: dict[str, tuple[str, ...]] = {
    "none": (),
    "bin": (
        "Close it in a bag and put it in a lidded bin, where no animal can reach it.",
        "Never give it to pets, poultry or stock.",
    ),
    "bag": (
        "Keep it closed: do not open, press, pierce or drain it.",
        "Put it in a bag, close that, put it in a second bag and tape it shut.",
        "Put it in a lidded outdoor bin, out of reach of people and animals.",
        "Not in the sink, waste disposer, toilet, compost or recycling, and not to animals.",
        "If it is open or leaking after all, put on gloves first and wipe up what ran out with "
        "1 part household bleach to 8 parts water, left for at least 15 minutes.",
    ),
    "gloves-bag": (
        "Put on rubber, latex or thick plastic gloves, and clothes that can be bleached.",
        "If it is still closed, leave it closed.",
        "Put container, lid and food in a bag, close that, put it in a second bag and tape it "
        "shut; then into a lidded outdoor bin, out of reach of people and animals.",
        "Instead of bagging it first you may boil it: lay container and lid on their sides in a "
        "pot of 8 quarts (7.6 L) or more, add water gently to 1 inch (2.5 cm) above them, cover, "
        "and keep it at the boil for 30 minutes. Cool it, then bin all of it; never eat it.",
        "Flood what it touched with 1 part household bleach to 8 parts water (1/4 cup to 2 cups), "
        "leave it for at least 15 minutes, wipe it up with paper towels, then wash with soap and "
        "water. Do not mix bleach with other cleaners.",
        "Bag gloves, cloths and sponges with it, and wash your hands.",
        "Not in the sink, waste disposer, toilet, compost or recycling, and not to animals.",
    ),
    "compost-ok": (
        "Compost it away from the store, or close it in a bag and bin it.",
        "Never give it to pets, poultry or stock.",
    ),
}

#: Where the steps of a route come from, as ids of data/sources.csv.
DISPOSAL_SOURCES: dict[str, tuple[str, ...]] = {
    "none": (),
    "bin": ("sg-osu-disposal",),
    "bag": ("usda-aib-539", "sg-umo-qa157", "sg-wsu-botulism", "sg-monterey-botulism",
            "sg-osu-disposal", "sg-cdc-spills"),
    "gloves-bag": ("sg-wsu-botulism", "sg-clemson-discard-2023", "sg-clemson-detox",
                   "usda-aib-539", "sg-umo-qa157", "sg-osu-disposal", "sg-cdc-spills"),
    "compost-ok": ("sg-osu-disposal", "sg-ext-cellar"),
}  # fmt: skip

_AS_VERDICT = {
    SignVerdict.DO_NOT_TASTE: Verdict.DO_NOT_TASTE,
    SignVerdict.DISCARD: Verdict.DISCARD,
    SignVerdict.COOK_FIRST: Verdict.EAT_SOON,
    SignVerdict.LOOK_AGAIN: Verdict.TEND,
    SignVerdict.USE_NOW: Verdict.EAT_SOON,
    SignVerdict.HARMLESS: Verdict.SOUND,
}


def _low_acid_jar(method: Method, food: FoodFacts) -> bool:
    """Tomatoes count as low-acid where a suspect jar is handled (USDA AIB 539)."""
    canned = method in PROCESSED
    return canned and (not food.is_acid or "tomato" in food.classes)


def verdict_of(sign: Sign, method: Method, food: FoodFacts, closed: bool = True) -> Verdict:
    """What the sign makes of a container. SOUND means that it changes nothing.

    A closed low-acid canned jar that is to be discarded may hold toxin: it is never opened.
    Where nobody says whether it is closed, it counts as closed.
    """
    verdict = _AS_VERDICT[sign.verdict]
    if closed and verdict is Verdict.DISCARD and _low_acid_jar(method, food):
        return Verdict.DO_NOT_TASTE
    return verdict


def _on(key: str, food: FoodFacts, lenient: bool) -> bool:
    """Whether a food key of a sign stands for this food.

    A food that is not in the tables might be any class of its group: the strict signs of all of
    them are shown, the lenient ones are not.
    """
    return scope.near(key, food, guess=not lenient) >= scope.ANY


def signs_for(signs: Iterable[Sign], method: Method, food: FoodFacts, open_: bool) -> list[Sign]:
    """The signs that can be seen on such a container, worst first, else in the table's order."""
    seals = (Seal.ANY, Seal.OPEN if open_ else Seal.CLOSED)
    found = [
        sign
        for sign in signs
        if method in sign.methods
        and sign.seal in seals
        and any(_on(key, food, sign.verdict in _LENIENT) for key in sign.foods)
    ]
    return sorted(
        found,
        key=lambda one: (
            SEVERITY.index(verdict_of(one, method, food, not open_)),
            strictness(one),
        ),
    )


#: Words that carry nothing. "No" and "not" are none of them.
_EMPTY = frozenset({"a", "an", "the", "and", "or", "of", "in", "on", "its", "it", "is"})


#: The other spelling of a word, and plurals that no rule makes.
_SAME = {
    "mold": "mould", "moldy": "mouldy", "color": "colour", "colored": "coloured",
    "gray": "grey", "odor": "smell", "odour": "smell", "leave": "leaf", "unlabeled": "unlabelled",
    "shriveled": "shrivelled", "bulging": "swollen", "bulged": "swollen", "domed": "swollen",
    "bloated": "swollen", "leak": "leaking", "leaky": "leaking", "float": "floating",
    "spurting": "spurt", "foaming": "foam", "slime": "slimy",
}  # fmt: skip


#: Words of signs that a lid did not hold.
_UNSEALED = ("unsealed", "loose", "springs", "leaking", "vacuum", "pulled", "rim")
#: What people say, and words of signs that it may stand for. Only for finding a sign to look at:
#: nobody is taken to have said one of them.
_ALSO_SAID = {
    "off": ("off", "bad", "foul", "rotten", "sour", "rancid", "musty"),
    "smell": ("smell", "foul", "rotten", "rancid", "musty"),
    "smells": ("smell", "foul", "rotten", "rancid", "musty"),
    "stink": ("smell", "foul", "rotten"),
    "mold": ("mould",), "moldy": ("mould",), "mouldy": ("mould",), "furry": ("fuzzy", "mould"),
    "hairy": ("fuzzy", "mould"), "slimy": ("slim",),
    "popped": ("swollen", "loose", "lid", "unsealed", "springs"),
    "pop": ("swollen", "loose", "lid", "unsealed", "springs"),
    "bulging": ("swollen", "puffed"), "bloated": ("swollen", "puffed"),
    "blown": ("swollen", "puffed"), "domed": ("swollen",),
    "seal": _UNSEALED, "seals": _UNSEALED, "sealed": _UNSEALED, "failed": _UNSEALED,
    "vacuum": _UNSEALED, "unsealed": _UNSEALED, "open": ("open", "loose", "unsealed"),
    "fizzing": ("fizz", "bubbl", "hiss", "spurt", "foam", "gas", "moving"),
    "fizzy": ("fizz", "bubbl", "hiss", "spurt", "foam", "gas", "moving"),
    "bubbling": ("bubbl", "fizz", "moving"), "foamy": ("foam", "froth"),
    "mushy": ("mushy", "soft", "slimy"), "cloudy": ("cloud", "murky", "milky"),
    "murky": ("murky", "cloud", "milky"), "leaky": ("leak", "weep"), "leaks": ("leak", "weep"),
    "dripping": ("leak", "weep", "drops"), "brown": ("brown", "dark", "faded"),
    "dark": ("dark", "brown", "black"), "pale": ("faded", "unnatural"),
    "color": ("colour",), "colored": ("colour",), "gray": ("grey",), "odor": ("smell",),
    "white": ("white", "kahm", "bloom", "scum", "film"), "film": ("film", "scum", "kahm"),
    "scum": ("scum", "film", "kahm"), "bugs": ("insect", "webbing", "larvae"),
    "moths": ("insect", "webbing", "larvae"), "weevils": ("insect", "webbing", "larvae"),
    "mice": ("gnawed", "tooth", "droppings"), "rusty": ("rust",), "frozen": ("froze", "frozen"),
    "cracked": ("crack", "damaged", "splintered"), "broken": ("crack", "damaged", "splintered"),
}  # fmt: skip


def also_said(word: str) -> tuple[str, ...]:
    """What a word that is being typed may stand for, itself first: beginnings of words of signs."""
    if len(word) < 2:
        return (word,)
    begun = [one for said, ones in _ALSO_SAID.items() if said.startswith(word) for one in ones]
    return tuple(dict.fromkeys((word, *begun)))


def sign_words(text: str) -> frozenset[str]:
    """The set of single-form words that matter: "Lids, SWOLLEN" is "swollen lid"."""
    singles = (singular(word) for word in re.findall(r"[^\W_]+", text.lower()))
    return frozenset(_SAME.get(word, word) for word in singles) - _EMPTY


def find_sign(signs: Iterable[Sign], text: str) -> Sign | None:
    """The sign with this id, or with exactly these words in any order.

    Nothing is guessed: a word too few or too many finds none. Of several the strictest is meant.
    """
    known = tuple(signs)
    name = text.strip().lower()
    wanted = sign_words(text)
    found = [sign for sign in known if sign.id == name]
    if not found and wanted:
        found = [sign for sign in known if sign_words(sign.words) == wanted]
    return min(found, key=strictness, default=None)


def likely_sign(signs: Iterable[Sign], text: str) -> Sign | None:
    """The sign that has all the words of `text` and more, where that leaves no doubt.

    When several have them and they differ in verdict, none is taken: the person must say which.
    A sign that keeps the food is never taken for a word or two of it: "white" and "film" are said
    of mould as well.
    """
    wanted = sign_words(text)
    if "kahm" in wanted:
        wanted -= {"yeast", "film"}
    found = [sign for sign in signs if wanted and wanted <= sign_words(sign.words)]
    if len({sign.verdict for sign in found}) != 1:
        return None
    sign = found[0]
    return sign if sign.verdict in THROWN or _named(sign, wanted) else None


def _named(sign: Sign, wanted: frozenset[str]) -> bool:
    """Whether these words of a sign surely mean it: its name before or within the brackets, or
    two and more than half of its words, with the "no" or "not" that stands among them."""
    before, _, within = sign.words.partition("(")
    if wanted in (sign_words(before) if within else None, sign_words(within)):
        return True
    own = sign_words(sign.words)
    denied = _denied(sign.words) & wanted
    if denied and not wanted & DENYING:
        return False
    return len(wanted) >= 2 and len(wanted) * 2 > len(own)


def _denied(words: str) -> frozenset[str]:
    """What a sign says is not there: "fuzzy" in "white specks, not fuzzy"."""
    parts = re.split(r"\b(?:no|not)\b", words.lower())
    return frozenset().union(*(sign_words(part) for part in parts[1:]))


def _closeness(words: frozenset[str], sign: Sign) -> float:
    from difflib import SequenceMatcher  # slow to load, and only for a sign that nobody knows

    own = sign_words(sign.words)
    shared = len(words & own) / len(words | own) if words | own else 0.0
    alike = SequenceMatcher(None, " ".join(sorted(words)), " ".join(sorted(own))).ratio()
    return max(shared + 0.3 if shared else 0.0, alike)


def _means(stems: Collection[str], sign: Sign) -> float:
    """How many of what a person may have meant stand in a sign, above any likeness of letters."""
    own = sign_words(sign.words)
    return sum(any(word.startswith(stem) for word in own) for stem in stems)


def near_signs(signs: Sequence[Sign], text: str, n: int = 5) -> list[Sign]:
    """Up to `n` signs whose words are like `text`, nearest first and then strictest, each
    wording once."""
    wanted = sign_words(text)
    stems = {stem for word in text.lower().split() for stem in _ALSO_SAID.get(word, ())}
    scored = [(max(_closeness(wanted, sign), _means(stems, sign)), sign) for sign in signs]
    scored.sort(key=lambda pair: (-pair[0], strictness(pair[1])))
    near: dict[str, Sign] = {}
    for score, sign in scored:
        if score >= 0.35:
            near.setdefault(sign.words, sign)
    return list(near.values())[:n]
