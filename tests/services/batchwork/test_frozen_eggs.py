"""Eggs are frozen out of their shells: USDA FSIS, Shell Eggs from Farm to Table (from memory);
USDA/HHS foodsafety.gov, Cold Food Storage Chart: eggs in the shell, do not freeze; beaten, a
year."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.prepared import SHELLS_CRACK
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "chest", "freezer")
    return larder


def judged(p: Pantry, line: str) -> tuple[Verdict, bool]:
    putup.put_up(p, putup.read(p, line))
    (one, *_) = [c for c in p.stock.containers.values() if c.here]
    found = p.judge(one)
    return found.verdict, SHELLS_CRACK in found.reasons


@pytest.mark.parametrize(
    "line",
    [
        "12 eggs, frozen, chest",
        "2 cartons eggs, fresh, chest",
        "2 dozen eggs, chest",
        "6 eggs in the shell, frozen, chest",
    ],
)
def test_eggs_that_are_counted_as_they_were_laid_lie_in_their_shells(p: Pantry, line: str) -> None:
    assert judged(p, line) == (Verdict.UNKNOWN, True)


@pytest.mark.parametrize(
    "line",
    [
        "1 bag beaten eggs, frozen, chest",
        "12 whisked eggs, frozen, chest",
        "12 eggs, frozen, chest, note=beaten with salt",
        "2 pint jars eggs, frozen, chest",
        "1 box of 12 eggs, frozen, chest",
    ],
)
def test_what_was_beaten_or_fills_a_vessel_keeps_a_year(p: Pantry, line: str) -> None:
    assert judged(p, line) == (Verdict.SOUND, False)


def test_beaten_eggs_are_no_fresh_ones(p: Pantry) -> None:
    with pytest.raises(BadInput, match="beaten"):
        putup.put_up(p, putup.read(p, "6 beaten eggs, fresh, fridge"))
