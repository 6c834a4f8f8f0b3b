"""The columns of a household's own list that say how a batch was put up: minutes, pressure,
altitude, acid. Each is a detail of the record of a process (core.safety.record), under a heading
that names it; a unit in the heading stands for every bare number below it."""

from __future__ import annotations

import re
from typing import NamedTuple

from pantry_tui.core.safety.record import key_named, read_details

#: Details that a list has another column for.
_ELSEWHERE = frozenset({"printed", "amount"})
#: Field -> what a person calls it, in the order in which a list has them.
DETAILS: dict[str, str] = {
    "minutes": "minutes of the process",
    "psi": "pressure",
    "canner": "canner",
    "process": "process",
    "pack": "hot or raw pack",
    "jar": "jar of the process",
    "altitude": "altitude",
    "acid": "acid added",
    "vinegar": "vinegar",
    "ph": "pH",
    "salt": "salt",
    "sugar": "sugar or syrup",
    "seal": "seal",
    "headspace": "headspace",
    "temperature": "temperature",
    "cure": "curing salt",
    "vacuum": "vacuum packed",
    "blanched": "blanched",
    "prepared": "how it was cut",
    "form": "form",
    "by": "who made it",
    "sold": "sold on a shelf or chilled",
    "dated": "kind of printed date",
    "state": "state",
}
#: Names of details that mean something else over a column: a weight, a supplier, a code on a lid.
_NO_HEADING = frozenset(
    {
        "lbs", "pounds", "min", "pot", "equipment", "appliance", "way", "how", "method",
        "technique", "jars", "size", "jar size", "cut", "style", "as", "height", "lid", "lids",
        "head", "from", "source", "at", "heat", "packed",
    }
)  # fmt: skip
#: Words beside the name of a detail that add nothing to it.
_BESIDE = frozenset(
    {"type", "used", "added", "level", "strength", "value", "reading", "canning",
     "measured"}
)  # fmt: skip
#: The unit in a heading -> as a value writes it.
_UNITS = {
    "min": " min", "mins": " min", "minutes": " min", "h": " h", "hr": " h", "hrs": " h",
    "hours": " h", "psi": " psi", "lb": " lb", "lbs": " lb", "pounds": " lb", "kpa": " kPa",
    "bar": " bar", "ft": "ft", "feet": "ft", "m": "m", "metres": "m", "meters": "m",
    "f": "F", "°f": "F", "c": "C", "°c": "C", "%": "%", "percent": "%",
    "in": " in", "inch": " in", "inches": " in", "cm": " cm", "mm": " mm",
    "g": " g", "kg": " kg", "l": " l", "ml": " ml", "tbsp": " tbsp", "tsp": " tsp", "cups": " cup",
}  # fmt: skip
_NOTHING = frozenset({"", "-", "–", "—", "n/a", "na"})
_BARE = re.compile(r"[-−–]?\d+(?:[.,]\d+)?")


class Named(NamedTuple):
    """The detail that a heading names, the name it has there ("lemon juice" of acid), and its unit
    as a value writes it, "" without one."""

    field: str
    name: str
    unit: str


def named_by(heading: str) -> Named | None:
    """("Altitude (m)") -> altitude, in "m"; ("Processing time") -> minutes. None for a heading of
    something else."""
    plain = re.sub(r"[^\w%°]+", " ", heading.casefold().replace("_", " ")).split()
    unit = _UNITS.get(plain[-1], "") if plain else ""
    for words, each in ((plain, ""), (plain[:-1] if unit else [], unit)):
        told = [word for word in words if word not in _BESIDE]
        for said in (words, told, [word for word in told if word not in ("canner", "process")]):
            name = " ".join(said)
            key = key_named(name) if name and name not in _NO_HEADING else None
            if key is not None and key not in _ELSEWHERE:
                return Named(key, name, each)
    return None


def pair_of(field: str, heading: str, cell: str) -> tuple[str, str] | None:
    """What a cell says of a detail, None for an empty one. Raises ValueError, with what is wrong in
    a sentence, for one that is not understood."""
    value = " ".join(cell.split())
    if value.casefold() in _NOTHING:
        return None
    named = named_by(heading)
    if named is not None and named.unit and _BARE.fullmatch(value):
        value += named.unit
    name = named.name if named is not None and named.field == field else field
    details = read_details([(name, value)])
    if details.problems:
        raise ValueError(details.problems[0])
    return details.pairs[0]
