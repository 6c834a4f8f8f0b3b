"""Where nobody said how big a jar is, what it counts as is said."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.texts import reading_text
from pantry_tui.cli.printing.putup import reading as printed
from pantry_tui.core.amounts import Amount
from pantry_tui.services.batchwork.contents import ASSUMED, assumed
from pantry_tui.services.batchwork.putup import read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.servings import in_amount
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 29)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge", "freezer, freezer"):
            places.add_line(pantry, line)
        yield pantry


@pytest.mark.parametrize(
    "line",
    [
        "3 jars dill pickles, vinegar pickle, larder, 2 weeks ago",
        "3 bags salmon, frozen, freezer",
        "1 tub lasagne, cooked meal, freezer",
    ],
)
def test_what_is_taken_for_its_size_is_said(p: Pantry, line: str) -> None:
    reading = read(p, line)
    assert assumed(reading) == ASSUMED
    assert f"holds          {ASSUMED}" in reading_text(reading, None)
    assert f"holds: {ASSUMED}" in printed(reading)


@pytest.mark.parametrize(
    "line",
    [
        "3 pint jars dill pickles, vinegar pickle, larder",
        "3 jars dill pickles, vinegar pickle, larder, amount=1 quart",
        "3 1 lb bags salmon, frozen, freezer",
        "12 eggs, fresh, fridge",
        "9 lb potatoes, cellar-stored, larder",
        "1 crock sauerkraut, lactic ferment, larder",
        "4 cabbages, cellar-stored, larder",
        "dill pickles",
    ],
)
def test_where_it_is_said_or_no_vessel_nothing_is(p: Pantry, line: str) -> None:
    reading = read(p, line)
    assert not assumed(reading)
    assert ASSUMED not in reading_text(reading, None)


def test_it_is_what_the_plan_counts(p: Pantry) -> None:
    food = p.facts("dill pickles")
    reading = read(p, "3 jars dill pickles, vinegar pickle, larder")
    assert food is not None
    assert reading.method is not None
    counts = [
        in_amount(p, food.name, food.group, reading.method, Amount(1, unit))  # type: ignore[arg-type]
        for unit in ("", "pint")
    ]
    assert counts[0] == counts[1]
