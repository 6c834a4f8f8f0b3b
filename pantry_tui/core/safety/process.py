"""Tested canning processes, looked up and never computed, and what makes a batch's doubtful.

A process is a pair of time and pressure for one food, pack, jar, canner and band of altitude
(USDA AIB 539). The time of one pair never goes with the pressure of another.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from pantry_tui.core.amounts import read_altitude
from pantry_tui.core.batchwork.vinegar import weak_vinegar
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Method, Trust
from pantry_tui.errors import BadInput

#: Jars with published processes, smallest first, and their size in US fluid ounces.
JARS = {"half-pint": 8, "pint": 16, "quart": 32, "half-gallon": 64}
BIGGER = "bigger than a half-gallon"
CANNERS = ("boiling-water", "dial", "weighted")
PACKS = ("hot", "raw")
CANNED = frozenset({Method.BOILING_WATER, Method.PRESSURE, Method.JAM, Method.VINEGAR_PICKLE})
#: The longest process an atmospheric steam canner can do, altitude included (NCHFP).
STEAM_MAX_MINUTES = 45

_STOP = frozenset({"of", "the", "with", "and", "or", "a", "an"})


@lru_cache(maxsize=4096)
def name_key(text: str) -> tuple[str, ...]:
    """A food's name without word order, brackets and plurals; "in" stays, it can mean much."""
    words = re.findall(r"[^\W_]+", text.partition("(")[0].casefold())
    return tuple(sorted(_single(word) for word in words if word not in _STOP))


def _single(word: str) -> str:
    word = re.sub(r"(o|ch|sh)es$", r"\1", re.sub(r"(?<=\w\w)ies$", "y", word))
    return re.sub(r"(?<=[^sui])s$", "", word)


@dataclass(frozen=True, slots=True)
class ProcessRow:
    """One published process. `high_ft` None is an open band; `psi` None is boiling water.

    `names` are the keys of all names that it is found by, those of the food table among them."""

    food: str
    names: frozenset[tuple[str, ...]]
    pack: str
    jar: str
    canner: str
    low_ft: int
    high_ft: int | None
    minutes: int
    psi: int | None
    acidify: str
    headspace_in: float | None
    option: str
    source: str
    trust: Trust
    note: str

    def at(self, altitude_ft: int) -> bool:
        """Whether the band holds there; below the sea the lowest band does."""
        below = self.high_ft is None or altitude_ft <= self.high_ft
        return below and self.low_ft <= max(0, altitude_ft)

    @property
    def adds_acid(self) -> str | None:
        """What must be added, None where nothing is."""
        return None if self.acidify in ("", "none", "natural acid") else self.acidify


@dataclass(frozen=True, slots=True)
class NotRecommended:
    """A food or a way that publications advise against; `plain_only` where pickling or sugar
    by a tested recipe lifts it."""

    food: str
    names: frozenset[tuple[str, ...]]
    plain_only: bool
    reason: str
    alternative: str
    source: str
    trust: Trust


def lookup(
    rows: Iterable[ProcessRow], food: str, jar: str, canner: str, altitude_ft: int, pack: str | None
) -> list[ProcessRow]:
    """All rows for exactly this (forms, packs, options), each a pair of its own; empty where
    none is published. Rows from memory are among them: see `standing`."""
    key = name_key(food)
    fits = (row for row in rows if key in row.names and (row.jar, row.canner) == (jar, canner))
    return [row for row in fits if row.at(altitude_ft) and pack in (None, row.pack)]


def standing(rows: Sequence[ProcessRow]) -> list[ProcessRow]:
    """The rows that were read or reprinted; those from memory only where there are no others,
    since they may make a doubt and never lift one."""
    return [row for row in rows if row.trust is not Trust.MEMORY] or list(rows)


_NUMBER = r"(\d{1,4}(?:[.,]\d{1,3})?)"
_RANGE = re.compile(_NUMBER + r"(?:\s*(?:-|–|to)\s*" + _NUMBER + ")?")
_HOURS = re.compile(_NUMBER + r"\s*(?:h(?:ours?|rs?)?\b|h(?=\d)|:(?=\d\d))\s*(\d{1,2})?")
_SIZE = re.compile(r"(?<![a-z])(oz|ounce|ml|l|litre|liter|pint|pt|quart|qt|gallon|gal)s?(?![a-z])")
_OUNCES = {
    "oz": 1.0,
    "ou": 1.0,
    "ml": 1 / 29.5735,
    "l": 1000 / 29.5735,
    "li": 1000 / 29.5735,
    "pi": 16.0,
    "pt": 16.0,
    "qu": 32.0,
    "qt": 32.0,
    "ga": 128.0,
}


def _first(text: str) -> float | None:
    """The first number, of a range the smaller end."""
    match = _RANGE.search(text)
    parts = match.groups() if match else ()
    return min((float(part.replace(",", ".")) for part in parts if part), default=None)


def read_minutes(text: str) -> float | None:
    """("25", "25 min", "1 h 15", "1:15", "20-25") -> minutes, the shorter of a range."""
    hours = _HOURS.search(text)
    each = float(hours[1].replace(",", ".")) if hours else 0.0
    return each * 60 + float(hours[2] or 0) if hours else _first(text)


