"""Notes of kept food that is not canned, by what they say of it: out of the shell. What
publications would doubt is never silent, and what is well raises nothing."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

EGGS = "12 eggs, fresh, fridge"

BAD = {
    EGGS: (
        "beaten", "beaten, whites only", "out of the shell", "separated, whites only", "peeled",
        "whites", "yolks", "just the yolks", "6 yolks", "leftover whites", "whites in a jar",
        "yolks and whites apart", "whisked with milk", "poured into a tub", "shells off",
    ),
    "6 quail eggs, fresh, fridge": ("beaten", "whites only"),
}  # fmt: skip

GOOD = {
    EGGS: (
        "white ones", "brown shells", "for beating", "for whipped whites on sunday",
        "from the neighbour's hens", "orange yolks", "two with double yolks", "whites and browns",
        "to be beaten", "not beaten", "for the yolks", "separated from the shop ones",
        "shells are thick", "yolks stand high",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_is_bad_has_a_word(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    assert {note for note, one in found.items() if one.verdict in _WELL} == set()


_WELL = (Verdict.SOUND, Verdict.EAT_SOON)


@pytest.mark.parametrize("line", GOOD)
def test_what_is_well_raises_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    same = bare.verdict, bare.best_by, bare.discard_after
    found = tried_each(chilled, line, GOOD[line])
    changed = {
        n for n, one in found.items() if (one.verdict, one.best_by, one.discard_after) != same
    }
    assert changed == set()
    assert quoted(found) == set()


def test_eggs_out_of_the_shell_have_none_of_the_weeks_of_whole_ones(chilled: Pantry) -> None:
    """US federal storage times of 2018: raw whites and yolks two to four days cold, and eggs in the
    shell weeks."""
    assert tried(chilled, EGGS).discard_after == chilled.today + timedelta(weeks=5)
    beaten = tried(chilled, EGGS, "beaten")
    assert beaten.verdict is Verdict.UNKNOWN
    assert any("2 to 4 days" in one for one in beaten.reasons)
    # A cooked egg is peeled, and has the days of cooked egg.
    boiled = tried(chilled, EGGS, "hard boiled, peeled")
    assert boiled.discard_after == tried(chilled, EGGS, "hard boiled").discard_after
