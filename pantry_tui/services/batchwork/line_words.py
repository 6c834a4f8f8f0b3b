"""Words of a put-up line beside its food: those that say how it is kept, those that say nothing."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from pantry_tui.core.words import Method
from pantry_tui.reference.near import slip

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.line import Kitchen

FILLERS = frozenset(
    {"of", "in", "on", "into", "to", "at", "the", "made", "with", "put", "up", "and", "x", "×",
     "i", "we", "my", "our", "a", "an", "is", "are", "was", "it", "some", "just", "putting", "&",
     "stored", "kept", "now", "by", "as", "im", "au", "aux", "des", "del", "della",
     "de", "di", "du", "da", "hung", "hanging", "sitting", "standing", "lying",
     "them", "there", "i've", "we've", "got", "braided", "plaited", "strung"}
)  # fmt: skip
#: Words that begin a remark: where it came from, for whom.
REMARKS = frozenset({"from", "for", "because", "but", "see", "gift", "thanks", "out"})
#: Verbs and other words of a method, beside those that `find_method` knows.
VERBS: dict[str, Method] = {
    "froze": Method.FROZEN, "pressure-canned": Method.PRESSURE, "dehydrated": Method.DRIED,
    "waterbathed": Method.BOILING_WATER, "bwb": Method.BOILING_WATER,
    "in the water bath": Method.BOILING_WATER, "in water bath": Method.BOILING_WATER,
    "pressure canner": Method.PRESSURE, "in the pressure canner": Method.PRESSURE,
    "boiling water bath": Method.BOILING_WATER, "rendered": Method.RENDERED_FAT,
    "in damp sand": Method.CELLAR, "in sand": Method.CELLAR, "in sawdust": Method.CELLAR,
    "in peat": Method.CELLAR, "bought": Method.BOUGHT, "tincture": Method.INFUSION,
    "put by": Method.CELLAR, "pc": Method.PRESSURE, "wb": Method.BOILING_WATER,
    "wbc": Method.BOILING_WATER, "bwc": Method.BOILING_WATER, "water bathed": Method.BOILING_WATER,
    "canned in a pressure canner": Method.PRESSURE, "in a pressure canner": Method.PRESSURE,
    "canned in a water bath": Method.BOILING_WATER, "in a water bath": Method.BOILING_WATER,
    "in boiling water": Method.BOILING_WATER, "in straw": Method.CELLAR,
    "in newspaper": Method.CELLAR, "wrapped in newspaper": Method.CELLAR,
    "wrapped in paper": Method.CELLAR, "in moist sand": Method.CELLAR,
    "in dry sand": Method.CELLAR, "in leaves": Method.CELLAR, "sand": Method.CELLAR,
    "damp sand": Method.CELLAR, "moist sand": Method.CELLAR, "sawdust": Method.CELLAR,
    "peat": Method.CELLAR,
    # as households on the continent of Europe say it
    "tiefgekühlt": Method.FROZEN, "gefroren": Method.FROZEN, "eingefroren": Method.FROZEN,
    "congelé": Method.FROZEN, "congelés": Method.FROZEN, "congelées": Method.FROZEN,
    "surgelé": Method.FROZEN, "surgelés": Method.FROZEN, "surgelato": Method.FROZEN,
    "surgelati": Method.FROZEN, "congelado": Method.FROZEN, "congelados": Method.FROZEN,
    "mrożone": Method.FROZEN, "getrocknet": Method.DRIED, "gedörrt": Method.DRIED,
    "séché": Method.DRIED, "séchés": Method.DRIED, "secchi": Method.DRIED,
    "essiccati": Method.DRIED, "suszone": Method.DRIED, "kiszone": Method.LACTIC,
    "kiszona": Method.LACTIC, "kiszony": Method.LACTIC, "fermentiert": Method.LACTIC,
    "lactofermenté": Method.LACTIC, "sott'olio": Method.IN_OIL, "sottolio": Method.IN_OIL,
    "in öl": Method.IN_OIL, "en aceite": Method.IN_OIL,
}  # fmt: skip
#: What any food may lie in: a way to keep it only of a crop that is not in the cold.
WRAPPED = frozenset(
    {"in straw", "in newspaper", "wrapped in newspaper", "wrapped in paper", "in leaves"}
)
#: Said of the way, and no method by itself.
_IDLE = frozenset({"put by", "put up", "putting up", "laid down"})
#: Words of `find_method` that are foods or too short to mean a method beside a food.
NO_METHOD = frozenset(
    {"paste", "oil", "syrup", "stored", "shop", "jam", "jams", "jelly", "jellies", "preserves",
     "marmalade", "liqueur", "lime", "wine", "raw", "fresh", "dry", "koji", "cellar", "freezer",
     "cured", "curing", "cooked", "leftover", "leftovers"}
)  # fmt: skip
AND = frozenset({"and", "&", "+", "plus"})
FIGURES = {"2": "two", "3": "three", "4": "four", "5": "five", "7": "seven"}
#: Signs that say nothing by themselves.
SIGNS = frozenset("?.!+~'\"@/*&")
FERMENTS = frozenset({"fermenting", "fermented", "ferment", "lacto", "working", "brewing"})


def methods_in(
    words: Sequence[str], kitchen: Kitchen
) -> tuple[list[tuple[str, Method]], list[str]]:
    """The methods in a stretch of words, and the words that are left, fillers aside."""
    found: list[tuple[str, Method]] = []
    left: list[str] = []
    i = 0
    while i < len(words):
        for size in range(min(5, len(words) - i), 0, -1):
            said = " ".join(words[i : i + size])
            if said in _IDLE:
                i += size
                break
            method = VERBS.get(said) or (None if said in NO_METHOD else kitchen.find_method(said))
            if method is not None:
                found.append((said, method))
                i += size
                break
        else:
            if words[i] not in FILLERS:
                left.append(words[i])
            i += 1
    return found, left


def packed_in(words: Sequence[str], left: Sequence[str]) -> bool:
    """Whether some of the words that are left are what the food is in or with: "beef in sauce" is
    no beef sauce."""
    joined = ("in", "with")
    return any(
        (a in joined and b in left) or (b in joined and a in left) for a, b in pairwise(words)
    )


def stretches(words: Sequence[str], left: Sequence[str]) -> list[str]:
    """The words that are left, those together that stand together."""
    found: list[str] = []
    rest, last = list(left), -2
    for i, word in enumerate(words):
        if not rest or word != rest[0]:
            continue
        rest.pop(0)
        if found and last == i - 1:
            found[-1] += f" {word}"
        else:
            found.append(word)
        last = i
    return found


def slips_of(words: list[str]) -> tuple[str, ...]:
    """Methods of which the words are a slip of the pen: "presure canned"."""
    if len(words) > 3:
        return ()
    found = []
    for method in Method:
        names = method.value.replace("-", " ").split()
        if len(names) == len(words) and all(
            a == b or slip(a, b) for a, b in zip(words, names, strict=True)
        ):
            found.append(method.value)
    return tuple(found)
