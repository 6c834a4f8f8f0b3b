"""From stays and the places' temperatures to the stretches of life that limits reckon with.

A stay says where a container stood; a place says how warm it was there, and when that changed.
`stretches` lays one over the other.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from pantry_tui.core.model import Cut, Held, Place, Read, Spell, Stay, Turn
from pantry_tui.core.words import ASSUMED_F, Climate, State

#: Above this a freezer no longer keeps food frozen; water freezes at 32 °F, and food that is
#: salted or sweet a little below (USDA Handbook 66, freezing points; the strict side of them).
THAWS_F = 31.0
#: Thawing food above this is no longer held cold (FSIS, 40 °F or below).
COLD_F = 40.0


def stays_of(turns: Sequence[Turn], places: Mapping[str, Place]) -> tuple[Stay, ...]:
    """Where a container stood in which state, by days, from what happened to it."""
    found: list[Stay] = []
    where, state, how = "", State.SEALED, ""
    for turn in turns:
        where = where if turn.place is None else turn.place
        state = state if turn.state is None else turn.state
        how = turn.how or how if state is State.THAWED else ""
        place = places.get(where)
        climate = place.climate if place is not None else Climate.ROOM
        found.append(Stay(turn.when.day, where, climate, state, ASSUMED_F[climate], thawed=how))
    return tuple(found)


def spells_of(facts: Sequence[Held | Read | Cut]) -> tuple[Spell, ...]:
    """How warm a place was since when: its targets and readings, by days."""
    found: list[Spell] = []
    for fact in facts:
        if isinstance(fact, Held):
            found.append(Spell(fact.when.day, fact.climate, fact.target_f))
        elif isinstance(fact, Read) and found:
            found.append(Spell(fact.when.day, found[-1].climate, fact.temp_f, True, fact.humidity))
    return tuple(found)


def stretches(turns: Sequence[Turn], places: Mapping[str, Place]) -> tuple[Stay, ...]:
    """The stays of a container cut where its places grew warmer or colder, oldest first.

    In a freezer that was too warm, sealed food counts as thawed from then on, in a refrigerator
    up to 40 °F and at room temperature above. Food once thawed stays thawed when the cold returns.
    """
    found: list[Stay] = []
    stays = stays_of(turns, places)
    for index, stay in enumerate(stays):
        end = stays[index + 1].since if index + 1 < len(stays) else date.max
        place = places.get(stay.place)
        spells = spells_of(place.facts) if place is not None else ()
        found += [_warmed(piece) for piece in _pieces(stay, end, spells)] or [_warmed(stay)]
    return _merged(_still_thawed(found))


def _pieces(stay: Stay, end: date, spells: tuple[Spell, ...]) -> list[Stay]:
    pieces: list[Stay] = []
    for index, spell in enumerate(spells):
        stops = spells[index + 1].since if index + 1 < len(spells) else date.max
        running = spell.since <= stay.since < stops
        # One of no length (two readings on a day) still happened, so it is kept.
        begins_later = stay.since <= spell.since < end
        if not running and not begins_later:
            continue
        pieces.append(
            replace(
                stay,
                since=max(stay.since, spell.since),
                climate=spell.climate,
                temperature_f=spell.temperature_f,
                measured=spell.measured,
            )
        )
    return pieces


def _warmed(stay: Stay) -> Stay:
    if stay.climate is not Climate.FREEZER or stay.temperature_f <= THAWS_F:
        return stay
    climate = Climate.FRIDGE if stay.temperature_f <= COLD_F else Climate.ROOM
    state = State.THAWED if stay.state is State.SEALED else stay.state
    return replace(stay, climate=climate, state=state)


def _still_thawed(stays: list[Stay]) -> list[Stay]:
    found: list[Stay] = []
    for stay in stays:
        before = found[-1] if found else None
        again = stay.state is State.SEALED and before is not None
        if again and before is not None and before.state is State.THAWED:
            stay = replace(stay, state=State.THAWED, thawed=before.thawed)
        found.append(stay)
    return found


def _merged(stays: list[Stay]) -> tuple[Stay, ...]:
    """Neighbours that differ only in their day are one stretch."""
    found: list[Stay] = []
    for stay in stays:
        if found and replace(stay, since=found[-1].since) == found[-1]:
            continue
        found.append(stay)
    return tuple(found)
