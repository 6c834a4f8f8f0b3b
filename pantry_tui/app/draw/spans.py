"""What a picture is made of: pieces of text, each with a role and what it stands for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from rich.cells import cell_len, set_cell_size

from pantry_tui.core.text import clean


class Span(NamedTuple):
    """A text with its role (`theme.ROLES`, "" for none). `ref` names what the cursor stands on
    there; without one it is passed over."""

    text: str
    role: str = ""
    ref: str = ""


#: One line of a picture, from its left edge.
Row = tuple[Span, ...]

#: Eighths of a cell from nothing to full; they tell heights apart without any colour.
BLOCKS = " ▁▂▃▄▅▆▇█"


def block(full: float) -> str:
    """One cell, from empty (0 or less) to full (1 or more); what is there at all is seen."""
    if full <= 0:
        return BLOCKS[0]
    return BLOCKS[max(1, min(8, round(full * 8)))]


def wide(row: Row) -> int:
    """Cells of a row."""
    return sum(cell_len(span.text) for span in row)


def fit(row: Row, width: int) -> Row:
    """A row of at most `width` cells; what is beyond is cut off, and words say that they were: half
    a number would be another one."""
    left, found = width, []
    for span in row:
        if left <= 0:
            break
        text = span.text
        if cell_len(text) > left:
            kept = set_cell_size(text, left)
            says = any(char.isalnum() for char in text[len(kept) :])
            text = f"{set_cell_size(text, left - 1)}…" if says else kept
        left -= cell_len(text)
        found.append(span._replace(text=text))
    return tuple(found)


def joined(row: Row) -> Row:
    """Neighbours of one role that stand for the same are one span."""
    found: list[Span] = []
    for span in row:
        if found and found[-1][1:] == span[1:]:
            found[-1] = found[-1]._replace(text=found[-1].text + span.text)
        else:
            found.append(span)
    return tuple(found)


def text_of(rows: Iterable[Row]) -> list[str]:
    """The picture as plain lines, as a command prints it."""
    return ["".join(span.text for span in row).rstrip() for row in rows]


def refs_of(rows: Iterable[Row]) -> Iterator[str]:
    """What a cursor can stand on, in order, each once."""
    return iter(dict.fromkeys(span.ref for row in rows for span in row if span.ref))


def bar(share: float, width: int, fill: str) -> str:
    """A bar from nought: as many of `fill` as the share of `width`; one where there is any."""
    number = round(max(share, 0) * width)
    return fill * (max(1, min(width, number)) if share > 0 else 0)


def padded(text: str, width: int) -> str:
    """A text in just so many cells, what a person typed made harmless first."""
    return set_cell_size(clean(text), max(width, 0))


def ascii_of(rows: Sequence[str]) -> list[str]:
    """Plain lines for a terminal or printer that has no blocks and lines."""
    return [row.translate(_PLAIN) for row in rows]


_PLAIN = str.maketrans(
    {**dict.fromkeys(BLOCKS[4:], "#"), **dict.fromkeys(BLOCKS[1:4], ".")}
    | {"─": "-", "▔": "-", "│": "|", "┊": "|", "┤": "+", "└": "+", "░": ":", "━": "=", "╌": "-"}
)
