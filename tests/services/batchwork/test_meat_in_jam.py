"""Animal food, or what is low in acid, in what acid and sugar keep: no place makes that good, told
by a part of an older batch or by a note."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock import places, view
from tests.services.batchwork.noting import tried_each

JAM = "2 half-pint jars strawberry jam, fridge"
SOUR = (
    JAM,
    "2 pint boxes strawberry freezer jam, fridge",
    "2 pint jars cucumbers, fridge pickle, fridge",
    "2 pint jars dill pickles, vinegar pickle, fridge",
    "2 bottles raspberry vinegar, flavoured vinegar, fridge",
)
KRAUT = "1 crock cabbages, lactic ferment, cellar, salt=2.5%"
ANIMAL = (
    "4 lb trout, hot smoked, fridge",
    "4 lb trout, fresh, fridge",
    "4 lb beef, fresh, fridge",
    "4 lb eggs, fresh, fridge",
    "4 lb milk, fresh, fridge",
    "4 lb shrimp, frozen, chest",
)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "cellar", "cellar")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> PutUp:
    return putup.put_up(p, putup.read(p, line))


def is_offered(p: Pantry, code: str) -> bool:
    return next(row.usable for row in view.due(p) if row.code == code)


@pytest.mark.parametrize("line", SOUR)
@pytest.mark.parametrize("part", ANIMAL)
def test_out_of_an_older_batch(p: Pantry, line: str, part: str) -> None:
    code = up(p, part).code
    made = up(p, f"{line}, from 1 lb of {code}")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)
    p.today += timedelta(days=3)
    assert not is_offered(p, made.code)


@pytest.mark.parametrize("part", ["potatoes", "carrots", "garlic", "mushrooms"])
@pytest.mark.parametrize("line", [JAM, "2 pint boxes strawberry freezer jam, fridge"])
def test_what_is_low_in_acid_takes_a_jam_out_of_its_figures(
    p: Pantry, line: str, part: str
) -> None:
    made = up(p, f"{line}, from 1 lb of {up(p, f'4 lb {part}, fresh, fridge').code}")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)


@pytest.mark.parametrize("line", [*SOUR, KRAUT])
@pytest.mark.parametrize(
    "note",
    [
        "with smoked trout in it",
        "added bits of smoked haddock",
        "kippers and onions stirred in the jar",
        "with bacon",
        "hard boiled eggs in it",
        "with goose meat mixed in",
    ],
)
def test_told_by_a_note(p: Pantry, line: str, note: str) -> None:
    made = up(p, f"{line}, note={note}")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)


def test_a_salad_crop_in_a_jam_is_low_in_acid(p: Pantry) -> None:
    """In a pickle it is none of the animals."""
    note = "note=with lamb's lettuce"
    assert up(p, f"2 pint jars cucumbers, fridge pickle, fridge, {note}").verdict is Verdict.SOUND
    assert up(p, f"{JAM}, {note}").verdict is Verdict.UNKNOWN


@pytest.mark.parametrize("line", [JAM, "2 pint jars cucumbers, fridge pickle, fridge"])
@pytest.mark.parametrize(
    "note",
    [
        "goes well with ham",
        "for the Easter ham",
        "bought with the eggs",
        "served with smoked trout",
        "with beef tomatoes",
        "with a turkey baster",
        "with a knob of butter",
        "no fish in it",
        "without ham",
        "kept beside the ham",
        "eat with cheese",
        "tastes like ham",
        "with crab apples",
        "from the fish crate",
        "the cat got the trout",
        "with Aunt Hen",
        "with cream of tartar",
    ],
)
def test_what_only_names_an_animal_stays_quiet(p: Pantry, line: str, note: str) -> None:
    assert up(p, f"{line}, note={note}").verdict is Verdict.SOUND


@pytest.mark.parametrize("note", ["with fish sauce", "with salted shrimp", "with dried shrimp"])
def test_what_seasons_a_ferment_is_none(p: Pantry, note: str) -> None:
    assert up(p, f"{KRAUT}, note={note}").verdict is not Verdict.UNKNOWN


@pytest.mark.parametrize(
    ("line", "part"),
    [
        (JAM, "2 bottles lemon juice, bought in, larder"),
        (JAM, "4 lb plums, fresh, fridge"),
        ("2 pint jars eggs, fridge pickle, fridge", "4 lb eggs, fresh, fridge"),
        ("2 pint jars herring, fridge pickle, fridge", "4 lb herring, fresh, fridge"),
        ("2 pint jars dill pickles, vinegar pickle, fridge", "4 lb garlic, fresh, fridge"),
        ("2 bottles raspberry vinegar, flavoured vinegar, fridge", "4 lb plums, fresh, fridge"),
    ],
)
def test_what_belongs_into_it_is_none(p: Pantry, line: str, part: str) -> None:
    made = up(p, f"{line}, from half of {up(p, part).code}")
    assert made.verdict in (Verdict.SOUND, Verdict.EAT_SOON)


@pytest.mark.parametrize(
    ("line", "part"),
    [
        ("1 bag tomatoes, dried, larder", "4 lb beef, fresh, fridge"),
        ("1 bag tomatoes, dried, larder", "4 packs prosciutto, bought in, fridge"),
        ("1 bag strawberries, freeze-dried, larder", "4 lb ground beef, frozen, chest"),
        ("1 bag beef, dried, larder", "4 lb trout, hot smoked, fridge"),
        ("1 pack trout, hot smoked, fridge", "4 lb ground beef, frozen, chest"),
        ("1 bag mushrooms, dried, larder", "4 pint tubs chicken soup, frozen, chest"),
    ],
)
def test_no_name_of_another_kind_dries_or_smokes_meat_and_fish(
    p: Pantry, line: str, part: str
) -> None:
    made = up(p, f"{line}, from {up(p, part).code}/1")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)


@pytest.mark.parametrize(
    ("line", "part"),
    [
        ("1 bag beef, dried, fridge", "4 lb ground beef, frozen, chest"),
        ("1 bag jerky, dried, fridge", "4 lb beef, fresh, fridge"),
        ("1 pack salmon, hot smoked, fridge", "4 lb trout, fresh, fridge"),
        ("1 bag tomatoes, dried, larder", "4 lb tomatoes, fresh, fridge"),
        ("1 bag fruit leather, dried, larder", "4 lb plums, fresh, fridge"),
    ],
)
def test_of_its_own_kind_it_is_dried_and_smoked(p: Pantry, line: str, part: str) -> None:
    made = up(p, f"{line}, from {up(p, part).code}/1")
    assert made.verdict in (Verdict.SOUND, Verdict.EAT_SOON)


#: Meat by its own name, and crops that are low in acid, by whatever words.
NAMED = {
    "2 half-pint jars strawberry jam, fridge": (
        "meat in it", "foie gras", "speck", "lardons added", "kidneys", "with peppers and corn",
        "with carrots", "mit Speck", "some bacon", "ham", "minced meat added", "tripe",
        "with black pudding", "scraps of rabbit in it", "with sweet corn", "with jalapeños",
        "with courgettes added", "with diced beets in it", "added green beans",
    ),
    "2 pint boxes strawberry freezer jam, freezer": (
        "with peppers and corn", "with carrots", "meat in it", "kidneys",
    ),
    "2 pint jars cucumbers, fridge pickle, fridge": (
        "meat in it", "foie gras", "speck", "lardons added", "kidneys", "pancetta", "wurst",
        "chicken livers",
    ),
    "2 half-pint jars strawberry jam, boiling-water canned, larder, minutes=10": (
        "meat in it", "foie gras",
    ),
    "1 pint jar cucumber relish, vinegar pickle, fridge": (
        "meat in it", "kidneys", "speck",
    ),
    "2 half-pint jars plum jam, fridge": (
        "a bit of duck fat and duck meat in it", "bacon jam style, with crispy bacon",
        "Schinken drin", "diced ham stirred through", "with chicken livers",
        "minced beef in there", "with sweetcorn kernels", "roasted pumpkin in it",
        "plus beetroot", "with aubergine", "mit Zwiebeln", "with mushrooms", "leeks in it",
    ),
    "2 pint boxes raspberry freezer jam, freezer": (
        "with shredded zucchini", "carrots added", "bits of bacon",
    ),
    "2 pint jars onions, fridge pickle, fridge": (
        "pancetta bits in there", "prosciutto", "with bits of corned beef", "kidney pieces",
        "duck gizzards in it", "oxtail",
    ),
}  # fmt: skip
#: They only name it, or are of the spoon.
BESIDE = {
    "2 half-pint jars strawberry jam, fridge": (
        "no meat", "not with meat", "for meat", "with kidney-shaped label", "goes with foie gras",
        "the meat of the fruit", "with ginger", "with a pinch of pepper", "with black pepper",
        "with a little chilli", "with garlic press", "heart label", "for Heart Day",
        "good with sausages", "next to the carrots in the fridge", "served with kidneys",
        "with lemon", "with rhubarb", "with mint", "with vanilla", "with raspberries",
        "carrot cake filling", "plant based, no gelatine", "from the corner bed by the beans",
        "picked with the peas", "with a knob of butter", "for corn bread", "with cornflour",
        "sweetcorn season", "lots of corn in the garden this year", "goose", "Aunt Bean",
        "pepper mill broke",
    ),
    "2 pint boxes strawberry freezer jam, freezer": (
        "with ginger", "with mint", "with rhubarb",
    ),
    "2 pint jars cucumbers, fridge pickle, fridge": (
        "kidney beans", "with kidney beans", "with onions and garlic", "with carrots and peppers",
        "for ham sandwiches",
    ),
    "2 half-pint jars hot pepper jelly, fridge": (
        "with peppers",
    ),
    "2 half-pint jars plum jam, fridge": (
        "for duck", "lovely with liver pate", "for the ham glaze", "spread for the kidney pie",
        "stir into beef stew", "for roast pork", "with cinnamon", "with orange zest",
        "with a splash of rum", "with almonds", "picked by Mr Bacon", "from Corn Street",
        "with star anise", "with a vanilla pod", "with honey", "with cocoa",
        "with lemon juice and sugar", "mushroom label", "no meat, no gelatin", "with walnuts",
        "with rose petals", "with elderberries", "from Aunt Pepper", "for the turkey dinner",
    ),
    "2 pint boxes raspberry freezer jam, freezer": (
        "with sugar and pectin", "with lime",
    ),
    "2 pint jars onions, fridge pickle, fridge": (
        "for liver and onions", "with kidney bean salad", "goes with steak", "with mustard seeds",
        "with a bay leaf", "with jalapeños", "with beetroot",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", NAMED)
def test_named_alone_or_in_it(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, NAMED[line])
    assert {note for note, one in found.items() if one.verdict is not Verdict.UNKNOWN} == set()


@pytest.mark.parametrize("line", BESIDE)
def test_named_beside_it(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BESIDE[line])
    assert {note for note, one in found.items() if one.verdict is not Verdict.SOUND} == set()
