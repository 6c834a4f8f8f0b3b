"""`import` of a household's own list; that of an exported log has its row of the contract."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli import shapes
from tests.cli.conftest import Kitchen


def test_a_list_answers_in_the_contracts_shape_and_is_booked(kitchen: Kitchen) -> None:
    before = kitchen.booked()
    code, out, err = kitchen.run("import", "{folder}/list.csv", "--json")
    assert (code, err) == (0, "")
    assert not list(shapes.faults(json.loads(out), shapes.IMPORTED))
    assert kitchen.booked() != before


def test_a_dry_run_of_a_list_books_nothing(kitchen: Kitchen) -> None:
    before = kitchen.booked()
    assert kitchen.run("import", "{folder}/list.csv", "--dry-run")[0] == 0
    assert kitchen.booked() == before


def test_what_was_said_of_the_columns_is_remembered_and_said(kitchen: Kitchen) -> None:
    assert kitchen.run("import", "{folder}/list.csv", "--dry-run", "--json")[0] == 0
    call = ("import", "{folder}/list.csv", "--map", "note=3")
    assert json.loads(kitchen.run(*call, "--json")[1])["recalled"] is False
    code, out, _ = kitchen.run("import", "{folder}/list.csv", "--dry-run")
    assert code == 0
    assert "as you said of the last list with these headings" in out


@pytest.mark.parametrize(
    "words",
    [
        ("import", "{folder}/none.csv"),
        ("import", "{folder}/list.csv", "--map", "food=Nowhere"),
        ("import", "{folder}/log.json", "--dates", "dmy"),
    ],
)
def test_what_cannot_be_brought_in_books_nothing(kitchen: Kitchen, words: tuple[str, ...]) -> None:
    before = kitchen.booked()
    code, out, err = kitchen.run(*words)
    assert (code, out) == (2, "")
    assert err.count("\n") == 1
    assert kitchen.booked() == before


@pytest.mark.parametrize("words", [("--dry-run",), ()])
def test_rows_without_a_day_say_what_they_count_as(
    kitchen: Kitchen, tmp_path: Path, words: tuple[str, ...]
) -> None:
    path = tmp_path / "undated.csv"
    path.write_text("Item,Qty,Place,Kept\nturkey soup,1 box,fridge,cooked meal\n")
    code, out, _ = kitchen.run("import", str(path), *words)
    assert code == 0
    assert "line 2, chicken soup: no day: made unknown, so judged strictly" in out
    assert "A column Made with the day of each, or unknown, says it otherwise." in out
