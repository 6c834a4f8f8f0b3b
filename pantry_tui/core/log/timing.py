"""The timer of a process, as the log tells it.

Once the pressure fell the whole time begins anew (USDA AIB 539, Guide 1, from memory; the stricter
choice), and a process that was begun and broken off is none.
"""

from __future__ import annotations

from datetime import datetime, timedelta

from pantry_tui.core.canned import LIDDED, still_possible
from pantry_tui.core.dataclass import replace
from pantry_tui.core.log.batch_payloads import Clocked, Timer
from pantry_tui.core.model import Batch, Timing

#: What stands against a batch of which the process was broken off, until one is recorded.
BROKEN_OFF = "Its process was begun and broken off, and none is recorded since: it is not finished."


def timed(old: Timing | None, moment: str, payload: Timer) -> Timing | None:
    """What is timed after this, None where nothing is; `moment` is when it was booked (ISO)."""
    if payload.told is Clocked.START:
        drops = old.drops if old is not None else 0
        return Timing(payload.minutes, payload.psi, moment, drops)
    if payload.told is Clocked.DROP and old is not None:
        return old._replace(since="", drops=old.drops + 1)
    return None


def breaks_off(old: Timing | None, moment: str, payload: Timer) -> bool:
    """Whether the process ends before its time by this: the pressure fell, or nobody times it any
    more. What ran for the whole time and was not recorded is a process all the same."""
    if old is None or payload.told not in (Clocked.DROP, Clocked.CANCEL):
        return False
    if payload.told is Clocked.DROP or not old.since:
        return True
    ran = datetime.fromisoformat(moment) - datetime.fromisoformat(old.since)
    return ran < timedelta(minutes=old.minutes)


def unfinished(batch: Batch) -> Batch:
    """A batch of which the process was broken off; what is not canned has none."""
    if batch.method not in LIDDED:
        return batch
    possible = batch.possible or still_possible(batch.food, again=True)
    return replace(batch, doubt=tuple(dict.fromkeys((BROKEN_OFF, *batch.doubt))), possible=possible)
