"""Places, what stands in them, power cuts and stock checks."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from pantry_tui.cli.printing.lines import table
from pantry_tui.cli.printing.stock import due
from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from pantry_tui.services.rows import OutageRow, RoundLine
    from pantry_tui.services.stock.rows import Shelf


def shelves(found: Sequence[Shelf]) -> list[str]:
    """Every place with what stands there."""
    lines: list[str] = []
    for shelf in found:
        of = f" of {shelf.capacity}" if shelf.capacity else ""
        kind = f"{shelf.climate}, {shelf.temperature_f:g} °F"
        lines.append(f"{clean(shelf.path)} ({kind}): {shelf.count}{of}")
        lines += ["  " + line for line in due(shelf.rows)] if shelf.rows else []
    return lines or ["There is no place yet: add one with `pantry-tui place add`."]


def places(found: Sequence[Shelf], said: Callable[[str], str] = str) -> list[str]:
    """Places alone; `said` says a temperature in the household's units, before columns are cut."""
    if not found:
        return shelves(found)
    rows = [
        (
            s.path,
            s.climate,
            said(f"{s.temperature_f:g} °F"),
            str(s.count),
            str(s.capacity or "not said"),
        )
        for s in found
    ]
    return table(("place", "climate", "temperature", "holds", "room for"), rows)


def outage(rows: Sequence[OutageRow]) -> list[str]:
    """What must go on top, then what to use first, each with its reason."""
    lines = [
        f"{row.action}: {row.count} of {row.code} {clean(row.food)} in {clean(row.place)}. "
        f"{clean(' '.join(row.reasons))}"
        for row in rows
    ]
    return lines or ["Nothing stood there."]


def count_lines(lines: Sequence[RoundLine]) -> list[str]:
    """What should stand there, to be counted."""
    rows = [
        (
            one.code,
            one.food,
            one.state.value,
            one.place,
            str(one.expected),
            "" if one.seen is None else str(one.seen),
        )
        for one in lines
    ]
    return table(("code", "food", "state", "place", "expected", "seen"), rows)


def next_places(rows: Sequence[dict[str, Any]]) -> list[str]:
    """Which place to count next."""
    lines = [f"{clean(row['place'])}: {row['says']}" for row in rows]
    return lines or ["Nothing stands anywhere yet."]
