"""data/yields.csv, compiled or read once: pounds of fresh crop that a pint or a quart takes."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.words import Method, Trust
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, read_rows
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

#: Pints in the unit that a row speaks of.
_PINTS = {"pint": 1.0, "quart": 2.0}


@dataclass(frozen=True, slots=True)
class Yield:
    """Pounds of `crop` a `unit` ("pint" or "quart") of `food`: `least` and `most` are the published
    range, `use` the figure in use. A `weak` row is an estimate, whatever its trust."""

    food: str
    crop: str
    unit: str
    least: float
    most: float
    use: float
    weak: bool
    wording: str
    source: str
    trust: Trust

    @property
    def per_pint(self) -> float:
        """Pounds a pint, the figure in use."""
        return self.use / _PINTS[self.unit]


#: Yields by (food name, how it is kept).
Yields = dict[tuple[str, Method], Yield]


def _pounds(row: Row, column: str) -> float:
    number = row.number_or_none(column)
    if number is None or number <= 0:
        raise row.bad(column, "must be a number of pounds above 0")
    return number


def one_of(row: Row, column: str, allowed: tuple[str, ...]) -> str:
    value = row.text(column, need=True)
    if value not in allowed:
        raise row.bad(column, f"{value!r} is not one of {', '.join(allowed)}")
    return value


def _yield(row: Row, tables: Tables, known: frozenset[str]) -> Yield:
    food = row.text("food", need=True)
    crop = row.text("crop") or food
    for column, name in (("food", food), ("crop", crop)):
        if name not in known:
            raise row.bad(column, f"{name!r} is no food of foods.csv")
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    least, most, use = (_pounds(row, column) for column in ("lb_min", "lb_max", "lb"))
    if not least <= use <= most:
        raise row.bad("lb", f"{use:g} does not lie from lb_min to lb_max")
    return Yield(
        food,
        crop,
        one_of(row, "unit", tuple(_PINTS)),
        least,
        most,
        use,
        one_of(row, "weak", ("yes", "no")) == "yes",
        row.text("wording"),
        source,
        row.word("trust", Trust),
    )


def read_yields(folder: Path, tables: Tables) -> Yields:
    """data/yields.csv, checked. Raises DataError naming file, row and column."""
    known = frozenset(food.name for food in tables.foods)
    columns = (
        *("food", "crop", "methods", "unit", "lb_min", "lb_max", "lb", "weak"),
        *("wording", "source_id", "trust"),
    )
    found: Yields = {}
    for row in read_rows(folder / "yields.csv", columns):
        one = _yield(row, tables, known)
        methods = row.words("methods")
        if not methods:
            raise row.bad("methods", "is empty and must not be")
        for text in methods:
            if text not in tuple(Method):
                raise row.bad("methods", f"{text!r} is no method")
            if (one.food, Method(text)) in found:
                raise row.bad("methods", f"{one.food}, {text} stands twice")
            found[one.food, Method(text)] = one
    return found


_YIELD = Packing(Yield, trust=Trust)


def yields_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The table as a part of the compiled file."""
    found = read_yields(folder, tables)
    return {"yields": {(food, how.value): _YIELD.pack(one) for (food, how), one in found.items()}}


def unpack_yields(parts: Mapping[str, Any]) -> Yields:
    """The table out of that part."""
    packed = parts["yields"]
    return {(food, Method(how)): _YIELD.unpack(one) for (food, how), one in packed.items()}


@cache
def load_yields() -> Yields:
    """The yields that ship with the program, once a process."""
    parts = compiled()
    return unpack_yields(parts) if "yields" in parts else read_yields(data_dir(), load_tables())
