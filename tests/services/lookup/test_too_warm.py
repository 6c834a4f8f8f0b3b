"""A refrigerator or a freezer that is asked about with a temperature that is too warm for it."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.shelf_life import keeps

MADE = date(2026, 11, 20)


def asked(method: str, food: str, climate: str, temp_f: float) -> list[dict[str, Any]]:
    tables = load_tables()
    return [
        keeps(tables, method, food, climate=climate, temp_f=temp_f, made=made)
        for made in (None, MADE)
    ]


@pytest.mark.parametrize(
    ("method", "food", "climate", "temp_f"),
    [
        ("cooked meal", "stew", "fridge", 50),
        ("fresh", "milk", "fridge", 42),
        ("fresh", "oysters", "fridge", 50),
        ("in oil", "garlic", "fridge", 50),
        ("hot smoked", "trout", "fridge", 50),
        ("fresh", "eggs", "fridge", 50),
        ("frozen", "peas", "freezer", 40),
        ("frozen", "stew", "freezer", 30),
        ("frozen", "beef", "freezer", 40),
    ],
)
def test_too_warm_has_no_days(method: str, food: str, climate: str, temp_f: float) -> None:
    for answer in asked(method, food, climate, temp_f):
        assert not answer["allowed"]
        assert answer["best_by"] is answer["discard_after"] is None
        assert set(answer["published"].values()) == {None}
        (why,) = answer["reasons"]
        assert f"{temp_f:g} F" in why
        assert ("two hours" in why) is (climate == "fridge")


@pytest.mark.parametrize(
    ("method", "food", "climate", "temp_f"),
    [
        ("cooked meal", "stew", "fridge", 38),
        ("fresh", "milk", "fridge", 41),
        ("jam", "strawberries", "fridge", 50),
        ("fresh", "carrots", "fridge", 50),
        ("frozen", "peas", "freezer", 10),
        ("frozen", "beef", "freezer", 0),
    ],
)
def test_what_is_cold_enough_or_needs_no_cold_has_its_days(
    method: str, food: str, climate: str, temp_f: float
) -> None:
    for answer in asked(method, food, climate, temp_f):
        assert answer["allowed"]
        assert any(answer["published"].values())


def test_what_needs_no_freezing_is_not_refused_in_a_warm_freezer() -> None:
    for answer in asked("dried", "apples", "freezer", 40):
        assert not any("does not freeze" in one for one in answer["reasons"])
