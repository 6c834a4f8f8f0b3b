"""The year of each food, and what was lost."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import table
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dates import say
from pantry_tui.core.text import clean
from pantry_tui.services.books.year_words import year_of_losses

if TYPE_CHECKING:
    from pantry_tui.services.books.rows import FoodYear, LossView


def years(rows: Sequence[FoodYear]) -> list[str]:
    """opening + made - given - lost - unrecorded - repacked - closing = eaten, a line a year."""
    heads = (
        "food",
        "in",
        "from",
        "to",
        "opening",
        "made",
        "given",
        "lost",
        "unrecorded",
        "repacked",
        "closing",
        "eaten",
        "of it reserved",
        "rated",
    )
    cells = [
        (
            one.food,
            one.unit or "containers",
            say(one.start),
            say(one.end) if one.end else "today",
            f"{one.opening:g}",
            f"{one.made:g}",
            f"{one.given:g}",
            f"{one.lost:g}",
            f"{one.unrecorded:g}",
            f"{one.repacked:g}",
            f"{one.closing:g}",
            f"{one.eaten:g}",
            str(one.reserved),
            "; ".join(one.tasted),
        )
        for one in rows
    ]
    return table(heads, cells) if cells else ["Nothing was put up yet."]


def losses(found: LossView, since: date | None = None) -> list[str]:
    """The two changes first, then every loss, then the seasons."""
    year = year_of_losses(found.year)
    if not found.rows:
        return [year, "Nothing was discarded."]
    cells = [
        (
            one.food,
            one.method,
            one.why,
            str(one.containers),
            kitchen_count(one.servings),
            f"{one.share:.1%}",
        )
        for one in found.rows
    ]
    of = f"stood or was put up since {say(since)}" if since else "was put up"
    lost = kitchen_count(found.servings)
    head = f"{lost} servings lost, {found.share:.1%} of what {of} (estimates)."
    by_season = [
        (one.season, str(one.containers), kitchen_count(one.servings), f"{one.share:.1%}")
        for one in found.seasons
    ]
    return [
        year,
        head,
        *map(clean, found.changes),
        *table(("food", "method", "why", "containers", "servings", "of all of it"), cells),
        "",
        *table(("season", "containers", "servings", "of all lost"), by_season),
    ]
