"""Supply against time, paces and alarms."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import table
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dates import say
from pantry_tui.core.plan.pace_words import containers, put_up
from pantry_tui.core.plan.range_words import SUPPOSED, from_to
from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from pantry_tui.services.books.rows import FoodAhead, OutlookView, Pair, WhatIf

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
    note = [found.range_note] if found.range_note else []
    return [*lines, "", *note, "Servings, paces and yields are estimates."]


def what_if(found: WhatIf, pairs: Sequence[Pair]) -> list[str]:
    """What would be otherwise, now and then side by side; the rest in a word."""
    supposed = [clean(one) for one in found.what_if.notes if one.startswith(SUPPOSED)]
    if not pairs:
        return [*supposed, "Nothing would be otherwise."]
    rest = len(found.now.foods) + len(found.now.groups) + 1 - len(pairs)
    lines = table(("food", "now", "then"), [(one.food, one.now, one.then) for one in pairs])
    others = (
        "other line would be as it is" if rest == 1 else f"other {rest} lines would be as they are"
    )
    same = ["", f"The {others} now."] if rest else []
    more = [one for one in found.what_if.alarms if one not in found.now.alarms]
    said = ["", "It would be said then:", *map(clean, more)] if more else []
    return [*supposed, *lines, *same, *said, "", "Servings, paces and yields are estimates."]


def _out(one: FoodAhead) -> str:
    """Between which days it is gone, where its own weeks tell; else about when."""
    if one.servings <= 0:
        return "none now"
    first, last = one.runs_out_range or (None, None)
    if first is not None and first != last:
        return f"{say(first)} to {say(last)}" if last else f"{say(first)} or later"
    return say(one.runs_out) if one.runs_out else "lasts"


def _lost(one: FoodAhead) -> str:
    if one.lost_range and one.lost_range[0] != one.lost_range[1]:
        low, high = (round(lost) for lost in one.lost_range)
        return f"{one.lost:.0f} ({from_to(low, high)})"
    return f"{one.lost:.0f}" if one.lost >= 1 else f"{one.lost:g}"


def _cells(one: FoodAhead) -> tuple[str, ...]:
    next_ = put_up(one.put_up, one.container) if one.container else "not put up here"
    pounds = f"{one.pounds:.0f} lb {one.crop}" if one.pounds and one.put_up else ""
    return (
        one.food,
        kitchen_count(one.servings),
        f"{one.pace_need:g}",
        f"{one.pace_can:g}",
        _out(one),
        _lost(one),
        next_,
        pounds,
    )


def _beside(one: FoodAhead) -> list[str]:
    """What should be known beside the number to put up."""
    said = [f"{one.reserved} set apart"] if one.reserved else []
    ways = ", ".join(f"{containers(way.count, way.container)} {way.method}" for way in one.ways)
    said += [f"as you liked them, {ways}"] if ways else []
    return [*said, *one.tasted]
