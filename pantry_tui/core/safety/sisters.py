"""What a dangerous sign on one container says of the others of its batch.

A danger that was in the jar when it was closed is in its sisters too; one that came in after the
lid was off, or that sits in one piece of a pile, is not. This is a reading of this program, on the
strict side: publications speak of "the rest of the batch" where a sealed jar was spoiled (USDA AIB
539) and of culling where one apple was (USDA Handbook 66).
"""

from __future__ import annotations

from datetime import date, timedelta
from enum import StrEnum

from pantry_tui.core.log.payloads import Reason
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import State


class Sisters(StrEnum):
    """What is to be done with the others of a batch."""

    SUSPECT = "suspect"  # none is used before it was looked at
    TEST = "test the others"  # look at their seals; none is locked
    CULL = "cull it, and look the rest over"
    FREE = ""


#: A lid that is found loose within so many days of closing it says nothing of the food in others.
SEAL_DAYS = 1
#: What was thrown away for these reasons was a danger, as the sign of that name would be.
DANGERS = {
    Reason.BULGING: "bulging, leaking or spurting",
    Reason.MOULD: "mould",
    Reason.SEAL_FAILED: "seal failed",
}


def of_sisters(
    batch: Batch,
    container: Container,
    found: date,
    *,
    dangerous: bool,
    seal: bool = False,
    opened_days: int | None = None,
) -> Sisters:
    """What it says of the others that a sign was found on `container` on a day.

    `dangerous`: the sign throws suspicion on a batch (or a container was discarded for one of
    `DANGERS`). `seal`: it is a seal that failed. `opened_days`: how long it keeps once opened by
    the published figure, None where none is.
    """
    if seal and _fresh(batch, found):
        return Sisters.TEST
    if not dangerous:
        return Sisters.FREE
    if not is_closed(batch.method, batch.size):
        return Sisters.CULL  # one piece of a pile, a crock or a crate
    opened = opened_on(container)
    if opened is None or opened + timedelta(days=opened_days or 0) >= found:
        return Sisters.SUSPECT
    return Sisters.CULL


def of_discard(
    batch: Batch, container: Container, found: date, reason: Reason, opened_days: int | None = None
) -> Sisters:
    """The same for what was thrown away for a reason."""
    return of_sisters(
        batch,
        container,
        found,
        dangerous=reason in DANGERS,
        seal=reason is Reason.SEAL_FAILED,
        opened_days=opened_days,
    )


def opened_on(container: Container) -> date | None:
    """The last day on which it may first have been opened, None while it is closed. A day too late
    only makes more of its sisters suspect."""
    days = [turn.when.day for turn in container.turns if turn.state is State.OPEN]
    return min(days, default=None)


def _fresh(batch: Batch, found: date) -> bool:
    return batch.made is not None and found <= batch.made + timedelta(days=SEAL_DAYS)
