"""data/README.md names every table and every column."""

from __future__ import annotations

import csv
import re

import pytest

from pantry_tui.paths import data_dir

TABLES = sorted(path.name for path in data_dir().glob("*.csv"))
README = (data_dir() / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("table", TABLES)
def test_every_table_and_column_is_explained(table: str) -> None:
    assert f"| `{table}` |" in README
    part = README.partition(f"**{table}**")[2].partition("\n\n")[0]
    explained = {name for code in re.findall(r"`([^`]+)`", part) for name in code.split(", ")}
    with (data_dir() / table).open(encoding="utf-8", newline="") as handle:
        columns = set(next(csv.reader(handle)))
    assert columns <= explained


def test_no_table_is_explained_that_is_not_there() -> None:
    assert sorted(re.findall(r"\*\*(\w+\.csv)\*\*", README)) == TABLES
