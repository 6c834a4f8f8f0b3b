"""What a note says that happened to a batch that is still at work has a word of its own, and is
booked by its own act."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quotes, tried

KRAUT = "1 crock sauerkraut 10 lb, lactic ferment, salt=2.25%, 25 oct, cellar"
WINE = "1 demijohn plum wine, alcohol ferment, 1 nov, cellar"
HAM = "1 ham 12 lb, salted, salt=5%, 20 nov, fridge"


@pytest.mark.parametrize("line", [KRAUT, WINE])
@pytest.mark.parametrize(
    ("note", "sentence"),
    [
        ("opened a month ago", "still in progress"),
        ("froze in the shed", "freezes while it works"),
        ("frozen solid overnight", "freezes while it works"),
        ("thawed again", "freezes while it works"),
        ("power was off for two days", "power cut"),
        ("the jar is open already", "still in progress"),
    ],
)
def test_what_happened_to_it_is_asked_for(
    chilled: Pantry, line: str, note: str, sentence: str
) -> None:
    bare = tried(chilled, line)
    found = tried(chilled, line, note)
    assert found.verdict is Verdict.UNKNOWN
    assert bare.verdict is Verdict.NEEDS_CARE
    assert any("Its note says" in one and sentence in one for one in found.reasons), found.reasons


@pytest.mark.parametrize("note", ["moved to the fridge last week", "carried down to the cellar"])
def test_a_place_is_told_and_leaves_what_it_is(chilled: Pantry, note: str) -> None:
    found = tried(chilled, KRAUT, note)
    assert quotes(found)
    assert found.verdict is Verdict.NEEDS_CARE


def test_what_is_cured_is_judged_as_opened_too(chilled: Pantry) -> None:
    assert tried(chilled, HAM, "opened a month ago").verdict is not Verdict.NEEDS_CARE


@pytest.mark.parametrize(
    "note",
    [
        "opened it daily to skim", "open the lid daily", "to be opened at christmas",
        "made with frozen berries", "fruit was frozen first", "caraway", "move it when it is sour",
        "will go to the fridge", "thawed plums", "not frozen", "bubbling nicely",
    ],
)  # fmt: skip
def test_what_did_not_happen_has_no_word(chilled: Pantry, note: str) -> None:
    bare, found = tried(chilled, KRAUT), tried(chilled, KRAUT, note)
    assert not quotes(found)
    assert found.verdict is bare.verdict


@pytest.mark.parametrize(
    ("line", "verdict"),
    [
        ("1 bottle advocaat, alcohol infusion, fridge", Verdict.DISCARD),
        ("1 bottle cherry brandy, alcohol infusion, fridge", Verdict.NEEDS_CARE),
    ],
)
def test_out_of_the_cold_counts_of_a_liqueur_with_egg_or_cream_alone(
    chilled: Pantry, line: str, verdict: Verdict
) -> None:
    assert tried(chilled, line, "left out overnight").verdict is verdict
