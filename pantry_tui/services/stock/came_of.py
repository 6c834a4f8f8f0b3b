"""What came of a batch, as a row of the table `past` (store/past.py): made by every act on it, read
by services/books/past.py."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from itertools import groupby
from typing import TYPE_CHECKING

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.batch_payloads import FATE_OF
from pantry_tui.core.log.events import standing
from pantry_tui.core.log.fold import EMPTY, ONE
from pantry_tui.store import log
from pantry_tui.store import past as table
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from datetime import date

    from pantry_tui.core.amounts import Amount
    from pantry_tui.core.log.events import Event
    from pantry_tui.core.model import Batch, Container
    from pantry_tui.services.pantry import Pantry
    from pantry_tui.services.standing import Held


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
        _json(_runs(containers, _as_it_came)),
        _json(_runs(containers, _as_it_is)),
        _json(gone),
        "" if numbered else " ".join(ids),
    )


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def born(batch: Batch, container: Container) -> date:
    """The day made; where nobody knows it, the day it came into the store."""
    return batch.made or container.turns[0].when.day


def _runs(
    containers: Sequence[Container], what: Callable[[Container], tuple[object, ...]]
) -> list[tuple[object, ...]]:
    """What is said of each, with how many there are alike one after another."""
    return [(len(list(some)), *one) for one, some in groupby(containers, what)]


def _as_it_came(one: Container) -> tuple[object, ...]:
    return one.turns[0].when.day.isoformat(), (one.first or ONE).exact, int(one.bulk)


def _as_it_is(one: Container) -> tuple[object, ...]:
    marks = "h" * one.here + "r" * bool(one.reserved)
    begun = one.left.exact if one.here and one.begun and one.left else ""
    return marks, one.ended.isoformat() if one.ended else "", begun


def beside(batch: Batch) -> str:
    """The last word on a batch, short enough to stand beside a number."""
    last = batch.rated[-1]
    note = f" ({last.note})" if last.note else ""
    return f"{last.rating}: {batch.code}{note}"


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
