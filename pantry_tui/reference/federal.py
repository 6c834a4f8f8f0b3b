"""data/federal.csv: the quality figures of the one federal storage table of 2018, food by food.

They are wide (shop food, counted from the purchase) and some are outliers, so they never stand
beside what data/keeping.csv says: they give a best by where that has none, or an older and longer
one for a whole class or group, and are shown elsewhere. No safety rests on them.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.rules import Rule, Status
from pantry_tui.core.words import Climate, Kind, Method, State, Trust
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

    from pantry_tui.reference.csvrows import Row

_UNITS = ("hours", "days", "weeks", "months", "years")
#: So many figures are one part of the compiled file.
_CHUNK = 64


@dataclass(frozen=True, slots=True)
class Figure:
    """A row of the table: a product, as it is called there, in a state and a climate. `least` and
    `most` of a `unit`, None where the table has words (`says`) and no number."""

    id: str
    name: str
    methods: tuple[Method, ...]
    state: State
    climate: Climate
    least: float | None
    most: float | None
    unit: str
    says: str
    from_purchase: bool
    source: str
    trust: Trust

    @property
    def wording(self) -> str:
        """("Shop food, apples: 4 to 6 weeks in the fridge, counted from the purchase.")"""
        if self.least is None or self.most is None:
            said = self.says
        elif self.least == self.most:
            said = dates.span(self.least, self.unit)
        else:
            said = f"{self.least:g} to {dates.span(self.most, self.unit)}"
        state = "" if self.state is State.SEALED else f", {self.state}"
        since = ", counted from the purchase" if self.from_purchase else ""
        return f"Shop food, {self.name}: {said} in the {self.climate}{state}{since}."

    def rules(self, food: str) -> Iterator[Rule]:
        """It as a quality figure of a food, one for each method; in use is the shorter end."""
        for method in self.methods:
            yield Rule(
                id=self.id,
                method=method,
                food=food,
                state=self.state,
                climates=frozenset({self.climate}),
                kind=Kind.QUALITY,
                least=self.least,
                most=self.most,
                use=self.least,
                unit=self.unit,
                temp_f_max=None,
                status=Status.CURRENT,
                wording=self.wording,
                source=self.source,
                trust=self.trust,
            )


#: The figures in the order of the table, and the numbers of those of each food.
Federal = tuple[tuple[Figure, ...], Mapping[str, tuple[int, ...]]]


def _figure(row: Row, tables: Tables) -> Figure:
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    least, most, says = (
        row.number_or_none("life_min"),
        row.number_or_none("life_max"),
        row.text("says"),
    )
    if (least is None) != (most is None) or (least is None) == (not says):
        raise row.bad("life_min", "a range from life_min to life_max, or words in says, is needed")
    unit = row.text("unit")
    if least is not None and most is not None and not 0 <= least <= most:
        raise row.bad("life_max", "must not lie under life_min")
    if unit not in (_UNITS if least is not None else ("",)):
        raise row.bad("unit", f"{unit!r} is not one of {', '.join(_UNITS)}, or words stand there")
    for method in row.words("methods"):
        if method not in tuple(Method):
            raise row.bad("methods", f"{method!r} is no method")
    return Figure(
        row.text("figure_id", need=True),
        row.text("name", need=True),
        tuple(map(Method, row.words("methods"))),
        row.word("state", State),
        row.word("climate", Climate),
        least,
        most,
        unit,
        says,
        row.text("counted") == "purchase",
        source,
        row.word("trust", Trust),
    )


def read_federal(folder: Path, tables: Tables) -> Federal:
    """The table, checked. Raises DataError naming file, row and column."""
    from pantry_tui.reference.csvrows import read_rows

    columns = (
        *("figure_id", "product", "name", "foods", "methods", "state", "climate", "life_min"),
        *("life_max", "unit", "says", "counted", "source_id", "trust"),
    )
    figures: list[Figure] = []
    foods: dict[str, list[int]] = defaultdict(list)
    for row in read_rows(folder / "federal.csv", columns):
        for food in row.words("foods"):
            if tables.food_called(food) is None:
                raise row.bad("foods", f"{food!r} is no food of foods.csv")
            foods[food].append(len(figures))
        figures.append(_figure(row, tables))
    return tuple(figures), {food: tuple(found) for food, found in sorted(foods.items())}


_FIGURE = Packing(Figure, methods=Method, state=State, climate=Climate, trust=Trust)


def federal_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The table as parts of the compiled file: the numbers of the figures by food, and the figures
    in turns of `_CHUNK`."""
    figures, foods = read_federal(folder, tables)
    packed = tuple(map(_FIGURE.pack, figures))
    chunks = range(0, len(packed), _CHUNK)
    parts = {f"federal/{at // _CHUNK}": packed[at : at + _CHUNK] for at in chunks}
    return {"federal": foods, **parts}


def unpack_federal(parts: Mapping[str, Any]) -> Federal:
    """The whole table out of those parts."""
    foods = parts["federal"]
    many = 1 + max((number for found in foods.values() for number in found), default=-1)
    chunks = (parts[f"federal/{at}"] for at in range(-(-many // _CHUNK)))
    return tuple(_FIGURE.unpack(cells) for chunk in chunks for cells in chunk), foods


@cache
def figures_of(food: str) -> Sequence[Rule]:
    """The figures that the table has for a food of that name, in its order."""
    if "federal" not in compiled():
        figures, foods = _read()
        return [rule for number in foods.get(food, ()) for rule in figures[number].rules(food)]
    found = (_unpacked(number) for number in _part("federal").get(food, ()))
    return tuple(rule for figure in found for rule in figure.rules(food))


def _unpacked(number: int) -> Figure:
    return _FIGURE.unpack(_part(f"federal/{number // _CHUNK}")[number % _CHUNK])


@cache
def _part(name: str) -> Any:
    return compiled()[name]


@cache
def _read() -> Federal:
    return read_federal(data_dir(), load_tables())
