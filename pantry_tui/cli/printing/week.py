"""The week's menu."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import named, table
from pantry_tui.core.dates import say
from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from collections.abc import Sequence

    from pantry_tui.services.rows import Take, WeekView


def week(view: WeekView) -> list[str]:
    """Day by day, then what to know, what waits and what must go; last why each is in it."""
    state = "accepted" if view.accepted else "proposed"
    lines = [f"{say(view.start)} to {say(view.end)}, for {view.people}, {state}"]
    rows = [
        (
            say(take.day),
            take.code,
            take.food,
            take.amount or str(take.count),
            take.place,
            f"{take.servings:g}",
            say(take.thaw_by) if take.thaw_by else "",
            take.dish,
        )
        for take in view.take
    ]
    if rows:
        heads = ("day", "code", "food", "count", "place", "servings", "thaw from", "dish")
        lines += table(heads, rows)
    else:
        lines.append(_no_menu(view))
    lines += _listed("Open beside the meals", view.beside)
    lines += _listed("If you want more, these next", view.more)
    lines += [clean(one) for one in (*view.notes, *(text for _, text in view.table))]
    if view.left_out:
        lines.append(clean(f"Skipped this week: {', '.join(view.left_out)}."))
    lines += list(named("Needs care, or has no published figure", view.waiting))
    lines += list(named("Discard as its own page says, never taste", view.discard))
    why = ["  " + clean(f"{one.code} {one.food}: {' '.join(one.why)}") for one in view.take]
    lines += ["Why:", *dict.fromkeys(why)] if why else []
    return [*lines, *(f"care: {one}" for one in view.cautions)]


def _listed(head: str, takes: Sequence[Take]) -> list[str]:
    held = [clean(f"  {one.code} {one.food}, {_held(one)} in {one.place}") for one in takes]
    return [f"{head}:", *held] if held else []


def _held(take: Take) -> str:
    return take.amount or f"{take.servings:g} servings"


def _no_menu(view: WeekView) -> str:
    if view.accepted:
        return "Nothing is left to eat of this week's plan."
    if view.stocked:
        return "Nothing in store asks to be eaten this week."
    return "Nothing to propose: put something up with `pantry-tui putup`."
