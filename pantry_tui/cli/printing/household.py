"""What kind of household it is, and who is at table."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import listed
from pantry_tui.core.dates import say
from pantry_tui.core.plan.appetite import at_table

if TYPE_CHECKING:
    from pantry_tui.services.rows import HouseholdFacts


def facts(found: HouseholdFacts) -> list[str]:
    """One setting a line."""
    return [
        f"altitude: {'not said' if found.altitude_ft is None else f'{found.altitude_ft} ft'}",
        f"people: {found.people}",
        f"units: {found.units}",
        f"advice: {found.advice}",
        f"metric jars: {found.jars}",
        f"half of the world: {found.half}",
    ]


def days(found: Sequence[tuple[date, int]]) -> list[str]:
    """Days on which another number eats."""
    nothing = "As usual: `pantry-tui household away 24 dec to 27 dec` says otherwise."
    return listed((f"{say(day)}: {at_table(n)}" for day, n in found), nothing)


def plain(lines: Sequence[str]) -> list[str]:
    """Ceilings, as they are said."""
    return listed(lines)


def dishes(lines: Sequence[str]) -> list[str]:
    """One dish a line."""
    example = '"bean soup = 4 runner beans, 4 chicken stock"'
    return listed(lines, f"No dishes yet: pantry-tui household dish add {example}")


def substitutes(lines: Sequence[str]) -> list[str]:
    """One food a line."""
    return listed(lines, "Nothing stands in for anything yet.")
