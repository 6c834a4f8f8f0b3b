"""The loader of the yields names file, row and column of a bad cell."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from pantry_tui.errors import DataError
from pantry_tui.reference.reading import read_tables
from pantry_tui.reference.yields import read_yields

Spoil = Callable[[str, int, str, str], None]


@pytest.mark.parametrize(
    ("row", "column", "value"),
    [
        (2, "food", "moon cheese"),
        (2, "crop", "moonlight"),
        (3, "methods", "wished"),
        (3, "methods", ""),
        (4, "methods", "frozen;frozen"),
        (4, "unit", "bushel"),
        (5, "lb_min", "0"),
        (5, "lb_max", "-2"),
        (5, "lb", "many"),
        (5, "lb", "9"),
        (6, "weak", "perhaps"),
        (6, "source_id", "hearsay"),
        (6, "trust", "sure"),
    ],
)
def test_a_bad_cell_is_named(folder: Path, spoil: Spoil, row: int, column: str, value: str) -> None:
    spoil("yields.csv", row, column, value)
    with pytest.raises(DataError) as caught:
        read_yields(folder, read_tables(folder))
    assert "yields.csv" in caught.value.message
    assert f"row {row}, column {column}" in caught.value.message


def test_a_missing_column_is_named(folder: Path) -> None:
    text = (folder / "yields.csv").read_text(encoding="utf-8")
    (folder / "yields.csv").write_text(text.replace("lb_min", "least", 1), encoding="utf-8")
    with pytest.raises(DataError, match=r"yields\.csv.*lb_min"):
        read_yields(folder, read_tables(folder))
