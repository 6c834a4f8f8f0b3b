"""The tables of batch work, compiled or read once: single figures, drying, and blanching."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.words import Group, Method, Trust
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, read_rows
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path


@dataclass(frozen=True, slots=True)
class Figure:
    """One published figure of batch work, `low` to `high` in `unit`; `foods` are names, groups
    ("group:fruit"), "*", or a kind of the topic."""

    id: str
    topic: str
    foods: tuple[str, ...]
    low: float
    high: float
    unit: str
    wording: str
    source: str
    trust: Trust


@dataclass(frozen=True, slots=True)
class DryingRow:
    """How one food is dried: blanching in minutes (None: none), air in °F, hours, the end test,
    and the water of the fresh crop in % (None where no figure is published)."""

    food: str
    prepare: str
    water_min: float | None
    water_max: float | None
    steam_min: float | None
    steam_max: float | None
    low_f: float
    high_f: float
    hours_min: float
    hours_max: float
    end_test: str
    water_percent: float | None
    source: str
    trust: Trust


@dataclass(frozen=True, slots=True)
class BlanchRow:
    """How one form of a food is blanched before freezing, minutes in water or steam; `cook` where
    it is cooked instead."""

    food: str
    form: str
    water_min: float | None
    water_max: float | None
    steam_min: float | None
    steam_max: float | None
    cook: str
    headspace_in: float | None
    source: str
    trust: Trust


@dataclass(frozen=True)
class BatchTables:
    """All of it; `figures` by id, the others in file order."""

    figures: Mapping[str, Figure]
    drying: Mapping[str, DryingRow]
    blanching: tuple[BlanchRow, ...]

    def about(self, topic: str, *foods: str) -> tuple[Figure, ...]:
        """The figures of a topic, or those of them that speak of one of `foods`."""
        wanted = set(foods)
        return tuple(
            one
            for one in self.figures.values()
            if one.topic == topic and (not wanted or wanted & set(one.foods))
        )


def _number(row: Row, column: str) -> float:
    number = row.number_or_none(column)
    if number is None or number < 0:
        raise row.bad(column, "must be a number from 0 up")
    return number


def _span(row: Row, low: str, high: str) -> tuple[float | None, float | None]:
    least, most = row.number_or_none(low), row.number_or_none(high)
    if (least is None) != (most is None) or (least is not None and least > (most or 0)):
        raise row.bad(high, f"must be as large as {low}, or both empty")
    return least, most


def _source(row: Row, tables: Tables) -> str:
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    return source


def _food(row: Row, known: frozenset[str]) -> str:
    food = row.text("food", need=True)
    if food not in known:
        raise row.bad("food", f"{food!r} is no food of foods.csv")
    return food


def _figure(row: Row, tables: Tables, known: frozenset[str]) -> Figure:
    foods = row.words("foods")
    for one in foods:
        if one not in known:
            raise row.bad("foods", f"{one!r} is no food of foods.csv, and no kind")
    low, high = _number(row, "low"), _number(row, "high")
    return Figure(
        row.text("figure_id", need=True),
        row.text("topic", need=True),
        foods,
        low,
        high,
        row.text("unit", need=True),
        row.text("wording", need=True),
        _source(row, tables),
        row.word("trust", Trust),
    )


def _drying(row: Row, tables: Tables, known: frozenset[str]) -> DryingRow:
    return DryingRow(
        _food(row, known),
        row.text("prepare", need=True),
        *_span(row, "water_min", "water_max"),
        *_span(row, "steam_min", "steam_max"),
        _number(row, "low_f"),
        _number(row, "high_f"),
        _number(row, "hours_min"),
        _number(row, "hours_max"),
        row.text("end_test", need=True),
        row.number_or_none("water_percent"),
        _source(row, tables),
        row.word("trust", Trust),
    )


def _blanching(row: Row, tables: Tables, known: frozenset[str]) -> BlanchRow:
    return BlanchRow(
        _food(row, known),
        row.text("form", need=True),
        *_span(row, "water_min", "water_max"),
        *_span(row, "steam_min", "steam_max"),
        row.text("cook"),
        row.number_or_none("headspace_in"),
        _source(row, tables),
        row.word("trust", Trust),
    )


_COLUMNS = {
    "figures.csv": (
        *("figure_id", "topic", "foods", "low", "high", "unit", "wording", "source_id", "trust"),
    ),
    "drying.csv": (
        *("food", "prepare", "water_min", "water_max", "steam_min", "steam_max", "low_f", "high_f"),
        *("hours_min", "hours_max", "end_test", "water_percent", "source_id", "trust"),
    ),
    "blanching.csv": (
        *("food", "form", "water_min", "water_max", "steam_min", "steam_max", "cook"),
        *("headspace_in", "source_id", "trust"),
    ),
}
#: What a figure may speak of beside foods.
_KINDS = frozenset({"*", "liquid", "dry", "juice", "jelly", "preserves"})


def read_batchwork(folder: Path, tables: Tables) -> BatchTables:
    """The three tables, checked. Raises DataError naming file, row and column."""
    foods = frozenset(food.name for food in tables.foods)
    known = foods | _KINDS | {f"group:{one}" for one in Group} | set(map(str, Method))
    figures: dict[str, Figure] = {}
    drying: dict[str, DryingRow] = {}
    for row in read_rows(folder / "figures.csv", _COLUMNS["figures.csv"]):
        figure = _figure(row, tables, known)
        if figure.id in figures:
            raise row.bad("figure_id", f"{figure.id!r} stands twice")
        figures[figure.id] = figure
    for row in read_rows(folder / "drying.csv", _COLUMNS["drying.csv"]):
        dried = _drying(row, tables, foods)
        if dried.food in drying:
            raise row.bad("food", f"{dried.food!r} stands twice")
        drying[dried.food] = dried
    rows = read_rows(folder / "blanching.csv", _COLUMNS["blanching.csv"])
    return BatchTables(figures, drying, tuple(_blanching(row, tables, foods) for row in rows))


_FIGURE = Packing(Figure, trust=Trust)
_DRYING = Packing(DryingRow, trust=Trust)
_BLANCH = Packing(BlanchRow, trust=Trust)


def batchwork_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The tables as one part of the compiled file."""
    found = read_batchwork(folder, tables)
    packed = (
        tuple(map(_FIGURE.pack, found.figures.values())),
        tuple(map(_DRYING.pack, found.drying.values())),
        tuple(map(_BLANCH.pack, found.blanching)),
    )
    return {"batchwork": packed}


def unpack_batchwork(parts: Mapping[str, Any]) -> BatchTables:
    """The tables out of that part."""
    figures, drying, blanching = parts["batchwork"]
    return BatchTables(
        {one.id: one for one in map(_FIGURE.unpack, figures)},
        {one.food: one for one in map(_DRYING.unpack, drying)},
        tuple(map(_BLANCH.unpack, blanching)),
    )


@cache
def load_batchwork() -> BatchTables:
    """The tables that ship with the program, once a process."""
    parts = compiled()
    if "batchwork" in parts:
        return unpack_batchwork(parts)
    return read_batchwork(data_dir(), load_tables())
