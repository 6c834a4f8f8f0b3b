"""Finding foods and methods by the names people use: any word order, singular or plural,
American or British. Pure."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache, lru_cache

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.text import singular
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.errors import BadInput


@dataclass(frozen=True, slots=True)
class Food:
    """One row of data/foods.csv. `servings_per_pint`, `servings_per_lb` and `harvest_month` (1-12)
    are estimates; those of a pound are of it as its name says it, raw and bought as it is.
    `each_lb` are the pounds of one, as a whole bird.

    `named`: publications speak of it, or of a class that it is of. Any other food is judged by the
    strictest figures of its group, as one that is in no table. `says` is the method that its name
    says (strawberry jam is jam), "" for most. `parent` is the food it is a kind of; what is advised
    against for that one is advised against for it, and nothing else is lent. `role` is what it is
    at table, "" for the usual one of its group; `usual` are the ways that households keep it.
    """

    name: str
    aliases: tuple[str, ...]
    group: Group
    acidity: Acidity
    classes: frozenset[str]
    servings_per_pint: float | None
    harvest_month: int | None
    named: bool = True
    says: str = ""
    parent: str = ""
    role: str = ""
    usual: tuple[str, ...] = ()
    servings_per_lb: float | None = None
    each_lb: float | None = None

    @property
    def facts(self) -> FoodFacts:
        """What a rule needs to know of it."""
        return FoodFacts(self.name, self.group, self.acidity, self.classes, self.named)


#: Words that matter to nothing.
_IDLE = frozenset({"of", "the", "a", "an", "some", "my", "our", "own"})
#: Words that join others: "tomatoes in juice" are no tomato juice. A name that is typed with one is
#: only a name that is written with it.
JOINING = frozenset({"in", "with", "and", "or"})
_STOP = _IDLE | JOINING

#: Words that say how a food was cut or where it came from. They never change which food it is;
#: "pickled", "smoked", "ground" or "jam" do, and so are not among them.
_PREPARATION = frozenset(
    {
        "sliced", "slice", "chopped", "diced", "cubed", "halved", "quartered", "shredded", "grated",
        "peeled", "raw", "fresh", "frozen", "home", "grown", "garden", "local", "organic", "ripe",
        "large", "small", "big", "baby", "young", "cut", "piece", "stick", "ring", "cube",
        "spear", "fillet", "farm", "blanched", "homemade",
    }
)  # fmt: skip

_IRREGULAR = {
    "leaves": "leaf", "loaves": "loaf", "halves": "half", "geese": "goose", "potatoes": "potato",
    "tomatoes": "tomato", "radishes": "radish", "peaches": "peach", "squashes": "squash",
    "molasses": "molasses", "couscous": "couscous", "asparagus": "asparagus", "swiss": "swiss",
    "lentils": "lentil", "chillies": "chili", "chilies": "chili", "chiles": "chili",
    "chilli": "chili", "chile": "chili", "brussels": "brussels", "sweetcorn": "corn sweet",
    "yoghurt": "yogurt", "yoghurts": "yogurt", "citrus": "citrus", "hummus": "hummus",
    "mice": "mouse", "cookies": "cookie", "pies": "pie", "brandies": "brandy",
    "greens": "greens", "cookie": "cookie", "dhal": "dal", "octopus": "octopus",
}  # fmt: skip


@lru_cache(maxsize=8192)
def single(word: str) -> tuple[str, ...]:
    return tuple(_IRREGULAR.get(word, singular(word)).split())


def _said(text: str) -> list[str]:
    """Its words in single form, joining words among them."""
    plain = re.sub(r"[’']s\b", "s", text.lower())
    found: list[str] = []
    for word in re.findall(r"[^\W_]+", plain):
        if word not in _IDLE:
            found += (word,) if word in JOINING else single(word)
    return found


#: What parts the words of a name that is turned about.
_PARTED = re.compile(r"[,;:()/]")


def _plain(said: Iterable[str]) -> list[str]:
    return [word for word in said if word not in JOINING]


@lru_cache(maxsize=8192)
def _plain_words(text: str) -> tuple[str, ...]:
    return tuple(_plain(_said(text)))


def _words(text: str) -> list[str]:
    return list(_plain_words(text))


@lru_cache(maxsize=4096)
def normal(text: str) -> frozenset[str]:
    """The set of single-form words that matter: "Tomatoes, crushed" == "crushed tomato"."""
    return frozenset(_words(text))


def _joins(said: Iterable[str], name: str) -> bool:
    """Whether a name is written with every joining word that was said."""
    return JOINING.intersection(said) <= JOINING.intersection(_said(name))


def _key(words: Iterable[str]) -> str:
    return " ".join(sorted(set(words)))


def name_keys(foods: Iterable[Food]) -> dict[str, int]:
    """Every name of every food -> which food it is.

    A name is found in any order of its words ("tomato, crushed") unless another food has the same
    words in another order ("beef stew" and "stew beef"), or it says one twice ("half and half"):
    then it is found only as it is written.
    The keys of the first kind are the sorted words, of the second the words after a colon.
    """
    found: dict[str, int] = {}
    twice: set[str] = set()
    every = [(n, name) for n, food in enumerate(foods) for name in (food.name, *food.aliases)]
    for number, name in every:
        words = _words(name)
        key = _key(words)
        if found.setdefault(key, number) != number or len(words) > len(set(words)):
            twice.add(key)
    for key in twice:
        del found[key]
    for number, name in every:
        if _key(_words(name)) in twice:
            found.setdefault(":" + " ".join(_said(name)), number)
    return found


class FoodIndex:
    """All foods by every name they have. `keys` are their `name_keys`, where known already."""

    def __init__(self, foods: Sequence[Food], keys: Mapping[str, int] | None = None) -> None:
        self._foods = foods
        self._keys = name_keys(foods) if keys is None else keys
        self._every: frozenset[str] | None = None

    def find(self, text: str) -> Food | None:
        """The food meant, or None. Words of preparation may stand beside it."""
        said = _said(text)
        number = self._number(said, text)
        for word in reversed(said):
            if number is not None or len(said) == 1:
                break
            if word in _PREPARATION:
                said.remove(word)
                number = self._number(said, text)
        return None if number is None else self._foods[number]

    def named(self, text: str) -> Food | None:
        """The food that has exactly this name, its words in this order."""
        said = _said(text)
        number = self._keys.get(_key(_plain(said)), self._keys.get(":" + " ".join(said)))
        if number is None:
            return None
        food = self._foods[number]
        mine = (name for name in (food.name, *food.aliases) if _words(name) == _plain(said))
        return food if any(_joins(said, name) for name in mine) else None

    def _number(self, said: list[str], text: str) -> int | None:
        """In any order where something parts the words ("tomatoes, crushed"); else the main word
        stands last: wine grapes are no grape wine."""
        number = self._keys.get(_key(_plain(said)), self._keys.get(":" + " ".join(said)))
        if number is None or len(said) < 2:
            return number
        names = (self._foods[number].name, *self._foods[number].aliases)
        same = [name for name in names if set(_words(name)) == set(_plain(said))]
        if not any(_joins(said, name) for name in same):
            return None
        ends = {_words(name)[-1] for name in names if _words(name)}
        return number if said[-1] in ends or _PARTED.search(text) else None

    def words(self) -> frozenset[str]:
        """Every word of every name, in single form."""
        if self._every is None:
            self._every = frozenset(one for key in self._keys for one in key.strip(":").split())
        return self._every

    def near(self, text: str, n: int = 5) -> tuple[str, ...]:
        """Up to `n` food names that look or read like `text`, nearest first."""
        from pantry_tui.reference.near import near

        return near(self._keys, self._foods, _words(text), n)


#: How else each method is written; the words of `Method` are added below.
_METHOD_NAMES: dict[Method, tuple[str, ...]] = {
    Method.BOILING_WATER: (
        "boiling water canned", "boiling water", "boiling water bath", "water bath",
        "water bath canned", "waterbath", "waterbath canned", "bwc", "boiling water canning",
        "water bath canning", "waterbath canning", "bottled in boiling water",
    ),
    Method.PRESSURE: ("pressure canned", "pressure", "pressure canning", "pressure cooker canned",
                      "pressure can"),
    Method.JAM: ("jam", "jams", "jelly", "jellies", "marmalade", "preserves", "cooked jam",
                 "fruit butter", "jams jellies", "jam jelly"),
    Method.FREEZER_JAM: ("freezer jam", "uncooked jam", "frozen jam"),
    Method.FRIDGE_PICKLE: ("fridge pickle", "fridge pickled", "refrigerator pickle",
                           "refrigerator pickled", "quick pickle", "quick pickled",
                           "refrigerator pickles", "fridge pickles", "quick pickling"),
    # "Pickled" alone could be a shelf jar or a fridge jar, whose lives differ: it is asked.
    Method.VINEGAR_PICKLE: ("vinegar pickle", "vinegar pickled", "processed pickle",
                            "canned pickle", "processed pickles", "canned pickles",
                            "cider vinegar pickled", "apple cider vinegar pickled",
                            "white vinegar pickled", "malt vinegar pickled",
                            "wine vinegar pickled", "rice vinegar pickled"),
    Method.LACTIC: ("lactic ferment", "lactic fermented", "lacto fermented", "lacto ferment",
                    "fermented", "ferment", "fermenting", "brine fermented", "lactic",
                    "fermented vegetables", "lactofermented", "dry salted ferment"),
    Method.VINEGAR_FERMENT: ("vinegar ferment", "vinegar making", "fermented vinegar"),
    Method.ALCOHOL_FERMENT: ("alcohol ferment", "wine", "brewed", "brewing", "country wine",
                             "alcoholic ferment", "alcohol fermented", "winemaking"),
    Method.PASTE: ("fermented paste", "paste", "koji"),
    Method.DRIED: ("dried", "drying", "dry", "dehydrated", "dehydrating", "air dried",
                   "oven dried", "sun dried", "powdered", "dehydrator"),
    Method.SALTED: ("salted", "salting", "cured", "curing", "salt cured", "dry cured", "in salt"),
    Method.HOT_SMOKED: ("hot smoked", "hot smoking", "hot smoke"),
    Method.COLD_SMOKED: ("cold smoked", "cold smoking", "cold smoke"),
    Method.FROZEN: ("frozen", "freezing", "freeze", "freezer", "deep frozen", "deep freeze",
                    "vacuum frozen"),
    Method.SUGAR: ("sugar preserve", "sugar preserved", "candied", "crystallised", "crystallized",
                   "in syrup", "syrup", "sugared"),
    Method.INFUSION: ("alcohol infusion", "infusion", "infused", "in alcohol", "in spirits",
                      "in brandy", "in gin", "in vodka", "liqueur", "tincture",
                      "infused in alcohol", "alcohol infused"),
    Method.IN_OIL: ("in oil", "oil", "oil packed", "packed in oil", "under oil", "food in oil",
                    "preserved in oil"),
    Method.CELLAR: ("cellar stored", "cellar", "cellared", "root cellar", "root cellared",
                    "stored", "cold stored", "clamped", "root cellaring", "in the cellar"),
    Method.FREEZE_DRIED: ("freeze dried", "freeze drying", "freezedried", "lyophilised"),
    Method.LIME: ("lime kept", "lime", "waterglass", "water glass", "water glassed", "limed",
                  "water glassing", "in lime water", "waterglassed"),
    Method.FLAVOURED_VINEGAR: ("flavoured vinegar", "flavored vinegar", "infused vinegar",
                               "herb vinegar", "fruit vinegar"),
    Method.RENDERED_FAT: ("rendered fat", "rendered", "rendering", "confit fat"),
    Method.FRESH: ("fresh", "raw", "as is", "unprocessed"),
    Method.MEAL: ("cooked meal", "cooked", "leftovers", "leftover", "ready meal", "prepared meal"),
    Method.BOUGHT: ("bought in", "bought", "shop bought", "store bought", "purchased", "shop"),
}  # fmt: skip


def _method_key(text: str) -> str:
    return " ".join(re.findall(r"[a-z]+", text.lower()))


@cache
def _methods() -> dict[str, Method]:
    """Every way to write a method -> the method."""
    return {
        _method_key(name): method
        for method, names in _METHOD_NAMES.items()
        for name in (method.value, *names)
    }


def find_method(text: str) -> Method | None:
    """The method meant; None where it is unknown or could be two ("canned", "pickled")."""
    return _methods().get(_method_key(text))


def near_methods(text: str) -> tuple[str, ...]:
    """Up to five method words that could be meant."""
    from difflib import SequenceMatcher

    key = _method_key(text)
    words = set(key.split())
    scored: dict[str, float] = {}
    for name, method in _methods().items():
        score = SequenceMatcher(None, key, name).ratio()
        if words & set(name.split()):
            score = max(score, 0.75)
        if score >= 0.6:
            scored[method.value] = max(score, scored.get(method.value, 0))
    return tuple(sorted(scored, key=lambda name: (-scored[name], name))[:5])


def method_named(text: str) -> Method:
    """The method meant. Raises BadInput with near ones."""
    method = find_method(text)
    if method is None:
        near = ", ".join(near_methods(text)) or ", ".join(Method)
        raise BadInput(f"{text[:60]!r} is no method; near it: {near}.")
    return method
