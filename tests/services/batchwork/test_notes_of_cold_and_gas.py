"""What a note says of the cold that failed, of gas in what makes none, of meat that is not done.
What bubbles in the pot, what works by itself and what is pink by its cure is well."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, quoted, tried, tried_each

STEW = "2 boxes beef stew, cooked meal, fridge"
MILK = "2 cartons milk, bought in, fridge"
GROUND = "4 packs ground beef, frozen, freezer"
PEAS = "3 bags peas, frozen, freezer"
BEANS = "6 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
PEACHES = "6 pint jars peaches, boiling-water canned, larder, minutes=30 pack=hot"
JAM = "3 half-pint jars strawberry jam, jam, larder, minutes=10"
PICKLES = "3 pint jars dill pickles, vinegar pickle, larder, minutes=15"
FRIDGE_PICKLES = "3 quart jars cucumbers, fridge pickle, fridge, vinegar=5%"
TIN = "2 tins tomatoes, bought in, larder"
KRAUT = "1 crock sauerkraut 10 lb, lactic ferment, cellar, salt=2.25%"
KIMCHI = "1 jar kimchi 2 lb, lactic ferment, fridge, salt=2.5%"
CIDER = "2 bottles apple cider, alcohol ferment, cellar"
CHICKEN = "1 lb chicken breasts, cooked meal, fridge"
SOUP = "2 boxes chicken soup, cooked meal, fridge"
SMOKED_CHICKEN = "2 packs hot smoked chicken, fridge"
SMOKED_TROUT = "2 packs hot smoked trout, fridge"
HAM = "1 lb ham, hot smoked, fridge"
BURGERS = "2 boxes burgers, cooked meal, fridge"
BEEF = "2 lb roast beef, cooked meal, fridge"
PIE = "2 packs chicken pie, frozen, freezer"

_WARM = (
    "fridge was at 50F", "fridge was off", "fridge at 50 F all night", "fridge open all night",
    "fridge stood open overnight", "fridge door stood open", "fridge reads 48F", "fridge warm",
    "fridge too warm", "fridge stopped", "fridge not cold", "fridge was 12 C", "fridge quit",
    "fridge defrosted itself", "fridge lost its cold", "50F in the fridge", "fridge at 55",
    "fridge running warm", "fridge not working", "fridge turned itself off", "the power went",
    "fridge temp 50", "found the fridge open this morning", "the fridge had been unplugged",
    "kids left the fridge open", "stood in a warm fridge", "fridge door not shut",
    "fridge door did not close", "door of the fridge stood open",
)  # fmt: skip
_GAS = ("gas bubbles", "bubbling", "fizzy", "bubbles in the jar", "effervescent", "gassy")
_RAW = (
    "chicken still pink", "pink inside", "not cooked through", "undercooked", "still pink",
    "a bit pink", "juices ran pink", "juices not clear", "raw in the middle", "half cooked",
    "a bit raw",
    "could have done with longer",
    "needs more cooking", "not quite cooked", "pink near the bone", "blood at the bone",
)  # fmt: skip

BAD = {
    STEW: (*_WARM, "bubbling", "fizzy", "gas bubbles", "bubbles rising", "bubbly when opened"),
    MILK: ("fridge was at 50F", "fridge was off", "fridge stood open overnight"),
    GROUND: ("freezer was at 30F", "freezer was off", "freezer stood open", "power went"),
    PEAS: ("freezer was at 30F", "freezer was off", "freezer stood open overnight"),
    BEANS: (*_GAS, "gas in the jar", "pressure when opened", "gas under the lid", "carbonated",
        "bubbly", "tiny bubbles"),
    PEACHES: _GAS,
    JAM: _GAS,
    PICKLES: (*_GAS, "bubbly brine"),
    FRIDGE_PICKLES: ("gas bubbles", "bubbling", "fizzy"),
    TIN: ("bubbling", "fizzy", "gas bubbles"),
    CHICKEN: _RAW,
    SOUP: ("chicken still pink", "pink inside", "not cooked through", "undercooked"),
    SMOKED_CHICKEN: ("chicken still pink", "not cooked through", "still pink at the bone"),
    SMOKED_TROUT: ("not cooked through", "undercooked", "raw inside", "translucent"),
    BURGERS: ("pink inside", "rare", "undercooked"),
    BEEF: ("undercooked", "not cooked through"),
    PIE: ("chicken still pink", "not cooked through", "undercooked"),
}  # fmt: skip
FINE = {
    STEW: (
        "bubbling hot when served", "simmered till bubbling", "fridge was at 37F", "new fridge",
        "fridge at 38 F", "fridge was full", "fridge is cold", "fridge shelf 2", "fridge never off",
        "bottom of the fridge", "reheat until bubbling", "into the fridge within the hour",
        "open the fridge with care", "stood in the fridge overnight", "fridge was at 3C",
        "fridge set to 37 F", "cooked to 165 F", "from fridge to oven at 350F",
        "fizzy drink with it",
        "put in the fridge warm", "cooled to 60 F, then the fridge", "went into the fridge warm",
        "fridge not full", "cooked through", "pink peppercorns",
    ),
    GROUND: ("freezer at 0F", "freezer is at -18C", "freezer was full", "in the freezer by noon"),
    PEAS: ("freezer at 0F", "freezer shelf 2"),
    BEANS: (
        "bubbling hot into the jars", "removed air bubbles", "a few air bubbles", "no bubbles",
        "got the bubbles out", "air bubbles removed", "bubbled the jars with a chopstick",
        "bubble tool used", "de-bubbled", "filled while bubbling", "gas stove", "gas canner",
        "no gas bubbles", "bubbles out with a knife", "packed bubbling hot", "cooked on gas",
        "bubbles released", "ran the knife round for bubbles", "worked the bubbles out",
        "gas mark 4", "on gas", "tapped out the bubbles", "bubbles poked out with a knife",
    ),
    PEACHES: ("removed air bubbles", "a few air bubbles", "syrup was bubbling"),
    JAM: ("sparkling", "bubbling hot into the jars", "a few air bubbles", "foam skimmed"),
    PICKLES: ("brine poured bubbling", "a few air bubbles"),
    KRAUT: ("bubbling", "fizzy", "gas bubbles", "lots of bubbles", "foaming nicely", "bubbly"),
    KIMCHI: ("bubbling", "fizzy", "gas bubbles"),
    CIDER: ("bubbling", "fizzy", "sparkling"),
    CHICKEN: (
        "cooked through", "not pink", "no pink", "no longer pink", "juices clear", "nicely done",
        "cooked until no longer pink", "with pink grapefruit", "pink label", "not undercooked",
        "pink salt",
    ),
    SOUP: ("pink lid", "cooked through"),
    SMOKED_CHICKEN: ("pink smoke ring", "pink from the smoke"),
    SMOKED_TROUT: ("pink flesh", "nice and pink", "pink inside"),
    HAM: ("pink inside", "pink"),
    PIE: ("cook through from frozen",),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_warm_gas_and_raw_are_held_against_it(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    fit = (Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST)
    assert {note for note, one in found.items() if one.verdict in fit} == set()


@pytest.mark.parametrize("line", FINE)
def test_what_bubbles_and_is_cold_and_done_is_well(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, FINE[line])
    assert quoted(found) == set()
    assert judged_otherwise(chilled, line, found) == set()


@pytest.mark.parametrize("note", ["fridge stood open overnight", "fridge door left open"])
def test_a_refrigerator_that_stood_open_is_no_open_jar(chilled: Pantry, note: str) -> None:
    for line in (STEW, MILK):
        said = " ".join(tried(chilled, line, note).reasons)
        assert "`outage`" in said
        assert "by its record it is shut" not in said


def test_a_refrigerator_that_was_too_warm_is_booked_as_a_reading(chilled: Pantry) -> None:
    assert "`reading`" in tried(chilled, STEW, "fridge was at 50F").reasons[0]
