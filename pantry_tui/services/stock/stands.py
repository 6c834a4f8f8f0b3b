"""What stands, as the plan and the outlook read it: lines of the stock tables with their verdict of
today, and none of their words."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date
from functools import cache
from typing import NamedTuple

from pantry_tui.core.keeping.fitness import usable
from pantry_tui.core.log.fold import ONE
from pantry_tui.core.model import Container
from pantry_tui.core.vessels import contents_of
from pantry_tui.core.words import METHODS, SEVERITY, STATES, Method, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading


class Stands(NamedTuple):
    """Equal containers of one batch in one place, with what the judge says of them today.
    `care_from` is the day from which a small job that nobody has done by then makes them need care:
    no plan takes them on that day or later (seals of canned jars that nobody looked at)."""

    id: int
    line: table.Line
    state: State
    method: Method
    verdict: Verdict
    best_by: date | None
    discard_after: date | None
    usable: bool
    care_from: date | None = None

    def fit_on(self, day: date) -> bool:
        """Whether it is fit today and no date of its own has passed on that day. What stands too
        warm has hours, and lies on no day."""
        if not self.usable or self.line.hurried or self.needs_care(day):
            return False
        return self.discard_after is None or day <= self.discard_after

    def needs_care(self, day: date) -> bool:
        """Whether it is a day on which it waits for a hand."""
        return self.care_from is not None and day >= self.care_from

    @property
    def whole(self) -> str | None:
        """What each holds and held at first by its size, as the log would have it: "1 pint"; None
        where it was said or drawn from."""
        return None if self.line.amount else _held(self.line.size)


@cache
def _held(size: str) -> str:
    return (contents_of(size) or ONE).exact


def stands(p: Pantry) -> Sequence[Stands]:
    """All that stands, by batch."""
    ready(p)
    return p.once("stands", lambda: _read(p))


def _read(p: Pantry) -> list[Stands]:
    with reading(p.path):
        found = table.rows(p.store.db, p.today.isoformat())
    return [_stands(id_, line, SEVERITY[verdict], p.today) for id_, line, verdict, _ in found]


def _stands(id_: int, line: table.Line, verdict: Verdict, today: date) -> Stands:
    state = STATES[line.state]
    return Stands(
        id_,
        line,
        state,
        METHODS[line.method],
        verdict,
        date.fromisoformat(line.best_by) if line.best_by else None,
        date.fromisoformat(line.discard_after) if line.discard_after else None,
        usable(verdict, bool(line.harmless), state is State.IN_PROGRESS),
        _care_from(line, verdict, today),
    )


#: Verdicts as rows have them.
_NEEDS_CARE = SEVERITY.index(Verdict.NEEDS_CARE)


def _care_from(line: table.Line, verdict: Verdict, today: date) -> date | None:
    """Of the changes to come: a row that was judged weeks ago tells of such as are over."""
    if verdict is Verdict.NEEDS_CARE:
        return date.min
    steps = ((line.d1, line.v1), (line.d2, line.v2), (line.d3, line.v3), (line.d4, line.v4))
    ahead = (date.fromisoformat(day) for day, v in steps if day and v == _NEEDS_CARE)
    return next((day for day in ahead if day > today), None)


def by_batch(p: Pantry) -> Mapping[str, Sequence[Stands]]:
    """What stands of each batch, by its id."""

    def gather() -> dict[str, list[Stands]]:
        found: dict[str, list[Stands]] = defaultdict(list)
        for one in stands(p):
            found[one.line.batch].append(one)
        return found

    ready(p)
    return p.once("stands by batch", gather)


def of(p: Pantry, container: Container) -> Stands:
    """That in which a container stands."""
    number = str(container.number)
    mine = by_batch(p)[container.batch]
    return next(one for one in mine if number in one.line.numbers.split())


def containers_in(p: Pantry, one: Stands) -> list[Container]:
    """The containers themselves."""
    numbers = set(one.line.numbers.split())
    held = p.containers_of(p.stock.batches[one.line.batch])
    return [container for container in held if str(container.number) in numbers]
