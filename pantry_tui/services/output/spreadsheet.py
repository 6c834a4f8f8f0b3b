"""Stock, log, year and losses as tables for a spreadsheet: ISO dates, numbers as numbers, the unit
in the head of a column. A text that a spreadsheet would take for a formula is not one any more."""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator, Sequence
from datetime import date
from io import StringIO
from pathlib import Path

from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput
from pantry_tui.services.books.logbook import entries
from pantry_tui.services.books.losses import losses
from pantry_tui.services.books.year import years
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import view
from pantry_tui.store.files import made_whole

Cell = str | int | float | date | None
#: Heads, and the rows under them.
Table = tuple[Sequence[str], Iterator[Sequence[Cell]]]

#: What a spreadsheet takes for the beginning of a formula.
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")


def export_table(p: Pantry, to: Path, what: str) -> int:
    """One of them as CSV (RFC 4180, UTF-8 with the mark by which a spreadsheet knows it) in a new
    file; returns the number of rows. Raises BadInput for an unknown table, Refused, StoreError."""
    if what not in TABLES:
        raise BadInput(f"{what[:40]!r} is no table: say one of {', '.join(TABLES)}.")
    heads, rows = TABLES[what](p)
    text = StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(heads)
    count = 0
    for row in rows:
        writer.writerow([_cell(one) for one in row])
        count += 1
    with made_whole(to) as making:
        making.write_bytes(text.getvalue().encode("utf-8-sig"))
    return count


def _cell(value: Cell) -> str | int | float:
    if value is None:
        return ""
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, int | float):
        return value
    plain = clean(value)
    return f"'{plain}" if plain.startswith(_FORMULA) else plain


def _stock(p: Pantry) -> Table:
    heads = (
        "lid code", "food", "method", "place", "made (date)", "state", "containers", "numbers",
        "size", "left in each", "kept for", "verdict", "best by (date)", "discard after (date)",
        "to the next date (days)", "why",
    )  # fmt: skip
    made = {one.code: one.made for one in p.batches()}
    return heads, (
        (
            row.code, row.food, row.method.value, row.place, made.get(row.code), row.state.value,
            row.count,
            " ".join(one.partition("/")[2] for one in row.container_ids), row.size, row.amount,
            row.reserved, row.verdict.value, row.good_until, row.last_day,
            None if row.must_go or row.in_doubt else row.days_left,
            row.reasons[0] if row.reasons else "",
        )
        for row in view.due(p)
    )  # fmt: skip


def _log(p: Pantry) -> Table:
    heads = ("event", "day (date)", "at (hour:minute)", "what", "lid code", "says", "taken back")
    return heads, (
        (
            one.id, date.fromisoformat(one.day), one.at, one.kind, one.code, one.says,
            "yes" if one.undone else "no",
        )
        for one in entries(p)
    )  # fmt: skip


def _year(p: Pantry) -> Table:
    heads = (
        "food", "from (date)", "to (date)", "counted in", "opening", "made", "given", "lost",
        "unrecorded", "closing", "eaten", "kept apart (containers)", "said of it",
    )  # fmt: skip
    return heads, (
        (
            one.food, one.start, one.end, one.unit or "containers", one.opening, one.made,
            one.given, one.lost, one.unrecorded, one.closing, one.eaten, one.reserved,
            "; ".join(one.tasted),
        )
        for one in years(p)
    )  # fmt: skip


def _losses(p: Pantry) -> Table:
    heads = (
        "food", "method", "why", "lost (containers)", "lost (servings, estimated)",
        "of what stood or was put up (%)",
    )  # fmt: skip
    return heads, (
        (one.food, one.method, one.why, one.containers, one.servings, round(100 * one.share, 1))
        for one in losses(p).rows
    )


#: What may be exported as a table; the first where nobody said.
TABLES: dict[str, Callable[[Pantry], Table]] = {
    "stock": _stock,
    "log": _log,
    "year": _year,
    "losses": _losses,
}
