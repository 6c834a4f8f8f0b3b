"""Where the household can freeze what it cannot eat in time."""

from __future__ import annotations

from pantry_tui.core.words import Climate
from pantry_tui.services.pantry import Pantry


def freezer(p: Pantry) -> str:
    """The first of its freezers by name, "" where it has none."""
    found = sorted(one.name for one in p.places.values() if one.climate is Climate.FREEZER)
    return found[0] if found else ""
