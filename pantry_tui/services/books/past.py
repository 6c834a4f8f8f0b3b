"""What came of each batch that was ever put up: what the books and the plan sum up.

A row for each batch lies beside the stock tables (store/past.py), made by the act that changed it,
so that nobody folds the log of ten years to know what was eaten in one.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from fractions import Fraction
from functools import cached_property, lru_cache
from typing import Any, NamedTuple

from pantry_tui.core.amounts import Amount, exact_amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.words import METHODS, Group
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.came_of import row_of
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import log
from pantry_tui.store import past as table
from pantry_tui.store.store import reading

_day = date.fromisoformat
_amount = lru_cache(exact_amount)
_decode = json.JSONDecoder().raw_decode  # of short texts by the thousand, `json.loads` takes twice


def _parts(text: str) -> Any:
    found, _ = _decode(text)
    return found


#: Reasons that say there was too much of it, not that it was made badly.
TOO_MUCH = ("past its date", "nobody would eat it")

#: How far back an unrecorded use is spread at most, in days.
_YEAR = 365


class Came(NamedTuple):
    """`n` containers of a batch that are alike, one after another: the day they came, and were made
    as far as anybody knows, and what each held."""

    n: int
    day: date
    born: date
    held: str  # as the log has it: "3/2 lb"
    bulk: bool

    @property
    def first(self) -> Amount:
        return _amount(self.held)


class Kept(NamedTuple):
    """A container: how it came, whether it is here and kept apart, the day on which it was used
    up, and what is left of what was begun ("" where nothing was taken)."""

    came: Came
    here: bool
    reserved: bool
    ended: date | None
    begun: str

    @property
    def left(self) -> float:
        """Which part of what it held is left in what is here."""
        return float(_amount(self.begun).number / self.came.first.number) if self.begun else 1.0


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
        self.group, self.method = Group(row.food_group), METHODS[row.method]
        self.born = _day(row.born)
        self._ids = row.ids.split(" ") if row.ids else ()
        self.last = row.last  # ISO, the last day on which anything left it; "" for never

    @cached_property
    def process(self) -> tuple[tuple[str, str], ...]:
        return tuple((key, value) for key, value in _parts(self._row.process))

    @cached_property
    def came(self) -> Sequence[Came]:
        """How its containers came, in their order."""
        made = _day(self._row.made) if self._row.made else None
        return [
            Came(n, _day(day), made or _day(day), held, bool(bulk))
            for n, day, held, bulk in _parts(self._row.came)
        ]

    @cached_property
    def kept(self) -> Sequence[Kept]:
        """Its containers in their order."""
        ends = [
            ("h" in marks, "r" in marks, _day(ended) if ended else None, begun)
            for n, marks, ended, begun in _parts(self._row.ends)
            for _ in range(n)
        ]
        came = [one for one in self.came for _ in range(one.n)]
        return [Kept(one, *end) for one, end in zip(came, ends, strict=True)]

    def came_at(self, at: int) -> Came:
        """How a container came, by its place among them."""
        return self.came[0] if len(self.came) == 1 else self.kept[at].came

    def came_as(self, id_: str) -> Came:
        """How a container came, by its id."""
        if len(self.came) == 1:
            return self.came[0]
        ids = [self.id_of(n) for n in range(1, len(self.kept) + 1)]
        return self.kept[ids.index(id_)].came

    @property
    def apart(self) -> int:
        """How many stand and are kept apart."""
        return sum(one.here for one in self.kept if one.reserved) if "r" in self._row.ends else 0

    @property
    def stays(self) -> set[tuple[date, date | None]]:
        """From when to when its containers stood, as far as anybody knows, each such stay once;
        None for what was not used up."""
        if len(self.came) > 1:
            return {(one.came.born, one.ended) for one in self.kept}
        ends = {ended for _, _, ended, _ in _parts(self._row.ends)}
        return {(self.came[0].born, _day(ended) if ended else None) for ended in ends}

    @cached_property
    def gone(self) -> Sequence[Gone]:
        """What left it, in the order it was recorded."""
        return [
            Gone(at, fate, None if number is None else Fraction(number), _day(day), why, by)
            for at, fate, number, day, why, by in _parts(self._row.gone)
        ]

    @cached_property
    def rated(self) -> tuple[str, str]:
        """The day of the last word on it, and that word; "" for none."""
        day, said_of = _parts(self._row.rated) if self._row.rated else ("", "")
        return day, said_of

    def id_of(self, number: int) -> str:
        """The id of a container by its number."""
        return f"{self.id}.{self._ids[number - 1] if self._ids else number}"


def past(p: Pantry) -> Mapping[str, Past]:
    """Every batch whose put-up stands, by its id."""
    ready(p)
    return p.once("past", lambda: {row.batch: Past(row) for row in _rows(p) if row.came})


def by_food(p: Pantry) -> Mapping[str, Sequence[Past]]:
    """The same by the name of the food."""

    def gather() -> dict[str, list[Past]]:
        found: dict[str, list[Past]] = defaultdict(list)
        for batch in past(p).values():
            found[batch.food].append(batch)
        return found

    ready(p)
    return p.once("past by food", gather)


def past_of(p: Pantry, batches: Iterable[str]) -> Iterator[Past]:
    """These batches alone, each read when its turn comes."""
    from pantry_tui.services.stock.tables import past_made

    ready(p)
    made = past_made(p)
    for id_ in batches:
        with reading(p.path):
            row = table.row(p.store.db, id_) if made else row_of(p, id_)
        yield Past(row)


def _rows(p: Pantry) -> Sequence[table.Row]:
    from pantry_tui.services.stock.tables import past_made

    if not past_made(p):  # a file that may not be written: folded in memory
        return [row_of(p, id_) for id_ in p.stock.batches]
    with reading(p.path):
        return table.rows(p.store.db)


def since_when(p: Pantry) -> Callable[[Gone, date], date]:
    """Since when what left may be gone: a count may have found it so long after."""
    counts = p.once("counts", lambda: _counts(p))

    def since(gone: Gone, born: date) -> date:
        if not gone.by:
            return gone.day
        counted = counts.get(gone.by, born)
        return min(max(counted, born, gone.day - timedelta(days=_YEAR)), gone.day)

    return since


def _counts(p: Pantry) -> dict[str, date]:
    """Of each stock check the day of the last one before it that looked at all of the place."""
    found: dict[str, date] = {}
    last: dict[str, date] = {}
    with reading(p.path):
        events = log.of_kinds(p.store.db, ["count"])
    for event in events:
        payload = event.payload
        assert isinstance(payload, said.Count)
        if payload.place in last:
            found[event.id] = last[payload.place]
        if not payload.part:
            last[payload.place] = event.day
    return found
