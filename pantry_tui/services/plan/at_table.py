"""What a food is at table."""

from __future__ import annotations

from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.plan import roles
from pantry_tui.core.words import Group, Method, Role
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.dried import is_pulse
from pantry_tui.services.stock.stands import stands

_MEAT = frozenset({Group.MEAT, Group.FISH})


def role_at_table(
    p: Pantry, food: str, group: Group, method: Method | None = None, *, drawn: bool = True
) -> Role:
    """By its row in the table and how it is kept; what is in none is what its group usually is.
    `drawn`: a meal takes a portion of it and not the whole. Where neither meat nor fish stands a
    pulse is a main: common practice, no source."""
    known: dict[tuple[str, Group, Method | None, bool], Role] = p.once("roles", dict)
    key = food, group, method, drawn
    if key not in known:
        row = p.tables.index.named(food)
        classes = row.classes if row is not None else frozenset()
        sliced = roles.eaten_by_the_slice(group, method, classes)
        said = "snack" if sliced else _said(p, food)
        role = roles.role_said(said, group, drawn=drawn)
        main = role is Role.SIDE and is_pulse(p, food) and _meatless(p)
        known[key] = Role.MAIN if main else role
    return known[key]


def _meatless(p: Pantry) -> bool:
    """Whether neither meat nor fish stands."""
    batches = past(p)
    return p.once(
        "meatless", lambda: not any(batches[one.line.batch].group in _MEAT for one in stands(p))
    )


def beside(p: Pantry, entry: Entry) -> bool:
    """Whether it is opened beside the days: a relish or spread that is in no dish. It is eaten by
    the spoonful, and not by the head and day."""
    food = p.stock.batches[p.stock.containers[entry.containers[0]].batch].food
    return not entry.dish and role_at_table(p, food.name, food.group) in roles.BESIDE


def a_head(p: Pantry, food: str) -> float:
    """The servings that a meal out of bulk takes a head."""
    return roles.a_head(_said(p, food))


def _said(p: Pantry, food: str) -> str:
    row = p.tables.index.named(food)
    return row.role if row is not None else ""
