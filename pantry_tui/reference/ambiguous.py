"""Reads data/ambiguous.csv once: words that could be either of several foods, and so are asked."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.words import Method
from pantry_tui.errors import DataError, Unclear
from pantry_tui.paths import data_dir
from pantry_tui.reference.csvrows import read_rows
from pantry_tui.reference.names import _PREPARATION, _STOP
from pantry_tui.reference.tables import Tables, load_tables


@dataclass(frozen=True, slots=True)
class Ambiguous:
    """The foods a word could mean, in the order to offer them, and why it matters. `units`: it is
    so only in households of that kind ("metric"), "" in all."""

    foods: tuple[str, ...]
    why: str
    units: str = ""


def _folded(text: str) -> str:
    """Lower case, without marks and words of preparation. Plurals stay: "chillies" is a
    vegetable, "chilli" may be a dish."""
    words = re.findall(r"[^\W_]+", text.casefold())
    return " ".join(word for word in words if word not in _STOP | _PREPARATION)


def read_ambiguous(folder: Path, tables: Tables) -> dict[str, Ambiguous]:
    """The table under `folder` by folded word. Raises DataError naming file, row and column."""
    known = {food.name for food in tables.foods}
    found: dict[str, Ambiguous] = {}
    for row in read_rows(folder / "ambiguous.csv", ("words", "foods", "why", "units")):
        foods = row.words("foods")
        strange = next((food for food in foods if food not in known), None)
        if strange is not None:
            raise row.bad("foods", f"{strange!r} is no food of foods.csv")
        if len(set(foods)) < 2:
            raise row.bad("foods", "two or more foods are needed")
        units = row.text("units")
        if units not in ("", "us", "metric"):
            raise row.bad("units", f"{units!r} is not one of us, metric")
        meant = Ambiguous(foods, row.text("why", need=True), units)
        for word in row.words("words"):
            if not _folded(word):
                raise row.bad("words", f"{word!r} holds only words that are passed over")
            if found.setdefault(_folded(word), meant) is not meant:
                raise row.bad("words", f"{word!r} stands twice")
        if meant not in found.values():
            raise row.bad("words", "is empty and must not be")
    if not found:
        raise DataError("ambiguous.csv row 2, column words: one word is needed.")
    return found


@cache
def load_ambiguous() -> dict[str, Ambiguous]:
    """The table that ships with the program, read once a process."""
    return read_ambiguous(data_dir(), load_tables())


def could_be(text: str, units: str = "") -> Ambiguous | None:
    """The foods that `text` could be, words of preparation aside; None where it is plain, as it
    may be in a household of these `units`."""
    found = load_ambiguous().get(_folded(text))
    return found if found is not None and found.units in ("", units) else None


def choices(meant: Ambiguous, tables: Tables) -> tuple[str, ...]:
    """Its foods by names that are plain themselves: "hard cider" for cider."""
    by_name = {food.name: food for food in tables.foods}
    found = []
    for name in meant.foods:
        names = (name, *by_name[name].aliases)
        found.append(next((one for one in names if could_be(one) is None), name))
    return tuple(found)


def either(text: str, method: Method | None = None, units: str = "") -> Ambiguous | None:
    """The same as `could_be`, unless the method settles it: what ferments is no fresh juice."""
    return None if method is Method.ALCOHOL_FERMENT else could_be(text, units)


def refuse_either(text: str, tables: Tables, method: Method | None = None) -> None:
    """Raises Unclear where a word could be either of several foods."""
    meant = either(text, method)
    if meant is not None:
        named = choices(meant, tables)
        raise Unclear(asked(text, named, meant.why), "food", text, named)


def asked(text: str, named: tuple[str, ...], why: str) -> str:
    """The question as a sentence."""
    return f"{text[:40]!r} could be {' or '.join(named)}: say which. {why}"
