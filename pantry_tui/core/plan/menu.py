"""The words of a week's menu: candidates, dishes, wishes, and what comes out of them."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from datetime import date
from enum import StrEnum
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.roles import role_of
from pantry_tui.core.plan.room import UNPUBLISHED
from pantry_tui.core.words import Group, Role


class Why(StrEnum):
    """Why a container is in the week."""

    KEPT = "you put it there"
    MUST = "its clock runs"
    DUE = "it falls due this week"
    DISH = "a dish takes it"
    GUESTS = "many sit there that day"
    BEGIN = "too much of it to begin later"
    PACE = "it is behind its pace"
    TABLE = "the day has nothing else of its kind"


class Candidate(NamedTuple):
    """One container that may be eaten, in eating order. `last` is the day by which it is
    wanted: its nearer date, None where nothing hurries it.

    `opened` answers how many days it keeps once open or fully thawed, None where nothing is
    published, below 0 where it may not be eaten then; only what may be taken is asked about.
    `a_head` are the servings that a meal out of it takes a head; `piece` those of one piece that
    does not keep once it is cut, so that a meal takes whole ones; 0 of what may be parted.
    `ready` is the day from which it may be eaten: what is thawing already has one; `care_from` the
    day from which it may not be opened, since a hand that it wants was not given. A container of
    a `bulk` is taken from by the portion; with `open_days` the first draw opens it. `since` is the
    day on which what is open was opened. What `stands_by` comes where nothing else does: a tin
    long before its date.
    """

    container: str
    food: str
    group: Group
    servings: float
    last: date | None
    must: bool = False  # opened or thawed: its clock runs
    safe_until: date | None = None
    frozen: bool = False
    thaw_days: int = 0
    bulk: bool = False
    ready: date | None = None
    role: Role | None = None
    since: date | None = None
    a_head: float = 1.0
    piece: float = 0.0
    care_from: date | None = None
    stands_by: bool = False
    spoils: date | None = None
    opened: Callable[[], int | None] = UNPUBLISHED

    @property
    def open_days(self) -> int | None:
        """What `opened` answers."""
        return self.opened()

    @property
    def may_open(self) -> bool:
        """Whether it may be eaten once it is open."""
        return self.open_days is None or self.open_days >= 0

    def fit_on(self, day: date) -> bool:
        """Whether that day is none after its last safe one, and no hand that it wants is lacking
        by then."""
        safe = self.safe_until is None or day <= self.safe_until
        return safe and (self.care_from is None or day < self.care_from)

    def meal(self, heads: float) -> float:
        """Servings that a meal for so many takes of a bulk."""
        wanted = heads * self.a_head
        return max(1, round(wanted / self.piece)) * self.piece if self.piece else wanted

    @property
    def at_table(self) -> Role:
        """What it is at table: its own role, else the usual one of its group."""
        return self.role or role_of(self.group)


@dataclass(frozen=True, slots=True)
class Dish:
    """A dish of the household's own: servings of each food that it takes."""

    name: str
    takes: tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the household said of this week: containers on a day (None: on any day), foods left
    out, days on which it eats out, dishes on a day."""

    pins: tuple[tuple[str, date | None], ...] = ()
    left_out: frozenset[str] = frozenset()
    out: frozenset[date] = frozenset()
    dishes: Mapping[str, date] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Needs:
    """How far each food is behind its pace, and the servings that each group gives this week while
    nothing presses (shares.py)."""

    credits: Mapping[str, Credit] = field(default_factory=dict)
    shares: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Pick:
    """A container and the days on which it is eaten; the first is the day it is opened.

    `parts` are the servings that are eaten on each of the days: more where more sit there, and no
    more than one a head. `thaw_by` is the day to move it to the fridge, never before the week's
    start. `later` servings are left for the next week, until `until` where it keeps no longer once
    open; `spare` servings cannot be finished within its opened life.
    """

    candidate: Candidate
    days: tuple[date, ...]
    parts: tuple[float, ...]
    why: Why
    thaw_by: date | None = None
    dish: str = ""
    spare: float = 0.0
    later: float = 0.0
    until: date | None = None

    @property
    def day(self) -> date:
        return self.days[0]

    def on(self, day: date) -> float:
        """Servings of it that are eaten on that day."""
        return self.parts[self.days.index(day)] if day in self.days else 0.0


@dataclass(frozen=True, slots=True)
class Menu:
    """The week's picks by day, and what falls due on days when nobody can eat it. `order` are the
    containers by how much they press: who eats less than planned leaves the last for later.
    `more` is what comes next, for who wants more; `kept` what then comes after it, which its group
    needs to last until more comes. `mains` are the servings of mains that
    stand, without what must be discarded by then and lies on no day; `over` what is
    open beside the days for as long as it should take to eat it up."""

    picks: tuple[Pick, ...]
    missed: tuple[Candidate, ...]
    order: tuple[str, ...] = ()
    more: tuple[Candidate, ...] = ()
    kept: tuple[Candidate, ...] = ()
    mains: float = 0.0
    over: tuple[Candidate, ...] = ()

    def laid(self, day: date, roles: Collection[Role]) -> float:
        """Servings of these roles on that day."""
        return sum(one.on(day) for one in self.picks if one.candidate.at_table in roles)
