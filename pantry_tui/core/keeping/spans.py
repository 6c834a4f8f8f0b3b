"""A span of a container's life: where it may have been, in which state, how warm."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from pantry_tui.core.keeping.weather import THAWS_F
from pantry_tui.core.words import ASSUMED_F, Climate


class Span(NamedTuple):
    """From the minute `start` to `end` the container may have been so.

    `day` is the earliest local day on which the span may have begun. `thawed` is day 0 of the
    thawed food (it lies ahead while it thaws), None where it was not frozen before or is frozen
    still. `fast`: thawed in cold water or a microwave oven.
    `relieved`: it was frozen until then, so what counts from the day it was made does not go on.
    """

    start: int
    end: int
    day: date
    place: str
    climate: Climate
    temperature_f: float
    measured: bool
    in_progress: bool
    opened: bool
    thawed: date | None
    fast: bool
    relieved: bool
    steady: bool

    @property
    def frozen(self) -> bool:
        """Whether the place keeps food frozen."""
        return self.climate is Climate.FREEZER and self.temperature_f <= THAWS_F

    @property
    def taken_f(self) -> float:
        """The °F it is reckoned with: a refrigerator is no colder than most unless it was set so
        and read so."""
        if self.climate is Climate.FRIDGE and not (self.measured and self.steady):
            return max(self.temperature_f, ASSUMED_F[Climate.FRIDGE])
        return self.temperature_f
