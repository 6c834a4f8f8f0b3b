"""A list of stock as a window: how long it is, and the rows that are asked for.

Who shows a list takes what fits its screen; nothing holds the whole of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import TYPE_CHECKING, Protocol

from pantry_tui.services.rows import DueRow, Shelf

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry

#: How a list of stock may be sorted; the first is the everyday one.
ORDERS = ("what to eat first", "date", "food", "place", "verdict", "method")


class Lines(Protocol):
    """Rows in an order, some at a time."""

    @property
    def total(self) -> int:
        """How many rows there are."""
        ...

    def rows(self, start: int, stop: int) -> Sequence[DueRow]:
        """The rows from `start` up to `stop`, as many of them as there are."""
        ...

    def where(self, container: str) -> int | None:
        """The row in which "7C/1" stands, or the first one of "7C"; None where none does."""
        ...

    def heads(self) -> Sequence[tuple[str, int]]:
        """The words that the rows stand under in this order, and how many rows under each."""
        ...


def lines(p: Pantry, *, order: str = ORDERS[0], text: str = "", place: str | None = None) -> Lines:
    """The stock in one of `ORDERS`: what holds every word of `text`, or all; in `place` and what
    is in it, or everywhere. Raises BadInput for a place that is not known."""
    from pantry_tui.services.stock import view

    rows = view.due(p, place=place)
    if text:
        found = {row.container_ids for row in view.find(p, text)}
        rows = [row for row in rows if row.container_ids in found]
    return Held(sorted(rows, key=view.ORDERS[order]), order)


def in_store(p: Pantry, *, text: str = "", place: str | None = None) -> int:
    """How many containers the same list stands for."""
    found = lines(p, text=text, place=place)
    return sum(row.count for row in found.rows(0, found.total))


def shelves(p: Pantry) -> list[Shelf]:
    """Every place in path order with how many containers it holds itself, its rows left out."""
    from dataclasses import replace

    from pantry_tui.services.stock import view

    return [replace(shelf, rows=()) for shelf in view.shelves(p)]


class Held:
    """Rows that are held already."""

    def __init__(self, rows: Sequence[DueRow], order: str) -> None:
        self._rows, self._order = rows, order
        self._at: dict[str, int] = {}
        for number, row in enumerate(rows):
            for name in (row.code, *row.container_ids):
                self._at.setdefault(name, number)

    @property
    def total(self) -> int:
        return len(self._rows)

    def rows(self, start: int, stop: int) -> Sequence[DueRow]:
        return self._rows[max(start, 0) : max(stop, 0)]

    def where(self, container: str) -> int | None:
        return self._at.get(container)

    def heads(self) -> Sequence[tuple[str, int]]:
        found = groupby(self._rows, key=lambda row: _head(row, self._order))
        return [(word, sum(1 for _ in rows)) for word, rows in found]


def _head(row: DueRow, order: str) -> str:
    """What a row stands under where the list is sorted by it; no heads in order of date."""
    fields = {
        "food": row.food,
        "place": row.place,
        "verdict": row.verdict.value,
        "method": row.method.value,
    }
    return fields.get(order, "")
