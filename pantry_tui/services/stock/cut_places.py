"""Where a power cut reaches that is told of a place: a room has nothing to lose, what stands in it
has. What was cold then counts too, whatever became of it since."""

from __future__ import annotations

from pantry_tui.core.keeping.weather import above, weather
from pantry_tui.core.model import Place
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.lines import inside


def was_cold(p: Pantry, place: Place, first: int, last: int) -> bool:
    """Whether it is a refrigerator or freezer, or may have been one between these minutes."""
    return place.climate.is_cold or any(
        one.climate.is_cold and one.start <= last and one.end >= first
        for one in weather(place.id, p.ever, p.clock.now)
    )


def reached(p: Pantry, place: Place, first: int, last: int, *, told: bool = False) -> list[Place]:
    """The place where it is or was cold from the minute `first` to `last`, else the refrigerators
    and freezers in it, the outermost alone: what is told of one counts for the compartments in it.
    One that is gone since counts where something stood in it then. With `told` something more was
    said of it (how warm, how full, what ice), which is so of one alone.

    Raises Refused where there is none, BadInput where more was said of several."""
    if was_cold(p, place, first, last):
        return [place]
    cold = _cold_then(p, place, first, last)
    if not cold:
        raise Refused(
            f"{place.name} is neither refrigerator nor freezer, and none stands in it: a cut "
            "changes nothing."
        )
    if told and len(cold) > 1:
        named = " or ".join(one.name for one in cold)
        raise BadInput(f"Of which in {place.name} is that? Name one: {named}.")
    return cold


def _cold_then(p: Pantry, place: Place, first: int, last: int) -> list[Place]:
    within = [p.ever[id_] for id_ in inside(p, place.id, ever=True) if id_ in p.ever]
    stood = _stood(p, first, last) if any(one.gone for one in within) else set()
    cold = {
        one.id: one
        for one in within
        if was_cold(p, one, first, last) and (not one.gone or stood & inside(p, one.id, ever=True))
    }
    # A compartment that is left may have stood in one that is gone: that one has the cut.
    outer = [
        one
        for one in cold.values()
        if not any(around.id in cold for around in above(one.id, p.ever)[1:])
    ]
    paths = p.place_paths()
    return sorted(outer, key=lambda one: (paths.get(one.id, one.name), one.id))


def _stood(p: Pantry, first: int, last: int) -> set[str]:
    """Where something that is left may have stood between these minutes."""
    found = set()
    for container in p.stock.containers.values():
        ends = [turn.when.last for turn in container.turns[1:]] + [last + 1]
        where = ""
        for turn, end in zip(container.turns, ends, strict=True):
            where = turn.place or where
            if container.here and turn.when.first <= last and end >= first:
                found.add(where)
    return found


def cold_within(p: Pantry, place: Place) -> list[Place]:
    """The refrigerators and freezers in it, the outermost alone, by their paths."""
    within = inside(p, place.id)
    return [one for one in outermost(p) if one.id in within]


def outermost(p: Pantry) -> list[Place]:
    """All that stand in no other one, by their paths."""
    paths = p.place_paths()
    cold = [one for one in p.places.values() if _outermost(p, one)]
    return sorted(cold, key=lambda one: paths[one.id])


def _outermost(p: Pantry, place: Place) -> bool:
    here, *around = above(place.id, p.places)
    return here.climate.is_cold and not any(one.climate.is_cold for one in around)
