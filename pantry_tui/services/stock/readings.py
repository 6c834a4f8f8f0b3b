"""Readings of a place's warmth, and one clear notice for each place that is out of range."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_temperature
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log.payloads import Reading
from pantry_tui.core.model import Container, Place, Read
from pantry_tui.core.words import ASSUMED_F, Climate, Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.pick import standing_in


@booked
def read(
    p: Pantry, place: str, temp_f: float, humidity: float | None = None, at: date | None = None
) -> Done:
    """Book a reading (°F, % humidity); it holds until the next one. Raises BadInput."""
    where = p.find_place(place)
    day = at or p.today
    if day > p.today:
        raise BadInput(f"{dates.say(day)} is still to come: give the day it was read.")
    if humidity is not None and not 0 <= humidity <= 100:
        raise BadInput("Humidity lies between 0 and 100 %.")
    p.book(Reading(where.id, temp_f, humidity), day=day)
    path = p.place_paths()[where.id]
    said = f"Read {temp_f:g} F in {path}" + (f" on {dates.say(day)}." if at else ".")
    return Done(said, tuple(_notices(p, [p.stock.places[where.id]])))


def read_line(p: Pantry, place: str, typed: str) -> Done:
    """The same from "38F", "3C 90%" as a person types it."""
    words = typed.replace("%", " ").split()
    if not 1 <= len(words) <= 2:
        raise BadInput("Write the temperature, and the humidity if you know it: 38F 90%.")
    try:
        humidity = float(words[1]) if len(words) == 2 else None
    except ValueError:
        raise BadInput(f"{words[1][:20]!r} is no humidity: write 90 or 90%.") from None
    return read(p, place, read_temperature(words[0], p.bare_degree), humidity)


def notices(p: Pantry) -> list[str]:
    """One sentence for every place whose last reading costs something, worst first."""
    return list(_notices(p, p.stock.places.values()))


def _notices(p: Pantry, places: Iterable[Place]) -> Iterable[str]:
    paths = p.place_paths()
    for place in places:
        if place.reading is None:
            continue
        said = _cost(p, place, standing_in(p, place.id))
        if said:
            read = dates.say(place.reading.when.day)
            warm = place.reading.temp_f
            yield f"{paths[place.id]} read {warm:g} F on {read}: {said}."


def _cost(p: Pantry, place: Place, here: list[Container]) -> str:
    """What the warmth or cold of its last reading does to what stands there, "" for nothing."""
    spoilt = unknown = shorter = 0
    worst = 0
    had_it_held = p.imagining(f"held {place.id}", lambda: _held(p, place))
    for container in here:
        now, ideal = p.judge(container), had_it_held.judge(container)
        if now.verdict in UNFIT and ideal.verdict not in UNFIT:
            spoilt += 1
        elif now.verdict is Verdict.UNKNOWN and ideal.verdict is not Verdict.UNKNOWN:
            unknown += 1
        elif now.best_by and ideal.best_by and now.best_by < ideal.best_by:
            shorter += 1
            worst = max(worst, (ideal.best_by - now.best_by).days)
    parts = []
    if spoilt:
        parts.append(f"{spoilt} must be discarded")
    if unknown:
        parts.append(f"{unknown} have no published figure there")
    if shorter:
        parts.append(f"{shorter} lose quality, up to {worst} days of it")
    return "; ".join(parts)


def _held(p: Pantry, place: Place) -> dict[str, Place]:
    """The places, had this one held what its climate is taken to hold."""
    ideal = 0.0 if place.climate is Climate.FREEZER else min(ASSUMED_F[place.climate], place.target)
    facts = tuple(
        one._replace(temp_f=ideal) if isinstance(one, Read) else one for one in place.facts
    )
    return {**p.places, place.id: replace(place, facts=facts)}
