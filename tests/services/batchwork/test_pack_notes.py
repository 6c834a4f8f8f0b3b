"""Notes of tins, cartons, packs and cooked food that went bad, or that were never hot enough: what
publications throw away is never sound, and what is well raises nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

TINS = "6 tins chopped tomatoes, bought in, larder"
PULSES = "4 tins lentils, bought in, larder"
FLOUR = "2 2-lb bags flour, bought in, larder"
BEAN_TINS = "4 tins kidney beans, bought in, larder"
MILK = "2 cartons milk, bought in, fridge"
FRESH_MILK = "2 cartons milk, fresh, fridge"
CREAM = "1 tub sour cream, bought in, fridge"
HAM = "2 packs ham, bought in, fridge"
CHICKEN = "2 packs chicken, frozen, freezer"
MINCE = "2 packs ground beef, fresh, fridge"
FROZEN_MINCE = "2 packs ground beef, frozen, freezer"
STEW = "3 boxes beef stew, cooked meal, fridge"
COOKED = "3 boxes chicken soup, cooked meal, freezer"
BEANS = "2 boxes kidney beans, cooked meal, fridge"
RAW = "2 bags kale, fresh, fridge"

BAD = {
    TINS: (
        "two tins are bulging", "can bulged", "swollen", "blown", "lid domed", "leaking",
        "dented on the seam", "rusted through", "hissed and sprayed when opened", "spurted",
        "foam came out", "safety button was up", "recalled by the maker", "one tin has blown",
        "ends bulge at both sides", "button popped up", "seam dented", "deep dent along the rim",
        "pinhole rust and sticky", "under recall", "lid puffed up", "seeping at the seam",
    ),
    PULSES: ("bulging", "leaking", "rusted through"),
    BEAN_TINS: ("one is swollen", "spurted"),
    MILK: ("carton swollen", "curdled", "sour", "lumpy", "leaking", "went off", "gone sour"),
    FRESH_MILK: ("soured", "tastes sour", "carton blown up", "smells off"),
    CREAM: ("tub blown", "lid bulging"),
    HAM: ("pack puffed up", "gone green", "greenish tinge", "pack is inflated", "sour"),
    CHICKEN: ("pack puffed up", "bloated", "leaking", "pack ballooned", "gone green"),
    MINCE: (
        "smells", "smelly", "one smells", "a bit off", "gone green", "sour", "turned green",
        "smells a bit", "pack swelled up", "tastes odd",
    ),
    FROZEN_MINCE: ("smells", "a bit off"),
    STEW: (
        "sour", "tastes off", "gone green", "sticky", "held at 120 F", "kept warm at 50 C",
        "slow cooker switched off 3 hours before I noticed", "plug pulled for hours",
        "sat raw in the slow cooker till the timer began", "delayed start 8 hours",
        "on warm from raw", "only lukewarm in the middle", "meat was still raw at the bone",
        "timer started it after 5 hours",
    ),
    COOKED: (
        "chicken was still raw at the bone", "pink in the middle", "not cooked through",
        "slow cooker was off 3 hours", "never got hot",
    ),
    BEANS: (
        "slow cooked from dry without boiling", "never boiled, just the slow cooker",
        "slow cooker from dry, no boil",
    ),
}  # fmt: skip

GOOD = {
    TINS: (
        "not bulging", "no leaks", "none swollen", "small dent in the side", "dented", "plum",
        "for pasta", "with basil", "from the corner shop", "no rust", "good button, flat lid",
        "not recalled", "for the slow cooker", "best chopped, thick juice",
        "a bit of rust on the rim",
    ),
    FLOUR: ("bag burst", "leaking a bit from the corner", "for puff pastry"),
    BEAN_TINS: ("never boiled dry", "fizzy drink shelf", "for chilli"),
    MILK: ("for sour cream pancakes", "for sourdough", "smells fine", "whole", "no lumps"),
    FRESH_MILK: ("from the farm shop", "not sour", "for curd cheese", "for cheese sauce"),
    CREAM: ("for baked potatoes", "the thick sort", "sour cream for tacos"),
    HAM: (
        "for green beans", "smells of smoke", "smells lovely", "honey roast", "sweet and sour",
        "for sour cream pasta", "off the bone", "for puff pastry parcels",
    ),
    CHICKEN: ("for sweet and sour", "with puff pastry", "thighs", "for green curry", "money off"),
    MINCE: (
        "smells great", "smells fresh", "smells of garlic", "20 percent off", "half price off",
        "does not smell", "for sour cream stroganoff", "no smell", "for stuffed green peppers",
    ),
    FROZEN_MINCE: ("flat packs", "cut off the bone", "from the Saturday market"),
    STEW: (
        "with green beans", "pickled green tomatoes", "sticky rice", "sweet and sour",
        "smells lovely", "slow cooker 8 hours on low", "with sourdough", "kept hot at 150 F",
        "slow cooker on high 5 hours", "sour cream stirred in", "puff pastry top",
        "good off the bone", "slow cooker switched off after 8 hours and chilled", "green lentils",
        "bean sprouts and sour cherries", "smells of garlic", "slow cooker switched to warm at 6",
    ),
    COOKED: (
        "cooked from raw", "raw carrots added at the end", "fell off the bone", "smells great",
        "piping hot in the middle", "cooked through", "reheat till hot in the middle",
        "cold in the middle of the freezer",
        "left to cool to 70 F", "stood the box in cold water at 50 F", "kept at 0 F",
    ),
    BEANS: ("boiled 30 minutes", "boiled first, then the slow cooker"),
    RAW: ("bag from the allotment", "gone from the garden now", "the curly one", "green"),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_went_bad_in_its_pack_is_never_sound(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    over = {Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE}
    assert {n: o.verdict for n, o in found.items() if o.verdict not in over} == {}


@pytest.mark.parametrize("line", GOOD)
def test_what_is_well_in_its_pack_raises_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, GOOD[line])
    assert quoted(found) == set()
    assert {n: o.verdict for n, o in found.items() if o.verdict is not bare.verdict} == {}


def test_the_verdict_is_that_of_the_sign(chilled: Pantry) -> None:
    for note in ("bulging", "leaking", "spurted", "rusted through", "safety button was up"):
        assert tried(chilled, TINS, note).verdict is Verdict.DO_NOT_TASTE
    assert tried(chilled, TINS, "dented on the seam").verdict is Verdict.DISCARD
    assert tried(chilled, HAM, "pack puffed up").verdict is Verdict.DO_NOT_TASTE
    # Hard frozen a swollen bag is mostly ice, and nobody says when it swelled.
    assert tried(chilled, CHICKEN, "pack puffed up").verdict is Verdict.UNKNOWN
    assert tried(chilled, MILK, "curdled").verdict is Verdict.DISCARD


def test_two_hours_below_140_f_are_the_line(chilled: Pantry) -> None:
    bare = tried(chilled, STEW).verdict
    assert tried(chilled, STEW, "held at 139 F for 2 hours").verdict is bare
    assert tried(chilled, STEW, "held at 140 F for 4 hours").verdict is bare
    assert tried(chilled, STEW, "held at 60 C for 4 hours").verdict is bare
    assert tried(chilled, STEW, "kept at 40 F for 20 hours").verdict is bare
    assert tried(chilled, STEW, "held at 139 F for 121 minutes").verdict is Verdict.DISCARD
    assert tried(chilled, STEW, "delayed start 2 hours").verdict is bare
    assert tried(chilled, STEW, "delayed start 3 hours").verdict is Verdict.DISCARD
