"""How hot the jars came: what never boiled, or never came to the heat of a pressure canner."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct

SOUND = frozenset({Verdict.SOUND, Verdict.EAT_SOON})
PLUMS = "3 pint jars plums, boiling-water canned, minutes=25, altitude={ft}ft"
PICKLES = "3 pint jars dill pickles, vinegar pickle, vinegar=5%, altitude=500ft"
BEANS = "3 pint jars snap beans, pressure canned, minutes=20, psi=11, canner=dial, altitude=500ft"


def is_sound(p: Pantry, line: str) -> bool:
    return putup.put_up(p, putup.read(p, f"{line}, larder, today")).verdict in SOUND


@pytest.mark.parametrize(
    ("temperature", "ft", "fine"),
    [
        ("150F", 500, False), ("65 C", 500, False), ("140", 500, False), ("180F", 500, False),
        ("200F", 500, False), ("212F", 500, True), ("100 C", 500, True), ("211F", 500, True),
        ("209F", 500, False), ("201F", 5000, False), ("99C", 8000, True), ("197F", 8000, True),
        ("150-212F", 500, False), ("195F", 8000, False),
    ],
)  # fmt: skip
def test_water_has_to_boil_where_it_was(
    larder: Pantry, temperature: str, ft: int, fine: bool
) -> None:
    """Boiling points from physics: 211 °F at 500 ft, 203 at 5,000, 197 at 8,000 (a tolerance of
    less than a degree)."""
    line = PLUMS.replace("minutes=25", "minutes=60").format(ft=ft)
    assert is_sound(larder, f"{line}, temperature={temperature}") is fine


@pytest.mark.parametrize(
    ("temperature", "minutes", "fine"),
    [
        ("180F", 30, True), ("185F", 30, True), ("83 C", 35, True), ("179F", 30, False),
        ("180F", 29, False), ("175F", 60, False), ("212F", 15, True), ("180-185F", 30, True),
    ],
)  # fmt: skip
def test_some_pickles_may_stand_in_cooler_water(
    larder: Pantry, temperature: str, minutes: int, fine: bool
) -> None:
    """180 to 185 °F for 30 minutes, where the recipe says so (USDA AIB 539, guide 6)."""
    assert is_sound(larder, f"{PICKLES}, minutes={minutes}, temperature={temperature}") is fine


@pytest.mark.parametrize(
    "line",
    [
        "3 pint jars pickled beets, vinegar pickle, minutes=60, vinegar=5%",
        '3 pint jars dill pickles, vinegar pickle, vinegar=5%, minutes=40, form="reduced sodium"',
        "3 pint jars strawberry jam, jam, minutes=60",
        "3 pint jars plums, boiling-water canned, minutes=60",
        "3 pint jars plums, boiling-water canned, minutes=40, canner=steam",
    ],
)
def test_no_other_jar_may(larder: Pantry, line: str) -> None:
    assert is_sound(larder, f"{line}, altitude=500ft, temperature=212F")
    assert not is_sound(larder, f"{line}, altitude=500ft, temperature=182F")


@pytest.mark.parametrize(
    ("temperature", "fine"), [("240F", True), ("116 C", True), ("212F", False), ("239F", False)]
)
def test_a_pressure_canner_comes_to_more(larder: Pantry, temperature: str, fine: bool) -> None:
    """240 to 250 °F at 10 to 15 pounds (USDA AIB 539, guide 1)."""
    assert is_sound(larder, f"{BEANS}, temperature={temperature}") is fine


def test_it_is_judged_when_it_is_told_later(larder: Pantry) -> None:
    assert is_sound(larder, PLUMS.format(ft=500))
    correct(larder, "2A", process=[("temp", "150F")])
    (batch,) = larder.stock.batches.values()
    assert "150 F is below boiling" in batch.doubt[0]
