"""Plain text for the command line and for screen readers: one fact a line, no box art, no colour.

Every text that a person typed goes through `clean`, so that no name can steer the terminal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from typing import TYPE_CHECKING

from pantry_tui.core.keeping.no_day import instead_of_day, is_gone
from pantry_tui.core.text import clean

if TYPE_CHECKING:
    from pantry_tui.services.rows import Done
    from pantry_tui.services.stock.rows import DueRow


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """Columns as wide as their widest cell; long cells are cut at 40 characters."""
    cells = [[clean(cell) for cell in row] for row in rows]
    cut = [[cell if len(cell) <= 40 else cell[:39] + "…" for cell in row] for row in cells]
    widths = [max(map(len, column)) for column in zip(heads, *cut, strict=True)]
    return [
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in (heads, *cut)
    ]


def iso(day: date | None) -> str:
    """The day of a table, "none" for none."""
    return day.isoformat() if day else "none"


def last_day(day: date | None, why: str) -> str:
    """The last day on which it may be eaten, or why there is none."""
    if day is None:
        return why if is_gone(why) else instead_of_day(why)
    return day.isoformat()


def done(what: Done) -> list[str]:
    """The sentence, then what else should be known."""
    return [clean(what.message), *(f"Note: {clean(one)}" for one in what.warnings)]


def listed(lines: Iterable[str], nothing: str = "") -> list[str]:
    """Sentences, one a line; `nothing` where there is none."""
    return [clean(line) for line in lines] or [nothing]


def food_of(row: DueRow) -> str:
    """ "runner beans (open)"."""
    return f"{row.food}{row.remark}"


def named(head: str, rows: Sequence[DueRow]) -> Iterator[str]:
    """A list under its head, nothing where it is empty."""
    if rows:
        yield f"{head}:"
    for row in rows:
        why = clean(row.reasons[0]) if row.reasons else ""
        yield f"  {row.code} {clean(food_of(row))} in {clean(row.place)}: {row.verdict}. {why}"
