"""From rows of stock to the lines of a list."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field
from textwrap import wrap

from pantry_tui.app.format import Column, clip
from pantry_tui.app.roles import DANGER, HEAD, MUTED, QUIET_HEAD, STYLE
from pantry_tui.app.rowtext import due_cells, ends
from pantry_tui.app.widgets.line import Cell, Key, Line
from pantry_tui.core.text import begun, clean
from pantry_tui.core.words import State, Verdict
from pantry_tui.services.stock.lines import Lines, Part
from pantry_tui.services.stock.rows import DueRow


@dataclass(frozen=True)
class RowKey(Key):
    """Equal containers: the same while some of them stand there in that state. Acts take the
    first ones, so the last one tells them from another row of the same batch."""

    code: str
    place: str
    state: State
    last: str
    first: str = field(compare=False)


@dataclass(frozen=True)
class Heading(Key):
    """A line over others or a notice, by its words; of a long one, which part."""

    words: str
    part: int = 0


@dataclass(frozen=True)
class PartKey(Key):
    """The heading of a part of the due list."""

    word: str


@dataclass(frozen=True)
class PlaceKey(Key):
    """The heading of a place."""

    path: str


#: What stands over the parts of the due list, where it is not their word alone.
PART_WORDS = {
    "must go": "Must go: do not eat",
    "open": "Open and thawed",
    "past best": "Past best, still safe",
    "unknown": "Unknown: no published figure, or in doubt",
}

#: Fields whose text has the colour of the verdict.
_COLOURED = frozenset({"mark", "verdict", "day", "until"})


def row_key(row: DueRow) -> RowKey:
    """The key of a row."""
    names = row.container_ids or (row.code,)
    return RowKey(row.code, row.place, row.state, names[-1], names[0])


def due_line(row: DueRow, columns: Sequence[Column], marked: Collection[Key] = ()) -> Line:
    """A row as a line; one that is marked says so with a star, where colour may be missing."""
    key, texts = row_key(row), due_cells(row, columns)
    colour = STYLE[Verdict.EAT_SOON if ends(row) else row.verdict]
    cells: list[Cell] = [
        (text, colour if column.field in _COLOURED else _quiet(column), tail, MUTED)
        for (text, tail), column in zip(texts, columns, strict=True)
    ]
    if key in marked:
        at = next((i for i, column in enumerate(columns) if column.field == "food"), 0)
        text, tail = texts[at]
        cells[at] = (clip(f"* {text}{tail}", columns[at].width - 1), "bold")
    return Line(key, tuple(cells), key.first, row)


def _quiet(column: Column) -> str:
    """The food is bright, what is beside it is not."""
    return "" if column.field in ("food", "code", "count", "left") else MUTED


def due_lines(
    rows: Iterable[DueRow], columns: Sequence[Column], marked: Collection[Key] = ()
) -> list[Line]:
    """One line a row."""
    return [due_line(row, columns, marked) for row in rows]


def heading(key: Key, text: str, word: str = "") -> Line:
    """A line that is no stock: its text, indented as it is, runs over the columns."""
    return Line(key, ((text, HEAD),), word=word or text, whole=True)


def part_heading(
    part: Part,
    columns: Sequence[Column],
    *,
    folds: bool = False,
    folded: bool = False,
    near: bool = False,
) -> Line:
    """A part of the due list with how many containers are in it, and a thin rule. `folds`: Enter
    shows it or folds it away; `near`: what must be eaten within a week is shown all the same."""
    said = f"{begun(PART_WORDS.get(part.word, part.word))} · {part.containers}"
    word = f"{said}. Enter {'shows them' if folded else 'folds them away'}." if folds else said
    wide = sum(column.width for column in columns)
    if folded:
        week = " · folded after a week, Enter shows all"
        fits = near and len(said) + len(week) + 2 <= wide
        said += week if fits else " · folded, Enter shows them"
    room = wide - len(said) - 2
    style = DANGER if part.word == "must go" else QUIET_HEAD
    text = f"{said} {'─' * max(room, 0)}"
    return Line(PartKey(part.word), ((text, style),), word=word, whole=True)


def headings(text: str, columns: Sequence[Column], most: int = 3) -> list[Line]:
    """A sentence too long for one line, on up to `most`; what is left out then is in the word."""
    width = sum(column.width for column in columns) - 1
    first, *more = wrap(clean(text), width - 2, max_lines=most, placeholder=" …") or [""]
    parts = [first, *(f"  {part}" for part in more)]
    return [heading(Heading(text, n), part, text) for n, part in enumerate(parts)]


class Window:
    """Rows of stock under a few lines that stand above all of them (`top`), or each run of rows
    under a head of its own (`heads`: the line, and how many rows are under it)."""

    def __init__(
        self,
        found: Lines,
        columns: Sequence[Column],
        *,
        top: Sequence[Line] = (),
        heads: Sequence[tuple[Line, int]] = (),
        marked: Collection[Key] = (),
    ) -> None:
        self._found, self._columns, self._marked = found, columns, marked
        self._top = top
        self._heads = [line for line, _ in heads]
        self._at: list[int] = []  # where each head stands
        self._first: list[int] = []  # the first row under it
        under = 0
        for number, (_, count) in enumerate(heads):
            self._at.append(number + under)
            self._first.append(under)
            under += count
        self.total = len(top) + len(heads) + found.total

    def lines(self, start: int, stop: int) -> Sequence[Line]:
        start, stop = max(start, 0), max(min(stop, self.total), 0)
        above = len(self._top)
        said = list(self._top[start:stop])
        return [*said, *self._below(max(start - above, 0), stop - above)]

    def _below(self, start: int, stop: int) -> list[Line]:
        """The lines under `top`: whole heads between runs of rows, which are fetched at once."""
        if stop <= start:
            return []
        head = bisect_right(self._at, start - 1)  # the first head at or after `start`
        heads = range(head, bisect_right(self._at, stop - 1))
        rows = self._found.rows(start - head, stop - head - len(heads))
        lines = due_lines(rows, self._columns, self._marked)
        for number in heads:
            lines.insert(self._at[number] - start, self._heads[number])
        return lines

    def where(self, key: Key) -> int | None:
        if not isinstance(key, RowKey):
            return self._head_at(key)
        fallback = None
        for name in (key.last, key.first):
            row = self._found.where(name)
            if row is None:
                continue
            shown = next(iter(self._found.rows(row, row + 1)), None)
            if shown and (shown.code, shown.place, shown.state) == (key.code, key.place, key.state):
                return self._line_of(row)
            fallback = row if fallback is None else fallback
        return None if fallback is None else self._line_of(fallback)

    def find(self, ref: str) -> int | None:
        row = self._found.where(ref)
        return None if row is None else self._line_of(row)

    def _line_of(self, row: int) -> int:
        return len(self._top) + row + bisect_right(self._first, row)

    def _head_at(self, key: Key) -> int | None:
        for number, line in enumerate(self._top):
            if line.key == key:
                return number
        for number, line in enumerate(self._heads):
            if line.key == key:
                return len(self._top) + self._at[number]
        return None
