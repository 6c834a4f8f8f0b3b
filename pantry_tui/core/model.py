"""What the store is made of. Frozen values; the ledger makes new ones from events."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from pantry_tui.core.words import (
    ASSUMED_F,
    Acidity,
    Climate,
    Group,
    Method,
    State,
    Taste,
    Trust,
    Verdict,
)


@dataclass(frozen=True, slots=True)
class Spell:
    """A stretch of a place's life: from `since` on it holds this, read off or only assumed."""

    since: date
    climate: Climate
    temperature_f: float
    measured: bool = False
    humidity: float | None = None


@dataclass(frozen=True, slots=True)
class Place:
    """Where things stand. `path` reads from the outside in ("basement › north wall").

    `spells` are in order of their days; the first one begins with time itself.
    """

    id: str
    name: str
    climate: Climate
    parent: str | None = None
    target_f: float | None = None
    capacity: int | None = None
    spells: tuple[Spell, ...] = ()
    checked: date | None = None  # when its stock was last counted

    @property
    def target(self) -> float:
        """Target °F, or what the climate is assumed to hold."""
        return self.target_f if self.target_f is not None else ASSUMED_F[self.climate]

    @property
    def temperature_f(self) -> float:
        """The last reading in °F, else the target."""
        return self.spells[-1].temperature_f if self.spells else self.target


@dataclass(frozen=True, slots=True)
class FoodFacts:
    """What a rule needs to know of a food. `name` is lower case, plural, as a cook says it."""

    name: str
    group: Group
    acidity: Acidity
    classes: frozenset[str] = frozenset()
    known: bool = True


@dataclass(frozen=True, slots=True)
class Tasted:
    """What was said of a batch at table. `note` is what to change, or why."""

    day: date
    taste: Taste
    note: str = ""

    def __str__(self) -> str:
        return f"{self.taste}: {self.note}" if self.note else self.taste.value


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
    tasted: tuple[Tasted, ...] = ()  # in the order it was said; the last one stands


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
    """A sign on a container: when, what, and the verdict it gives."""

    day: date
    sign: str
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Container:
    """One jar, bag or crate. `amount` is what is left of a bulk one, in `unit`."""

    id: str
    batch: str
    number: int
    state: State
    place: str
    stays: tuple[Stay, ...]
    amount: str = ""
    fate: str = ""
    ended: date | None = None
    signs: tuple[Seen, ...] = ()
    looked: date | None = None  # looked at and found sound, after its batch came under suspicion
    reserved: str = ""  # kept apart, for a gift or for whom; its verdict is the same as any other's

    @property
    def here(self) -> bool:
        return self.state is not State.GONE


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
