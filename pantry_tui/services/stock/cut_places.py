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
    paths = p.place_paths()
    cold = [one for id_ in inside(p, place.id) if (one := p.places.get(id_)) and _outermost(p, one)]
    if not cold:
        raise Refused(
            f"{place.name} is neither refrigerator nor freezer, and none stands in it: a cut "
            "changes nothing."
        )
    cold.sort(key=lambda one: paths[one.id])
    if told and len(cold) > 1:
        named = " or ".join(one.name for one in cold)
        raise BadInput(f"Of which in {place.name} is that? Name one: {named}.")
    return cold


def _outermost(p: Pantry, place: Place) -> bool:
    here, *around = above(place.id, p.places)
    return here.climate.is_cold and not any(one.climate.is_cold for one in around)
