"""What came of each batch that was ever put up: what the books and the plan sum up.

A row for each batch lies beside the stock tables (store/past.py), made by the act that changed it,
so that nobody folds the log of ten years to know what was eaten in one.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from fractions import Fraction
from functools import cached_property, lru_cache
from itertools import groupby
from typing import NamedTuple

from pantry_tui.core.amounts import Amount, exact_amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import EMPTY, FATE_OF, ONE
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import Group, Method
from pantry_tui.services.books.rating import beside
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.standing import Held
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
        return self._came or self.each[self.ids.index(id_)].came

    @cached_property
    def _came(self) -> date | None:
        """The same of all of them, None where they came on several days."""
        days = {one.came for one in self.kept}
        return days.pop() if len(days) == 1 else None

    @cached_property
    def each(self) -> Sequence[Kept]:
        """The same, one by one."""
        return [one for one in self.kept for _ in range(one.n)]

    @property
    def gone(self) -> Iterator[Gone]:
        """What left it, in the order it was recorded."""
        for at, fate, number, day, why, count in json.loads(self._row.gone):
            part = None if number is None else Fraction(number)
            yield Gone(at, fate, part, _day(day), why, count)

    @cached_property
    def rated(self) -> tuple[str, str]:
        """The day of the last word on it, and that word; "" for none."""
        day, said_of = json.loads(self._row.rated) if self._row.rated else ("", "")
        return day, said_of

    @cached_property
    def ids(self) -> Sequence[str]:
        """Its containers' ids, in their order."""
        numbered = f"{self.id}."
        if self._row.ids:
            return [numbered + one for one in self._row.ids.split(" ")]
        return [f"{numbered}{n}" for n in range(1, len(self.each) + 1)]


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


def row_of(p: Pantry, id_: str) -> table.Row:
    """The row of a batch as its log has it; nothing in it where its put-up was taken back."""
    held = p.load(id_)
    if held is None:
        return table.Row(id_)
    batch, containers = held[0], list(held[1].values())
    with reading(p.path):
        events = standing(log.of_batch(p.store.db, id_))
    gone = _gone(held, events)
    ids = [one.id.rpartition(".")[2] for one in containers]
    numbered = ids == [str(n) for n in range(1, len(ids) + 1)]
    runs = [(len(list(some)), *one) for one, some in groupby(containers, _as_kept)]
    return table.Row(
        id_,
        batch.code,
        batch.food.name,
        batch.food.group.value,
        batch.method.value,
        batch.size,
        _json(batch.process),
        batch.made.isoformat() if batch.made else "",
        born(batch, containers[0]).isoformat(),
        max((one[3] for one in gone), default=""),
        _json([batch.rated[-1].day.isoformat(), beside(batch)]) if batch.rated else "",
        _json(runs),
        _json(gone),
        "" if numbered else " ".join(ids),
    )


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def born(batch: Batch, container: Container) -> date:
    """The day made; where nobody knows it, the day it came into the store."""
    return batch.made or container.turns[0].when.day


def _as_kept(one: Container) -> tuple[str, str, str, str]:
    marks = "b" * one.bulk + "h" * one.here + "r" * bool(one.reserved)
    ended = one.ended.isoformat() if one.ended else ""
    return one.turns[0].when.day.isoformat(), (one.first or ONE).exact, marks, ended


# -- what left a batch -----------------------------------------------------------------------------

_Row = tuple[int, str, str | None, str, str, str]


def _gone(held: Held, events: Sequence[Event]) -> list[_Row]:
    """What left the containers of a batch, from the events that touch it; what a count did not find
    last, and not where another found it again."""
    assert held is not None
    of = _Leaving(held[1])
    for event in events:
        payload = event.payload
        if isinstance(payload, said.Use | said.Discard | said.Give | said.Missing):
            why = payload.why if isinstance(payload, said.Discard) else ""
            for id_ in payload.containers:
                of.take(id_, FATE_OF[type(payload)].value, payload.amount, event, why)
        elif isinstance(payload, said.PutUp):
            for part in payload.parts:
                of.take(part.container, said.Fate.REPACKED.value, part.amount, event)
        elif isinstance(payload, said.Count):
            of.counted(payload, event)
    return [*of.found, *of.unseen.values()]


class _Leaving:
    """What is in the containers of a batch at a point of its log, and what left them."""

    def __init__(self, containers: Mapping[str, Container]) -> None:
        self._at = {id_: at for at, id_ in enumerate(containers)}
        self._first = {id_: one.first or ONE for id_, one in containers.items()}
        self._left = {id_: first.number for id_, first in self._first.items()}
        self.found: list[_Row] = []
        self.unseen: dict[str, _Row] = {}

    def take(
        self,
        id_: str,
        fate: str,
        amount: Amount | None,
        event: Event,
        why: str = "",
        count: str = "",
    ) -> _Row | None:
        """So much of it leaves, all that is in it without an amount; what is of another batch is
        passed over."""
        if id_ not in self._at:
            return None
        first, there, rest = self._first[id_], self._left[id_], Fraction(0)
        if amount is not None and amount.unit == first.unit and there - amount.number >= EMPTY:
            rest = there - amount.number
        self._left[id_] = rest
        number = there - rest
        part = None if number == first.number else str(number)
        row = (self._at[id_], fate, part, event.day.isoformat(), why, count)
        if not count or amount is not None:
            self.found.append(row)
        return row

    def counted(self, payload: said.Count, event: Event) -> None:
        for one in payload.gone:
            row = self.take(one.container, one.fate.value, one.amount, event, count=event.id)
            if row is not None and one.amount is None:
                self.unseen[one.container] = row
        for back in payload.back:
            was = self.unseen.pop(back.container, None)  # it was there all the time
            if was is not None:
                number = self._first[back.container].number
                self._left[back.container] = number if was[2] is None else Fraction(was[2])


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
