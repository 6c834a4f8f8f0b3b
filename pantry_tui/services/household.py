"""What kind of household it is: altitude, people, units; changed any time."""

from __future__ import annotations

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done, HouseholdFacts
from pantry_tui.services.stock.aside import aside


def facts(p: Pantry) -> HouseholdFacts:
    """As it is now."""
    return HouseholdFacts(p.altitude_ft, p.people, p.settings().get("units", "us"))


@aside
def change(
    p: Pantry,
    *,
    altitude_ft: int | None = None,
    people: int | None = None,
    units: str | None = None,
) -> Done:
    """Change what is given; None leaves it as it is. Raises BadInput for impossible numbers."""
    now = facts(p)
    altitude = now.altitude_ft if altitude_ft is None else altitude_ft
    p.settle(altitude, now.people if people is None else people, units or now.units)
    new = facts(p)
    return Done(
        f"The household: {new.people} at {new.altitude_ft} ft, in {new.units} units.",
    )
