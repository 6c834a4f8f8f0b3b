"""Readings of a place's warmth, and one clear notice for each place that is out of range."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_temperature
from pantry_tui.core.keeping.exposure import stretches
from pantry_tui.core.keeping.limits import Judgement, judge
from pantry_tui.core.keeping.rotation import UNFIT
from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.model import Container, Place
from pantry_tui.core.words import ASSUMED_F, Climate, Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done


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
    event = p.event(Did.READING, place=where.id, temp_f=temp_f, humidity=humidity)
    p.book(_on(event, day))
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


def _on(event: Event, day: date) -> Event:
    return replace(event, day=day)


def notices(p: Pantry) -> list[str]:
    """One sentence for every place whose last reading costs something, worst first."""
    return list(_notices(p, p.stock.places.values()))


def _notices(p: Pantry, places: Iterable[Place]) -> Iterable[str]:
    paths = p.place_paths()
    for place in places:
        if not place.spells or not place.spells[-1].measured:
            continue
        here = [c for c in p.stock.containers.values() if c.here and c.place == place.id]
        said = _cost(p, place, here)
        if said:
            read = dates.say(place.spells[-1].since)
            warm = place.spells[-1].temperature_f
            yield f"{paths[place.id]} read {warm:g} F on {read}: {said}."


def _cost(p: Pantry, place: Place, here: list[Container]) -> str:
    """What the warmth or cold of its last reading does to what stands there, "" for nothing."""
    spoilt = unknown = shorter = 0
    worst = 0
    for container in here:
        now, ideal = p.judge(container), _had_it_held(p, container, place)
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


def _had_it_held(p: Pantry, container: Container, place: Place) -> Judgement:
    """The verdict if the place had held what its climate is taken to hold."""
    ideal = 0.0 if place.climate is Climate.FREEZER else min(ASSUMED_F[place.climate], place.target)
    spells = tuple(
        replace(one, temperature_f=ideal, measured=False) if one.measured else one
        for one in place.spells
    )
    held = {**p.stock.places, place.id: replace(place, spells=spells)}
    lived = replace(container, stays=stretches(container.stays, held))
    return judge(p.stock.batches[container.batch], lived, p.book_of_rules, p.today)
