"""The timer of a process, as the log tells it.

Once the pressure fell the whole time begins anew (USDA AIB 539, Guide 1, from memory; the stricter
choice), and a process that was begun and broken off is none. Two parted logs, an undo or a wrong
clock leave words of a timer that do not fit each other: only the time that surely ran counts, by
the clock and by how long the computer has run, whichever is less, unless a person says that it was
the whole.
"""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.core.canned import LIDDED, still_possible
from pantry_tui.core.dataclass import replace
from pantry_tui.core.log.ahead import Clocks
from pantry_tui.core.log.batch_payloads import Clocked, Timer
from pantry_tui.core.log.events import Event
from pantry_tui.core.model import Batch, Timing

#: What stands against a batch of which the process was broken off, until one is recorded.
BROKEN_OFF = "Its process was begun and broken off, and none is recorded since: it is not finished."

#: What stands against it while it is timed, until that is over or a process is recorded.
NOT_DONE = "Its process is being timed: it is not done yet."


class Process:
    """How far the process of a batch is, after each word of its timer. Seconds are those of
    `Clocks.second`."""

    def __init__(self, clocks: Clocks) -> None:
        self.clocks = clocks
        self.timer: Timing | None = None
        self.against = ""  # what stands against the batch
        self._latest = 0  # the highest second that any clock has shown so far
        self._since: int | None = None  # by when its whole time had begun; None: it did not
        self._ticks = 0  # how long the computer had run by then, 0: nobody knows
        self._needs = 0  # how many seconds that is
        self._whole: int | None = None  # by when the timer was ended after the whole time
        self._booked = ("", 0)  # with what the last end was booked, and how many seconds it had

    def saw(self, event: Event) -> None:
        """Any event of the batch: what is booked after it did not happen before it, whatever the
        clock said then."""
        self._latest = max(self._latest, self.clocks.shown(event))

    def take(self, event: Event, payload: Timer) -> None:
        """One word of the timer, before `saw`."""
        first, last = self.clocks.second(event)
        last = max(last, self._latest)
        old, ran = self.timer, 0 if self._since is None else first - self._since
        if payload.ticks and payload.ticks >= self._ticks > 0:
            # Started anew since, the computer has run for less than that: never for longer.
            ran = min(ran, payload.ticks - self._ticks)
        if payload.whole:
            ran = max(ran, self._needs)
        whole = self._since is not None and ran >= self._needs
        match payload.told:
            case Clocked.START:
                drops = old.drops if old is not None else 0
                self.timer = Timing(
                    payload.minutes, payload.psi, event.recorded, drops, payload.ticks
                )
                self._ticks = payload.ticks
                self._since, self._needs, self._whole = last, payload.minutes * 60, None
                self.against = self.against or NOT_DONE
                return
            case Clocked.DONE:
                # Two parted logs may both have ended it: after the whole time that is no matter.
                self.against = "" if whole else BROKEN_OFF
                self._booked = (event.together, ran)
                self._whole = last if whole else None
            case Clocked.DROP | Clocked.CANCEL if self._whole is not None:
                if first >= self._whole:
                    return  # the other log ended it before
                self.against, self._whole = BROKEN_OFF, None
            case Clocked.DROP:
                self.against = BROKEN_OFF
            case Clocked.CANCEL if old is not None:
                # What ran for the whole time and was not recorded is a process all the same.
                if not whole:
                    self.against = BROKEN_OFF
                elif self.against == NOT_DONE:
                    self.against = ""
        if self._whole is None:
            self._since = None
        dropped = old is not None and payload.told is Clocked.DROP
        self.timer = old._replace(since="", drops=old.drops + 1) if old and dropped else None

    def recorded(self, event: Event, process: Mapping[str, str]) -> None:
        """A process was recorded: by a person, or by the timer, which has to have run for it."""
        together, ran = self._booked
        by_timer = bool(together) and event.together == together
        minutes = process.get("minutes", "")
        enough = minutes.isdecimal() and int(minutes) * 60 <= ran
        self.against = BROKEN_OFF if by_timer and not enough else ""

    def done(self, batch: Batch) -> Batch:
        """The batch with its timer and what stands against it; what is not canned has no process to
        finish. Only the timer itself says whether it is: a correction may have written it down."""
        others = tuple(one for one in batch.doubt if one not in (BROKEN_OFF, NOT_DONE))
        if not self.against or batch.method not in LIDDED:
            return replace(batch, timer=self.timer, doubt=others)
        possible = batch.possible or still_possible(batch.food, again=True)
        doubt = (self.against, *others)
        return replace(batch, timer=self.timer, doubt=doubt, possible=possible)
