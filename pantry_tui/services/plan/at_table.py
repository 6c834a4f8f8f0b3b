"""What a food is at table."""

from __future__ import annotations

from pantry_tui.core.plan.roles import role_said
from pantry_tui.core.words import Group, Role
from pantry_tui.services.pantry import Pantry


def role_at_table(p: Pantry, food: str, group: Group) -> Role:
    """By its row in the table; what is in none is what its group usually is."""
    known: dict[tuple[str, Group], Role] = p.once("roles", dict)
    if (food, group) not in known:
        row = p.tables.index.named(food)
        known[food, group] = role_said(row.role if row is not None else "", group)
    return known[food, group]
