"""What an event says of a place: what it is, how warm it was read, when its power was off."""

from __future__ import annotations

from typing import NamedTuple

from pantry_tui.core.words import Climate, Verdict


class Reading(NamedTuple):
    """A place's warmth, °F, and humidity, %. `since` is how many minutes it had been so, None
    where nobody knows; `instead_of` the id of the reading that it puts right."""

    place: str
    temp_f: float
    humidity: float | None = None
    since: int | None = None
    instead_of: str = ""


class Mark(NamedTuple):
    """What a power cut did to a container, as older logs recorded it."""

    container: str
    verdict: Verdict
    words: str


class Outage(NamedTuple):
    """A power cut of a place. `start` and `end` are local moments ("2026-11-25T18:00"); `start`
    is "" where nobody knows since when, both where only the hours are known (older logs). `full`
    None where nobody knows how full it was; `instead_of` the id of the power cut that it puts
    right."""

    place: str
    start: str = ""
    end: str = ""
    hours: float = 0.0
    full: bool | None = None
    max_temp_f: float | None = None
    ice: bool | None = None
    marks: tuple[Mark, ...] = ()
    instead_of: str = ""


class PlaceAdded(NamedTuple):
    place: str
    name: str
    climate: Climate
    parent: str | None = None
    target_f: float | None = None
    capacity: int | None = None


class PlaceChanged(NamedTuple):
    """Only what changed; `forget_target`: no target any more, its climate speaks."""

    place: str
    name: str | None = None
    climate: Climate | None = None
    parent: str | None = None
    target_f: float | None = None
    forget_target: bool = False
    capacity: int | None = None


class PlaceRemoved(NamedTuple):
    """The place is no more; `into` is where its stock went, "" where it held none."""

    place: str
    into: str = ""
