"""The columns of a household's own list that say how a batch was put up: minutes, pressure,
altitude, acid. Each is a detail of the record of a process (core.safety.record), under a heading
that names it; a unit in the heading stands for every bare number below it."""

from __future__ import annotations

import re
from collections.abc import Sequence
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
     "measured", "max", "maximum", "highest", "peak", "warmest"}
)  # fmt: skip
#: Headings of what a thing is now, and the state that a "yes" or a day below them says.
_STATES = {
    "status": "", "condition": "", "state": "",
    "open": "open", "opened": "open", "opened on": "open", "date opened": "open",
    "thawed": "thawed", "thawed on": "thawed", "defrosted": "thawed", "date thawed": "thawed",
}  # fmt: skip
#: What people write there -> the state, "" for what is shut or says nothing of it.
_SAID = {
    **dict.fromkeys(("open", "opened", "in use", "started", "begun", "part used"), "open"),
    **dict.fromkeys(("thawed", "defrosted", "thawing"), "thawed"),
    **dict.fromkeys(("in progress", "in-progress", "working", "fermenting"), "in progress"),
    **dict.fromkeys(
        ("sealed", "closed", "shut", "unopened", "not opened", "full", "whole", "new", "in stock",
         "ok", "good", "frozen", "stored"),
        "",
    ),
}  # fmt: skip
_YES = frozenset({"yes", "y", "x", "✓", "✔", "true", "1"})
_NO = frozenset({"no", "n", "false", "0", "not yet", "never"})
#: The unit in a heading -> as a value writes it.
_UNITS = {
    "min": " min", "mins": " min", "minutes": " min", "h": " h", "hr": " h", "hrs": " h",
    "hours": " h", "psi": " psi", "lb": " lb", "lbs": " lb", "pounds": " lb", "kpa": " kPa",
    "bar": " bar", "ft": "ft", "feet": "ft", "m": "m", "metres": "m", "meters": "m",
    "f": "F", "°f": "F", "c": "C", "°c": "C", "%": "%", "percent": "%",
    "in": " in", "inch": " in", "inches": " in", "cm": " cm", "mm": " mm",
    "g": " g", "kg": " kg", "l": " l", "ml": " ml", "tbsp": " tbsp", "tsp": " tsp", "cups": " cup",
    "km": " km", "g/l": " g/l",
}  # fmt: skip
_NOTHING = frozenset({"", "-", "–", "—", "n/a", "na"})
#: "Minutes processed", "time at pressure", "mins in water bath".
_TIMES = frozenset({"min", "mins", "minute", "minutes", "time", "h", "hr", "hrs", "hours"})
_OF_PROCESS = frozenset(
    {"processed", "processing", "process", "canner", "canned", "canning", "pressure", "bath",
     "waterbath", "boiled", "boiling", "bwb", "pc", "jars"}
)  # fmt: skip
_LINKS = frozenset({"in", "at", "of", "the", "under", "water", "for", "total", "full", "were"})
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
    low = heading.casefold().replace("_", " ")
    plain = [
        word
        for token in re.sub(r"[^\w%°/]+", " ", low).split()
        for word in ([token] if token in _UNITS else token.split("/"))
        if word
    ]
    if " ".join(plain) in _STATES:
        return Named("state", " ".join(plain), "")
    unit = _UNITS.get(plain[-1], "") if plain else ""
    for words, each in ((plain, ""), (plain[:-1] if unit else [], unit)):
        told = [word for word in words if word not in _BESIDE]
        for said in (words, told, [word for word in told if word not in ("canner", "process")]):
            name = " ".join(said)
            key = key_named(name) if name and name not in _NO_HEADING else None
            if key is not None and key not in _ELSEWHERE:
                return Named(key, name, each)
    if _of_a_process(plain):
        return Named("minutes", "minutes", unit)
    # A unit that is not known here is left to whoever reads the values: it understands or refuses.
    bracket = re.fullmatch(r"(.+?)\s*[(\[]\s*(\S{1,8})\s*[)\]]\s*", low)
    bare = named_by(bracket[1]) if bracket is not None else None
    return bare._replace(unit=f" {bracket[2]}") if bracket and bare and not bare.unit else None


def _of_a_process(heading: Sequence[str]) -> bool:
    """("minutes", "in", "canner") Whether a heading is a time of a process in other words."""
    words = frozenset(heading)
    return bool(words & _TIMES and words & _OF_PROCESS) and words <= _TIMES | _OF_PROCESS | _LINKS


def pair_of(field: str, heading: str, cell: str) -> tuple[str, str] | None:
    """What a cell says of a detail, None for an empty one. Raises ValueError, with what is wrong in
    a sentence, for one that is not understood."""
    value = " ".join(cell.split())
    if value.casefold() in _NOTHING:
        return None
    named = named_by(heading)
    if field == "state":
        return _state_of(named.name if named is not None else "state", value)
    if named is not None and named.unit and _BARE.fullmatch(value):
        value = value.replace(",", ".") + named.unit
    if field == "vinegar" and (grams := re.fullmatch(r"(\d+(?:[.,]\d+)?) g/l", value)):
        value = f"{float(grams[1].replace(',', '.')) / 10:g}%"  # acid is told in g of 100 ml
    name = named.name if named is not None and named.field == field else field
    details = read_details([(name, value)])
    if details.problems:
        raise ValueError(details.problems[0])
    return details.pairs[0]


def _state_of(heading: str, value: str) -> tuple[str, str] | None:
    """("opened", "yes") -> ("state", "open"). Raises ValueError for what is no state: as if it were
    new nothing is taken that may be open."""
    plain, column = value.casefold().rstrip("."), _STATES.get(heading, "")
    said = column if column and plain in _YES else "" if column and plain in _NO else None
    said = _SAID.get(plain) if said is None else said
    if said is None:
        raise ValueError(
            f"{value[:40]!r} is not understood: write sealed, open or thawed, or leave the column "
            "out."
        )
    return ("state", said) if said else None


def is_day_opened(heading: str, cell: str) -> bool:
    """Whether a cell under "opened" is the day on which it was."""
    named = named_by(heading)
    opened = named is not None and _STATES.get(named.name) == "open"
    return (
        opened and re.search(r"\d\D+\d|\d{4}|[^\W\d_]{3,}\W+\d|\d\W+[^\W\d_]{3,}", cell) is not None
    )
