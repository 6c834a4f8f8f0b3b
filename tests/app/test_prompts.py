"""A prompt shows what may be typed into it."""

from __future__ import annotations

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.meant import WHO_EATS
from pantry_tui.core.words import Climate
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite
from tests.app.screens import painted


@pytest.mark.parametrize("width", [80, 120])
async def test_the_prompt_for_a_place_names_every_climate(demo: Pantry, width: int) -> None:
    async with PantryApp(demo).run_test(size=(width, 24)) as pilot:
        await pilot.press("S", "a")
        shown = " ".join(painted(pilot).split())
        assert all(climate in shown for climate in Climate)


async def test_the_prompt_for_the_table_shows_its_forms(demo: Pantry) -> None:
    forms = ("6 from 24 dec to 2 jan", "8 guests on sunday", "away 24 dec to 27 dec")
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "b")
        shown = " ".join(painted(pilot).split())
        assert all(form in shown for form in forms)


@pytest.mark.parametrize(
    "form",
    ["6 from 24 dec to 2 jan", "8 guests on sunday", "away 24 dec to 27 dec", "usual on friday"],
)
def test_every_form_it_shows_is_understood(demo: Pantry, form: str) -> None:
    assert form in WHO_EATS
    assert appetite.read_table(demo, form).message
