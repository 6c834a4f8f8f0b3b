"""What takes food outside the published figures: too warm, too cold, or no figure at all."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.model import Crop, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from tests.core.keeping.told import Told

CROP = FoodFacts("squashes", Group.VEGETABLE, Acidity.LOW_ACID)


def book(*climates: Climate, freezing: float | None = None, chilling: float | None = None,
         ) -> Rulebook:  # fmt: skip
    rule = Rule(
        "r", Method.CELLAR, "*", State.SEALED, frozenset(climates), Kind.QUALITY, 90, 90, 90,
        "days", None, Status.CURRENT, "Ninety days.", "", Trust.READ,
    )  # fmt: skip
    crop = Crop("squashes", 50, 60, freezing, chilling, 2.0, "", "", "", Trust.READ)
    return Rulebook(dict.fromkeys(Method, (rule,)), crops={"squashes": crop})


def said(told: Told, by: Rulebook) -> str:
    return told.assessed(1, book=by).on(told.then.day).reasons[0]


def held(warm: float, *, method: Method = Method.CELLAR, place: str = "vault") -> Told:
    told = Told(CROP, method, place)
    return told.at(0, 9).hold(place, told.places[place].climate, warm).at(1)


@pytest.mark.parametrize(
    ("warm", "freezing", "chilling", "why"),
    [
        (50, 30.0, 45.0, ""), (45, 30.0, 45.0, ""), (44.5, 30.0, 45.0, "below 45 F it is hurt"),
        (30, 30.0, 45.0, "below 45 F it is hurt"), (29.5, 30.0, 45.0, "below 30 F it freezes"),
        (30, 30.0, None, ""), (29.5, 30.0, None, "below 30 F it freezes"), (20, None, None, ""),
        (20, None, 45.0, "below 45 F it is hurt"),
    ],
)  # fmt: skip
def test_a_crop_that_is_too_cold(
    warm: float, freezing: float | None, chilling: float | None, why: str
) -> None:
    """The range and what hurts of a crop: USDA Handbook 66."""
    by = book(Climate.CELLAR, freezing=freezing, chilling=chilling)
    told = said(held(warm), by)
    if why:
        assert told.startswith(f"Stood at {warm:g} F: {why}")
    else:
        assert not told.startswith("Stood")
    dried = held(warm, method=Method.DRIED)
    assert not said(dried, by).startswith("Stood"), "only crops are hurt by the cold"


@pytest.mark.parametrize(
    ("warm", "why"), [(95, ""), (95.5, "above 95 F"), (32, ""), (31.5, "may lose their seal")]
)
def test_jars_that_stand_too_warm_or_too_cold(warm: float, why: str) -> None:
    """USDA AIB 539, storing canned food: above 95 °F, and frozen."""
    jar = held(warm, method=Method.PRESSURE, place="larder")
    told = said(jar, book(Climate.PANTRY))
    assert (why in told) if why else not told.startswith("Stood")


def test_a_refrigerator_that_is_warmer_than_the_figures_for_it() -> None:
    by = book(Climate.FRIDGE)
    assert not said(held(41, place="fridge"), by).startswith("Set")
    warm = held(41.5, place="fridge")
    assert said(warm, by) == "Set at 41.5 F, above 41 F: warmer than the published figures."
    read = Told(CROP, Method.CELLAR, "fridge").at(0, 11).read("fridge", 45, 30).at(1)
    assert said(read, by).startswith("Read at 45 F")


def test_where_nothing_is_published_its_words_are_said() -> None:
    words = replace(book(Climate.CELLAR).rules[Method.CELLAR][0], use=None, wording="In sand.")
    judged = held(55).assessed(1, book=Rulebook({Method.CELLAR: [words]}))
    assert judged.reasons[0].startswith("No published figure for ")
    assert judged.reasons[0].endswith(" (cellar-stored), sealed in a cellar.")
    assert "In sand." in judged.reasons
    assert judged.rules == (words,)
