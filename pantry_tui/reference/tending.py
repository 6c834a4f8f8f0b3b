"""data/tending.csv, compiled or read once: the small jobs of each method."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core.batchwork.tending import TendingRow
from pantry_tui.core.words import Group, Method, State, Trust
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, read_rows
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

#: The rows of each method.
Tending = dict[Method, tuple[TendingRow, ...]]

_COLUMNS = (
    *("job", "methods", "foods", "state", "low_f", "high_f", "after_days", "every_days"),
    *("last_days", "care_days", "how", "source_id", "trust"),
)


def _days(row: Row, column: str) -> int | None:
    number = row.number_or_none(column)
    if number is None:
        return None
    if number < 0 or number != int(number):
        raise row.bad(column, f"{number:g} is not a number of days")
    return int(number)


def _row(row: Row, tables: Tables, known: frozenset[str]) -> TendingRow:
    foods, methods = row.words("foods"), row.words("methods")
    for one in foods:
        if one not in known:
            raise row.bad("foods", f"{one!r} is no food of foods.csv, and no group")
    for one in methods:
        if one not in tuple(Method):
            raise row.bad("methods", f"{one!r} is no method")
    after, every = _days(row, "after_days"), _days(row, "every_days")
    if after is None or not foods or not methods or every == 0:
        raise row.bad("after_days", "a job needs its day, its foods and its methods")
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    return TendingRow(
        row.text("job", need=True),
        frozenset(Method(one) for one in methods),
        foods,
        row.word("state", State),
        row.number_or_none("low_f"),
        row.number_or_none("high_f"),
        after,
        every,
        _days(row, "last_days"),
        _days(row, "care_days"),
        row.text("how", need=True),
        source,
        row.word("trust", Trust),
    )


def read_tending(folder: Path, tables: Tables) -> Tending:
    """data/tending.csv, checked. Raises DataError naming file, row and column."""
    names = {food.name for food in tables.foods}
    known = frozenset({"*", *names, *(f"group:{one}" for one in Group)})
    found: dict[Method, list[TendingRow]] = defaultdict(list)
    for row in read_rows(folder / "tending.csv", _COLUMNS):
        one = _row(row, tables, known)
        for method in one.methods:
            found[method].append(one)
    return {method: tuple(rows) for method, rows in found.items()}


_ROW = Packing(TendingRow, methods=Method, state=State, trust=Trust)


def tending_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The table as a part of the compiled file."""
    found = read_tending(folder, tables)
    return {"tending": {how.value: tuple(map(_ROW.pack, rows)) for how, rows in found.items()}}


def unpack_tending(parts: Mapping[str, Any]) -> Tending:
    """The table out of that part."""
    packed = parts["tending"]
    return {Method(how): tuple(map(_ROW.unpack, rows)) for how, rows in packed.items()}


@cache
def load_tending() -> Tending:
    """The jobs that ship with the program, once a process."""
    parts = compiled()
    return unpack_tending(parts) if "tending" in parts else read_tending(data_dir(), load_tables())
