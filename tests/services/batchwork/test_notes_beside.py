"""What a note says beside the food, in words that a fault has as well, and the fault in those."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import judged_otherwise, quoted, tried_each

BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
TOMATOES = "3 pint jars crushed tomatoes, boiling-water canned, larder, minutes=40 acid=lemon"
CHICKEN = "3 packs chicken breast, frozen, freezer"
EGGS = "12 eggs, fresh, fridge"
SOUP = "2 boxes pea soup, cooked meal, fridge"
CHEESE = "1 piece blue cheese, bought in, fridge"
FLOUR = "5 lb flour, bought in, larder"

QUIET = {
    BEANS: (
        "left hand shelf, behind the flour", "behind the rice", "next to the butter dish shelf",
        "top shelf to the left of the big flour", "in front of the cheese shelf",
        "pressure went up to 13, took it down slowly to 11", "pressure rose to 12.5 for a bit",
        "one jar unsealed, eaten the same day", "old Mrs Rotten's seed", "from Mr Mould",
        "the mouse jar, after the picture on it", "sticker of a mouse", "on the worm-eaten shelf",
        "kept for Ann, she is ill",
    ),
    TOMATOES: ("one jar unsealed, eaten the same day", "behind the rice"),
    CHICKEN: (
        "power was out for two hours, stayed frozen", "power off for 3 hours, all still rock hard",
        "thawed ones are gone, these still rock hard", "half thawed ones used up",
        "softened ones eaten",
    ),
    EGGS: ("for cracking on pancake day", "crack them into the cake", "crack 2 into the batter"),
    SOUP: (
        "keep for Ann, she is ill", "save it for mum, she is poorly with a cold",
        "left over from dinner, in the fridge within the hour",
        "left over from lunch, straight into the fridge",
    ),
    CHEESE: ("blue mould as it should be", "blue veins where it should be"),
    FLOUR: ("for the moth-eaten tin",),
}  # fmt: skip
SAID = {
    BEANS: (
        "packed with butter", "a bit of flour in it", "rice in each jar", "under butter",
        "next to the leaking jar", "behind the mouldy ones", "beside the jar that leaked",
        "pressure went up to 13, took it down slowly to 9", "went up to 13, then fell to 8",
        "pressure only went up to 8", "two jars unsealed, eaten the same day", "one jar unsealed",
        "Mrs Miller said rotten", "rotten, Mrs Miller's seed", "the mouse jar",
        "the mouse jar, after the mouse that was in it", "a mouse ate the sticker",
        "Ann was ill after it", "gave some to Ann, she is ill", "kept for Ann, she ate it, is ill",
    ),
    TOMATOES: ("one jar unsealed",),
    CHICKEN: (
        "power was out for two hours", "power was out for two hours, a bit soft",
        "power was out for two days, stayed frozen", "power out for 2 hours, most stayed frozen",
        "power out for 2 hours, stayed frozen but some dripped",
        "thawed ones put back", "thawed ones are gone off", "these thawed and are soft still",
    ),
    EGGS: ("two cracked", "crack in one", "crack them into a jar", "cracked into a bowl"),
    SOUP: (
        "she is ill", "left over from dinner", "left over from dinner, stood till midnight",
        "on the side next to the kettle overnight", "kept for Ann, she was ill after it",
    ),
    CHEESE: ("green mould on it", "blue mould", "blue mould on the crackers too"),
    FLOUR: ("moth-eaten", "moths in the tin", "from the moth-eaten sack"),
}  # fmt: skip


@pytest.mark.parametrize("line", QUIET)
def test_what_is_said_beside_the_food_says_nothing_of_it(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, QUIET[line])
    assert quoted(found) == set()
    assert judged_otherwise(chilled, line, found) == set()


@pytest.mark.parametrize("line", SAID)
def test_the_fault_in_the_same_words_is_heard(chilled: Pantry, line: str) -> None:
    assert quoted(tried_each(chilled, line, SAID[line])) == set(SAID[line])
