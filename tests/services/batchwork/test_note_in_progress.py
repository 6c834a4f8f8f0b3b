"""What a note says that happened to a batch that is still at work has a word of its own, and is
booked by its own act."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import cold_places, quotes, tried

KRAUT = "1 crock sauerkraut 10 lb, lactic ferment, salt=2.25%, 25 oct, cellar"
WINE = "1 demijohn plum wine, alcohol ferment, 1 nov, cellar"
HAM = "1 ham 12 lb, salted, salt=5%, 20 nov, fridge"


@pytest.mark.parametrize("line", [KRAUT, WINE])
@pytest.mark.parametrize(
    ("note", "books"),
    [
        ("opened a month ago", "`ready"), ("froze in the shed", "`move"),
        ("frozen solid overnight", "`move"), ("thawed again", "`move"),
        ("power was off for two days", "`outage`"), ("the jar is open already", "`ready"),
    ],
)  # fmt: skip
def test_what_happened_to_it_is_asked_for(larder: Pantry, line: str, note: str, books: str) -> None:
    bare = tried(cold_places(larder), line)
    found = tried(larder, line, note)
    assert quotes(found)
    assert found.verdict is Verdict.UNKNOWN
    assert bare.verdict is Verdict.NEEDS_CARE
    assert any(books.strip("`") in one for one in _with_commands(found.reasons)), found.reasons


def _with_commands(reasons: tuple[str, ...]) -> list[str]:
    """A dry run names no batch to a command: what stands before it is told."""
    words = {"ready": "still in progress", "move": "freezes while it works", "outage": "power cut"}
    return [f"{one} {key}" for one in reasons for key, said in words.items() if said in one]


@pytest.mark.parametrize("note", ["moved to the fridge last week", "carried down to the cellar"])
def test_a_place_is_told_and_leaves_what_it_is(larder: Pantry, note: str) -> None:
    found = tried(cold_places(larder), KRAUT, note)
    assert quotes(found)
    assert found.verdict is Verdict.NEEDS_CARE


def test_what_is_cured_is_judged_as_opened_too(larder: Pantry) -> None:
    assert tried(larder, HAM, "opened a month ago").verdict is not Verdict.NEEDS_CARE


@pytest.mark.parametrize(
    "note",
    [
        "opened it daily to skim", "open the lid daily", "to be opened at christmas",
        "made with frozen berries", "fruit was frozen first", "caraway", "move it when it is sour",
        "will go to the fridge", "thawed plums", "not frozen", "bubbling nicely",
    ],
)  # fmt: skip
def test_what_did_not_happen_has_no_word(larder: Pantry, note: str) -> None:
    bare, found = tried(cold_places(larder), KRAUT), tried(larder, KRAUT, note)
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
    larder: Pantry, line: str, verdict: Verdict
) -> None:
    assert tried(cold_places(larder), line, "left out overnight").verdict is verdict
