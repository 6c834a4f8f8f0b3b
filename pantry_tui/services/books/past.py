"""What came of each batch that was ever put up: what the books and the plan sum up.

A row for each batch lies beside the stock tables (store/past.py), made by the act that changed it,
so that nobody folds the log of ten years to know what was eaten in one.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from datetime import date, timedelta
from fractions import Fraction
from functools import cached_property, lru_cache
from typing import NamedTuple

from pantry_tui.core.amounts import Amount, exact_amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.words import Group, Method
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.came_of import row_of
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import log
from pantry_tui.store import past as table
from pantry_tui.store.store import reading

_day = date.fromisoformat
_amount = lru_cache(exact_amount)

#: How far back an unrecorded use is spread at most, in days.
_YEAR = 365


class Kept(NamedTuple):
    """`n` equal containers of a batch, one after another: the day they came, and were made as far
    as anybody knows, what each held at first, how they left."""

    n: int
    came: date
    born: date
    held: str  # at first, as the log has it: "3/2 lb"
    bulk: bool
    here: bool
    reserved: bool
    ended: date | None

    @property
    def first(self) -> Amount:
        return _amount(self.held)


class Gone(NamedTuple):
    """What left a container, by its place among those of its batch: None where that was all it held
    at first. `by` is the id of the stock check that found it gone, "" where somebody booked it."""

    at: int
    fate: str
    number: Fraction | None
    day: date
    why: str
    by: str


class Past:
    """One batch."""

    def __init__(self, row: table.Row) -> None:
        self._row = row
        self.id, self.code, self.food, self.size = row.batch, row.code, row.food, row.size
        self.group, self.method = Group(row.food_group), Method(row.method)
        self.born = _day(row.born)
        self._came = _day(row.came) if row.came else None
        self._ids = row.ids.split(" ") if row.ids else ()
        self.one_day = bool(row.made) or self._came is not None  # whether all are as old as `born`
        self.last = row.last  # ISO, the last day on which anything left it; "" for never

    @cached_property
    def process(self) -> tuple[tuple[str, str], ...]:
        return tuple((key, value) for key, value in json.loads(self._row.process))

    @cached_property
    def kept(self) -> Sequence[Kept]:
        """Its containers in their order."""
        return [
            Kept(
                n,
                _day(came),
                _day(self._row.made or came),
                first,
                "b" in marks,
                "h" in marks,
                "r" in marks,
                _day(ended) if ended else None,
            )
            for n, came, first, marks, ended in json.loads(self._row.held)
        ]

    def came(self, id_: str) -> date:
        """The day on which a container of it came into the store."""
        if self._came is not None:
            return self._came
        return next(one.came for n, one in enumerate(self.each, 1) if self.id_of(n) == id_)

    @cached_property
    def each(self) -> Sequence[Kept]:
        """The same, one by one."""
        return [one for one in self.kept for _ in range(one.n)]

    @cached_property
    def gone(self) -> Sequence[Gone]:
        """What left it, in the order it was recorded."""
        return [
            Gone(at, fate, None if number is None else Fraction(number), _day(day), why, by)
            for at, fate, number, day, why, by in json.loads(self._row.gone)
        ]

    @cached_property
    def rated(self) -> tuple[str, str]:
        """The day of the last word on it, and that word; "" for none."""
        day, said_of = json.loads(self._row.rated) if self._row.rated else ("", "")
        return day, said_of

    def id_of(self, number: int) -> str:
        """The id of a container by its number."""
        return f"{self.id}.{self._ids[number - 1] if self._ids else number}"


def past(p: Pantry) -> Mapping[str, Past]:
    """Every batch whose put-up stands, by its id."""
    ready(p)
    return p.once("past", lambda: {row.batch: Past(row) for row in _rows(p) if row.held})


def _rows(p: Pantry) -> Sequence[table.Row]:
    from pantry_tui.services.stock.tables import past_made

    if not past_made(p):  # a file that may not be written: folded in memory
        return [row_of(p, id_) for id_ in p.stock.batches]
    with reading(p.path):
        return list(table.rows(p.store.db))


def since_when(p: Pantry) -> Callable[[Gone, Kept], date]:
    """Since when what left may be gone: a count may have found it so long after."""
    counts = p.once("counts", lambda: _counts(p))

    def since(gone: Gone, kept: Kept) -> date:
        if not gone.by:
            return gone.day
        counted = counts.get(gone.by)
        earliest = max(counted or kept.born, kept.born, gone.day - timedelta(days=_YEAR))
        return min(earliest, gone.day)

    return since


def _counts(p: Pantry) -> dict[str, date]:
    """Of each stock check the day of the one before it in the same place."""
    found: dict[str, date] = {}
    last: dict[str, date] = {}
    with reading(p.path):
        events = log.of_kinds(p.store.db, ["count"])
    for event in events:
        payload = event.payload
        assert isinstance(payload, said.Count)
        if payload.place in last:
            found[event.id] = last[payload.place]
        last[payload.place] = event.day
    return found
