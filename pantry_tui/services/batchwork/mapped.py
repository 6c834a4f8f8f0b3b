"""Which column of a household's own list is taken as what, and what was said of it the last time.

What a person says of a list is kept in the store under its headings, so that the next list with the
same ones is read alike. It is no fact of the stock: it is in no log, and undo leaves it alone.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.bare_units import UNITS, read_units
from pantry_tui.services.batchwork.columns import (
    FIELDS,
    Written,
    alike,
    guess,
    how_written,
    left_out,
    mapping,
    of_detail,
    open_rows,
)
from pantry_tui.services.batchwork.detail_columns import DETAILS
from pantry_tui.services.batchwork.unknown_columns import in_note
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Ask

ORDERS = ("dmy", "mdy", "ymd")
#: So many rows below the headings are shown.
SHOWN = 5


@dataclass(frozen=True, slots=True)
class Sheet:
    """A list as it was found: how it is written, its headings, and its first rows, each with the
    number of its line."""

    path: Path
    written: Written
    headings: tuple[str, ...]
    first: tuple[tuple[int, tuple[str, ...]], ...]

    @property
    def width(self) -> int:
        """How many columns there are, those without a heading too."""
        return max(len(self.headings), *(len(cells) for _, cells in self.first))

    def heading(self, column: int) -> str:
        """What a column is called: its heading, else its number from 1."""
        named = self.headings[column] if column < len(self.headings) else ""
        return named or f"column {column + 1}"


@dataclass(frozen=True, slots=True)
class Taken:
    """Which column, counted from 0, is taken as which field. `said` by a person and `left_out` by
    one; the other headings are guessed. `order` is how days are written, "" where nobody said;
    `units` are those of bare numbers, by field; `recalled`: all of it was said of another list."""

    headings: tuple[str, ...]
    said: Mapping[str, int] = field(default_factory=dict)
    left_out: frozenset[int] = frozenset()
    order: str = ""
    recalled: bool = False
    units: Mapping[str, str] = field(default_factory=dict)

    @property
    def fields(self) -> dict[str, int]:
        """Field -> column; a guess gives way to what was said."""
        guessed = guess(list(self.headings), {*self.said.values(), *self.left_out})
        return {name: at for name, at in guessed.items() if name not in self.said} | {**self.said}

    @property
    def noted(self) -> list[int]:
        """The columns that are no field, whose cells are kept in the note."""
        return in_note(self.headings, self.fields, self.left_out)

    def field_of(self, column: int) -> str:
        """The field that a column is taken as, "" for none."""
        return next((name for name, at in self.fields.items() if at == column), "")

    @property
    def changed(self) -> bool:
        """Whether anything of it was said of this very list."""
        said = self.said or self.left_out or self.order or self.units
        return not self.recalled and bool(said)

    def but(self, column: int, name: str) -> Taken:
        """With that column as that field, or left out (""); the column that was the field before
        is left out."""
        was = self.fields.get(name) if name else column
        said = {one: at for one, at in self.said.items() if at != column and one != name}
        left_out = self.left_out - {column} | ({was} if was is not None else set())
        if name:
            said[name] = column
            left_out -= {column}
        return replace(self, said=said, left_out=left_out, recalled=False)

    def in_order(self, order: str) -> Taken:
        """With days written in that order."""
        return replace(self, order=order, recalled=False)

    def in_units(self, units: Mapping[str, str]) -> Taken:
        """With bare numbers of some fields in those units."""
        return replace(self, units={**self.units, **units}, recalled=False)

    def asks(self) -> list[Ask]:
        """What must be said before a row can be read: which column is the food, and which of two
        that bear one heading, or name one detail of a process, is meant."""
        fields, found = self.fields, []
        if "food" not in fields and "line" not in fields:
            found.append(Ask("column", "food", self.headings))
        for name, column in fields.items():
            same = [one for one in self._alike(name, column) if one not in self.left_out]
            if name not in self.said and len(same) > 1:
                found.append(Ask("column", name, tuple(str(one + 1) for one in same)))
        return found

    def _alike(self, name: str, column: int) -> list[int]:
        spoken_for, find = self.said.values(), of_detail if name in DETAILS else alike
        same = find(list(self.headings), column) if column < len(self.headings) else []
        return [one for one in same if one not in spoken_for]


def look_at(path: Path) -> Sheet:
    """The list as it is written. Raises BadInput for what is none, or has no rows."""
    head: list[str] = []
    first: list[tuple[int, tuple[str, ...]]] = []
    for number, cells in open_rows(path):
        if not head:
            head = cells
            continue
        first.append((number, tuple(cells)))
        if len(first) == SHOWN:
            break
    if not head or not first:
        raise BadInput(f"{path.name} holds no rows below its headings.")
    written = how_written(path, (list(cells) for _, cells in first))
    return Sheet(path, written, tuple(head), tuple(first))


def begin(p: Pantry, sheet: Sheet, columns: str = "", order: str = "", units: str = "") -> Taken:
    """What each column is taken as: as it was said of the last list with these headings, and what
    is said now ("food=Item,count=Qty") over it. Raises BadInput for words that name no column."""
    if order and order not in ORDERS:
        raise BadInput(f"{order!r} is no way to write days: use dmy, mdy or ymd.")
    taken = _recalled(p, sheet.headings)
    if columns:
        told = mapping(columns, list(sheet.headings))
        out = left_out(columns, list(sheet.headings))
        heard = {*told.values()}
        earlier = {name: at for name, at in taken.said.items() if at not in heard | out}
        taken = replace(
            taken, said=earlier | told, left_out=(taken.left_out | out) - {*told.values()}
        )
    told_units = read_units(units)
    return replace(taken, order=order or taken.order, units={**taken.units, **told_units})


def keep(p: Pantry, taken: Taken) -> None:
    """Remember it for lists with these headings, where anything was said of them."""
    if not (taken.said or taken.left_out or taken.order or taken.units):
        return
    p.store.keep_draft(
        _name(taken.headings),
        {
            "headings": list(taken.headings),
            "said": dict(taken.said),
            "left_out": sorted(taken.left_out),
            "order": taken.order,
            "units": dict(taken.units),
        },
    )


def _name(headings: Sequence[str]) -> str:
    plain = "\n".join(" ".join(one.casefold().split()) for one in headings)
    return f"list:{hashlib.sha256(plain.encode('utf-8', 'replace')).hexdigest()[:32]}"


def _recalled(p: Pantry, headings: tuple[str, ...]) -> Taken:
    """What was said of the last list with these headings; of what another program kept there,
    nothing."""
    match p.store.draft(_name(headings)):
        case {"said": dict(said), "left_out": list(left_out), "order": str(order), **more}:
            return replace(_read(headings, said, left_out, order), units=_units(more.get("units")))
    return Taken(headings)


def _units(kept: object) -> dict[str, str]:
    pairs = kept.items() if isinstance(kept, dict) else ()
    return {name: unit for name, unit in pairs if unit in UNITS.get(name, ())}


def _read(
    headings: tuple[str, ...], said: dict[Any, Any], left_out: list[Any], order: str
) -> Taken:
    fields = {
        name: at for name, at in said.items() if name in FIELDS and isinstance(at, int) and at >= 0
    }
    out = frozenset(at for at in left_out if isinstance(at, int))
    return Taken(headings, fields, out, order if order in ORDERS else "", recalled=True)
