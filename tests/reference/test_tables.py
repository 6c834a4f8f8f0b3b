"""The loader names file, row and column of a bad cell; the shipped tables keep their promises."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from pantry_tui.core.keeping.rules import Rule, Status, closeness
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Climate, Kind, Method, State, Trust
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.reading import read_tables
from pantry_tui.reference.tables import load_tables

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
    assert len(tables.foods) >= 1_047
    for food in tables.foods:
        for name in (food.name, *food.aliases):
            found = tables.index.named(name)
            assert found is food, f"{name} of {food.name}"


def test_every_method_has_a_rule_and_every_rule_a_source() -> None:
    tables = load_tables()
    assert set(Method) - set(tables.rules) <= {Method.BOUGHT}
    assert all(rule.source in tables.sources for rules in tables.rules.values() for rule in rules)


def test_only_current_rows_and_whole_stricter_views_carry_a_figure_in_use() -> None:
    """A `stricter` row with a figure is a view that a household may follow; one without names a
    condition (a vacuum pack, an ice compartment, vegetables not blanched)."""
    for rules in load_tables().rules.values():
        for rule in rules:
            if rule.status not in (Status.CURRENT, Status.STRICTER):
                assert rule.use is None, rule.id


def _judging(rules: Sequence[Rule], food: FoodFacts, state: State, climate: Climate) -> list[Rule]:
    """Every current safety figure that speaks for the food there, however far off."""
    return [
        rule
        for rule in rules
        if rule.kind is Kind.SAFETY
        and rule.status is Status.CURRENT
        and rule.use is not None
        and rule.state is state
        and climate in rule.climates
        and closeness(rule, food) >= 0
    ]


@pytest.mark.parametrize("method", list(Method))
def test_a_safety_figure_from_memory_is_never_longer_than_a_published_one(method: Method) -> None:
    """Neither for the same food, nor than a wider figure that it stands in front of (three days
    from memory for thawed peas, where a day is published for anything thawed)."""
    rules = load_tables().book.of(method)
    for food in load_tables().foods:
        facts = FoodFacts(food.name, food.group, food.acidity, food.classes)
        for state in State:
            for climate in Climate:
                found = _judging(rules, facts, state, climate)
                nearest = max((closeness(rule, facts) for rule in found), default=-1)
                level = [rule for rule in found if closeness(rule, facts) == nearest]
                used = min(level, key=lambda rule: rule.days, default=None)
                if used is None or used.trust is not Trust.MEMORY:
                    continue
                published = [rule for rule in found if rule.trust is not Trust.MEMORY]
                assert all(used.days <= other.days for other in published), (used.id, food.name)


#: Words in a source's note that say that no publisher's text, nor a copy of one, was seen.
UNSEEN = ("weak page", "recalled, not read", "figures recalled", "figure seen quoted on a forum")


@pytest.mark.parametrize(
    "file",
    ["keeping.csv", "signs.csv", "outage.csv", "process.csv", "not_recommended.csv", "cellar.csv",
     "yields.csv", "pressure.csv"],
)  # fmt: skip
def test_what_was_not_seen_in_a_publication_is_from_memory(file: str) -> None:
    notes = {source.id: source.note for source in load_tables().sources.values()}
    with (data_dir() / file).open(encoding="utf-8", newline="") as handle:
        for number, row in enumerate(csv.DictReader(handle), start=2):
            if any(notes[row["source_id"]].startswith(words) for words in UNSEEN):
                assert row["trust"] == "memory", f"{file} row {number}"


def test_an_address_is_an_address() -> None:
    for source in load_tables().sources.values():
        assert not source.url or re.fullmatch(r"https?://[^\s,]+", source.url), source.id


def test_of_a_pair_of_figures_for_two_warmths_the_colder_is_the_longer() -> None:
    """`temp_f_min` begins where the other ends, and nothing is gained by being warmer."""
    for rules in load_tables().rules.values():
        for rule in rules:
            if rule.temp_f_min is None:
                continue
            below = [
                other
                for other in rules
                if (other.food, other.kind, other.state) == (rule.food, rule.kind, rule.state)
                and other.temp_f_max == rule.temp_f_min
                and other.status is Status.CURRENT
            ]
            assert len(below) == 1, rule.id
            assert below[0].climates == rule.climates, rule.id
            assert below[0].days >= rule.days, rule.id
