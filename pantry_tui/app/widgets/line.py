"""A line of a list: what is shown, what it stands for, and where lists take their lines from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from pantry_tui.services.stock.rows import DueRow

#: A text and its role or Rich style, "" for none; a text behind it may follow, and its role.
Cell = tuple[str, str] | tuple[str, str, str, str]


@dataclass(frozen=True)
class Key:
    """By what a line is known again when the list has changed; each kind of line has its own."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line. `ref` is what a service is given; a `whole` line is one text over all columns."""

    key: Key
    cells: tuple[Cell, ...]
    ref: str = ""
    row: DueRow | None = None
    number: int = 0  # how many a count expects
    word: str = ""  # what to say of a line that is no row of stock
    whole: bool = False


class Source(Protocol):
    """Lines in order, some at a time."""

    @property
    def total(self) -> int:
        """How many lines there are."""
        ...

    def lines(self, start: int, stop: int) -> Sequence[Line]:
        """The lines from `start` up to `stop`, as many of them as there are."""
        ...

    def where(self, key: Key) -> int | None:
        """The line that has this key, or that what it stood for has come to."""
        ...

    def find(self, ref: str) -> int | None:
        """The line of a container or of a lid code: "7C/1", "7C"."""
        ...


class Listed:
    """A few lines that are held already: a week, the foods of an outlook."""

    def __init__(self, lines: Sequence[Line]) -> None:
        self._lines = lines

    @property
    def total(self) -> int:
        return len(self._lines)

    def lines(self, start: int, stop: int) -> Sequence[Line]:
        return self._lines[max(start, 0) : max(stop, 0)]

    def where(self, key: Key) -> int | None:
        return next((i for i, line in enumerate(self._lines) if line.key == key), None)

    def find(self, ref: str) -> int | None:
        return next((i for i, line in enumerate(self._lines) if stands_for(line, ref)), None)


def stands_for(line: Line, ref: str) -> bool:
    """Whether the container or the batch of that lid code is on this line."""
    if line.row is not None:
        return ref == line.row.code or ref in line.row.container_ids
    return bool(line.ref) and ref in (line.ref, line.ref.partition("/")[0])
