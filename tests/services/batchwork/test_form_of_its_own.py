"""A form that is a food of its own is put up as that food; what took part of the crop is no food;
room above the food is held to its own process; a pot that cooked it down is no canner."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quotes, tried

BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
BUTTER = "3 pint jars apple butter, boiling-water canned, larder, minutes=5"
WATER = "boiling-water canned, larder"


@pytest.mark.parametrize(
    ("line", "food"),
    [
        (f"3 pint jars tomatoes, {WATER}, form=crushed minutes=35 acid=lemon", "crushed tomatoes"),
        (f"3 pint jars tomatoes, {WATER}, form=sauce minutes=35 acid=lemon", "tomato sauce"),
        (f"3 pint jars apples, {WATER}, form=sauce minutes=15", "applesauce"),
    ],
)
def test_a_form_that_is_a_food_of_its_own(larder: Pantry, line: str, food: str) -> None:
    reading = putup.read(larder, line)
    assert reading.food == food
    assert "form" not in dict(reading.process)
    assert tried(larder, line).verdict is Verdict.SOUND


def test_a_form_with_a_process_stays_a_form(larder: Pantry) -> None:
    line = f"3 pint jars tomatoes, {WATER}, form=whole minutes=85 acid=lemon"
    assert putup.read(larder, line).food == "tomatoes"
    mashed = f"{BEANS.replace('green beans', 'potatoes')} form=mashed"
    assert putup.read(larder, mashed).food == "potatoes", "a dish has no process"
    assert tried(larder, mashed).verdict is Verdict.UNKNOWN


@pytest.mark.parametrize(
    "note",
    [
        "lost half the crop to deer",
        "deer got half the row",
        "rabbits ate some",
        "half lost to pigeons",
    ],
)
def test_what_took_some_of_the_crop_is_none_of_the_food(larder: Pantry, note: str) -> None:
    assert tried(larder, BEANS, note).verdict is Verdict.SOUND


@pytest.mark.parametrize("note", ["half deer meat in it", "with rabbit", "added chicken"])
def test_meat_in_it_is(larder: Pantry, note: str) -> None:
    assert quotes(tried(larder, BEANS, note))


@pytest.mark.parametrize("room", ["1/2 in", "1 1/2 in", "3/4 in", "2 in"])
def test_room_is_held_to_its_own_process(larder: Pantry, room: str) -> None:
    """Snap beans: 1 inch; low-acid food under pressure: 1 to 1 1/4 (USDA AIB 539)."""
    found = tried(larder, f'{BEANS} headspace="{room}"')
    assert found.verdict is Verdict.UNKNOWN
    assert "snap beans" in found.reasons[0]


@pytest.mark.parametrize(
    ("line", "room", "fits"),
    [
        (BEANS, "1 in", True), (BEANS, "1 1/4 in", True), (BUTTER, "1/4 in", True),
        (BUTTER, "1/2 in", True), (BUTTER, "1 1/4 in", False),
        (f"3 pint jars peaches, {WATER}, minutes=25", "1/2 in", True),
        (f"3 pint jars peaches, {WATER}, minutes=25", "1 1/4 in", False),
        ("3 half-pint jars strawberry jam, larder", "1/4 in", True),
        ("3 half-pint jars strawberry jam, larder", "1 in", False),
    ],
)  # fmt: skip
def test_each_food_has_its_own_room(larder: Pantry, line: str, room: str, fits: bool) -> None:
    found = tried(larder, f'{line} headspace="{room}"')
    assert (found.verdict is Verdict.SOUND) is fits, found.reasons


STOCK = "3 pint jars chicken stock, pressure canned, larder, minutes=20, psi=11, altitude=500ft"


@pytest.mark.parametrize(
    ("line", "note", "verdict"),
    [
        (BUTTER, "cooked down in the slow cooker overnight", Verdict.SOUND),
        (BUTTER, "reduced in the crock pot", Verdict.SOUND),
        (BUTTER, "made in an instant pot", Verdict.SOUND),
        # Jars in such a pot are not canned.
        (BUTTER, "canned in the slow cooker", Verdict.UNKNOWN),
        (BUTTER, "processed the jars in the instant pot", Verdict.UNKNOWN),
        (BUTTER, "cooked jars in a crock pot", Verdict.UNKNOWN),
        # A pot that households can in is not set aside of low-acid food.
        (STOCK, "", Verdict.SOUND),
        (STOCK, "stock simmered overnight in the slow cooker", Verdict.SOUND),
        (STOCK, "cooked 90 minutes in the instant pot", Verdict.UNKNOWN),
        (STOCK, "made in an electric pressure cooker", Verdict.UNKNOWN),
    ],
)
def test_a_pot_that_cooked_it_down_is_no_canner(
    larder: Pantry, line: str, note: str, verdict: Verdict
) -> None:
    assert tried(larder, line, note).verdict is verdict
