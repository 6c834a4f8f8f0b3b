"""Rows of data/*.csv, of which each says where a bad cell stands: file, row and column."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pantry_tui.errors import DataError

if TYPE_CHECKING:
    from pathlib import Path


class Row:
    """A CSV row that can say where a bad cell stands."""

    def __init__(self, path: Path, number: int, cells: dict[str, str]) -> None:
        self.path, self.number, self.cells = path, number, cells

    def bad(self, column: str, why: str) -> DataError:
        return DataError(f"{self.path.name} row {self.number}, column {column}: {why}.")

    def text(self, column: str, *, need: bool = False) -> str:
        value = (self.cells.get(column) or "").strip()
        if need and not value:
            raise self.bad(column, "is empty and must not be")
        return value

    def word(self, column: str, kind: Any) -> Any:
        value = self.text(column, need=True)
        try:
            return kind(value)
        except ValueError:
            raise self.bad(column, f"{value!r} is not one of {', '.join(kind)}") from None

    def number_or_none(self, column: str) -> float | None:
        value = self.text(column)
        if not value:
            return None
        try:
            number = float(value)
        except ValueError:
            raise self.bad(column, f"{value!r} is not a number") from None
        if not number == number or abs(number) > 10_000:
            raise self.bad(column, f"{value!r} is out of range")
        return number

    def words(self, column: str) -> tuple[str, ...]:
        return tuple(part.strip() for part in self.text(column).split(";") if part.strip())


def read_rows(path: Path, columns: tuple[str, ...]) -> list[Row]:
    """The rows of a table that has these columns, and perhaps more. Raises DataError."""
    import csv

    try:
        with path.open(encoding="utf-8", newline="") as handle:
            reader = csv.DictReader(handle)
            missing = [c for c in columns if c not in (reader.fieldnames or ())]
            if missing:
                raise DataError(f"{path.name} row 1: column {missing[0]} is missing.")
            rows = [Row(path, n, cells) for n, cells in enumerate(reader, start=2)]
    except OSError as error:
        raise DataError(f"{path.name} cannot be read: reinstall the program.") from error
    for row in rows:
        if None in row.cells:
            raise row.bad(columns[-1], "has cells to its right that no column names")
    return rows


def one_of(row: Row, column: str, words: tuple[str, ...]) -> str:
    """The word of a cell, which is one of these. Raises DataError."""
    found = row.text(column, need=True)
    if found not in words:
        raise row.bad(column, f"{found!r} is not one of {', '.join(words)}")
    return found
