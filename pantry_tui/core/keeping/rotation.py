"""Which container first: the order in which a household should eat what it has."""

from __future__ import annotations

from datetime import date
from typing import Protocol

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import State, Verdict

_FAR = date.max


class Judged(Protocol):
    """A verdict with its dates, as the judge gives it or as it lies in the stock tables."""

    @property
    def verdict(self) -> Verdict: ...
    @property
    def best_by(self) -> date | None: ...
    @property
    def discard_after(self) -> date | None: ...
    @property
    def usable(self) -> bool: ...


def first_date(judged: Judged) -> date:
    """The earlier of both dates, or the end of time."""
    return min(judged.best_by or _FAR, judged.discard_after or _FAR)


def rank(judged: Judged) -> int:
    """0 for what is known to be good, 1 for what nobody knows, 2 for what is not usable, 3 for what
    is unfit."""
    if judged.verdict in UNFIT:
        return 3
    return 2 if not judged.usable else int(judged.verdict is Verdict.UNKNOWN)


def order_key(
    batch: Batch, container: Container, judged: Judged
) -> tuple[int, bool, date, date, str, int]:
    """Opened, thawed and begun first, then the earlier date, then the older batch, then the number.

    A younger batch with the earlier date so goes before an older one; what nobody knows comes
    after what is known, and what is not usable last.
    """
    return (
        rank(judged),
        container.state not in (State.OPEN, State.THAWED) and not container.begun,
        first_date(judged),
        batch.made or date.min,
        batch.code,
        container.number,
    )
