"""data/schema.json, the machine-readable schema of the tables, holds for every cell of them and
agrees with the words that the loaders take."""

from __future__ import annotations

import csv
import json
from typing import Any

import pytest

from pantry_tui.core.keeping.rules import Status
from pantry_tui.core.words import Acidity, Climate, Group, Method, Trust
from pantry_tui.paths import data_dir

SCHEMA: dict[str, Any] = json.loads((data_dir() / "schema.json").read_text(encoding="utf-8"))
TABLES: dict[str, Any] = SCHEMA["tables"]


def rows(table: str) -> list[dict[str, str]]:
    with (data_dir() / table).open(encoding="utf-8", newline="") as handle:
        return list(csv.DictReader(handle))


def fits(value: str, column: dict[str, Any]) -> bool:
    """Whether a cell is what its column says."""
    if not value:
        return not column.get("required", False)
    if column["type"] == "number":
        try:
            float(value)
        except ValueError:
            return False
    if "one_of" in column and value not in column["one_of"]:
        return False
    parts = [part.strip() for part in value.split(SCHEMA["list_separator"])]
    return all(part in column.get("each_of", parts) for part in parts)


def test_every_table_is_described_and_no_other() -> None:
    assert sorted(TABLES) == sorted(path.name for path in data_dir().glob("*.csv"))


@pytest.mark.parametrize("table", sorted(TABLES))
def test_every_cell_is_what_its_column_says(table: str) -> None:
    columns, found = TABLES[table]["columns"], rows(table)
    assert list(columns) == list(found[0])
    for name, column in columns.items():
        bad = [
            (n, row[name]) for n, row in enumerate(found, start=2) if not fits(row[name], column)
        ]
        assert not bad, (name, bad[:3])
        values = [row[name] for row in found]
        assert not column.get("unique") or len(set(values)) == len(values), name


@pytest.mark.parametrize(
    ("column", "words"),
    [("group", Group), ("acidity", Acidity), ("status", Status), ("trust", Trust),
     ("means", Method), ("usual_methods", Method), ("says", Method), ("climate", Climate)],
)  # fmt: skip
def test_its_words_are_those_that_the_loaders_take(column: str, words: Any) -> None:
    for table in TABLES.values():
        described = table["columns"].get(column, {})
        listed = described.get("one_of", described.get("each_of"))
        if listed is not None:
            assert set(listed) - {"="} == {word.value for word in words}


def test_the_schema_says_under_what_licence_it_is() -> None:
    assert "MIT" in SCHEMA["licence"]
