"""What a note says was made at home of raw egg has the days of that, not of a jar from a shop."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, tried, tried_each

MAYONNAISE = "2 jars mayonnaise, bought in, fridge"
HOME = {
    MAYONNAISE: (
        "home made with raw egg", "made it ourselves, yolks raw", "our own aioli", "homemade",
        "hand made mayo", "I made it with raw yolks", "whisked up at home", "raw egg in it",
    ),
    "1 jar chocolate, bought in, fridge": ("home made mousse", "made at home, raw egg whites"),
    "1 jar salad dressing, bought in, fridge": ("home made caesar with raw egg",),
}  # fmt: skip
SHOP = {
    MAYONNAISE: (
        "tastes like home made", "for home made burgers", "no raw egg in it", "not home made",
        "better than home made", "home made label", "from the shop", "to dip raw carrots",
        "our own jar", "next to the home made one",
    ),
    "2 jars mustard, bought in, fridge": ("home made", "made it ourselves", "our own"),
    "1 dozen eggs, fresh, fridge": ("for home made mayonnaise", "our own"),
    "1 jar chocolate, bought in, fridge": ("for the mousse", "home made"),
}  # fmt: skip


@pytest.mark.parametrize("line", HOME)
def test_made_at_home_it_has_few_days(larder: Pantry, line: str) -> None:
    for note, one in tried_each(larder, line, HOME[line]).items():
        assert one.discard_after is not None, note
        assert one.discard_after <= larder.today + timedelta(days=4), note


def test_after_those_it_is_discarded(larder: Pantry) -> None:
    old = tried(larder, f"{MAYONNAISE}, 20 days ago", "home made with raw egg")
    assert old.verdict is Verdict.DISCARD


@pytest.mark.parametrize("line", SHOP)
def test_other_words_change_nothing(larder: Pantry, line: str) -> None:
    found = tried_each(larder, line, SHOP[line])
    assert judged_otherwise(larder, line, found) == set()
