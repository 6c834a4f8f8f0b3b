"""Supply against time, paces and alarms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import table
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dates import say
from pantry_tui.core.plan.pace_words import containers
from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from pantry_tui.services.books.rows import FoodAhead, OutlookView

_HEADS = (
    "food",
    "servings",
    "a week for no loss",
    "a week to last",
    "runs out",
    "lost",
    "put up next",
    "fresh crop",
)


def outlook(found: OutlookView) -> list[str]:
    """The worst three alarms first, then every food, group and the household; then sentences.
    Servings are estimates."""
    if not found.foods:
        return ["Nothing to look ahead to yet: put something up with `pantry-tui putup`."]
    lines = [clean(one) for one in (*found.alarms, *found.shifts, *found.notes)]
    lines += table(_HEADS, map(_cells, found.foods))
    lines += ["", "By group, and the whole household:"]
    together = [*found.groups, found.household]
    lines += table(_HEADS[:6], [_cells(one)[:6] for one in together])
    hurried = [one for one in found.foods if one.pace_need > one.pace_can]
    lines += ["", "The pace:", *(clean(one.pace_says) for one in (*hurried, *together))]
    lines += [clean(one.says) for one in together if one.says]
    more = [said for one in found.foods for said in (one.hoarding, one.rationing) if said]
    more = [said for said in more if said not in found.alarms]
    lines += ["", "Other alarms:", *map(clean, more)] if more else []
    beside = [clean(f"{one.food}: {said}") for one in found.foods for said in _beside(one)]
    lines += ["", "Beside it:", *beside] if beside else []
    return [*lines, "", "Servings, paces and yields are estimates."]


def _cells(one: FoodAhead) -> tuple[str, ...]:
    put_up = containers(one.put_up, one.container)
    pounds = f"{one.pounds:.0f} lb {one.crop}" if one.pounds and one.put_up else ""
    return (
        one.food,
        kitchen_count(one.servings),
        f"{one.pace_need:g}",
        f"{one.pace_can:g}",
        say(one.runs_out) if one.runs_out else "lasts",
        f"{one.lost:g}",
        put_up,
        pounds,
    )


def _beside(one: FoodAhead) -> list[str]:
    """What should be known beside the number to put up."""
    said = [f"{one.reserved} set apart"] if one.reserved else []
    return [*said, *one.tasted]
