"""The canning tables, compiled or read once: tested processes, and what is advised against."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core.safety.jars import JARS
from pantry_tui.core.safety.measured import CANNERS
from pantry_tui.core.safety.process import PACKS, NotRecommended, ProcessRow
from pantry_tui.core.safety.process_names import ends_of, name_key
from pantry_tui.core.words import Trust
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, read_rows
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

#: (gauge, low, high) -> the pressures published for that band.
Bands = dict[tuple[str, int, int | None], set[int]]


def one_of(row: Row, column: str, allowed: tuple[str, ...]) -> str:
    value = row.text(column, need=True)
    if value not in allowed:
        raise row.bad(column, f"{value!r} is not one of {', '.join(allowed)}")
    return value


def _whole(row: Row, column: str) -> int | None:
    number = row.number_or_none(column)
    if number is None:
        return None
    if number < 0 or number != int(number):
        raise row.bad(column, f"{number:g} is not a whole number from 0 up")
    return int(number)


def _needed(row: Row, column: str) -> int:
    number = _whole(row, column)
    if number is None:
        raise row.bad(column, "is empty and must not be")
    return number


def _band(row: Row) -> tuple[int, int | None]:
    """Lowest and highest altitude in feet, both inclusive."""
    low, high = _needed(row, "altitude_min_ft"), _whole(row, "altitude_max_ft")
    if high is not None and high < low:
        raise row.bad("altitude_max_ft", f"{high} lies below altitude_min_ft")
    return low, high


def _source(row: Row, tables: Tables) -> str:
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    return source


def _foods(row: Row, known: frozenset[str]) -> tuple[str, ...]:
    foods = row.words("foods")
    for food in foods:
        if food not in known:
            raise row.bad("foods", f"{food!r} is no food of foods.csv")
    return foods


def _names(
    row: Row, food: str, foods: tuple[str, ...], more: tuple[str, ...] = ()
) -> frozenset[tuple[str, ...]]:
    """The keys of every name under which the row is found, and of how these may end."""
    every = (food, *foods, *row.words("aliases"), *more)
    return frozenset((*map(name_key, every), *(end for name in every for end in ends_of(name))))


def _more_names(folder: Path) -> dict[str, tuple[str, ...]]:
    """data/process_names.csv: what else a cook calls a published food. A name that means two of
    them is a bad cell, but for names that the tables leave to the form (tomatoes)."""
    found: dict[str, tuple[str, ...]] = {}
    taken: dict[tuple[str, ...], str] = {}
    for row in read_rows(folder / "process_names.csv", ("food", "names")):
        food, names = row.text("food", need=True), row.words("names")
        for name in names:
            if taken.setdefault(name_key(name), food) != food:
                raise row.bad("names", f"{name!r} already means {taken[name_key(name)]!r}")
        found[food] = (*found.get(food, ()), *names)
    return found


def _known(tables: Tables) -> frozenset[str]:
    return frozenset(food.name for food in tables.foods)


def _pressures(folder: Path, tables: Tables) -> Bands:
    """data/pressure.csv, by which the pressures of the process rows are checked."""
    found: Bands = defaultdict(set)
    columns = ("gauge", "food_class", "altitude_min_ft", "altitude_max_ft", "psi", "source_id")
    for row in read_rows(folder / "pressure.csv", columns):
        gauge = one_of(row, "gauge", ("dial", "weighted"))
        _source(row, tables)
        row.word("trust", Trust)
        found[(gauge, *_band(row))].add(_needed(row, "psi"))
    return found


def _psi(row: Row, canner: str, band: tuple[int, int | None], bands: Bands) -> int | None:
    psi = _whole(row, "psi")
    if canner == "boiling-water":
        if psi is not None:
            raise row.bad("psi", "must be empty for boiling water")
        return None
    published = bands.get((canner, *band), set())
    if psi not in published:
        raise row.bad("psi", f"{psi} is no pressure of pressure.csv for this gauge and band")
    return psi


def _process(
    row: Row,
    tables: Tables,
    known: frozenset[str],
    bands: Bands,
    also: Mapping[str, tuple[str, ...]],
) -> ProcessRow:
    food, foods = row.text("food", need=True), _foods(row, known)
    canner, band = one_of(row, "method", CANNERS), _band(row)
    minutes = _needed(row, "minutes")
    if minutes == 0:
        raise row.bad("minutes", "0 is no process")
    return ProcessRow(
        food=food,
        names=_names(row, food, foods, also.get(food, ())),
        pack=one_of(row, "pack", PACKS),
        jar=one_of(row, "jar", tuple(JARS)),
        canner=canner,
        low_ft=band[0],
        high_ft=band[1],
        minutes=minutes,
        psi=_psi(row, canner, band, bands),
        acidify=row.text("acidify", need=True),
        headspace_in=row.number_or_none("headspace_in"),
        option=row.text("option"),
        source=_source(row, tables),
        trust=row.word("trust", Trust),
        note=row.text("note"),
    )


def read_processes(folder: Path, tables: Tables) -> tuple[ProcessRow, ...]:
    """data/process.csv, checked. Raises DataError naming file, row and column."""
    bands, known, also = _pressures(folder, tables), _known(tables), _more_names(folder)
    columns = (
        *("food", "foods", "aliases", "pack", "jar", "method", "altitude_min_ft"),
        *("altitude_max_ft", "minutes", "psi", "acidify", "headspace_in", "option"),
        *("source_id", "trust", "note"),
    )
    taken: dict[tuple[str, ...], list[ProcessRow]] = defaultdict(list)
    found = []
    for row in read_rows(folder / "process.csv", columns):
        one = _process(row, tables, known, bands, also)
        same = taken[(one.food, one.pack, one.jar, one.canner, one.option)]
        if any(one.at(other.low_ft) or other.at(one.low_ft) for other in same):
            raise row.bad("altitude_min_ft", "its band overlaps another row for the same process")
        same.append(one)
        found.append(one)
    unknown = set(also) - {one.food for one in found}
    if unknown:
        raise DataError(f"process_names.csv, column food: {min(unknown)!r} has no process.")
    return tuple(found)


def _kinds(tables: Tables) -> Mapping[str, tuple[str, ...]]:
    """The foods that are a kind of each food."""
    found: dict[str, list[str]] = defaultdict(list)
    for food in tables.foods:
        if food.parent:
            found[food.parent].append(food.name)
    return {parent: tuple(names) for parent, names in found.items()}


def _with_kinds(foods: Iterable[str], kinds: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The foods and every kind of them: summer squash is advised against where zucchini is."""
    found = list(foods)
    for food in found:
        found += [kind for kind in kinds.get(food, ()) if kind not in found]
    return tuple(found)


