"""Notes beside a full record of jars: those that say another process, less time, less acid, another
food or spoilage raise a doubt, and those that say nothing of the kind raise none. Which words are
listened for is our own choice, the stricter one."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.denial import affirmed, spelled_not
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry

HERE = "larder, altitude=500ft"
BEANS = f"3 pint jars runner beans, pressure canned, {HERE}, minutes=20 psi=11 canner=dial"
PICKLE = f"3 pint jars dilly beans, vinegar pickle, {HERE}, vinegar=5% minutes=10"
JAM = f"3 half-pint jars strawberry jam, jam, {HERE}, minutes=10"
TOMATOES = f"3 pint jars tomatoes, boiling-water canned, {HERE}, minutes=85 pack=raw acid=lemon"
PEACHES = f"3 pint jars peaches, boiling-water canned, {HERE}, minutes=30"
DILLS = f"3 pint jars dill pickles, vinegar pickle, {HERE}, vinegar=5% minutes=10"
PEARS = f"3 pint jars pears, boiling-water canned, {HERE}, minutes=20 pack=hot"
SAUCE = f"3 pint jars applesauce, boiling-water canned, {HERE}, minutes=15"
SOUP = f"3 pint jars vegetable soup, pressure canned, {HERE}, minutes=60 psi=11 canner=dial"
SALMON = f"3 pint jars salmon, pressure canned, {HERE}, minutes=100 psi=11 canner=dial"
CHICKEN = f"3 pint jars chicken, pressure canned, {HERE}, minutes=75 psi=11 canner=dial"
FRIDGE = "2 quart jars dill pickles, fridge pickle, fridge"
KRAUT = "1 crock sauerkraut, lactic ferment, larder, salt=2.25%"

OTHER_WAY = (
    "processed in the oven", "in the oven at 250 F", "baked in the oven for an hour",
    "filled jars sterilised in the oven", "done in the microwave", "kettle canned",
    "kettle canning, as ever", "just poured hot and sealed", "filled hot and capped",
    "poured boiling hot into jars and screwed shut", "sealed with wax", "wax on top",
    "covered with cellophane", "jam pot covers", "vacuum sealed with a machine",
    "used a vacuum sealer", "jar sealer attachment", "pumped the air out with the sealer",
    "boiled three hours in the wash copper", "boiled in the copper", "steamed in the rice cooker",
    "rebel canning", "the amish way", "an untested recipe", "set in clean jars, not boiled",
    "did not boil the jars", "didn't boil", "no bath", "no water bath",
)  # fmt: skip
TOO_SHORT = (
    "water didn't cover the jars", "water did not cover the jars", "water doesn't cover the lids",
    "let the canner run dry", "canner ran dry", "jars stuck out of the water",
    "lids above the water", "tops of the jars out of the water", "jars were not under water",
    "water level too low", "water fell below the lids", "water only to the necks",
    "water wasn't boiling", "the water never really boiled", "boiled for ten minutes less",
    "a few minutes less", "5 minutes fewer", "about half the time", "half the processing time",
    "only half as long", "cut the time in half", "less time than the book says",
    "shorter than the recipe", "skipped the last ten minutes", "turned it off ten minutes early",
    "took them out a bit early", "timed by guess", "guessed the time", "timed it by feel",
    "didn't time it", "didn't watch the clock", "started timing before the boil",
    "timed from when I put the jars in", "clock started before it boiled", "altitude forgot",
    "forgot the altitude", "did not adjust for altitude", "no altitude adjustment",
)  # fmt: skip
SPOILT = (
    "mouldy", "moldy", "mould under the lid", "white mould in two jars", "bulging", "lids swollen",
    "leaking", "seeped around the lid", "smells off", "foul smell", "smelled like cheese",
    "fizzing a bit", "bubbles rising", "hissed when opened", "spurted when opened", "foaming",
    "slimy", "cracked jar", "jar cracked along the rim", "jar chipped at the rim", "gone off",
    "some spoiled", "rotten smell",
)  # fmt: skip
WEAKENED = (
    "topped up with water", "added a bit more water", "added water to stretch",
    "added water to the brine", "with more water", "more water than the recipe", "half water",
    "2 parts water", "1 to 3", "1:2 vinegar to water", "3 parts water to 1 part vinegar",
    "two cups water one cup vinegar", "diluted", "watered down", "thinned the brine",
    "stretched with water", "mostly water", "reused the brine", "brine from last year",
    "old brine from the first batch", "leftover pickle brine", "kombucha vinegar",
    "home brewed vinegar", "vinegar from our apples", "vinegar I made myself", "wine instead",
    "lemon instead of vinegar", "cleaning vinegar", "hardly any vinegar", "weak vinegar",
)  # fmt: skip
HARDLY_SWEET = (
    "sugar free, with stevia", "unsweetened", "splenda instead of sugar", "artificially sweetened",
    "xylitol", "hardly any sugar", "very little sugar", "a quarter of the sugar", "no sugar",
    "almost no sugar", "sugarless", "only a spoon of sugar",
)  # fmt: skip
OTHER_FOOD = (
    "with jalapenos and onion", "with bacon bits", "added cream", "with walnuts and cream",
    "half pumpkin", "with mashed bananas", "half elderberries", "elderberries mixed in",
    "carrots in it", "with coconut milk",
)  # fmt: skip
FINE = (
    "roasted in the oven first", "jars kept warm in the oven", "sterilised the jars in the oven",
    "jars washed in the dishwasher", "timed with the oven clock", "no oven", "oven mitts burnt",
    "next to the wax beans", "wax paper under the labels", "no vacuum sealer used",
    "lids not boiled", "not boiled over", "never went off the boil", "kept at a rolling boil",
    "timed from the boil", "started timing when it boiled", "timer rang",
    "water well over the lids", "lifted the jars out of the water after 30 minutes rest",
    "vinegar in the rinsing water for the glass", "took half the time it did last year",
    "in half the time with two of us", "blanched a minute less", "time flew", "fast work",
    "no altitude adjustment needed", "altitude checked", "adjusted for altitude",
    "canned at home in spring", "made with Tom", "dried 8 hours at 135 F", "no drafts",
    "waited 5 minutes before lifting them out",
    "every lid popped", "all the lids popped as they cooled", "waited 5 minutes, lid off",
    "lid off, waited five minutes", "a little siphoning", "slight siphoning",
    "one jar did not seal, in fridge", "one jar broke in the canner", "one didn't seal, ate it",
    "one jar cracked in the canner, thrown out", "vinegar in the canner water", "no cream",
    "without any butter", "wiped the rims with vinegar", "not watered down",
    "water from the well", "checked the rims for chips", "no cracks", "not mouldy", "no leaks",
    "threw out the mouldy ones", "smells great", "nothing spoiled", "air bubbles let out",
    "no soda", "honey from next door", "for cream teas", "served with bacon", "no bananas",
    "not smoked", "from the shop by the fish market", "sticky job", "half for Ann",
)  # fmt: skip


def _against(p: Pantry, line: str, note: str) -> list[str]:
    """What the note makes worse: sentences that are not there without it."""
    said = putup.preview(p, putup.read(p, f'{line}, note="{note}"'))
    bare = putup.preview(p, putup.read(p, line))
    new = [one for one in said.reasons if one not in bare.reasons]
    return [str(said.verdict), *new] if new or said.verdict is not bare.verdict else []


#: A record, notes that must raise nothing beside it, and notes that must.
GRID = (
    (BEANS,
     ("not peeled", "with skin", "slightly overripe", "windfalls", "held 11-12 psi throughout",
      "held 11 to 12 pounds", "with a bay leaf", "next to the broad beans"),
     (*OTHER_WAY, *TOO_SHORT, *SPOILT, "half carrots", "with corn", "from 11 to 8 psi",
      "held 9-11 psi", "a lid popped up", "every lid popped up", "one lid off", "with fish",
      "stuffed", "mashed")),
    (PICKLE,
     ("low salt", "one clove of garlic each", "with dill and chillies",
      "soaked in salt water overnight",
      "crisped in ice water", "no need to dilute", "no water added", "topped up with vinegar",
      "cider vinegar"),
     (*OTHER_WAY, *TOO_SHORT, *SPOILT, *WEAKENED, "added baking soda")),
    (JAM,
     ("used half the sugar", "a little less sugar", "honey instead of sugar", "windfalls",
      "butter to stop foam", "a knob of butter against foam", "half raspberries", "with vanilla",
      "low-sugar pectin", "with a little rum", "with rhubarb", "set well", "foam skimmed"),
     (*OTHER_WAY, *TOO_SHORT, *SPOILT, *HARDLY_SWEET, *OTHER_FOOD, "bicarbonate added")),
    (TOMATOES,
     ("bottled lemon juice in each", "with a basil leaf", "no citric acid, it was lemon"),
     (*OTHER_WAY, *TOO_SHORT, "forgot the citric acid", "ran out of citric acid",
      "added baking soda to sweeten", "bicarbonate added", "pureed it", "mashed before packing",
      "with zucchini", "windfalls")),
    (PEACHES,
     ("unsweetened", "in their own juice", "yellow peaches", "not white ones", "with cinnamon",
      "half apricots", "light syrup"),
     (*OTHER_WAY, *TOO_SHORT, *SPOILT, "white peaches", "white-fleshed", "white ones really",
      "with mangoes", "half pears and bananas", "pureed")),
    (DILLS, ("crisp", "with dill and garlic"), ("low salt", "reduced sodium")),
    (PEARS, ("Bosc", "with ginger"), ("asian pears", "nashi", "with white peaches")),
    (SAUCE, ("with cinnamon", "chunky"), ("half pumpkin puree", "with mashed bananas")),
    (SOUP, ("no fish", "with thyme"),
     ("with clams", "fish soup really", "seafood", "with shrimp in it", "with cream")),
    (SALMON, ("bone in", "not smoked"), ("smoked first", "lightly smoked before")),
    (CHICKEN, ("bone in", "for stuffing"), ("stuffed", "breaded", "smoked first")),
    (FRIDGE,
     ("half vinegar half water", "equal parts", "with dill", "no extra water"),
     ("hardly any vinegar", "mostly water", "diluted", "1 part vinegar 3 parts water",
      "cleaning vinegar", "reused the brine", "very little vinegar")),
    (KRAUT,
     ("topped up with 2.5% brine", "brine at 2.5%", "brine 5%", "salt by weight"),
     ("topped up with 1% brine", "really 1% salt")),
)  # fmt: skip


@pytest.mark.parametrize(("line", "good", "bad"), GRID)
def test_a_note_raises_what_its_words_mean_and_nothing_else(
    larder: Pantry, line: str, good: tuple[str, ...], bad: tuple[str, ...]
) -> None:
    every = good if line in (FRIDGE, KRAUT) else (*FINE, *good)
    assert {note: said for note in every if (said := _against(larder, line, note))} == {}
    assert [note for note in bad if not _against(larder, line, note)] == []


@pytest.mark.parametrize("line", [one[0] for one in GRID])
def test_without_a_note_nothing_stands_against_the_record(larder: Pantry, line: str) -> None:
    assert putup.preview(larder, putup.read(larder, line)).verdict not in (
        Verdict.UNKNOWN, Verdict.DISCARD,
    )  # fmt: skip


@pytest.mark.parametrize("said", ["1 inch", "1/2 inch", "1 1/4 inches", "2 cm"])
def test_the_room_above_the_food_is_read_with_its_unit(larder: Pantry, said: str) -> None:
    read = putup.read(larder, f"{PEACHES}, headspace={said}")
    assert not read.unread
    assert ("headspace", said) in read.process


def test_another_town_is_another_altitude_unless_the_record_has_it(larder: Pantry) -> None:
    note = "canned at my sister's in Hochfeld"
    assert _against(larder, BEANS.replace(", altitude=500ft", ""), note)
    assert not _against(larder, BEANS, note)


@pytest.mark.parametrize(
    ("typed", "is_so"),
    [
        ("mould", True), ("some mould", True), ("no mould", False), ("not a trace of mould", False),
        ("without any mould", False), ("mould free", False), ("mould was not seen", False),
        ("no lids flat and mould", True), ("no rot or mould", False), ("mould, no mould", True),
    ],
)  # fmt: skip
def test_a_thing_that_is_denied_is_not_said(typed: str, is_so: bool) -> None:
    assert affirmed(typed, r"\bmould") is is_so


def test_a_not_in_haste_is_a_not() -> None:
    assert spelled_not("didn't, wasnt, couldn’t") == "did not, was not, could not"
    assert spelled_not("want a font") == "want a font"
