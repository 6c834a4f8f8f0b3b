"""The outlook and the books in plain lines; as cli_print, for the verbs of cli_books."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.cli.show import table
from pantry_tui.core.dates import say
from pantry_tui.core.plan.pace_words import containers
from pantry_tui.core.text import clean
from pantry_tui.services.books.rows import FoodAhead, FoodYear, LossView, OutlookView

_HEADS = (
    "food",
    "servings",
    "needs a week",
    "can give",
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
    pounds = f"{one.pounds:.0f} lb {one.crop}" if one.pounds and one.put_up else "-"
    return (
        one.food,
        f"{one.servings:g}",
        f"{one.pace_need:g}",
        f"{one.pace_can:g}",
        say(one.runs_out) if one.runs_out else "-",
        f"{one.lost:g}",
        put_up,
        pounds,
    )


def _beside(one: FoodAhead) -> list[str]:
    """What should be known beside the number to put up."""
    said = [f"{one.reserved} kept apart"] if one.reserved else []
    return [*said, *one.tasted]


def years(rows: Sequence[FoodYear]) -> list[str]:
    """opening + made - given - lost - unrecorded - closing = eaten, a line a year."""
    heads = (
        "food",
        "from",
        "to",
        "opening",
        "made",
        "given",
        "lost",
        "unrecorded",
        "closing",
        "eaten",
        "of it kept",
        "tasted",
    )
    cells = [
        (
            one.food,
            say(one.start),
            say(one.end) if one.end else "today",
            str(one.opening),
            str(one.made),
            str(one.given),
            str(one.lost),
            str(one.unrecorded),
            str(one.closing),
            str(one.eaten),
            str(one.reserved) if one.reserved else "-",
            "; ".join(one.tasted),
        )
        for one in rows
    ]
    return table(heads, cells) if cells else ["Nothing was put up yet."]


def losses(found: LossView, since: date | None = None) -> list[str]:
    """The two changes first, then every loss, then the seasons."""
    if not found.rows:
        return ["Nothing was discarded."]
    cells = [
        (
            one.food,
            one.method,
            one.why,
            str(one.containers),
            f"{one.servings:g}",
            f"{one.share:.1%}",
        )
        for one in found.rows
    ]
    of = f"stood or was put up since {say(since)}" if since else "was put up"
    head = f"{found.servings:g} servings lost, {found.share:.1%} of what {of} (estimates)."
    by_season = [
        (one.season, str(one.containers), f"{one.servings:g}", f"{one.share:.1%}")
        for one in found.seasons
    ]
    return [
        head,
        *map(clean, found.changes),
        *table(("food", "method", "why", "containers", "servings", "of all of it"), cells),
        "",
        *table(("season", "containers", "servings", "of all lost"), by_season),
    ]
