"""data/signs.csv, compiled or read once: the signs of spoilage and the harmless ones."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from pantry_tui.core.safety.signs import DISPOSAL, Seal, Sign, SignVerdict, sign_words
from pantry_tui.core.words import Method, Trust
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.csvrows import Row, read_rows
from pantry_tui.reference.packing import Packing
from pantry_tui.reference.reading import rule_keys
from pantry_tui.reference.tables import Tables, load_tables

if TYPE_CHECKING:
    from pathlib import Path

COLUMNS = (
    "sign_id", "method", "food", "seal", "sign", "means", "verdict", "do", "disposal",
    "suspect_batch", "hazard", "source_id", "trust",
)  # fmt: skip


def _methods(row: Row) -> tuple[Method, ...]:
    """The methods named, or all of them for `*`."""
    named = row.words("method")
    if named == ("*",):
        return tuple(Method)
    for word in named:
        if word not in tuple(Method):
            raise row.bad("method", f"{word!r} is no method")
    if not named:
        raise row.bad("method", "is empty and must not be")
    return tuple(Method(word) for word in named)


def _foods(row: Row, known: set[str]) -> tuple[str, ...]:
    found = row.words("food")
    if not found:
        raise row.bad("food", "is empty and must not be")
    for key in found:
        if key not in known:
            raise row.bad("food", f"{key!r} is no food, class: or group: of foods.csv")
    return found


def _steps(row: Row) -> tuple[str, ...]:
    found = tuple(step.strip() for step in row.text("do", need=True).split("|"))
    if not all(found):
        raise row.bad("do", "has an empty step")
    return found


def _disposal(row: Row, verdict: SignVerdict) -> str:
    route = row.text("disposal", need=True)
    if route not in DISPOSAL:
        raise row.bad("disposal", f"{route!r} is not one of {', '.join(DISPOSAL)}")
    if route == "none" and verdict in (SignVerdict.DISCARD, SignVerdict.DO_NOT_TASTE):
        raise row.bad("disposal", "must name a route for what is thrown away")
    return route


def _suspect(row: Row) -> bool:
    word = row.text("suspect_batch", need=True)
    if word not in ("yes", "no"):
        raise row.bad("suspect_batch", f"{word!r} is neither yes nor no")
    return word == "yes"


def _sign(row: Row, tables: Tables, known: set[str]) -> Sign:
    source = row.text("source_id", need=True)
    if source not in tables.sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    trust: Trust = row.word("trust", Trust)
    if trust is Trust.HOUSEHOLD:
        raise row.bad("trust", "household is not for a published sign")
    verdict: SignVerdict = row.word("verdict", SignVerdict)
    return Sign(
        id=row.text("sign_id", need=True),
        methods=_methods(row),
        foods=_foods(row, known),
        seal=row.word("seal", Seal),
        words=row.text("sign", need=True),
        means=row.text("means", need=True),
        verdict=verdict,
        steps=_steps(row),
        disposal=_disposal(row, verdict),
        suspect_batch=_suspect(row),
        hazard=row.text("hazard", need=True),
        source=source,
        trust=trust,
    )


def _clash(sign: Sign, other: Sign) -> bool:
    """Whether the same words could be said of the same container and mean two things."""
    seals = sign.seal is other.seal or Seal.ANY in (sign.seal, other.seal)
    anything = "*" in (*sign.foods, *other.foods)
    foods = anything or not set(sign.foods).isdisjoint(other.foods)
    methods = not set(sign.methods).isdisjoint(other.methods)
    return seals and foods and methods


def read_signs(folder: Path, tables: Tables) -> tuple[Sign, ...]:
    """The table under `folder`, checked. Raises DataError naming file, row and column."""
    known = rule_keys(tables.foods)
    found: dict[str, Sign] = {}
    by_words: dict[frozenset[str], list[Sign]] = {}
    for row in read_rows(folder / "signs.csv", COLUMNS):
        sign = _sign(row, tables, known)
        if sign.id in found:
            raise row.bad("sign_id", f"{sign.id!r} stands twice")
        same = by_words.setdefault(sign_words(sign.words), [])
        if any(_clash(sign, other) for other in same):
            raise row.bad("sign", f"{sign.words!r} stands twice for the same food and method")
        same.append(sign)
        found[sign.id] = sign
    if not found:
        raise DataError("signs.csv row 1, column sign_id: no sign stands below it.")
    return tuple(found.values())


_SIGN = Packing(Sign, methods=Method, seal=Seal, verdict=SignVerdict, trust=Trust)


def signs_parts(folder: Path, tables: Tables) -> dict[str, Any]:
    """The table as a part of the compiled file."""
    return {"signs": tuple(map(_SIGN.pack, read_signs(folder, tables)))}


def unpack_signs(parts: Mapping[str, Any]) -> tuple[Sign, ...]:
    """The table out of that part."""
    return tuple(map(_SIGN.unpack, parts["signs"]))


@cache
def load_signs() -> tuple[Sign, ...]:
    """The signs that ship with the program, once a process."""
    parts = compiled()
    return unpack_signs(parts) if "signs" in parts else read_signs(data_dir(), load_tables())
