"""A jar that is said twice: under its own key, as the size of each, as what was poured into it."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.jars import of_one_jar
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct

SOUND = frozenset({Verdict.SOUND, Verdict.EAT_SOON})


def verdict(p: Pantry, line: str) -> Verdict:
    return putup.put_up(p, putup.read(p, f"{line}, larder, today")).verdict


@pytest.mark.parametrize(
    ("jar", "size", "amount", "counts"),
    [
        ("pint", "half-gallon jars", "", "half-gallon jars"),
        ("half-gallon", "pint jars", "", "half-gallon"),
        ("pint", "2 l jars", "", "2 l jars"),
        ("pint", "500 ml jars", "", "500 ml jars"),
        ("pint", "jars", "", "pint"),
        ("", "quart jars", "", "quart jars"),
        ("pint", "jars", "1 quart", "1 quart"),
        ("pint", "jars", "20 oz", "pint"),
        ("pint", "jars", "3 lb", "pint"),
        ("", "jars", "", ""),
    ],
)
def test_the_larger_of_two_counts(jar: str, size: str, amount: str, counts: str) -> None:
    assert of_one_jar({"jar": jar, "amount": amount}, size) == counts


@pytest.mark.parametrize("size", ["half-gallon", "2-litre", "1.5 l", "64 oz", "2000 ml"])
@pytest.mark.parametrize("jar", ["pint", "quart", "500ml", "1 l"])
def test_a_smaller_jar_beside_lifts_no_larger_one(larder: Pantry, size: str, jar: str) -> None:
    line = f"3 {size} jars plums, boiling-water canned, minutes=60"
    assert verdict(larder, line) not in SOUND
    assert verdict(larder, f"{line}, jar={jar}") not in SOUND
    correct(larder, "2A", process=[("jar", jar)])
    assert next(iter(larder.stock.batches.values())).doubt


def test_a_size_that_is_put_right_later_counts_beside_the_jar(larder: Pantry) -> None:
    line = "3 pint jars plums, boiling-water canned, minutes=20, jar=pint"
    assert verdict(larder, line) in SOUND
    (batch,) = larder.stock.batches
    correct(larder, "2A", size="half-gallon jars")
    assert larder.stock.batches[batch].doubt
    correct(larder, "2A", size="pint jars")
    assert not larder.stock.batches[batch].doubt


def test_makers_jars_take_their_time_under_either_key(larder: Pantry) -> None:
    """20 minutes for plums in pints, 25 in quarts (USDA AIB 539, guide 2)."""
    for more in ("", ", jar=500ml", ", jar=pint"):
        line = f"3 500 ml jars plums, boiling-water canned, minutes=20, altitude=500ft{more}"
        assert (verdict(larder, line) in SOUND) == (larder.jars == "maker")


@pytest.mark.parametrize("size", ["imperial pint", "uk pint", "imperial quart"])
def test_an_imperial_jar_of_a_line_is_asked_about(larder: Pantry, size: str) -> None:
    reading = putup.read(larder, f"3 {size} jars plums, boiling-water canned, minutes=25, larder")
    assert "568 ml" in reading.problems[0]
    assert not reading.unread
