"""From service rows to the lines of a table."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from rich.text import Text

from pantry_tui.app.format import Column, clip, due_cells, round_cells, sentence, take_cells
from pantry_tui.app.theme import STYLE
from pantry_tui.app.widgets.rowtable import Line
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
    takes: Iterable[Take], columns: Sequence[Column], rows: Mapping[str, DueRow]
) -> list[Line]:
    """One line a take, with the row of its container; acts are on that very container. The
    cursor follows it to another day, but for bulk, which comes on several."""
    return [
        Line(
            f"take|{take.containers[0]}|{take.day if take.amount else ''}",
            tuple(Text(text) for text in take_cells(take, columns)),
            take.containers[0],
            rows.get(take.containers[0]),
            word=" ".join(sentence(one) for one in take.reasons),
        )
        for take in takes
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


def heading(key: str, text: str, columns: Sequence[Column]) -> Line:
    """A line that is no stock: its text runs on through the cells."""
    cells, rest = [], clip(text, sum(column.width for column in columns) - 1)
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
