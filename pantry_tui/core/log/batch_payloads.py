"""What an event says of a batch and its containers, and of a count of what stands in a place."""

from __future__ import annotations

from datetime import date
from enum import StrEnum
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Method, Rating, State, Verdict


class Fate(StrEnum):
    """How a container left."""

    USED = "used"
    DISCARDED = "discarded"
    GIVEN = "given"
    MISSING = "missing"
    REPACKED = "repacked"
    UNRECORDED = "unrecorded use"


class Reason(StrEnum):
    """Why something was discarded; `OTHER` with the person's own words beside it."""

    PAST_DATE = "past its date"
    SEAL_FAILED = "seal failed"
    BULGING = "bulging, leaking or spurting"
    MOULD = "mould"
    LOOKED_WRONG = "looked or smelled wrong"
    POWER_CUT = "power cut"
    PROCESS = "process in doubt"
    QUALITY = "nobody wanted it"
    BROKEN = "broken"
    OTHER = "other"


class Part(NamedTuple):
    """What a new batch took of an older one; `amount` None where all of the container went in.
    `place`: where what is left stands from then on, "" where it stays."""

    container: str
    amount: Amount | None = None
    place: str = ""


class PutUp(NamedTuple):
    """A batch was put up, or made `parts` of others into one (a repack)."""

    batch: str
    code: str
    containers: tuple[str, ...]
    food: FoodFacts
    method: Method
    place: str
    state: State
    made: date | None = None
    size: str = ""
    amount: Amount | None = None  # what each container holds, where it is drawn from by amount
    process: tuple[tuple[str, str], ...] = ()
    note: str = ""
    printed: date | None = None
    doubt: tuple[str, ...] = ()
    possible: str = ""
    parts: tuple[Part, ...] = ()
    carried: bool = False  # the same food goes on: `made` is the day of its parts


class Ready(NamedTuple):
    """Done fermenting, curing, infusing or drying."""

    batch: str
    containers: tuple[str, ...]


class Move(NamedTuple):
    """To another place; `state` where the move changed it (out of a freezer: thawed)."""

    batch: str
    containers: tuple[str, ...]
    place: str
    state: State | None = None


class Open(NamedTuple):
    """Opened; `place` where it stands from then on."""

    batch: str
    containers: tuple[str, ...]
    place: str = ""


class Thaw(NamedTuple):
    """Thawed; `how` is "" in a refrigerator, else "cold water" or "microwave"."""

    batch: str
    containers: tuple[str, ...]
    place: str = ""
    how: str = ""


class Use(NamedTuple):
    """Eaten whole, or an `amount` in the container's own unit; `said` as the person gave it."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None
    said: str = ""


class Discard(NamedTuple):
    """Thrown away, whole or an `amount`; `why` in the person's words."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None
    reason: Reason = Reason.OTHER
    why: str = ""


class Give(NamedTuple):
    """Given away, whole or an `amount`."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None
    to: str = ""


class Missing(NamedTuple):
    """Gone without anyone knowing how."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None


class Sign(NamedTuple):
    """Something seen; `sign` is "looked" where it was looked at and shows nothing. `suspect` says
    why the whole batch is to be looked at."""

    batch: str
    containers: tuple[str, ...]
    sign: str
    words: str
    verdict: Verdict
    suspect: str = ""


class Gone(NamedTuple):
    """What a count did not find: the whole container, or an `amount` of what should be in it."""

    container: str
    fate: Fate
    amount: Amount | None = None


class Back(NamedTuple):
    """What a count found again."""

    container: str
    place: str


class Found(NamedTuple):
    """What a count found and nobody had recorded: more containers of a batch."""

    batch: str
    place: str
    state: State
    containers: tuple[str, ...]


class Count(NamedTuple):
    """A stock check of one place; `part`: some of its lines were not looked at. `within`: it was
    counted with that place around it, whose count says what differed."""

    place: str
    gone: tuple[Gone, ...] = ()
    back: tuple[Back, ...] = ()
    new: tuple[Found, ...] = ()
    part: bool = False
    within: str = ""


class Rated(NamedTuple):
    """What the household said of a batch at table."""

    batch: str
    rating: Rating
    note: str = ""


class Reserved(NamedTuple):
    """Kept apart for a gift or for somebody; `kept_for` "" frees it."""

    batch: str
    containers: tuple[str, ...]
    kept_for: str = ""


class Correct(NamedTuple):
    """The record of a put-up was wrong. None: as it was. `unknown_day`: nobody knows the day.
    `measured`: its pH was recorded anew, the same number or another; `timed`: its process was."""

    batch: str
    made: date | None = None
    unknown_day: bool = False
    size: str | None = None
    note: str | None = None
    process: tuple[tuple[str, str], ...] | None = None
    doubt: tuple[str, ...] | None = None
    possible: str | None = None
    printed: date | None = None
    measured: bool = False
    food: FoodFacts | None = None
    method: Method | None = None
    timed: bool = False


class Relabelled(NamedTuple):
    """A batch has another lid code, since `was` is written on the lids of `other` as well: two
    stores that had parted both gave it."""

    batch: str
    code: str
    was: str
    other: str


class Tended(NamedTuple):
    """A small job of a batch was done (core.batchwork.tending), like "skim"."""

    batch: str
    job: str


class Clocked(StrEnum):
    """What a kitchen timer was told."""

    START = "start"
    DROP = "drop"
    DONE = "done"
    CANCEL = "cancel"


class Timer(NamedTuple):
    """The time of a process: it began (anew after a drop of pressure), fell off, ended.

    `minutes` and `psi` are what is to be reached, said with a start. `ticks`: how many seconds the
    computer had run by then, 0 where nobody knows. `whole`: a person says that it ran for all of
    its time, by another clock."""

    batch: str
    told: Clocked
    minutes: int = 0
    psi: float | None = None
    ticks: int = 0
    whole: bool = False


#: How a container left by each of these.
FATE_OF = {
    Use: Fate.USED,
    Discard: Fate.DISCARDED,
    Give: Fate.GIVEN,
    Missing: Fate.MISSING,
}


def state_after(payload: Ready | Open | Thaw | Move) -> State | None:
    """The state that a container is in then, None where it stays as it was."""
    match payload:
        case Open():
            return State.OPEN
        case Thaw():
            return State.THAWED
        case Ready():
            return State.SEALED
        case Move():
            return payload.state
