"""How an act is told: what was taken, what is left, until when."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.model import Container
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import name_of


def say_of(p: Pantry, taken: Sequence[Container]) -> str:
    """ "7C/1 beans", or "3 of 7C beans"."""
    batch = p.stock.batches[taken[0].batch]
    if len(taken) == 1:
        return f"{name_of(p, taken[0])} {batch.food.name}"
    return f"{len(taken)} of {batch.code} {batch.food.name}"


def names(p: Pantry, taken: Sequence[Container]) -> tuple[str, ...]:
    """What a person types for each."""
    return tuple(name_of(p, c) for c in taken)


def remaining(p: Pantry, batch_id: str) -> str:
    """How many of a batch are left."""
    batch = p.stock.batches[batch_id]
    left = sum(c.here for c in p.containers_of(batch))
    return f"{left} left of this batch" if left else "that was the last of this batch"


def until(judged: Judgement) -> str:
    """Its nearer end, or why there is none; of what is in doubt the doubt, and no date. What was
    done in time and is told late may have to go by now."""
    if judged.verdict in UNFIT and judged.reasons:
        return f"By now: {judged.verdict}. {judged.reasons[0]} {CAUTION}"
    if judged.verdict is Verdict.UNKNOWN and judged.reasons:
        return f"In doubt: {judged.reasons[0]}"
    if judged.discard_after is not None:
        return f"Discard after {dates.say(judged.discard_after)}."
    if judged.best_by is not None:
        return f"Best by {dates.say(judged.best_by)}."
    return judged.reasons[0] if judged.reasons else "No published figure."