def read_not_recommended(folder: Path, tables: Tables) -> tuple[NotRecommended, ...]:
    """data/not_recommended.csv, checked. Raises DataError naming file, row and column."""
    known, kinds, found = _known(tables), _kinds(tables), []
    columns = (
        *("food", "foods", "aliases", "plain_only", "reason", "alternative"),
        *("source_id", "trust"),
    )
    seen: set[tuple[str, ...]] = set()
    for row in read_rows(folder / "not_recommended.csv", columns):
        food = row.text("food", need=True)
        foods = _with_kinds(_foods(row, known), kinds)
        if name_key(food) in seen:
            raise row.bad("food", f"{food!r} stands twice")
        seen.add(name_key(food))
        found.append(
            NotRecommended(
                food=food,
                names=_names(row, food, foods),
                plain_only=one_of(row, "plain_only", ("yes", "no")) == "yes",
                reason=row.text("reason", need=True),
                alternative=row.text("alternative", need=True),
                source=_source(row, tables),
                trust=row.word("trust", Trust),
            )
        )
    return tuple(found)


_PROCESS = Packing(ProcessRow, trust=Trust)
_ADVICE = Packing(NotRecommended, trust=Trust)


def process_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The processes as parts of the compiled file: the rows that share all their names are one
    part, each row with its place in the table; "processes" has the number of these parts and
    which of them a name finds."""
    groups: dict[frozenset[tuple[str, ...]], list[tuple[int, tuple[Any, ...]]]] = defaultdict(list)
    for place, row in enumerate(read_processes(folder, tables)):
        groups[row.names].append((place, _PROCESS.pack(row)))
    named: dict[tuple[str, ...], tuple[int, ...]] = {}
    for number, names in enumerate(groups):
        for name in names:
            named[name] = (*named.get(name, ()), number)
    parts: dict[str, Any] = {"processes": (len(groups), named)}
    parts |= {f"processes/{number}": tuple(rows) for number, rows in enumerate(groups.values())}
    return parts


def _unpack(parts: Mapping[str, Any], numbers: Iterable[int]) -> tuple[ProcessRow, ...]:
    rows = sorted(
        (row for number in numbers for row in parts[f"processes/{number}"]),
        key=lambda row: row[0],
    )
    return tuple(_PROCESS.unpack(cells) for _, cells in rows)


def unpack_processes(parts: Mapping[str, Any]) -> tuple[ProcessRow, ...]:
    """All processes out of those parts."""
    return _unpack(parts, range(parts["processes"][0]))


def unpack_processes_named(parts: Mapping[str, Any], name: str) -> tuple[ProcessRow, ...]:
    """Those of one name, and nothing else is unpacked."""
    return _unpack(parts, parts["processes"][1].get(name_key(name), ()))


def not_recommended_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """What is advised against as a part of the compiled file."""
    return {"not_recommended": tuple(map(_ADVICE.pack, read_not_recommended(folder, tables)))}


def unpack_not_recommended(parts: Mapping[str, Any]) -> tuple[NotRecommended, ...]:
    """The same out of that part."""
    return tuple(map(_ADVICE.unpack, parts["not_recommended"]))


@cache
def load_processes() -> tuple[ProcessRow, ...]:
    """The processes that ship with the program, once a process."""
    parts = compiled()
    if "processes" in parts:
        return unpack_processes(parts)
    return read_processes(data_dir(), load_tables())


@lru_cache(maxsize=256)
def processes_named(name: str) -> tuple[ProcessRow, ...]:
    """Those of them that any spelling of `name` finds, in the order of the table. A put-up or a
    look-up needs no others."""
    parts = compiled()
    if "processes" in parts:
        return unpack_processes_named(parts, name)
    key = name_key(name)
    return tuple(row for row in load_processes() if key in row.names)


@cache
def load_not_recommended() -> tuple[NotRecommended, ...]:
    """What is advised against, once a process."""
    parts = compiled()
    if "not_recommended" in parts:
        return unpack_not_recommended(parts)
    return read_not_recommended(data_dir(), load_tables())
