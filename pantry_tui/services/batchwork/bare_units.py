"""Numbers of a household's own list that have no unit: "25" under "Weight" may be kg or lb. The
heading may say it ("Weight (kg)"), or a person, once for all of the column; it is never guessed."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.detail_columns import named_by
from pantry_tui.services.rows import Ask

#: Field -> the units in which its bare numbers may be.
UNITS: dict[str, tuple[str, ...]] = {
    "size": ("kg", "g", "l", "ml", "lb", "oz"),
    "temperature": ("C", "F"),
    "altitude": ("ft", "m"),
}
_BARE = re.compile(r"\d+(?:[.,]\d+)?")
#: How a heading writes them.
_WRITTEN = {
    "kgs": "kg", "kilo": "kg", "kilos": "kg", "grams": "g", "gr": "g", "litre": "l",
    "litres": "l", "liter": "l", "liters": "l", "lbs": "lb", "pounds": "lb", "ounces": "oz",
}  # fmt: skip


def is_bare(cell: str) -> bool:
    """("25", "1,5") -> True."""
    return _BARE.fullmatch(cell.strip()) is not None


def of_heading(field: str, heading: str) -> str:
    """("size", "Weight (kg)") -> "kg"; "" where the heading names no unit."""
    if field != "size":
        named = named_by(heading)
        return named.unit.strip() if named is not None else ""
    last = (re.findall(r"[^\W_]+", heading.casefold()) or [""])[-1]
    unit = _WRITTEN.get(last, last)
    return unit if unit in UNITS[field] else ""


def asks(
    fields: Mapping[str, str], said: Mapping[str, str], rows: Iterable[Mapping[str, str]]
) -> Iterator[Ask]:
    """A question for each column of `fields` (field -> heading) with bare numbers, of which neither
    its heading nor a person has said the unit; `rows` are cells by field, read once."""
    open_ = {
        name: heading
        for name, heading in fields.items()
        if name in UNITS and name not in said and not of_heading(name, heading)
    }
    for cells in rows if open_ else ():
        for name in [one for one in open_ if is_bare(cells.get(one, ""))]:
            yield Ask("unit", f"{open_.pop(name)}: {cells[name].strip()}", units_of(name))


def units_of(name: str) -> tuple[str, ...]:
    """As a person answers: "size=kg"."""
    return tuple(f"{name}={unit}" for unit in UNITS[name])


def read_units(text: str) -> dict[str, str]:
    """("size=kg,temperature=C") -> field -> unit. Raises BadInput."""
    found = {}
    for pair in filter(None, (part.strip() for part in text.split(","))):
        name, _, unit = (part.strip() for part in pair.partition("="))
        known = {one.casefold(): one for one in UNITS.get(name, ())}
        if unit.casefold() not in known:
            every = ", ".join(one for field in UNITS for one in units_of(field))
            raise BadInput(f"{pair[:30]!r} is no unit of a column: use one of {every}.")
        found[name] = known[unit.casefold()]
    return found


def with_unit(cell: str, unit: str) -> str:
    """("25", "kg") -> "25 kg", ("900", "ft") -> "900ft", as each is kept; what has its own unit
    stays."""
    room = "" if unit in UNITS["altitude"] else " "
    return f"{cell.strip()}{room}{unit}" if unit and is_bare(cell) else cell
