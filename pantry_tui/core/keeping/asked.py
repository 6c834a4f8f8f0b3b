"""A note that speaks of some containers of a batch and does not say of which: each may be that one,
so none is eaten, and none is thrown away for the others, until somebody has said it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.doubt import RESCUE_DAYS
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.ladder import Assessment
from pantry_tui.core.model import DAY_MIN, Batch, When


def only_asked(batch: Batch, spans: Sequence[Span]) -> tuple[str, ...]:
    """All that is doubted of it, where that is nothing but which of its containers a note means.
    Jars that came into the cold are judged as all doubtful ones: it saves them in time alone."""
    if not batch.doubt or (batch.method in LIDDED and any(one.climate.is_cold for one in spans)):
        return ()
    from pantry_tui.core.safety.note_before import asks_which  # loaded where a note is doubted

    return batch.doubt if all(map(asks_which, batch.doubt)) else ()


def while_asked(found: Assessment, asked: Sequence[str], batch: Batch, now: When) -> Assessment:
    """With all that is asked said first, and what may still be done with the one that is meant
    while it may be."""
    if not asked:
        return found
    rest = [one for one in found.reasons if one not in asked]
    by = None if batch.made is None else batch.made + timedelta(days=RESCUE_DAYS)
    if by is None or not batch.possible or now.day > by:
        return replace(found, reasons=(*asked, *rest))
    over = (by.toordinal() + 1) * DAY_MIN - now.zone
    again = min((one for one in (found.again_at, over) if one is not None), default=None)
    return replace(found, reasons=(*asked, batch.possible, *rest), again_at=again)
