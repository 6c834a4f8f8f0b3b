"""Notes of kept food that is not canned, by what they say of it: out of the shell, with plants in
oil, not smoked through, out of the cold, damp, working. What publications would doubt is never
silent, and what is well raises nothing."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import judged_otherwise, quoted, tried, tried_each

EGGS = "12 eggs, fresh, fridge"
OIL = "2 bottles olive oil, bought in, larder"
HONEY = "2 jars honey, larder"
TROUT = "2 packs trout, hot smoked, fridge"
HAM = "2 packs ham, hot smoked, fridge"
SOUP = "2 tubs chicken soup, cooked meal, fridge"
MILK = "1 carton milk, bought in, fridge"
BUTTER = "1 lb butter, bought in, fridge"
CHICKEN = "1 lb chicken breasts, fresh, fridge"
APPLES = "2 jars apples, dried, larder"
JAM = "3 half-pint jars strawberry jam, jam, larder, minutes=10"
KRAUT = "1 crock sauerkraut 10 lb, lactic ferment, cellar, salt=2.25%"

BAD = {
    EGGS: (
        "beaten", "beaten, whites only", "out of the shell", "separated, whites only", "peeled",
        "whites", "yolks", "just the yolks", "6 yolks", "leftover whites", "whites in a jar",
        "yolks and whites apart", "whisked with milk", "poured into a tub", "shells off",
        "a bowl of yolks", "scrambled ready", "mixed with milk",
    ),
    "6 quail eggs, fresh, fridge": ("beaten", "whites only"),
    OIL: (
        "garlic put in", "has garlic", "smashed garlic", "chilli and garlic put in",
        "rosemary in the bottle", "I put a clove in", "contains sun-dried tomatoes",
        "sage leaves inside", "three fat cloves in it", "put some basil to it", "crushed garlic",
        "popped in two chillies", "contains herbs", "a clove in each bottle", "has a bay leaf",
        "lemon peel in the jar", "bruised sage", "garlic in",
    ),
    HONEY: (
        "has garlic", "ginger put in", "smashed garlic", "a clove of garlic put in", "frothing",
        "bubbling", "fermenting", "alcohol smell", "smells of wine",
    ),
    TROUT: (
        "smoker went out halfway", "still raw in the middle", "cold smoked only", "fire died",
        "left in the smoker overnight", "forgotten in the smoker all night", "not cooked through",
        "gas ran out halfway", "coals went out", "fire died after an hour", "smoker broke down",
        "ran out of gas", "lost the fire", "fire too low the whole time", "only warm smoked",
        "never reached temperature", "flesh still translucent", "half done", "not fully cooked",
        "not done in the middle", "smoker kept going out", "underdone",
        "raw inside", "never got hot", "heat failed",
    ),
    HAM: (
        "smoker went out halfway", "element failed", "raw at the bone", "cold smoked",
        "left in the smoker overnight",
    ),
    SOUP: ("left in the oven overnight", "stood in the car two hours"),
    MILK: (
        "left on the doorstep until noon in the sun", "stood in the car two hours",
        "stood on the step all morning", "left in a hot car for two hours",
        "left on the patio in the sun", "out on the counter all summer",
    ),
    BUTTER: (
        "left on the doorstep until noon in the sun", "out on the counter all summer",
        "left on the counter for 3 days", "stood on the table all week",
    ),
    CHICKEN: (
        "left on the doorstep until noon", "stood in the car two hours", "in the sun for two hours",
        "out on the counter all summer",
    ),
    APPLES: (
        "sticky and soft, not dry in the middle", "beads of water on the lid", "still moist",
        "condensation inside", "water drops under the lid", "moisture on the lid", "tacky",
        "not dry in places", "not fully dry in the centre", "dew inside the jar",
        "drops on the inside of the lid", "lids wet",
        "centre wet", "still squidgy", "juice when squeezed", "not crisp anymore",
    ),
    JAM: (
        "alcohol smell", "smells of wine", "frothing", "wine smell", "boozy", "alcoholic",
        "yeast smell", "a whiff of alcohol", "tastes of alcohol",
        "tastes winey", "fermented taste", "fizzy", "tingles on the tongue",
    ),
    KRAUT: (
        "used half as much salt", "a quarter of the salt", "less salt than the recipe says",
        "black spots",
    ),
}  # fmt: skip

GOOD = {
    EGGS: (
        "white ones", "brown shells", "for beating", "for whipped whites on sunday",
        "from the neighbour's hens", "orange yolks", "two with double yolks",
        "two yolks in one", "whites whip up well", "whites and browns",
        "to be beaten", "not beaten", "for the yolks", "separated from the shop ones",
        "shells are thick", "yolks stand high",
    ),
    OIL: (
        "for the garlic", "good with rosemary", "from the co-op", "has notes of tomato leaf",
        "stands next to the garlic", "has a taste of herbs", "crushed olives, first press",
        "put by the onions", "contains no garlic", "no herbs put in", "put up on the top shelf",
        "from olives in the valley", "in the green bottle", "holds a litre", "has a herb smell",
    ),
    HONEY: (
        "got it at the herb fair", "put in small jars", "froth skimmed off",
        "has a thyme taste", "from the herb garden", "set in the jar",
    ),
    TROUT: (
        "over alder", "smoked low and slow", "smoked overnight over alder", "fire kept low",
        "fire never went out", "cooked through", "let the fire die down after", "oak fire",
        "never smoked trout before", "never done it better", "half of it for Jo",
        "cold smoked first and then hot", "fire went out after they were done",
        "left in the smoker overnight at 180 F",
    ),
    HAM: ("over apple wood", "smoked all day", "pink inside"),
    MILK: (
        "from the farm gate", "in the door of the fridge", "10 minutes in the car",
        "in the car in a cool box two hours", "stood in the fridge two hours",
    ),
    BUTTER: (
        "from the farm gate", "in the door of the fridge", "summer butter",
        "left on the counter for an hour",
    ),
    CHICKEN: ("from the farm gate", "20 minutes in the car"),
    APPLES: (
        "crisp", "leathery", "sweet and soft", "chewy", "not dried in the sun", "dry in the middle",
        "no moisture", "absorbs moisture in the jar", "no drops on the lid",
    ),
    JAM: (
        "a little foam skimmed off while cooking", "with a splash of wine", "skimmed the froth",
        "frothing in the pan", "no alcohol smell", "smells of summer",
    ),
    KRAUT: ("caraway", "half red cabbage", "used fine salt", "quarter cabbages, salt on top"),
    "1 bottle wine, bought in, larder": ("alcohol smell",),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_is_bad_has_a_word(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    assert {note for note, one in found.items() if one.verdict in _WELL} == set()


_WELL = (Verdict.SOUND, Verdict.EAT_SOON)


@pytest.mark.parametrize("line", GOOD)
def test_what_is_well_raises_nothing(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, GOOD[line])
    assert judged_otherwise(chilled, line, found) == set()
    assert quoted(found) == set()


def test_eggs_out_of_the_shell_have_none_of_the_weeks_of_whole_ones(chilled: Pantry) -> None:
    """US federal storage times of 2018: raw whites and yolks two to four days cold, and eggs in the
    shell weeks."""
    assert tried(chilled, EGGS).discard_after == chilled.today + timedelta(weeks=5)
    beaten = tried(chilled, EGGS, "beaten")
    assert beaten.verdict is Verdict.UNKNOWN
    assert any("2 to 4 days" in one for one in beaten.reasons)
    # A cooked egg is peeled, and has the days of cooked egg.
    boiled = tried(chilled, EGGS, "hard boiled, peeled")
    assert boiled.discard_after == tried(chilled, EGGS, "hard boiled").discard_after


@pytest.mark.parametrize(
    ("line", "notes"),
    [
        (
            SOUP,
            (
                "5 days old", "four days old", "a week old", "cooked three days ago",
                "made last sunday", "is 5 days old", "a couple of days old", "made last week",
                "from last week", "opened a week ago", "made the day before yesterday",
                "it is from monday", "made a few days ago", "cooked on the 15th",
            ),
        ),
        (MILK, ("5 days old", "bought a week ago", "opened a week ago")),
        (CHICKEN, ("4 days old", "bought three days ago", "got it on yesterday")),
        (f"{MILK}, open", ("opened a week ago", "opened yesterday")),
        (TROUT, ("smoked two weeks ago",)),
    ],
)  # fmt: skip
def test_a_note_with_an_older_day_leaves_no_last_day(
    chilled: Pantry, line: str, notes: tuple[str, ...]
) -> None:
    assert tried(chilled, line).verdict in _WELL
    found = tried_each(chilled, line, notes)
    assert quoted(found) == set(notes)
    assert {one.verdict for one in found.values()} == {Verdict.UNKNOWN}
    assert {one.note_aside for one in found.values()} == {""}


@pytest.mark.parametrize(
    ("line", "notes"),
    [
        (
            SOUP,
            (
                "for the kids", "for 5 days", "grandma's way", "old recipe", "made today",
                "2 year old's favourite", "from a 3 year old hen", "cooked this morning",
                "made on sundays", "eat within 3 days", "from a 5 days old loaf",
                "not made yesterday", "to be opened on sunday", "for sunday", "from sunday market",
            ),
        ),
        (f"{SOUP}, 3 days ago", ("3 days old", "cooked three days ago", "a couple of days old")),
        (CHICKEN, ("killed yesterday", "bought today", "for sunday")),
        (f"{MILK}, open", ("opened today",)),
        ("2 boxes chicken soup, cooked meal, freezer", ("2 days old",)),
        ("10 lb carrots, cellar-stored, cellar", ("5 days old",)),
    ],
)  # fmt: skip
def test_a_note_with_no_older_day_changes_none(
    chilled: Pantry, line: str, notes: tuple[str, ...]
) -> None:
    found = tried_each(chilled, line, notes)
    assert judged_otherwise(chilled, line, found) == set()
    assert quoted(found) == set()


def test_the_day_of_a_note_counts_from_when_it_was_written(chilled: Pantry) -> None:
    code = putup.put_up(chilled, putup.read(chilled, f"{SOUP}, 2 days ago")).code
    correct(chilled, code, note="2 days old")
    (batch,) = chilled.stock.batches.values()
    assert chilled.judge(chilled.containers_of(batch)[0]).verdict in _WELL
    correct(chilled, code, note="3 days old")
    (batch,) = chilled.stock.batches.values()
    judged = chilled.judge(chilled.containers_of(batch)[0])
    assert judged.verdict is Verdict.UNKNOWN
    assert not judged.usable
    assert f"`correct {code}`" in judged.reasons[0]
