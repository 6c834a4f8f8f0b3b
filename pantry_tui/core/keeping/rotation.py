"""Which container first: the order in which a household should eat what it has."""

from __future__ import annotations

from datetime import date

from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import State, Verdict

#: Verdicts that are never offered to be eaten.
UNFIT = frozenset({Verdict.DO_NOT_TASTE, Verdict.DISCARD})

_FAR = date.max


def first_date(judged: Judgement) -> date:
    """The earlier of both dates, or the end of time."""
    return min(judged.best_by or _FAR, judged.discard_after or _FAR)


def order_key(
    batch: Batch, container: Container, judged: Judgement
) -> tuple[bool, bool, date, date, str, int]:
    """Opened and thawed first, then the earlier date, then the older batch, then the number.

    A younger batch with the earlier date so goes before an older one; unfit ones come last.
    """
    return (
        judged.verdict in UNFIT,
        container.state not in (State.OPEN, State.THAWED),
        first_date(judged),
        batch.made or date.min,
        batch.code,
        container.number,
    )
