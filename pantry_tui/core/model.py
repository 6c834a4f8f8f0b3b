"""What the store is made of. Frozen values; the folds (core.log.fold) make new ones from events."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import (
    ASSUMED_F,
    Acidity,
    Climate,
    Group,
    Method,
    Rating,
    State,
    Trust,
    Verdict,
)

#: Minutes of a day.
DAY_MIN = 24 * 60


class When(NamedTuple):
    """When something happened: its local day, and the earliest and the latest minute at which it
    may have (core.log.moments; the same where the hour is known). `zone` is how many minutes the
    local clock was ahead of them."""

    first: int
    last: int
    day: date
    zone: int = 0

    @property
    def known(self) -> bool:
        return self.first == self.last

    def day_of(self, minute: int) -> date:
        """The local day of another minute, by the same clock."""
        return date.fromordinal(max(1, (minute + self.zone) // DAY_MIN))


def no_later(when: When, now: When) -> When:
    """A moment that is still to come counts as now."""
    if when.last <= now.last:
        return when
    return When(min(when.first, now.last), now.last, min(when.day, now.day), now.zone)


#: Before anything that anybody booked.
EVER = When(0, 0, date.min)


class Held(NamedTuple):
    """From then on a place has this climate and target, °F. Not `told`: nobody said a target, and
    it is what the climate is assumed to hold."""

    when: When
    climate: Climate
    target_f: float
    told: bool = True


class Read(NamedTuple):
    """A place was read off, °F; `since` is how many minutes it had been so, None: nobody knows."""

    when: When
    temp_f: float
    humidity: float | None = None
    since: int | None = None


class Cut(NamedTuple):
    """The power of a place was off from `start` to `end`. `full` None: nobody knows how full."""

    start: When
    end: When
    full: bool | None = None
    max_temp_f: float | None = None
    ice: bool | None = None


class Turn(NamedTuple):
    """What changed for a container: None is "as before". `how` is how it was thawed, `thaws` how
    many days that takes in a refrigerator, where its log says what was in it then; `event` the id
    of what booked it, which orders what happened at the same time; `after` that of what surely came
    before it (core.log.in_turn), "" where its moment says so."""

    when: When
    event: str
    place: str | None = None
    state: State | None = None
    how: str = ""
    thaws: int | None = None
    after: str = ""


@dataclass(frozen=True, slots=True)
class Place:
    """Where things stand. `path` reads from the outside in ("basement › north wall").

    `facts` are what is known of its warmth; the first one begins with time itself.
    """

    id: str
    name: str
    climate: Climate
    parent: str | None = None
    target_f: float | None = None
    capacity: int | None = None
    checked: date | None = None  # when all that stands in it was last counted
    facts: Sequence[Held | Read | Cut] = ()  # in the order of their moments
    gone: bool = False  # removed: nothing stands there any more

    @property
    def target(self) -> float:
        """Target °F, or what the climate is assumed to hold."""
        return self.target_f if self.target_f is not None else ASSUMED_F[self.climate]

    @property
    def reading(self) -> Read | None:
        """The last reading, where nothing was said of its target since."""
        last = self.facts[-1] if self.facts else None
        return last if isinstance(last, Read) else None

    @property
    def temperature_f(self) -> float:
        """The last reading in °F, else the target."""
        return self.reading.temp_f if self.reading is not None else self.target


@dataclass(frozen=True, slots=True)
class FoodFacts:
    """What a rule needs to know of a food. `name` is lower case, plural, as a cook says it.

    `told`: what it is, and that it is acid, is the household's own word alone.
    """

    name: str
    group: Group
    acidity: Acidity
    classes: frozenset[str] = frozenset()
    known: bool = True
    told: bool = False

    @property
    def is_acid(self) -> bool:
        """Whether acid makes it safe. A household's own word never does: of a food that no table
        names nobody has measured it (house law: no published figure is unknown, not usable)."""
        return self.acidity is not Acidity.LOW_ACID and not self.told


@dataclass(frozen=True, slots=True)
class Rated:
    """What was said of a batch at table. `note` is what to change, or why."""

    day: date
    rating: Rating
    note: str = ""

    def __str__(self) -> str:
        return f"{self.rating}: {self.note}" if self.note else self.rating.value


class Timing(NamedTuple):
    """A process that is being timed: how many `minutes` and how much pressure it needs, since when
    (ISO, local; "" while the pressure is down), how often it fell, and for how many seconds the
    computer had run by then, 0 where nobody knows."""

    minutes: int
    psi: float | None
    since: str
    drops: int = 0
    ticks: int = 0


class Ahead(NamedTuple):
    """Something was booked of these containers (none named: of the batch) while the clock said the
    day `said`, which was ahead: not before the day `since` (None: nobody knows), by `until`."""

    event: str
    containers: tuple[str, ...]
    said: date
    since: date | None
    until: date


@dataclass(frozen=True, slots=True)
class Batch:
    """What was put up in one go. `made` None means nobody knows: judged strictly."""

    id: str
    code: str
    food: FoodFacts
    method: Method
    made: date | None
    size: str = ""
    process: tuple[tuple[str, str], ...] = ()
    note: str = ""
    printed: date | None = None
    doubt: tuple[str, ...] = ()  # what is wrong with its process, from the put-up
    possible: str = ""  # what may still be done about it
    suspect: str = ""  # the sign on one container that makes all others be looked at
    suspect_from: int = 0  # and the last minute at which that may have been seen
    noted: int = 0  # the last minute at which its note may have been changed
    rated: tuple[Rated, ...] = ()  # in the order it was said; the last one stands
    parts: tuple[str, ...] = ()  # containers of other batches that it was made from
    into: tuple[str, ...] = ()  # batches that were made from it
    carried: bool = False  # the same food in other containers: `made` is the day of its parts
    booked: date | None = None  # the day it came into the store
    tended: tuple[tuple[str, date], ...] = ()  # small jobs with the last day each was done
    timer: Timing | None = None  # its process, while it is timed
    ph_day: date | None = None  # the day on which its pH was recorded
    ahead: tuple[Ahead, ...] = ()  # what was booked of it by a clock that was ahead
    filled: str = ""  # the size of what it was processed in, where it was filled over since

    @property
    def processed(self) -> str:
        """The size of what its process was done in."""
        return self.filled or self.size

    def ahead_of(self, container: str) -> tuple[Ahead, ...]:
        """What of that was of a container."""
        return tuple(one for one in self.ahead if not one.containers or container in one.containers)


@dataclass(frozen=True, slots=True)
class Stay:
    """One stretch of a container's life: since `since` in `climate` in `state`.

    `measured` says whether the temperature was read off; `thawed` how it was thawed, where that
    was not in a refrigerator ("cold water", "microwave").
    """

    since: date
    place: str
    climate: Climate
    state: State
    temperature_f: float
    measured: bool = False
    thawed: str = ""


@dataclass(frozen=True, slots=True)
class Seen:
    """A sign on a container: when, what, the verdict it gives, and the last minute at which it may
    have been seen."""

    day: date
    sign: str
    verdict: Verdict
    at: int = 0


@dataclass(frozen=True, slots=True)
class Container:
    """One jar, bag or crate. It holds `left` of the `first` it held; where nobody said how much
    that was, both are parts of the one container.

    `turns` are all that happened to its place and state, in order of their moments. `told`: its
    amount was said apart from its size.
    """

    id: str
    batch: str
    number: int
    state: State
    place: str
    turns: tuple[Turn, ...]
    left: Amount | None = None
    first: Amount | None = None
    fate: str = ""
    ended: date | None = None
    signs: tuple[Seen, ...] = ()
    looked: date | None = None  # looked at and found sound, after its batch came under suspicion
    looked_at: int = 0  # the first minute at which that may have been
    reserved: str = ""  # kept apart, for a gift or for whom; its verdict is as any other
    vessel: Vessel = Vessel.CLOSED
    told: bool = False

    @property
    def here(self) -> bool:
        return self.state is not State.GONE

    @property
    def taken_out(self) -> bool:
        """Whether it was set to thaw last of all: though no place was booked for it, it is not
        frozen where it stands; what came into a freezer after that is."""
        return bool(self.turns) and self.turns[-1].state is State.THAWED

    @property
    def lived(self) -> tuple[object, ...]:
        """All of it that its verdict rests on: equal for containers of a batch that had one life,
        which are judged as one."""
        turns = tuple(turn._replace(event="") for turn in self.turns)
        return turns, self.signs, self.looked, self.looked_at, self.left, self.first

    @property
    def begun(self) -> bool:
        """Whether some of it was taken and some is left."""
        both = self.left is not None and self.first is not None
        return both and self.left.number < self.first.number  # type: ignore[union-attr]

    def of_new_size(self, held: Amount) -> Amount:
        """What is left of it where it turns out to have held `held`: the same share."""
        if self.left is None or self.first is None or not self.begun:
            return held
        return Amount(held.number * self.left.number / self.first.number, held.unit)

    @property
    def bulk(self) -> bool:
        """Whether a meal takes a portion of it and not the whole."""
        if self.first is None:
            return False
        loose = self.vessel is Vessel.PIECES and self.first.number > 1
        return self.told or loose or (self.vessel is Vessel.OPEN and self.first.unit != "")

    @property
    def amount(self) -> str:
        """What is left, as it is shown: "38 lb"; "" for a whole jar, which says it by its size."""
        return str(self.left) if self.left is not None and (self.bulk or self.begun) else ""


@dataclass(frozen=True, slots=True)
class Crop:
    """What a crop bears in store, °F; `q10` is how much faster it lives per +18 °F (2 to 3)."""

    food: str
    low_f: float
    high_f: float
    freezing_f: float | None
    chilling_f: float | None
    q10: float
    gives_ethylene: str
    hurt_by_ethylene: str
    source: str
    trust: Trust


@dataclass(frozen=True, slots=True)
class Stock:
    """The fold of the whole log."""

    places: dict[str, Place] = field(default_factory=dict)
    batches: dict[str, Batch] = field(default_factory=dict)
    containers: dict[str, Container] = field(default_factory=dict)
