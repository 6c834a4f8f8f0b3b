"""The loader names file, row and column of a bad cell; the shipped tables keep their promises."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from pantry_tui.core.keeping.rules import Status
from pantry_tui.core.words import Kind, Method, Trust
from pantry_tui.errors import DataError
from pantry_tui.reference.names import normal
from pantry_tui.reference.tables import load_tables, read_tables

Spoil = Callable[[str, int, str, str], None]


@pytest.mark.parametrize(
    ("file", "row", "column", "value"),
    [
        ("keeping.csv", 3, "use", "a year"),
        ("keeping.csv", 3, "use", "-3"),
        ("keeping.csv", 3, "use", "nan"),
        ("keeping.csv", 3, "unit", "moons"),
        ("keeping.csv", 12, "method", "wished"),
        ("keeping.csv", 12, "climate", "attic"),
        ("keeping.csv", 12, "source_id", "hearsay"),
        ("keeping.csv", 12, "trust", "sure"),
        ("keeping.csv", 12, "food", "moon cheese"),
        ("keeping.csv", 12, "wording", ""),
        ("foods.csv", 5, "group", "mineral"),
        ("foods.csv", 5, "acidity", "sour"),
        ("foods.csv", 5, "harvest_month", "13"),
        ("sources.csv", 3, "source_id", ""),
    ],
)
def test_a_bad_cell_is_named(
    folder: Path, spoil: Spoil, file: str, row: int, column: str, value: str
) -> None:
    spoil(file, row, column, value)
    with pytest.raises(DataError) as caught:
        read_tables(folder)
    assert file in caught.value.message
    assert f"row {row}, column {column}" in caught.value.message


def test_a_missing_file_or_column_is_named(folder: Path) -> None:
    text = (folder / "foods.csv").read_text(encoding="utf-8")
    (folder / "foods.csv").write_text(text.replace("acidity", "tang", 1), encoding="utf-8")
    with pytest.raises(DataError, match=r"foods\.csv.*acidity"):
        read_tables(folder)
    (folder / "foods.csv").unlink()
    with pytest.raises(DataError, match=r"foods\.csv"):
        read_tables(folder)


def test_there_are_foods_enough_and_no_name_means_two() -> None:
    tables = load_tables()
    assert len(tables.foods) >= 80
    names = Counter(
        key for food in tables.foods for key in {normal(food.name), *map(normal, food.aliases)}
    )
    assert [sorted(key) for key, count in names.items() if count > 1] == []


def test_every_method_has_a_rule_and_every_rule_a_source() -> None:
    tables = load_tables()
    assert set(Method) - set(tables.rules) <= {Method.BOUGHT}
    assert all(rule.source in tables.sources for rules in tables.rules.values() for rule in rules)


def test_only_current_rows_carry_a_figure_in_use() -> None:
    for rules in load_tables().rules.values():
        for rule in rules:
            if rule.status is not Status.CURRENT:
                assert rule.use is None, rule.id


def test_a_figure_from_memory_is_never_the_lenient_one() -> None:
    """A safety figure from memory stands only where nothing read or reprinted says less."""
    for rules in load_tables().rules.values():
        for rule in rules:
            if rule.kind is not Kind.SAFETY or rule.trust is not Trust.MEMORY or rule.use is None:
                continue
            rivals = [
                other
                for other in rules
                if (other.food, other.state, other.kind) == (rule.food, rule.state, rule.kind)
                and other.climates & rule.climates
                and other.status is Status.CURRENT
                and other.trust is not Trust.MEMORY
                and other.use is not None
            ]
            assert all(rule.days <= other.days for other in rivals), rule.id
