"""Names of several words that look like something else: a loaf, half of a pickle, the dilled."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.rows import PutUpReading
from pantry_tui.services.stock import places


@pytest.fixture(scope="module")
def p(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    store: Path = tmp_path_factory.mktemp("lines") / "store.db"
    create(store, altitude_ft=500)
    with open_pantry(store, date(2026, 11, 25)) as pantry:
        for line in ("larder, pantry", "fridge, fridge", "freezer, freezer"):
            places.add_line(pantry, line)
        yield pantry


def read(p: Pantry, line: str) -> PutUpReading:
    return putup.read(p, line)


@pytest.mark.parametrize(
    ("line", "food", "count"),
    [
        ("6 pint jars dilled green beans, vinegar pickle, larder", "dilly beans", 6),
        ("6 pint jars dilled beans, vinegar pickle, larder", "dilly beans", 6),
        ("3 jars dilled cucumbers, fridge pickle, fridge", "dill pickles", 3),
        ("4 banana bread loaves, freezer", "cakes", 4),
        ("3 loaves of banana bread, freezer", "cakes", 3),
        ("banana bread, 2 loaves, freezer", "cakes", 2),
        ("1 zucchini bread loaf, freezer", "cakes", 1),
        ("4 loaves whole wheat bread, freezer", "whole wheat bread", 4),
        ("3 loaves, freezer", "bread", 3),
        ("2 meat loaves, freezer", "meatloaf", 2),
        ("3 jars half sour pickles, fridge", "fermented dill pickles", 3),
        ("3 quart jars half-sour pickles, fridge", "fermented dill pickles", 3),
        ("2 jars full sour pickles, fridge", "fermented dill pickles", 2),
        ("2 half pint jars sour pickles, fridge", "fermented dill pickles", 2),
    ],
)
def test_it_is_read_whole(p: Pantry, line: str, food: str, count: int) -> None:
    found = read(p, line)
    assert not found.unread
    assert not found.problems
    assert (found.food, found.count) == (food, count)


def test_the_note_keeps_the_words_in_their_order(p: Pantry) -> None:
    assert read(p, "3 jars half sour pickles, fridge").note == "half sour pickles"


@pytest.mark.parametrize(
    "line",
    [
        "2 chicken loaves, freezer", "lentil loaf, fridge", "olive loaf, fridge",
        "nut loaf, fridge",
        "2 packs dilled salmon, fridge",
    ],
)  # fmt: skip
def test_what_no_table_names_is_still_asked(p: Pantry, line: str) -> None:
    found = read(p, line)
    assert found.problems or found.unread


def test_what_is_dilled_is_no_sourer_than_what_it_is_made_of(p: Pantry) -> None:
    found = read(p, "4 pint jars dilled carrots, boiling-water canned, larder")
    with pytest.raises(Refused, match="may not be boiling-water canned"):
        putup.preview(p, found)
