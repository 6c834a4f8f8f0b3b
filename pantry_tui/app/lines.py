"""From service rows to the lines of a table."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from textwrap import wrap

from rich.text import Text

from pantry_tui.app.format import (
    Column,
    clip,
    due_cells,
    round_cells,
    sentence,
    take_cells,
    week_day,
)
from pantry_tui.app.theme import STYLE
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.core.text import clean
from pantry_tui.services.rows import DueRow, RoundLine, Take


def due_lines(rows: Iterable[DueRow], columns: Sequence[Column], under: str = "") -> list[Line]:
    """One line a row; `under` keeps keys apart when a row may stand under several headings."""
    lines: list[Line] = []
    seen: dict[str, int] = {}
    for row in rows:
        key = f"{under}|{row.code}|{row.place}|{row.state}"
        seen[key] = seen.get(key, 0) + 1
        ref = row.container_ids[0] if row.container_ids else row.code
        lines.append(Line(f"{key}|{seen[key]}", _cells(row, columns), ref, row))
    return lines


def _cells(row: DueRow, columns: Sequence[Column]) -> tuple[Text, ...]:
    texts = due_cells(row, columns)
    coloured = ("mark", "verdict", "day")
    styled = [STYLE[row.verdict] if column.field in coloured else "" for column in columns]
    return tuple(Text(text, style) for text, style in zip(texts, styled, strict=True))


def take_lines(
    takes: Iterable[Take],
    columns: Sequence[Column],
    rows: Mapping[str, DueRow],
    *,
    headed: bool = False,
) -> list[Line]:
    """One line a take, with the row of its container; acts are on that very container. The
    cursor follows it to another day, but for bulk, which comes on several.

    A day is named once, on its first line (with `headed`, a dish has a heading that names it).
    """
    lines: list[Line] = []
    named = None
    for take in takes:
        cells = [Text(text) for text in take_cells(take, columns)]
        if take.day == named or (headed and take.dish):
            cells[0] = Text("")
        named = take.day
        said = f"{week_day(take.day)}: {' '.join(sentence(one) for one in take.reasons)}"
        lines.append(
            Line(
                f"take|{take.containers[0]}|{take.day if take.amount else ''}",
                tuple(cells),
                take.containers[0],
                rows.get(take.containers[0]),
                word=said,
            )
        )
    return lines


def thaw_lines(
    takes: Iterable[Take], columns: Sequence[Column], rows: Mapping[str, DueRow], today: date
) -> list[Line]:
    """What must leave the freezer today: a line each, so that one key thaws it."""
    return [
        replace(
            heading(
                f"thaw|{take.containers[0]}",
                f"> Thaw today for {week_day(take.day)}: {take.code} {take.food}, {take.place}",
                columns,
            ),
            ref=take.containers[0],
            row=rows.get(take.containers[0]),
            word="t takes it out to thaw.",
        )
        for take in takes
        if take.thaw_by is not None and take.thaw_by <= today
    ]


def round_lines(found: Iterable[RoundLine], columns: Sequence[Column]) -> list[Line]:
    """One line a group of equal containers, with what is expected and what was counted."""
    return [
        Line(
            one.key,
            tuple(Text(text) for text in round_cells(one, columns)),
            one.first,
            number=one.expected,
        )
        for one in found
    ]


def headings(key: str, text: str, columns: Sequence[Column], most: int = 3) -> list[Line]:
    """A sentence too long for one line, on up to `most`; what is left out then is in the word."""
    width = sum(column.width for column in columns) - 1
    first, *more = wrap(clean(text), width - 2, max_lines=most, placeholder=" …") or [""]
    lines = [heading(key, first, columns)]
    lines += [heading(f"{key}|{n}", f"  {part}", columns) for n, part in enumerate(more)]
    return [replace(line, word=text) for line in lines]


def heading(key: str, text: str, columns: Sequence[Column]) -> Line:
    """A line that is no stock: its text, indented as it is, runs on through the cells."""
    indent = text[: len(text) - len(text.lstrip(" "))]
    cells, rest = [], indent + clip(text, sum(column.width for column in columns) - 1 - len(indent))
    for column in columns:
        head, rest = _split(rest, column.width)
        cells.append(Text(head, "bold #56b4e9"))
    return Line(key, tuple(cells), word=text)


def _split(text: str, width: int) -> tuple[str, str]:
    from rich.cells import cell_len

    used = 0
    for number, char in enumerate(text):
        if used + cell_len(char) > width:
            return text[:number], text[number:]
        used += cell_len(char)
    return text, ""
