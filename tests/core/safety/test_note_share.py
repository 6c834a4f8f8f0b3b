"""How many a note speaks of: some jars of a batch, some pieces of a pile."""

from __future__ import annotations

import pytest

from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.note_share import share, to_cull
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.words import Acidity, Group, Method

CARROTS = FoodFacts("carrots", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"root"}))
PEARS = FoodFacts("pears", Group.FRUIT, Acidity.ACID)
WALNUTS = FoodFacts("walnuts", Group.NUT, Acidity.LOW_ACID, frozenset({"nut"}))


def said(note: str) -> str:
    return next(clause for _, clause in clauses(note))


@pytest.mark.parametrize(
    ("note", "least"),
    [
        ("one lid popped up", 1), ("mould on one", 1), ("Two have gone fizzy", 2),
        ("three of them leaked", 3), ("a few jars bulged", 2), ("some are fizzing", 2),
        ("half of the jars went cloudy", 2), ("1 swollen lid", 1), ("popped lid on two jars", 2),
        ("lids popped up", 0), ("all of them leaked", 0), ("most jars fizz", 0),
        ("some mould on top", 0), ("a few bubbles", 0), ("11 psi", 0), ("2 days on the shelf", 0),
        ("both lids came up", 0), ("1.5 inches of headspace", 0),
    ],
)  # fmt: skip
def test_how_many_jars(note: str, least: int) -> None:
    assert share(said(note)) == least


@pytest.mark.parametrize(
    "note",
    [
        "some are rotting", "half of them mouldy", "two went slimy", "going soft at the tips",
        "rot at the bottom of the sack", "a few mushy ones", "mould here and there", "gone soft",
    ],
)  # fmt: skip
def test_some_pieces_of_a_pile_are_taken_out(note: str) -> None:
    assert to_cull(Batch("", "", CARROTS, Method.CELLAR, None), said(note))


@pytest.mark.parametrize(
    "note",
    [
        "rotting", "most are rotten", "all mouldy at the tips", "some stood in flood water, slimy",
        "threw out two rotten ones", "none are rotting", "some for soft food", "soft when cooked",
        "two crates", "over half is slimy",
    ],
)  # fmt: skip
def test_all_of_a_pile_or_none_is_not_culled(note: str) -> None:
    assert not to_cull(Batch("", "", CARROTS, Method.CELLAR, None), said(note))


def test_what_lies_in_one_body_is_never_culled() -> None:
    note = said("some are mouldy")
    assert not to_cull(Batch("", "", CARROTS, Method.LACTIC, None, "crock"), note)
    assert not to_cull(Batch("", "", CARROTS, Method.PRESSURE, None, "pint jars"), note)
    assert not to_cull(Batch("", "", WALNUTS, Method.CELLAR, None), note), "never sorted"


def test_ripe_fruit_is_soft() -> None:
    assert not to_cull(Batch("", "", PEARS, Method.CELLAR, None), said("some are going soft"))
    assert to_cull(Batch("", "", PEARS, Method.CELLAR, None), said("some are going mouldy"))
