"""Cooked food that stood warm, was not hot through or met something raw, said with no hour."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried_each

STEW = "2 boxes beef stew, cooked meal, fridge"
TROUT = "3 packs hot smoked trout, fridge"
JAM = "3 jars strawberry jam, larder, minutes=10"
APPLES = "1 box apples, fresh, fridge"
SAID = {
    STEW: (
        "sat out through the party", "in the car for the afternoon",
        "lukewarm till the match ended", "on the table all evening",
        "found it on the worktop this morning", "thermos overnight", "sat in the danger zone",
        "never got above 130", "third time heated", "raw marinade poured over",
        "cut on the raw board", "the mince was a day over", "buffet leftovers from noon",
    ),
    TROUT: ("reached only 120 inside", "never got above 130"),
}  # fmt: skip
QUIET = {
    STEW: (
        "for the party", "in the fridge all evening", "in the slow cooker all evening",
        "in the cool box for the afternoon", "kept hot through the party", "for the whole evening",
        "to heat in the thermos", "took 130 minutes", "marinated, then cooked",
        "cut on a clean board", "heated once", "eat while the match is on",
        "found it in the freezer this morning", "out of the danger zone in 20 min",
        "never more than 40 minutes out", "cooked all afternoon", "chilled through the evening",
    ),
    TROUT: ("reached 165 inside", "smoked all afternoon", "never got above 200 in the smoker"),
    JAM: ("on the table all evening",),
    APPLES: ("on the table all evening", "in the car for the afternoon"),
}  # fmt: skip


@pytest.mark.parametrize("line", SAID)
def test_it_is_held_against_it(larder: Pantry, line: str) -> None:
    found = tried_each(larder, line, SAID[line])
    assert set(SAID[line]) - quoted(found) == set()


@pytest.mark.parametrize("line", QUIET)
def test_other_words_are_not(larder: Pantry, line: str) -> None:
    assert quoted(tried_each(larder, line, QUIET[line])) == set()


def test_what_thaws_since_a_day_is_so_old(larder: Pantry) -> None:
    since = f"{larder.today - timedelta(days=2):%A}"
    notes = (f"thawing since {since}", f"defrosting since {since}")
    assert quoted(tried_each(larder, STEW, notes)) == set(notes)
    assert quoted(tried_each(larder, STEW, ("thawing today", f"for {since}"))) == set()
