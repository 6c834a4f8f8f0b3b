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
from pantry_tui.core.words import SEVERITY, Method, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading


class Stands(NamedTuple):
    """Equal containers of one batch in one place, with what the judge says of them today."""

    id: int
    line: table.Line
    state: State
    method: Method
    verdict: Verdict
    best_by: date | None
    discard_after: date | None
    usable: bool

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
    return [_stands(id_, line, SEVERITY[verdict]) for id_, line, verdict, _ in found]


def _stands(id_: int, line: table.Line, verdict: Verdict) -> Stands:
    state = State(line.state)
    return Stands(
        id_,
        line,
        state,
        Method(line.method),
        verdict,
        date.fromisoformat(line.best_by) if line.best_by else None,
        date.fromisoformat(line.discard_after) if line.discard_after else None,
        usable(verdict, bool(line.harmless), state is State.IN_PROGRESS),
    )


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
