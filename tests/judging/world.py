"""What can happen to kept food, in words of its own: facts with the moment they speak of.

A moment is a whole minute, counted as `ordinal day * 1440 + minute of the day`; a day is a
proleptic ordinal. A fact whose hour nobody knows has `minute=None`. Nothing here is shared with
the program: the judge is worth something only while it has its own idea of the world.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

DAY = 1440

COLD_TO_WARM = ("freezer", "fridge", "cellar", "pantry", "room")

#: What a place is taken to hold without a target: fridge <= 40 F, freezer 0 F (storage charts).
ASSUMED_F = {"room": 70.0, "pantry": 60.0, "cellar": 40.0, "fridge": 38.0, "freezer": 0.0}


def moment(day: int, hour: int = 0, minute: int = 0) -> int:
    """The minute of that day and hour."""
    return day * DAY + hour * 60 + minute


def day_of(at: int) -> int:
    """The day a minute lies in."""
    return at // DAY


@dataclass(frozen=True)
class Food:
    """A food as the trade sees it; `known` is false for one that no table holds."""

    name: str
    group: str
    acidity: str = "low-acid"
    classes: frozenset[str] = frozenset()
    known: bool = True


@dataclass(frozen=True)
class PlaceOpened:
    """`parent`: the place that it stands in, opened before it; `climate` None: as that one is."""

    place: str
    climate: str | None
    target_f: float | None = None
    parent: str | None = None


@dataclass(frozen=True)
class PlaceChanged:
    """Another climate (its own usual temperature then), or another target, from then on."""

    place: str
    climate: str | None = None
    target_f: float | None = None


@dataclass(frozen=True)
class Reading:
    """A thermometer read at that moment; `since` is for how many minutes it had been so warm.

    None: nobody knows, which for more than 40 F means since the last cold reading.
    """

    place: str
    temp_f: float
    since: int | None = None


@dataclass(frozen=True)
class Cut:
    """No power from `start` to `end` (minutes); `start` None: since the last cold reading."""

    place: str
    start: int | None
    end: int
    fullness: str | None = None


@dataclass(frozen=True)
class PutUp:
    """A batch; the fact's own day is the day it was made. `parts`: the containers of others that
    all went into it."""

    batch: str
    food: Food
    method: str
    containers: tuple[str, ...]
    place: str
    state: str = "sealed"
    vacuum: bool = False
    doubt: bool = False
    printed: int | None = None
    weight_lb: float = 1.0
    closed_vessel: bool = True
    parts: tuple[str, ...] = ()


@dataclass(frozen=True)
class Ready:
    container: str


@dataclass(frozen=True)
class Opened:
    """The lid is off; it stays where it stands until a `Moved` says otherwise."""

    container: str


@dataclass(frozen=True)
class Thawed:
    """`fridge`: the thaw begins; `cold water`, `microwave`: thawed then; `done`: found thawed."""

    container: str
    how: str


@dataclass(frozen=True)
class Moved:
    container: str
    place: str


@dataclass(frozen=True)
class Drawn:
    """A part (0 to 1) was taken out; 1 empties it."""

    container: str
    part: float


@dataclass(frozen=True)
class Left:
    """It went: `missing`, `given` or `discarded`."""

    container: str
    how: str


@dataclass(frozen=True)
class Counted:
    """So many containers of the batch were found in that place."""

    place: str
    batch: str
    n: int


@dataclass(frozen=True)
class SignSeen:
    container: str
    sign: str


@dataclass(frozen=True)
class LooksSound:
    container: str


@dataclass(frozen=True)
class CorrectedMade:
    batch: str
    day: int


@dataclass(frozen=True)
class Undo:
    fact: str


@dataclass(frozen=True)
class Redo:
    fact: str


Happening = (
    PlaceOpened | PlaceChanged | Reading | Cut | PutUp | Ready | Opened | Thawed | Moved
    | Drawn | Left | Counted | SignSeen | LooksSound | CorrectedMade | Undo | Redo
)  # fmt: skip


@dataclass(frozen=True)
class Fact:
    """What happened, on which day, at which minute of it (None: unknown), booked at a moment."""

    id: str
    day: int
    minute: int | None
    booked: int
    what: Happening

    @property
    def late(self) -> bool:
        """Whether it may have happened at any hour of its day."""
        return self.minute is None and self.day < day_of(self.booked)

    @property
    def at(self) -> int:
        """Its moment, for a fact that is not late; one after the booking counts as the booking.

        House law 7.1: "a moment after now counts as now"; the now is that of who booked it, so
        that it does not move on from day to day.
        """
        return (
            self.booked if self.minute is None else min(self.day * DAY + self.minute, self.booked)
        )


@dataclass(frozen=True)
class History:
    """Facts in the order they were booked, and the minute at which the question is asked."""

    facts: tuple[Fact, ...]
    now: int
    note: str = field(default="", compare=False)

    @property
    def containers(self) -> tuple[str, ...]:
        """Every container that was ever put up."""
        return tuple(c for f in self.facts if isinstance(f.what, PutUp) for c in f.what.containers)

    def batch_of(self, container: str) -> Fact | None:
        """The put-up that made this container."""
        for f in self.facts:
            if isinstance(f.what, PutUp) and container in f.what.containers:
                return f
        return None

    def __str__(self) -> str:
        return "\n".join([*map(_say, self.facts), f"asked {_when(self.now)}"])


def _when(at: int) -> str:
    return f"{date.fromordinal(day_of(at)).isoformat()} {at % DAY // 60:02}:{at % 60:02}"


def _say(f: Fact) -> str:
    hour = "--:--" if f.minute is None else f"{f.minute // 60:02}:{f.minute % 60:02}"
    w = f.what
    said = repr(w)
    if isinstance(w, Cut):
        start = "unknown" if w.start is None else _when(w.start)
        said = f"Cut({w.place!r}, {start} to {_when(w.end)}, {w.fullness or 'fullness not told'})"
    happened = f"{date.fromordinal(f.day).isoformat()} {hour}"
    return f"{f.id:>4}  {happened}  booked {_when(f.booked)}  {said}"


def in_force(history: History) -> tuple[Fact, ...]:
    """The facts that no undo has taken back; the last undo or redo of a fact decides.

    An undo is a fact too, and may itself be taken back.
    """
    standing: dict[str, bool] = {}

    def turn(target: str, stands: bool) -> None:
        """Let a fact stand or not; what it took back or gave back turns the other way."""
        if standing.get(target) == stands:
            return
        standing[target] = stands
        w = by_id[target].what
        if isinstance(w, Undo) and w.fact in by_id:
            turn(w.fact, not stands)
        elif isinstance(w, Redo) and w.fact in by_id:
            turn(w.fact, stands)

    by_id = {f.id: f for f in history.facts}
    for f in history.facts:
        standing[f.id] = True
        if isinstance(f.what, Undo) and f.what.fact in standing:
            turn(f.what.fact, False)
        elif isinstance(f.what, Redo) and f.what.fact in standing:
            turn(f.what.fact, True)
    return tuple(f for f in history.facts if standing[f.id] and not isinstance(f.what, Undo | Redo))
