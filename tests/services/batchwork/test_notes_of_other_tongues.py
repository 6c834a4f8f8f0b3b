"""Dangers that a note says in German or French."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places
from tests.services.batchwork.noting import quoted, tried_each

TOMATOES = "3 pint jars tomatoes, boiling-water canned, larder, minutes=85 acid=1 tbsp lemon juice"
BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
BEEF = "2 bags ground beef, frozen, chest"
STEW = "2 boxes beef stew, cooked meal, fridge"
SAID = {
    TOMATOES: (
        "Deckel gewölbt", "undicht", "zischt", "schimmelig", "Schimmel am Rand",
        "ohne Zitronensaft", "Deckel ging auf", "nachgekocht", "moisi", "sans citron",
        "sans jus de citron", "bombé", "couvercle bombé", "qui fuit",
    ),
    BEANS: ("Manometer kaputt", "trouble", "liquide trouble", "Lake trüb", "Deckel aufgebläht"),
    BEEF: ("aufgetaut", "décongelé puis recongelé", "wieder eingefroren"),
    STEW: ("über Nacht draußen", "oublié toute la nuit", "moisi", "Schimmel", "stinkt"),
}  # fmt: skip
QUIET = {
    TOMATOES: (
        "kein Schimmel", "Deckel nicht gewölbt", "nicht undicht", "pas moisi", "sans moisissure",
        "mit Zitronensaft", "avec citron", "no trouble", "Deckel fest", "gut eingekocht",
    ),
    BEANS: ("no trouble at all", "für den Winter", "aus dem Garten"),
    STEW: ("für das Fest", "aufgetaut essen, wenn Gäste kommen", "pour la fête", "sehr gut"),
}  # fmt: skip


@pytest.mark.parametrize("line", SAID)
def test_a_danger_is_understood(larder: Pantry, line: str) -> None:
    places.add(larder, "chest", "freezer")
    found = tried_each(larder, line, SAID[line])
    assert set(SAID[line]) - quoted(found) == set()


@pytest.mark.parametrize("line", QUIET)
def test_a_no_and_other_words_raise_no_alarm(larder: Pantry, line: str) -> None:
    assert quoted(tried_each(larder, line, QUIET[line])) == set()
