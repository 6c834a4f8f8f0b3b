"""A copy of the tables to spoil."""

from __future__ import annotations

import csv
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from pantry_tui.paths import data_dir


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(data_dir(), tmp_path / "data"))


@pytest.fixture
def spoil(folder: Path) -> Callable[[str, int, str, str], None]:
    """Writes a value into one cell: file, row as a spreadsheet counts them, column, value."""

    def write(file: str, row: int, column: str, value: str) -> None:
        path = folder / file
        with path.open(encoding="utf-8", newline="") as handle:
            rows = list(csv.reader(handle))
        rows[row - 1][rows[0].index(column)] = value
        with path.open("w", encoding="utf-8", newline="") as handle:
            csv.writer(handle).writerows(rows)

    return write
