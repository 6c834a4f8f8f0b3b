"""The shelves as they stand: a cell for every container in walking order, marked by its verdict."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from pantry_tui.app.draw.spans import Row, Span, fit, wide
from pantry_tui.app.roles import HEAD, MUTED, STYLE
from pantry_tui.core.words import MARK, Verdict
from pantry_tui.services.stock.rows import DueRow, Shelf

#: Cells of one container, with its air; of the marks that stand for verdicts none has a letter.
PITCH = 3
_AIR = 1


def shelf_rows(
    shelves: Sequence[tuple[str, Shelf]], width: int, marked: Collection[str] = ()
) -> list[Row]:
    """Every place with something in it under its `title`: lid codes, marks, the board they stand
    on; below all of them what the marks mean. `marked` containers have a star behind their mark."""
    rows: list[Row] = []
    for title, shelf in shelves:
        if not shelf.rows:
            continue
        rows += [(), fit((Span(title, HEAD),), width)]
        for band in _bands(shelf.rows, width):
            rows += _drawn(band, marked, width)
    return [*rows[1:], (), *legend(width)] if rows else []


class _Group:
    """Containers of one row that stand side by side on one board."""

    def __init__(self, row: DueRow, refs: Sequence[str], room: int) -> None:
        self.row, self.refs = row, refs
        self.wide = min(max(len(row.code) + 1, PITCH * len(refs)), room)


def _bands(rows: Sequence[DueRow], width: int) -> Iterator[list[_Group]]:
    """What has room on one board, then the next; a batch that is longer goes on there."""
    band: list[_Group] = []
    used = 0
    for row in rows:
        refs = list(row.container_ids)
        while refs:
            room = width - used
            fits = room // PITCH
            if band and (room < max(len(row.code) + 1, PITCH)):
                yield band
                band, used = [], 0
                continue
            taken, refs = refs[: max(fits, 1)], refs[max(fits, 1) :]
            group = _Group(row, taken, width)
            band.append(group)
            used += group.wide + _AIR
    if band:
        yield band


def _drawn(band: Sequence[_Group], marked: Collection[str], width: int) -> Iterator[Row]:
    codes: list[Span] = []
    marks: list[Span] = []
    for group in band:
        codes.append(Span(f"{group.row.code:<{group.wide + _AIR}}", MUTED))
        role, mark = STYLE[group.row.verdict], MARK[group.row.verdict]
        for ref in group.refs:
            star = "*" if ref in marked else " "
            marks.append(Span(f" {mark}{star}"[:PITCH], role, ref))
        marks.append(Span(" " * (group.wide - PITCH * len(group.refs) + _AIR)))
    yield fit(tuple(codes), width)
    yield fit(tuple(marks), width)
    yield (Span("▔" * min(wide(tuple(marks)) - _AIR, width), MUTED),)


def legend(width: int, among: Collection[Verdict] = tuple(Verdict)) -> Iterator[Row]:
    """What each mark means, in as many lines as that takes."""
    line: list[Span] = []
    for verdict in dict.fromkeys(Verdict):
        if verdict not in among:
            continue
        text = f"{MARK[verdict]} {verdict.value}   "
        if line and wide(tuple(line)) + len(text.rstrip()) > width:
            yield fit(tuple(line), width)
            line = []
        line.append(Span(text, STYLE[verdict]))
    if line:
        yield fit(tuple(line), width)
