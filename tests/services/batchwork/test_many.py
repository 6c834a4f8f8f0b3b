"""Many put-up lines at once: all are booked or none, and one undo takes them back."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.many import put_up_lines, read_lines
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, undo

TEXT = """
# the first evening
larder:
7 500 ml jars plum jam
honey, 3 jars, bought in, 2024?

freezer:
4 bags peas, 500 g each
2 bags leeks, larder, dried
"""


@pytest.fixture
def p(tmp_path: Path) -> Pantry:
    create(tmp_path / "store.db", units="metric")
    pantry = open_pantry(tmp_path / "store.db", date(2026, 11, 26))
    places.add(pantry, "larder", "pantry")
    places.add(pantry, "freezer", "freezer")
    return pantry


def test_a_line_stands_at_the_place_above_it_unless_it_names_one(p: Pantry) -> None:
    found = put_up_lines(p, TEXT)
    assert [one.why for one in found] == ["", "", "", ""]
    stands = [(one.reading.food, one.reading.place) for one in found]
    assert stands == [("plum jam", "larder"), ("honey", "larder"), ("peas", "freezer"),
                      ("leeks", "larder")]  # fmt: skip
    assert [one.number for one in found] == [4, 5, 8, 9]
    assert len(p.stock.batches) == 4


def test_one_line_that_cannot_be_booked_books_none(p: Pantry) -> None:
    found = put_up_lines(p, TEXT + "3 jars mystery\nshed:\n2 jars plum jam\n")
    assert [one.number for one in found if one.why] == [10, 12]
    assert "shed" in found[-1].why
    assert not p.stock.batches


def test_one_undo_takes_all_of_them_back(p: Pantry) -> None:
    put_up_lines(p, TEXT)
    undo.undo(p)
    assert not any(one.here for one in p.stock.containers.values())


def test_reading_them_books_nothing(p: Pantry) -> None:
    assert all(one.made is not None and one.made.code == "" for one in read_lines(p, TEXT))
    assert not p.stock.batches


@pytest.mark.parametrize("text", ["", "\n# nothing\nlarder:\n"])
def test_no_line_is_said_so(p: Pantry, text: str) -> None:
    with pytest.raises(BadInput, match="no line"):
        read_lines(p, text)
