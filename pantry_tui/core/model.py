"""What the store is made of. Frozen values; the ledger makes new ones from events."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from pantry_tui.core.words import ASSUMED_F, Acidity, Climate, Group, Method, State


@dataclass(frozen=True, slots=True)
class Place:
    """Where things stand. `path` reads from the outside in ("basement › north wall")."""

    id: str
    name: str
    climate: Climate
    parent: str | None = None
    target_f: float | None = None
    capacity: int | None = None

    @property
    def temperature_f(self) -> float:
        """Target °F, or what the climate is assumed to hold."""
        return self.target_f if self.target_f is not None else ASSUMED_F[self.climate]


@dataclass(frozen=True, slots=True)
class FoodFacts:
    """What a rule needs to know of a food. `name` is lower case, plural, as a cook says it."""

    name: str
    group: Group
    acidity: Acidity
    classes: frozenset[str] = frozenset()
    known: bool = True


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


@dataclass(frozen=True, slots=True)
class Stay:
    """One stretch of a container's life: since `since` in `climate` in `state`."""

    since: date
    place: str
    climate: Climate
    state: State
    temperature_f: float


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
    sign: str = ""
    ended: date | None = None

    @property
    def here(self) -> bool:
        return self.state is not State.GONE


@dataclass(frozen=True, slots=True)
class Stock:
    """The fold of the whole log."""

    places: dict[str, Place] = field(default_factory=dict)
    batches: dict[str, Batch] = field(default_factory=dict)
    containers: dict[str, Container] = field(default_factory=dict)