def read_psi(text: str) -> float | None:
    """("11", "11 lb", "76 kPa", "0.8 bar") -> pounds per square inch."""
    number, plain = _first(text), text.casefold()
    each = 0.145038 if "kpa" in plain else 14.5038 if "bar" in plain else 1.0
    return None if number is None else number * each


def read_jar(text: str) -> str | None:
    """The published jar that holds as much or just more: "500 ml jars" take the quart."""
    plain = text.casefold().replace("half", "1/2").replace("½", " 1/2").replace("-", " ")
    unit = _SIZE.search(plain)
    if unit is None:
        return None
    before = plain[: unit.start()]
    number = _first(before.replace("1/2", ""))
    if "1/2" in plain:
        number = (number or (0 if "1/2" in before else 1)) + 0.5
    elif number is None or (number > 2 and unit[1][:2] in ("pi", "pt", "qu", "qt")):
        number = 1  # "7 pint jars" counts jars
    ounces = _OUNCES[unit[1][:2]] * number
    return next((jar for jar, size in JARS.items() if ounces <= size), BIGGER)


_CANNER_WORDS = {
    "dial": "dial",
    "weight": "weighted",
    "pressure": "pressure",
    "boiling": "boiling-water",
    "water bath": "boiling-water",
    "waterbath": "boiling-water",
    "steam": "steam",
}


def read_canner(text: str) -> str | None:
    """One of `CANNERS`, "pressure" (gauge unknown), "steam", or None."""
    plain = text.casefold().replace("-", " ")
    return next((canner for word, canner in _CANNER_WORDS.items() if word in plain), None)


#: Ways that are no tested process (USDA AIB 539; K-State Research and Extension for inverted
#: jars). Multi-cookers from memory, which is the stricter choice.
_UNSAFE = (
    (r"open.?kettle|hot.?fill", "Open-kettle canning is no tested process: it spoils unseen."),
    (r"\boven\b|microwave|dishwasher", "Oven, microwave and dishwasher are no tested process."),
    (r"inver[ts]|upside|flipped", "Turning jars over is no process: a sealed lid proves nothing."),
    (r"\bwax|paraffin", "A wax seal is not airtight: no tested process."),
    (r"canning powder", "Canning powders do not preserve: no tested process."),
    (r"multi.?cooker|electric.*cooker", "No tested process exists for electric multi-cookers."),
    (r"^(none|no|nothing|without|unprocessed|not processed|no process(ing)?)$",
     "The record says that it was not processed."),
)  # fmt: skip


def unsafe_way(text: str) -> str | None:
    """The sentence against a way of canning, None where nothing speaks against it."""
    return next((said for pattern, said in _UNSAFE if re.search(pattern, text.casefold())), None)


_DETAILS = ("minutes", "psi", "canner", "process", "pack", "acid", "vinegar")
#: Every key that is read, and what else it may stand under.
_KEYS = {
    "minutes": "time",
    "psi": "pressure",
    "process": "processed",
    "canner": "process",
    "jar": "jars",
    "pack": "packed",
    "acid": "acidified",
    "vinegar": "vinegars",
    "altitude": "elevation",
}
_NOTHING = frozenset({"", "?", "unknown", "not recorded", "not known"})


@dataclass(frozen=True, slots=True)
class Doubt:
    """What is wrong with how a batch was put up, and what may still be done about it."""

    problems: tuple[str, ...]
    still_possible: str


def _tidy(record: Mapping[str, str]) -> dict[str, str]:
    said = {str(key).casefold().strip(): str(value).strip() for key, value in record.items()}
    said = {key: value for key, value in said.items() if value.casefold() not in _NOTHING}
    for key, other in _KEYS.items():
        said.setdefault(key, said.get(other, ""))
    return said


def recorded(record: Mapping[str, str]) -> bool:
    """Whether any detail of the process was written down; a jar or an altitude is none."""
    return any(map(_tidy(record).get, _DETAILS))


def doubt(
    method: Method,
    food: FoodFacts,
    size: str,
    record: Mapping[str, str],
    altitude_ft: int,
    rows: Iterable[ProcessRow],
    not_recommended: Iterable[NotRecommended],
) -> Doubt | None:
    """Why no publication stands for a batch's process, or None where nothing speaks against it.

    None does not say that it was right: a record may be empty (`recorded`). Altitude in feet,
    unless the record has one. Only canned foods and fridge pickles."""
    said = _tidy(record)
    if method not in CANNED:
        weak = weak_vinegar(said["vinegar"]) if method is Method.FRIDGE_PICKLE else []
        return Doubt(tuple(weak), _still(food, again=False)) if weak else None
    mine = [row for row in rows if name_key(food.name) in row.names]
    canners = _canners(method, said["canner"])
    usable = [row for row in mine if row.canner in canners]
    ways = (said["process"], said["canner"], f"seal: {said.get('seal', '')}")
    problems = [one for one in map(unsafe_way, ways) if one]
    in_water = method is Method.BOILING_WATER or canners == ("boiling-water",)
    never = _never(method, food, in_water, not_recommended)
    problems += never
    if usable:
        problems += _against(usable, food, size, said, _altitude(said, altitude_ft))
    elif not never and method in (Method.BOILING_WATER, Method.PRESSURE):
        kind = "boiling-water" if in_water else "pressure"
        problems.append(f"No tested process for {food.name} in a {kind} canner is known here.")
    problems += _unacidified(food, mine, said)
    if method is not Method.PRESSURE:
        problems += weak_vinegar(said["vinegar"])
    still = _still(food, again=bool(usable) and not never)
    return Doubt(tuple(dict.fromkeys(problems)), still) if problems else None


