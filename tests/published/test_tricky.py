"""Sixty foods that look milder than they are: what a household types, and the mildest answer that
published advice allows. An answer may be stricter; it may be a refusal or a question.

`no` is never offered as fit: refused, unknown and not usable, or asked about. `N days` is fit no
later than so many days after it was made. `N days best` has a best-by of that day at the latest.
Sources are typed beside each; "seen" is a page that was read or a copy of it,
"recalled" was not, and stands only where it is the stricter choice.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

import pytest

from pantry_tui.core.safety.caution import CAUTION, COOK_IT
from pantry_tui.core.words import Verdict
from pantry_tui.errors import PantryError
from pantry_tui.services.batchwork.putup import preview, read
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places

MADE = date(2026, 11, 25)
FIT = (Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST)

TABLE = """
# NCHFP, pickled eggs (seen): never canned, never out of the cold
pickled eggs, vinegar pickle, larder | no
pickled eggs, fridge pickle, fridge | 92 days
pickled quail eggs, vinegar pickle, fridge | 92 days
# Michigan State University Extension, 01600585 (seen): fish in vinegar, four weeks cold
rollmops, vinegar pickle, larder | no
rollmops, vinegar pickle, fridge | 28 days
pickled herring, fridge pickle, fridge | 28 days
# raw cured fish: no published home figure; Alaska, Peninsula Clarion 2001 (seen): freeze it first
gravlax, salted, fridge | no
gravlax, vinegar pickle, fridge | no
gravadlax, fridge pickle, fridge | no
gravad lax, cold smoked, fridge | no
matjes, vinegar pickle, fridge | no
salted salmon, fridge | no
ceviche, fresh, fridge | 1 days
# UK Food Standards Agency, ten days; Michigan R 285.569.8 and Maine chapter 359, salt (seen)
smoked salmon, cold smoked, fridge | 10 days
smoked salmon, cold smoked, fridge, vacuum=yes | 5 days
salmon, cold smoked, fridge, salt=1% | no
salmon, cold smoked, larder | no
smoked mackerel, vinegar pickle, fridge | no
# oysters: no ferment is published of fish (house reading)
oyster kimchi, lactic ferment, fridge | no
fish sauce, lactic ferment, larder | no
# meat in its fat: no tested home process (recalled, NCHFP)
duck confit, rendered fat, larder | no
duck confit, rendered fat, fridge | no
rillettes, rendered fat, fridge | no
pate, pressure canned, larder | no
liver pate, cooked meal, fridge | 3 days
potted meat, cooked meal, larder | no
# CSU, UC, MSU on food in oil (seen): cold, four days; herbs and pesto two; never out
pesto, in oil, larder | no
pesto, in oil, fridge | 2 days
pesto, pressure canned, larder | no
pesto, boiling-water canned, larder | no
garlic confit, in oil, fridge | 4 days
garlic confit, in oil, larder | no
chilli oil, in oil, larder | no
rosemary oil, in oil, fridge | 2 days
tapenade, in oil, fridge | 4 days
sun-dried tomatoes, in oil, larder | no
feta, in oil, fridge | no
labneh, in oil, larder | no
# Alaska FNH-00221 (seen): fish without air; fresh fish a day
cod, fresh, fridge, vacuum=yes | 1 days
cod, thawed, fridge, vacuum=yes | no
# dairy, egg, dips: nothing published for home-made ones
aioli, fresh, fridge | no
mayonnaise, fresh, larder | no
hummus, fresh, fridge | no
hummus, pressure canned, larder | no
raw milk cheese, fresh, fridge | no
fresh salsa, fresh, fridge | no
lemon curd, jam, larder | no
lemon curd, boiling-water canned, larder | no
almond milk, fresh, fridge | no
cold brew, fresh, fridge | no
# crops in honey or syrup: no publication keeps them so (house.md, food shut off from the air)
garlic honey, sugar preserve, larder | no
fermented garlic honey, lactic ferment, larder | no
infused honey, sugar preserve, larder | no
elderberry syrup, sugar preserve, larder | no
elderberry syrup, boiling-water canned, larder | no
elderberry jelly, jam, larder | no
# sprouts, cut melon, cut greens: FDA, cold within two hours (seen); no number of days
bean sprouts, fresh, larder | no
alfalfa sprouts, lactic ferment, fridge | no
melon chunks, fresh, larder | no
melon chunks, fresh, fridge | no
# USDA FSIS and foodsafety.gov (seen): cooked food three days, rice a day, never out two hours
baked potatoes, cooked meal, larder | no
baked potatoes, cooked meal, fridge | 3 days
cooked beans, cooked meal, larder | no
cooked lentils, dried, larder | no
cooked rice, cooked meal, fridge | 1 days
chicken stock, cooked meal, larder | no
# NCHFP, Kansas State, Penn State (seen): no tested process: thick, starchy, dairy
pumpkin puree, pressure canned, larder | no
mashed squash, pressure canned, larder | no
pumpkin butter, jam, larder | no
cream of mushroom soup, pressure canned, larder | no
refried beans, pressure canned, larder | no
rice soup, pressure canned, larder | no
gravy, pressure canned, larder | no
milk, pressure canned, larder | no
butter, pressure canned, larder | no
banana bread, boiling-water canned, larder | no
broccoli, pressure canned, larder | no
courgettes, pressure canned, larder | no
# USDA AIB 539 (seen): low-acid food never in boiling water
green beans, boiling-water canned, larder | no
sweetcorn, boiling-water canned, larder | no
silverbeet, boiling-water canned, larder | no
kumara, boiling-water canned, larder | no
rockmelon, boiling-water canned, larder | no
white peaches, boiling-water canned, larder | no
chicken stock, boiling-water canned, larder | no
# Colorado State University Extension (seen): refrigerator pickles two months
refrigerator pickles, vinegar pickle, larder | no
refrigerator pickles, vinegar pickle, fridge | 61 days best
horseradish sauce, vinegar pickle, larder | no
mushrooms, vinegar pickle, larder | no
garlic, vinegar pickle, larder | no
# USDA FSIS (seen): eggs in lime or water glass are not advised
limed eggs, lime-kept, larder | no
eggs, fresh, larder | no
# University of Wyoming (seen): home jerky two weeks out
jerky, dried, larder | 14 days
biltong, dried, larder | no
bacon jam, jam, larder | no
onion jam, jam, larder | no
# University of Wisconsin Extension and University of Missouri Extension HES157 (seen): dry canning
rice, bought in, oven canned, larder | no
pecans, dried, oven canned, larder | no
dry beans, dried, oven canned, larder | no
dried apples, oven canned, larder | no
flour, bought in, process=dry canned, larder | no
# USDA AIB 539 (seen): a jar that was filled hot and not processed
honey, bought in, open kettle, larder | no
sauerkraut, lactic ferment, open kettle, larder | no
# Kansas State Research and Extension, You Asked It (seen): tomatoes were tested peeled; root crops
# from memory (National Center for Home Food Preservation)
tomatoes with skins, boiling-water canned, minutes=85, acid=lemon, larder | no
unpeeled tomatoes, boiling-water canned, minutes=85, acid=lemon, larder | no
potatoes with skin, pressure canned, minutes=40, psi=11, larder | no
potatoes skin on, pressure canned, minutes=40, psi=11, larder | no
# University of California ANR, Help Desk 2023 (seen): overripe tomatoes are not canned
overripe tomatoes, boiling-water canned, minutes=85, acid=lemon, larder | no
over-ripe tomatoes, pressure canned, minutes=40, psi=11, acid=lemon, larder | no
# USDA AIB 539 (seen): pumpkins in cubes, never mashed; dry beans are boiled before they are packed
smooth pumpkin, pressure canned, minutes=55, psi=11, larder | no
raw kidney beans, pressure canned, minutes=75, psi=11, larder | no
uncooked dry beans, pressure canned, minutes=75, psi=11, larder | no
# the same said in a note, or in words that nothing else reads (USDA AIB 539, seen)
peaches, boiling-water canned, minutes=30, pack=hot, dishwasher, larder | no
peaches, boiling-water canned, minutes=30, pack=hot, larder, note=done in the dishwasher | no
strawberry jam, jam, larder, note=turned upside down | no
strawberry jam, jam, paraffin, larder | no
tomatoes, boiling-water canned, minutes=85, larder, note=no lemon added | no
sauerkraut, lactic ferment, fridge, note=forgot the salt | no
rice, bought in, larder, note=oven canned | no
# no ferment is published without salt (CSU, Oregon State, NCHFP; seen)
sauerkraut no salt, lactic ferment, fridge | no
unsalted cucumbers, lactic ferment, fridge | no
kimchi without salt, lactic ferment, fridge | no
# USDA FSIS, shell eggs (recalled): never frozen in the shell
eggs in shell, frozen, freezer | no
duck eggs in the shell, frozen, freezer | no
# University of Minnesota Extension 2020, University of Illinois Extension (seen): patulin in drops
windfall apples, cellar-stored, cellar | no
windfall apples, boiling-water canned, minutes=20, larder | no
windfall apple juice, fresh, fridge | no
# USDA FSIS, Turkey Basics: Stuffing (seen): a stuffed raw bird goes into the oven at once
stuffed turkey, frozen, freezer | no
raw stuffed turkey, fresh, fridge | no
stuffed chicken, frozen, freezer | no
# UK National Health Service (quoted): cooked rice within a day, whatever lies beside it
rice pudding, cooked meal, fridge | 1 days
stuffed peppers, cooked meal, fridge | 1 days
dolma, cooked meal, fridge | 1 days
burritos, cooked meal, fridge | 1 days
# Food Standards Australia New Zealand 2017 (seen): cassava and bamboo shoots are cooked through
cassava, fridge pickle, fridge | no
bamboo shoots, vinegar pickle, fridge | no
# US FDA, guidance of 2007 on low-acid juices (seen): botulism in carrot juice. US CDC, MMWR of 1984
# (seen): raw elderberry juice poisons
carrot juice, fresh, fridge | no
watermelon juice, fresh, fridge | no
fresh ginger juice, fresh, fridge | no
elderberry juice, fresh, fridge | no
elderberry cordial, fresh, fridge | no
vegetable juice, fresh, fridge | no
"""


def rows() -> Iterator[tuple[str, str]]:
    for line in TABLE.strip().splitlines():
        if not line.startswith("#"):
            typed, _, allowed = line.rpartition(" | ")
            yield typed, allowed


@pytest.fixture
def kitchen(larder: Pantry) -> Pantry:
    places.add(larder, "icebox", "freezer")
    return larder


@pytest.mark.parametrize(("typed", "allowed"), list(rows()))
def test_never_milder_than_published(kitchen: Pantry, typed: str, allowed: str) -> None:
    try:
        made = preview(kitchen, read(kitchen, f"1 jar {typed}"))
    except PantryError:
        return  # refused, or asked about
    if allowed == "no":
        assert made.verdict not in FIT, made.reasons
        in_progress = made.verdict is Verdict.NEEDS_CARE and made.reasons[0].startswith("Still in")
        assert CAUTION in made.cautions or in_progress, made.reasons
        return
    number, _, kind = allowed.partition(" ")
    last = MADE + timedelta(days=int(number))
    shown = made.best_by if kind == "days best" else made.discard_after
    assert shown is not None or made.verdict not in FIT
    assert shown is None or shown <= last, (shown, made.reasons)


@pytest.mark.parametrize(
    "typed",
    ["kidney beans, dried, larder", "cassava, dried, larder", "elderberries, frozen, freezer",
     "elderberries, dried, larder", "bamboo shoots, fresh, fridge", "taro, frozen, freezer"],
)  # fmt: skip
def test_what_poisons_raw_says_so(kitchen: Pantry, typed: str) -> None:
    # US FDA, Bad Bug Book (beans); US CDC, MMWR of 1984 (elderberries); FSANZ 2017
    assert COOK_IT in preview(kitchen, read(kitchen, f"1 bag {typed}")).cautions


@pytest.mark.parametrize(
    "typed",
    ["kidney beans, pressure canned, larder", "elderberry jelly, jam, larder",
     "snap beans, frozen, freezer", "kidney beans, cooked meal, fridge"],
)  # fmt: skip
def test_what_was_cooked_or_never_poisons_says_nothing_of_it(kitchen: Pantry, typed: str) -> None:
    assert COOK_IT not in preview(kitchen, read(kitchen, f"1 bag {typed}")).cautions


@pytest.mark.parametrize(
    "note",
    [
        "oven roasted",
        "electric stove",
        "instant pectin",
        "waxed discs",
        "no salt",
        "dried in the sun",
    ],
)
def test_a_note_that_says_nothing_of_the_process_changes_nothing(
    kitchen: Pantry, note: str
) -> None:
    line = "6 half-pint jars strawberry jam, jam, larder"
    made = read(kitchen, f"{line}, note={note}")
    assert preview(kitchen, made).verdict is preview(kitchen, read(kitchen, line)).verdict
    assert made.process == ()


def test_the_table_holds_enough() -> None:
    foods = {typed.partition(",")[0] for typed, _ in rows()}
    assert len(foods) >= 60
