"""data/outage.csv, compiled or read once: hold hours, and what a power cut does to each item."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from functools import cache
from typing import TYPE_CHECKING, Any, TypeVar

from pantry_tui.core import scope
from pantry_tui.core.safety.outage import LADDER, Action, Condition, OutageRule, hold_hours
from pantry_tui.core.words import Climate, Method, State, Trust
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, read_rows
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.reading import rule_keys
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

_Word = TypeVar("_Word", bound=StrEnum)

COLUMNS = (
    "rule_id", "appliance", "item", "foods", "methods", "states", "condition", "verdict",
    "hours", "note", "source_id", "trust",
)  # fmt: skip

#: The rows that hold hours, with what core reckons: (appliance, hours).
_SHUT = {
    Condition.SHUT: (Climate.FRIDGE, hold_hours(Climate.FRIDGE, False)),
    Condition.SHUT_FULL: (Climate.FREEZER, hold_hours(Climate.FREEZER, True)),
    Condition.SHUT_HALF: (Climate.FREEZER, hold_hours(Climate.FREEZER, False)),
}


def _foods(row: Row, known: set[str]) -> tuple[str, ...]:
    found = row.words("foods")
    if not found:
        raise row.bad("foods", "is empty and must not be")
    for key in found:
        if not key.startswith("named:") and not known.issuperset(scope.parts(key)):
            raise row.bad("foods", f"{key!r} is no food, class:, group: ... of foods.csv")
        if key.startswith("named:") and key[6:] in known:
            raise row.bad("foods", f"{key[6:]!r} is a food of foods.csv: write it without named:")
    return found


def _each(row: Row, column: str, kind: type[_Word]) -> frozenset[_Word]:
    try:
        return frozenset(kind(text) for text in row.words(column))
    except ValueError as error:
        raise row.bad(column, str(error)) from None


def _condition(row: Row, appliance: Climate) -> Condition:
    condition: Condition = row.word("condition", Condition)
    shut = _SHUT.get(condition)
    fits = shut[0] is appliance if shut else condition in LADDER[appliance]
    if not fits:
        raise row.bad("condition", f"{condition} is not for a {appliance}")
    if shut and row.number_or_none("hours") != shut[1]:
        raise row.bad("hours", f"must be {shut[1]:g}, the figure that is reckoned with")
    return condition


def _rule(row: Row, tables: Tables, known: set[str]) -> OutageRule:
    appliance: Climate = row.word("appliance", Climate)
    if appliance not in LADDER:
        raise row.bad("appliance", f"{appliance} is neither fridge nor freezer")
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    condition = _condition(row, appliance)
    return OutageRule(
        id=row.text("rule_id", need=True),
        appliance=appliance,
        item=row.text("item", need=condition not in _SHUT),
        foods=_foods(row, known),
        methods=_each(row, "methods", Method),
        states=_each(row, "states", State),
        condition=condition,
        action=row.word("verdict", Action),
        hours=row.number_or_none("hours"),
        note=row.text("note", need=True),
        source=source,
        trust=row.word("trust", Trust),
    )


def read_outage(folder: Path, tables: Tables) -> tuple[OutageRule, ...]:
    """The table under `folder`, checked. Raises DataError naming file, row and column."""
    path = folder / "outage.csv"
    known = rule_keys(tables.foods)
    found: dict[str, OutageRule] = {}
    for row in read_rows(path, COLUMNS):
        rule = _rule(row, tables, known)
        if rule.id in found:
            raise row.bad("rule_id", f"{rule.id!r} stands twice")
        found[rule.id] = rule
    for condition in _SHUT:
        if sum(rule.condition is condition for rule in found.values()) != 1:
            raise DataError(f"{path.name} row 1, column condition: one {condition} row is needed.")
    return tuple(found.values())


_OUTAGE = Packing(
    OutageRule,
    appliance=Climate,
    methods=Method,
    states=State,
    condition=Condition,
    action=Action,
    trust=Trust,
)


def outage_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The table as a part of the compiled file."""
    return {"outage": tuple(map(_OUTAGE.pack, read_outage(folder, tables)))}


def unpack_outage(parts: Mapping[str, Any]) -> tuple[OutageRule, ...]:
    """The table out of that part."""
    return tuple(map(_OUTAGE.unpack, parts["outage"]))


@cache
def load_outage() -> tuple[OutageRule, ...]:
    """The table that ships with the program, once a process."""
    parts = compiled()
    return unpack_outage(parts) if "outage" in parts else read_outage(data_dir(), load_tables())