def _canners(method: Method, text: str) -> tuple[str, ...]:
    canner = read_canner(text)
    if canner in CANNERS:
        return (canner,)
    pressure = canner == "pressure" or (canner is None and method is Method.PRESSURE)
    return ("dial", "weighted") if pressure else ("boiling-water",)


def _altitude(said: Mapping[str, str], altitude_ft: int) -> int:
    try:
        return read_altitude(said["altitude"])
    except BadInput:
        return altitude_ft


def _never(
    method: Method, food: FoodFacts, in_water: bool, advice: Iterable[NotRecommended]
) -> list[str]:
    """What no record can put right: the food itself, or low-acid food in boiling water."""
    plain = method in (Method.BOILING_WATER, Method.PRESSURE)
    found = [
        f"{row.food}: {row.reason[:1].lower()}{row.reason[1:]}."
        for row in advice
        if name_key(food.name) in row.names and (plain or not row.plain_only)
    ]
    if plain and in_water and food.acidity is Acidity.LOW_ACID:
        found.append("Low-acid food in boiling water: spores live through it.")
    return found


def _against(
    usable: Sequence[ProcessRow], food: FoodFacts, size: str, said: Mapping[str, str], ft: int
) -> list[str]:
    """The record beside the published rows for its jar, pack and altitude in feet."""
    jar, order = read_jar(said["jar"]) or read_jar(size), [*JARS, BIGGER]
    largest = max((row.jar for row in usable), key=order.index)
    if jar is not None and order.index(jar) > order.index(largest):
        return [f"The jar is larger than any with a tested process for {food.name} ({largest})."]
    words = said["pack"].casefold().replace("cold", "raw")
    pack = next((one for one in PACKS if re.search(rf"\b{one}\b", words)), None)
    fits = [row for row in usable if pack in (None, row.pack)]
    if jar is not None:
        # A smaller jar than any published one is held to the smallest that is: never shorter.
        fits = [row for row in fits if order.index(row.jar) >= order.index(jar)]
        least = min((row.jar for row in fits), key=order.index, default=jar)
        fits = [row for row in fits if row.jar == least]
    if not fits:
        return [f"No tested process for {food.name} packed {pack} in this jar is known here."]
    here = standing([row for row in fits if row.at(ft)])
    if not here:
        return [f"No process for {food.name} is published at {ft:,} ft."]
    return _too_little(here, said, ft)


def _too_little(rows: Sequence[ProcessRow], said: Mapping[str, str], ft: int) -> list[str]:
    """Time and pressure against the published pairs; one whole pair must be reached."""
    minutes, psi = read_minutes(said["minutes"]), read_psi(said["psi"])
    too_long = min(row.minutes for row in rows) > STEAM_MAX_MINUTES
    if too_long and read_canner(said["canner"]) == "steam":
        return [f"A steam canner cannot run for more than {STEAM_MAX_MINUTES} minutes."]
    for row in rows:
        long = minutes is None or minutes >= row.minutes
        if long and (psi is None or row.psi is None or psi >= row.psi):
            return []
    done = _pair(minutes, psi if rows[0].psi else None)
    pairs = " or ".join(dict.fromkeys(_pair(row.minutes, row.psi) for row in rows))
    return [f"{done} is too little: at {ft:,} ft {pairs} is published."]


def _pair(minutes: float | None, psi: float | None) -> str:
    time = "" if minutes is None else f"{minutes:g} minutes"
    return time if psi is None else f"{time} at {psi:.3g} psi".removeprefix(" at ")


def _unacidified(food: FoodFacts, rows: Sequence[ProcessRow], said: Mapping[str, str]) -> list[str]:
    """Tomatoes and figs (pH about 4.6) need lemon juice or citric acid in either canner."""
    no = r"(no|none|not|nothing|without|forgot\w*)\b|0$"
    refused = re.match(no, said["acid"].casefold())
    adds = any(re.search("lemon|citric", row.acidify) for row in rows)
    found = f"No acid was added: {food.name} may be above pH 4.6 without it."
    return [found] if refused and (adds or "tomato" in food.classes) else []


def _still(food: FoodFacts, *, again: bool) -> str:
    """USDA AIB 539 and the services that carry it: 24 hours, then it is thrown away."""
    redo = ", or process it again by a tested process" if again else ""
    taste = "" if food.acidity is Acidity.ACID else " without tasting"
    return f"Within 24 hours: refrigerate or freeze it{redo}. After that discard it{taste}."
