"""What an event says of the household itself: its foods and rules, who eats, what is planned."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State


class FoodAdded(NamedTuple):
    """A food that the tables do not have."""

    name: str
    group: Group
    acidity: Acidity
    also: tuple[str, ...] = ()


class RuleAdded(NamedTuple):
    """A keeping rule of the household's own."""

    method: Method
    food: str
    state: State
    climate: Climate
    kind: Kind
    number: int
    unit: str
    why: str = ""


class JarsCounted(NamedTuple):
    """So many jars of a size stood empty, and so many were in use, full or begun; of "lids" so many
    were new."""

    size: str
    empty: int
    in_use: int = 0


class JarsLent(NamedTuple):
    """Empty jars went to somebody; fewer than none: they came back."""

    size: str
    count: int  # type: ignore[assignment] # the trade's word; no tuple counts here
    to: str


class Checked(NamedTuple):
    """Something of the kitchen's own was checked, like the dial gauge."""

    what: str


class Substitutes(NamedTuple):
    """What may stand in for a food."""

    food: str
    others: tuple[str, ...] = ()


class Taken(NamedTuple):
    """Servings of a food that a dish takes."""

    food: str
    servings: float


class Dish(NamedTuple):
    """A dish of the household's own; none `takes` drops it."""

    name: str
    takes: tuple[Taken, ...] = ()


class Household(NamedTuple):
    """What kind of household it is; None: as it was. `altitude_ft` is "" where nobody said."""

    altitude_ft: int | None = None
    people: int | None = None
    units: str | None = None
    meals: int | None = None
    advice: str | None = None  # "usual" or "strictest": whose limits are followed
    jars: str | None = None  # "maker" or "strict": whose times serve for metric jars
    half: str | None = None  # "north" or "south": the half of the world, for harvests


class Ceiling(NamedTuple):
    """Servings a person a week of a food or a food group, at most; None: as usual again."""

    what: str
    most: float | None = None


class Table(NamedTuple):
    """How many sit at the table on these days; None: as usual."""

    days: tuple[date, ...]
    people: int | None = None


class Pin(NamedTuple):
    """A container on a day; None: in the week, on any day."""

    container: str
    day: date | None = None


class DishDay(NamedTuple):
    name: str
    day: date


class Eaten(NamedTuple):
    """A day of an entry that was eaten, with the `together` (or id) of what booked it."""

    day: date
    booked: str


class Entry(NamedTuple):
    """One line of an accepted week. `amount` and `servings` are a meal from bulk."""

    days: tuple[date, ...]
    containers: tuple[str, ...]
    why: str
    thaw_by: date | None = None
    dish: str = ""
    amount: str = ""
    servings: float = 0.0
    spare: float = 0.0
    later: float = 0.0
    until: date | None = None
    booked: tuple[Eaten, ...] = ()


class Planned(NamedTuple):
    """The week as it is now wished or accepted, whole; `entries` None until it is accepted.
    `start` None: begin anew. `said` names what was changed. `heads` are those that were to sit at
    the table on each of its days when it was accepted, () where nobody noted it."""

    start: date | None = None
    pins: tuple[Pin, ...] = ()
    left_out: tuple[str, ...] = ()
    out: tuple[date, ...] = ()
    dishes: tuple[DishDay, ...] = ()
    entries: tuple[Entry, ...] | None = None
    said: str = ""
    heads: tuple[int, ...] = ()
