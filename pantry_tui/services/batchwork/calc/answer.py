"""What a calculation answers: figures, each with its formula and where it is from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from pantry_tui.core.batchwork.kitchen import to
from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.words import Trust
from pantry_tui.reference.batchwork import BatchTables, Figure
from pantry_tui.reference.tables import Tables

ARITHMETIC = "Arithmetic of weights: no published figure is in it."
NOTHING = "No published figure."
#: How the same figure is reached in the other system's unit: ounces, °C, kPa.
OTHER_SCALES = ("28.3495 g are an ounce", "(°F - 32) x 5 / 9", "6.895 kPa are a psi")


class Books(NamedTuple):
    """The tables a calculation reads, and what is known of the household: altitude in feet (None:
    nobody said), people at table, "us" or "metric" ("": nobody said)."""

    tables: Tables
    batch: BatchTables
    altitude_ft: int | None = None
    people: int | None = None
    units: str = ""

    def cite(self, row: Any) -> str:
        """A row's source with its trust."""
        trust: Trust = row.trust
        return f"{self.tables.sources[row.source]} ({trust.shown})"

    def figure(self, id_: str) -> Figure:
        return self.batch.figures[id_]


class Line(NamedTuple):
    """One figure: what it is, how much (None: nothing is published), how it was reached."""

    what: str
    answer: float | str | None
    unit: str
    formula: str = ""
    source: str = ARITHMETIC

    @property
    def cell(self) -> float | str | None:
        """The answer, a whole number as such."""
        return (
            self.answer
            if self.answer is None or isinstance(self.answer, str)
            else tidy(self.answer)
        )

    @property
    def shown(self) -> str:
        """ "15 g"; "no published figure" where there is none."""
        if self.answer is None:
            return "no published figure"
        cell = self.cell
        if self.unit in ("g", "ml") and isinstance(cell, float) and cell >= 100:
            cell = round(cell)  # no kitchen weighs a hundredth of a gram
        return f"{cell} {self.unit}".strip()


@dataclass(frozen=True)
class Answer:
    """The first line is the answer; `also` stands beside it. `record` is what a batch that is put
    up from it may carry (the keys of a process record). `refused` has a reason, or is "" ."""

    first: Line
    also: tuple[Line, ...] = ()
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    record: Mapping[str, str] = field(default_factory=dict)

    @property
    def lines(self) -> tuple[Line, ...]:
        return (self.first, *self.also)

    def as_data(self) -> dict[str, Any]:
        """The command contract's JSON."""
        first, *also = [line._asdict() | {"answer": line.cell} for line in self.lines]
        return {
            **first,
            "also": also,
            "notes": list(self.notes),
            "cautions": list(self.cautions),
            "record": dict(self.record),
        }


def tidy(number: float) -> float:
    """Two decimals, three below one; whole numbers as such."""
    rounded = round(number, 2 if abs(number) >= 1 else 3)
    return int(rounded) if rounded == int(rounded) else rounded


def weight_unit(like: str) -> str:
    """The unit for a weight beside what was typed in `like`: grams beside grams and litres and
    cups, ounces beside pounds."""
    return "oz" if like in ("lb", "oz", "stone") else "g"


def weigh(what: str, grams: float, like: str, formula: str, source: str = ARITHMETIC) -> Line:
    """A weight, in grams or ounces after what was typed."""
    unit = weight_unit(like)
    return Line(what, tidy(to(grams, unit)), unit, formula, source)


def other_weight(what: str, grams: float, like: str) -> Line:
    """The same weight on the other kind of scales."""
    unit = "g" if weight_unit(like) == "oz" else "oz"
    return Line(f"{what}, the same", tidy(to(grams, unit)), unit, OTHER_SCALES[0])


def span(low: float, high: float) -> float | str:
    """A published range as one cell: 3, "3 to 4"."""
    return tidy(low) if low == high else f"{tidy(low):g} to {tidy(high):g}"


def spoons(books: Books, grams: float) -> Line:
    """Salt by the spoon: rough, since grains differ."""
    a_spoon, a_cup = books.figure("spoon-salt-tbsp"), books.figure("spoon-salt-cup")
    small = books.figure("spoon-salt-tsp")
    if grams >= a_cup.low:
        unit, row = "cup", a_cup
    elif grams >= a_spoon.low:
        unit, row = "tbsp", a_spoon
    else:
        unit, row = "tsp", small
    return Line(
        "salt by the spoon, rough: weigh it where you can",
        tidy(round(grams / row.low, 1)),
        unit,
        f"{row.low:g} g of table or pickling salt a {unit}; coarse salt weighs less",
        books.cite(row),
    )
