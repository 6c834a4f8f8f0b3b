"""Notes of whom honey is for, of what old dried food smells of, of rings and canners that are as
they should be."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, quoted, tried_each

HONEY = "1 jar honey, bought in, larder"
APPLES = "1 jar apples, dried, larder"
MINT = "1 jar mint, dried, larder"
BEANS = "7 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"


def test_honey_for_who_is_not_a_year_old_yet(chilled: Pantry) -> None:
    notes = (
        "for the twins, eight months", "for Ida, 10 months old", "grandson is 7 months",
        "for our 9-month-old", "our little one, half a year", "toddler, 11 months", "weaning",
        "for Jonas (5 months)", "first solid food for Nora", "given to the newborn",
        "for the niece before her first birthday",
    )  # fmt: skip
    found = tried_each(chilled, HONEY, notes)
    assert quoted(found) == set(notes)
    assert all(any("first birthday" in why for why in one.reasons) for one in found.values())


def test_honey_for_others_says_nothing(chilled: Pantry) -> None:
    notes = (
        "for the twins", "good for the next 8 months", "for baking, bought 8 months ago",
        "keeps for 8 months", "for the kids' toast", "bought for Christmas 11 months ago",
        "for Nora, 14 months", "crystallised after 6 months", "for the twins' birthday",
    )  # fmt: skip
    assert quoted(tried_each(chilled, HONEY, notes)) == set()


@pytest.mark.parametrize("line", [APPLES, MINT])
def test_dried_food_that_smells_of_hay_is_past_its_best(chilled: Pantry, line: str) -> None:
    notes = "smells like hay", "smell of straw", "smells stale", "hay-like smell", "tastes of dust"
    found = tried_each(chilled, line, notes)
    assert {one.verdict for one in found.values()} == {Verdict.PAST_BEST}
    quiet = "smells of apples", "dried in the hay loft", "for the horse with hay", "dusty pink ones"
    assert judged_otherwise(chilled, line, tried_each(chilled, line, quiet)) == set()


def test_dried_food_in_a_block_is_damp(chilled: Pantry) -> None:
    notes = ("clumped into one block, they were loose before",)
    assert quoted(tried_each(chilled, APPLES, notes)) == set(notes)


def test_a_ring_that_rusted_holds_no_seal(chilled: Pantry) -> None:
    quiet = (
        "rusty rings", "rusty bands", "rings rusty", "rust on the ring only", "screw bands rusty",
        "bands rusted, lids fine", "a rusty ring", "rings are a bit rusty",
    )  # fmt: skip
    assert judged_otherwise(chilled, BEANS, tried_each(chilled, BEANS, quiet)) == set()
    said = "rusty lids", "rusty lid and ring", "rusty", "rust under the ring", "rusty ring and lid"
    assert quoted(tried_each(chilled, BEANS, said)) == set(said)


def test_a_canner_is_opened_when_its_pressure_is_down(chilled: Pantry) -> None:
    quiet = (
        "opened canner after pressure was down", "opened the canner once the gauge read 0",
        "opened the canner when the pressure was down to zero",
        "took off the lid after the pressure had dropped", "pressure was down when I opened it",
        "opened the lid after pressure was gone",
    )  # fmt: skip
    assert judged_otherwise(chilled, BEANS, tried_each(chilled, BEANS, quiet)) == set()
    said = (
        "opened canner before the pressure was down", "opened the canner while pressure was up",
        "pressure was down during the process", "pressure went down halfway",
        "opened the canner after the pressure was down to 5",
    )  # fmt: skip
    assert quoted(tried_each(chilled, BEANS, said)) == set(said)


SAID = {
    "1 jar peaches, dried, larder": (
        "smell of hay", "fused in one lump, were loose slices", "taste of dust",
        "stuck into a brick",
    ),
    "1 jar garlic, dried, larder": (
        "poured oil over it", "filled up with sunflower oil", "stored in oil", "in Öl",
        "with oil to cover",
    ),
    "1 bottle sunflower oil, bought in, larder": (
        "with home dried herbs", "dried porcini steeping in it",
        "dehydrated garlic slices in the bottle", "getrocknete Pilze drin",
    ),
}  # fmt: skip
QUIET = {
    "1 jar peaches, dried, larder": (
        "smell of peach", "in the hay barn sun", "loose pieces", "pressed into a bar mould",
    ),
    "1 jar garlic, dried, larder": (
        "for oil infusions", "oil free", "no oil", "crush into oil when cooking",
    ),
    "1 bottle sunflower oil, bought in, larder": (
        "for dried herbs", "with a dried flower label", "next to the dried mushrooms",
        "for frying dried fish",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", SAID)
def test_dried_food_and_oil_of_which_a_note_says_more(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, SAID[line])
    assert {note for note, one in found.items() if one.verdict is Verdict.SOUND} == set()
    quiet = tried_each(chilled, line, QUIET[line])
    assert {note for note, one in quiet.items() if one.verdict is not Verdict.SOUND} == set()
