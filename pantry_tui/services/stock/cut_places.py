"""Where a power cut reaches that is told of a place: a room has nothing to lose, what stands in it
has."""

from __future__ import annotations

from pantry_tui.core.keeping.weather import above
from pantry_tui.core.model import Place
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.lines import inside


def reached(p: Pantry, place: Place, *, told: bool = False) -> list[Place]:
    """The place where it is cold, else the refrigerators and freezers in it, the outermost alone:
    what is told of one counts for the compartments in it. With `told` something more was said of
    it (how warm, how full, what ice), which is so of one alone.

    Raises Refused where there is none, BadInput where more was said of several."""
    if place.climate.is_cold:
        return [place]
    cold = cold_within(p, place)
    if not cold:
        raise Refused(
            f"{place.name} is neither refrigerator nor freezer, and none stands in it: a cut "
            "changes nothing."
        )
    if told and len(cold) > 1:
        named = " or ".join(one.name for one in cold)
        raise BadInput(f"Of which in {place.name} is that? Name one: {named}.")
    return cold


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
