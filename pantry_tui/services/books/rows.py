"""What the outlook and the books of the year hand to screens and commands. Frozen."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass


class Way(NamedTuple):
    """A method by which so many containers are put up."""

    method: str
    container: str
    count: int  # type: ignore[assignment] # the trade's word; no tuple counts here


@dataclass(frozen=True, slots=True)
class FoodAhead:
    """A food (or group, or the household) to its next harvest, or for a year where it has none;
    servings and servings a week.

    `put_up` is in containers of the usual size (`container`), None where nobody knows yet; `pounds`
    of fresh `crop` for them where a yield is known. `supply` is what is left at each week's end.
    `reserved` containers are kept apart and not among the servings. Sentences are empty where
    there is nothing to say.
    """

    food: str
    group: str
    servings: float
    pace_need: float
    pace_can: float
    rate: float
    harvest: date | None
    runs_out: date | None
    lost: float
    left: float
    put_up: int | None
    supply: tuple[float, ...]
    says: str  # the alarm that presses more, else ""
    pace_says: str = ""
    hoarding: str = ""
    rationing: str = ""
    container: str = ""
    pounds: float | None = None
    crop: str = ""
    pounds_note: str = ""  # the yield's own words, its source and trust
    reckoning: str = ""  # how `put_up` comes about
    ways: tuple[Way, ...] = ()  # by which methods, where there are several
    short_lived: str = ""  # why it covers less than was asked for
    reserved: int = 0
    tasted: tuple[str, ...] = ()  # "not again: 7C"
    eaten_known: bool = False  # the rate is what the household really eats
    #: By replaying its own weeks: servings lost, and the days between which it is gone (None: it
    #: lasts); None where there are too few of them.
    lost_range: tuple[float, float] | None = None
    runs_out_range: tuple[date | None, date | None] | None = None
    range_says: str = ""


@dataclass(frozen=True, slots=True)
class OutlookView:
    """`alarms` are the worst three, both kinds among them where both hold; `shifts` say which crop
    failed and what stands in for it."""

    today: date
    foods: tuple[FoodAhead, ...]
    groups: tuple[FoodAhead, ...]
    household: FoodAhead
    alarms: tuple[str, ...]
    shifts: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    range_note: str = ""  # for how many foods there is a range, "" for all


@dataclass(frozen=True, slots=True)
class WhatIf:
    """The outlook as it is, and as it would be."""

    now: OutlookView
    what_if: OutlookView


class Pair(NamedTuple):
    """What would be otherwise of a food, a group or the household, now and then in words."""

    food: str
    now: str
    then: str


@dataclass(frozen=True, slots=True)
class FoodYear:
    """One year of a food in containers, or in `unit` ("lb", "pieces") where it is drawn from by
    that alone; `end` None while it runs. Of the closing stock of the running year, `reserved`
    containers are kept apart; `tasted` is what was said of the year's batches."""

    food: str
    start: date
    end: date | None
    opening: float
    made: float
    given: float
    lost: float
    unrecorded: float
    closing: float
    eaten: float
    reserved: int = 0
    tasted: tuple[str, ...] = ()
    unit: str = ""
    repacked: float = 0  # made into something else


@dataclass(frozen=True, slots=True)
class Loss:
    """What was discarded of one food for one reason; servings are estimates, also by season.
    `share` is of all servings of that food and method that stood or were put up in the time."""

    food: str
    method: str
    why: str
    containers: int
    servings: float
    seasons: dict[str, float]
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class SeasonLoss:
    """What one season cost; `share` is of all that was lost."""

    season: str  # "autumn 2026"; winter goes by the year in which it ends
    containers: int
    servings: float
    share: float


@dataclass(frozen=True, slots=True)
class YearOfLosses:
    """Servings discarded in the last twelve months, their share of what was eaten and discarded,
    and how many were saved by being eaten in their last four weeks; `before` are those of the
    twelve months before, None where there was nothing yet."""

    lost: float
    share: float
    saved: float
    before: float | None


@dataclass(frozen=True, slots=True)
class LossView:
    """`share` is of all servings that stood or were put up in the time; `changes` are sentences."""

    rows: tuple[Loss, ...]
    servings: float
    share: float
    changes: tuple[str, ...]
    seasons: tuple[SeasonLoss, ...] = ()
    year: YearOfLosses = YearOfLosses(0.0, 0.0, 0.0, None)
