"""Notes of what food was made of and when, where its line says otherwise: garlic in oil by its
weight, wild meat that carries worms, a smoke without heat, leftovers of last year."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried_each

OIL = "2 bottles olive oil, bought in, larder"
HONEY = "2 jars honey, larder"
JERKY = "2 bags beef jerky, dried, larder"
TROUT = "2 packs trout, hot smoked, fridge"
STEW = "2 tubs beef stew, cooked meal, fridge"
GARLIC = ("from 1 lb garlic", "confit garlic", "garlic steeped in it", "of 3 heads of garlic",
          "confit garlic and thyme")  # fmt: skip

BAD = {
    OIL: GARLIC,
    HONEY: GARLIC,
    JERKY: ("bear", "wild boar", "wild boar, no freezing", "of bear", "bear meat", "feral hog"),
    "1 ham, hot smoked, fridge": ("wild boar", "bear ham"),
    TROUT: ("smoked cold really", "smoked it cold"),
    STEW: ("leftovers from Thanksgiving last year", "last year's", "from last year",
           "cooked last year", "last year's leftovers"),
}  # fmt: skip
GOOD = {
    OIL: ("from 10 lb olives", "from the garlic farm", "for confit garlic", "from 2 kg of olives"),
    HONEY: ("from 2 lb comb", "for the baby's mother"),
    JERKY: ("bear creek", "bear in mind", "for the bear hunt", "no boar", "from Bear Valley"),
    f"{JERKY}, temperature=165 F": ("wild boar", "bear"),
    TROUT: ("smoked cold first then hot", "served cold", "cold smoked first and then hot"),
    STEW: ("last year's recipe", "better than last year's", "like last year"),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_it_was_made_of_is_held_against_it(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    well = (Verdict.SOUND, Verdict.EAT_SOON)
    assert {note for note, one in found.items() if one.verdict in well} == set()


@pytest.mark.parametrize("line", GOOD)
def test_where_it_is_from_raises_nothing(chilled: Pantry, line: str) -> None:
    assert quoted(tried_each(chilled, line, GOOD[line])) == set()
