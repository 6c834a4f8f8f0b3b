"""Readings of a place's warmth, and one clear notice for each place that is out of range."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_temperature
from pantry_tui.core.keeping.weather import too_warm
from pantry_tui.core.log.payloads import Reading
from pantry_tui.core.model import Place
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import warmth
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading


def read(
    p: Pantry,
    place: str,
    temp_f: float,
    humidity: float | None = None,
    at: date | None = None,
    since: int | None = None,
) -> Done:
    """Book a reading (°F, % humidity). What was too warm had been so for `since` minutes, or,
    where nobody knows (None), since the last cold reading. Raises BadInput."""
    where = _book(p, place, temp_f, humidity, at, since)
    path = p.place_paths()[where.id]
    said = f"Read {temp_f:g} F in {path}" + (f" on {dates.say(at)}." if at else ".")
    # What it costs is reckoned when others may write again.
    warnings = list(_notices(p, [p.places[where.id]]))
    if since is None and too_warm(where.climate, temp_f):
        warnings.append(
            "Nobody said since when it was so warm, so it counts since the last cold reading: "
            "undo it and add --since 90m if you know."
        )
    return Done(said, tuple(warnings))


@booked
def _book(
    p: Pantry,
    place: str,
    temp_f: float,
    humidity: float | None,
    at: date | None,
    since: int | None,
) -> Place:
    where = p.find_place(place)
    day = at or p.today
    if day > p.today:
        raise BadInput(f"{dates.say(day)} is still to come: give the day it was read.")
    if humidity is not None and not 0 <= humidity <= 100:
        raise BadInput("Humidity lies between 0 and 100 %.")
    if since is not None and not 0 <= since <= LONGEST:
        raise BadInput("Say for how long it had been so as 90m or 3h, at most a year.")
    p.book(Reading(where.id, temp_f, humidity, since), day=day)
    return where


#: A year, in minutes.
LONGEST = 366 * 24 * 60
_SPAN = re.compile(r"(\d{1,6})\s*(m|min|minutes?|h|hours?|d|days?)?")


def read_minutes(text: str) -> int:
    """("90m", "3h", "2 days") -> minutes; a bare number is minutes. Raises BadInput."""
    match = _SPAN.fullmatch(text.strip().casefold())
    if match is None:
        raise BadInput(f"{text[:20]!r} is no length of time: write 90m or 3h.")
    return int(match[1]) * {"h": 60, "d": 24 * 60}.get((match[2] or "m")[0], 1)


def read_line(p: Pantry, place: str, typed: str) -> Done:
    """The same from "38F", "3C 90%", "45F since 90m" as a person types it."""
    told, _, long = typed.casefold().partition("since")
    words = told.replace("%", " ").split()
    if not 1 <= len(words) <= 2:
        raise BadInput(
            "Write the temperature, the humidity if you know it, and since when: 38F 90%, "
            "45F since 90m."
        )
    try:
        humidity = float(words[1]) if len(words) == 2 else None
    except ValueError:
        raise BadInput(f"{words[1][:20]!r} is no humidity: write 90 or 90%.") from None
    since = read_minutes(long) if long.strip() else None
    return read(p, place, read_temperature(words[0], p.bare_degree), humidity, since=since)


def notices(p: Pantry) -> list[str]:
    """One sentence for every place whose last reading costs something, worst first."""
    return list(_notices(p, p.places.values()))


def _notices(p: Pantry, places: Iterable[Place]) -> Iterable[str]:
    ready(p)
    paths = p.place_paths()
    for place in places:
        if place.reading is None or warmth.in_range(place):
            continue
        with reading(p.path):
            said = _said(table.cost(p.store.db, place.id, p.today.isoformat()))
        if said:
            read_on = dates.say(place.reading.when.day)
            yield f"{paths[place.id]} read {place.reading.temp_f:g} F on {read_on}: {said}."


def _said(cost: table.Cost) -> str:
    """What the warmth or cold of its last reading does to what stands there, "" for nothing."""
    parts = []
    if cost.spoilt:
        parts.append(f"{cost.spoilt} must be discarded")
    if cost.hurried:
        parts.append(f"{cost.hurried} must be in the cold within two hours of leaving it")
    if cost.unknown:
        parts.append(f"{cost.unknown} have no published figure there")
    if cost.shorter:
        parts.append(f"{cost.shorter} lose quality, up to {cost.days} days of it")
    return "; ".join(parts)
