"""Whether a place held what it should, what would have been if it had, and what is frozen there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.dataclass import replace
from pantry_tui.core.model import Container, Place, Read
from pantry_tui.core.words import ASSUMED_F, Climate

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry

#: Below this a place that is no freezer is read as too cold for jars and crops, °F: water freezes.
_COLDEST_F = 32.0


def ideal_f(place: Place) -> float:
    """What a place of its climate is taken to hold at the warmest, °F."""
    if place.climate is Climate.FREEZER:
        return 0.0
    return min(ASSUMED_F[place.climate], place.target)


def in_range(place: Place) -> bool:
    """Whether its last reading, if any, is neither warmer than its climate nor freezing."""
    if place.reading is None:
        return True
    warm = place.reading.temp_f
    return warm <= ideal_f(place) and (place.climate is Climate.FREEZER or warm >= _COLDEST_F)


def had_it_held(p: Pantry, place: Place) -> dict[str, Place]:
    """The places, had this one been read at what its climate is taken to hold."""
    ideal = ideal_f(place)
    facts = tuple(
        one._replace(temp_f=ideal, since=None) if isinstance(one, Read) else one
        for one in place.facts
    )
    return {**p.ever, place.id: replace(place, facts=facts)}


def is_frozen(p: Pantry, container: Container) -> bool:
    """Whether it stands in a freezer and was not set to thaw there, as without a fridge it is."""
    freezer = p.stock.places[container.place].climate is Climate.FREEZER
    return freezer and not container.taken_out
