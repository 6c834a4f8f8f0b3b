"""What a week has room for: a container as the week is chosen from it, the ceilings, and how much
of them is taken."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Mapping
from math import inf
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass, field

#: Days that an opened one is taken to keep where nothing short is published.
_LONG = 30


def keeps(days: int | None) -> Callable[[], int | None]:
    """The answer of what keeps so many days once it is open."""
    return lambda: days


#: Nothing is published of how long it keeps once it is open.
UNPUBLISHED = keeps(None)
_THREE_DAYS = keeps(3)


class Lot(NamedTuple):
    """One container: servings of one food that are good through week `last` (0 is this week); None:
    nothing hurries them. `opened` answers how many days an opened one keeps, below 0 where it may
    not be eaten then; only a lot whose turn comes is asked. `role`: what it is at table. What
    `softens` is raw fruit out of a crate."""

    food: str
    group: str
    servings: float
    last: int | None
    opened: Callable[[], int | None] = _THREE_DAYS
    role: str = ""
    meals: float = 0.0  # of what lies on days of its own: on how many a usual table eats of it
    softens: bool = False

    @property
    def days(self) -> int:
        days = self.opened()
        return _LONG if days is None else days

    @property
    def share(self) -> float:
        """The least part that must be eaten in the week in which it is opened: a jar that keeps
        three days may be opened on the last of them, and two thirds are for the next week."""
        return 1 / max(2, self.days)


@dataclass(frozen=True, slots=True)
class Ceilings:
    """Servings a week, at most: of a food, a group, a role at table. A missing one has no
    ceiling."""

    food: Mapping[str, float]
    group: Mapping[str, float]
    role: Mapping[str, float] = field(default_factory=dict)

    def of_food(self, name: str) -> float:
        return self.food.get(name, inf)

    def of_group(self, name: str) -> float:
        return self.group.get(name, inf)

    def of(self, lot: Lot) -> float:
        """Servings of it that a usual week has room for."""
        role = self.role.get(lot.role, inf)
        return min(self.of_food(lot.food), self.of_group(lot.group), role)


@dataclass(slots=True)
class Room:
    """One week: its ceilings times `factor`, less what is on the table. `laid` of a food is all
    that was put there, also what found no room."""

    ceilings: Ceilings
    factor: float
    food: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    group: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    role: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    laid: dict[str, float] = field(default_factory=lambda: defaultdict(float))

    def free(self, lot: Lot) -> float:
        """Servings of it that still have room."""
        if self.factor <= 0:
            return 0.0
        of_food = self.ceilings.of_food(lot.food) * self.factor - self.food[lot.food]
        of_group = self.ceilings.of_group(lot.group) * self.factor - self.group[lot.group]
        of_role = self.ceilings.role.get(lot.role, inf) * self.factor - self.role[lot.role]
        return max(0.0, min(of_food, of_group, of_role))

    def eat(self, lot: Lot, servings: float) -> float:
        """Puts them on the table as far as there is room; how many that is."""
        taken = min(servings, self.free(lot))
        self.food[lot.food] += taken
        self.group[lot.group] += taken
        self.role[lot.role] += taken
        return taken
