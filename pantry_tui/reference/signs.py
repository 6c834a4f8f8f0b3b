"""Reads data/signs.csv once: the signs of spoilage and the harmless ones."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from pantry_tui.core.safety.signs import DISPOSAL, Seal, Sign, SignVerdict, sign_words
from pantry_tui.core.words import Method, Trust
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.tables import Tables, _keys, _Row, _rows, load_tables

COLUMNS = (
    "sign_id", "method", "food", "seal", "sign", "means", "verdict", "do", "disposal",
    "suspect_batch", "hazard", "source_id", "trust",
)  # fmt: skip


def _methods(row: _Row) -> tuple[Method, ...]:
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


def _foods(row: _Row, known: set[str]) -> tuple[str, ...]:
    found = row.words("food")
    if not found:
        raise row.bad("food", "is empty and must not be")
    for key in found:
        if key not in known:
            raise row.bad("food", f"{key!r} is no food, class: or group: of foods.csv")
    return found


def _steps(row: _Row) -> tuple[str, ...]:
    found = tuple(step.strip() for step in row.text("do", need=True).split("|"))
    if not all(found):
        raise row.bad("do", "has an empty step")
    return found


def _disposal(row: _Row, verdict: SignVerdict) -> str:
    route = row.text("disposal", need=True)
    if route not in DISPOSAL:
        raise row.bad("disposal", f"{route!r} is not one of {', '.join(DISPOSAL)}")
    if route == "none" and verdict in (SignVerdict.DISCARD, SignVerdict.DO_NOT_TASTE):
        raise row.bad("disposal", "must name a route for what is thrown away")
    return route


def _suspect(row: _Row) -> bool:
    word = row.text("suspect_batch", need=True)
    if word not in ("yes", "no"):
        raise row.bad("suspect_batch", f"{word!r} is neither yes nor no")
    return word == "yes"


def _sign(row: _Row, tables: Tables, known: set[str]) -> Sign:
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
    known = _keys(tables.foods)
    found: dict[str, Sign] = {}
    by_words: dict[frozenset[str], list[Sign]] = {}
    for row in _rows(folder / "signs.csv", COLUMNS):
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


@cache
def load_signs() -> tuple[Sign, ...]:
    """The signs that ship with the program, read once a process."""
    return read_signs(data_dir(), load_tables())
