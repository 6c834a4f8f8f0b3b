"""Putting up in a metric kitchen: why a batch is in doubt stands where it is typed, and the keys
below the line do what they say."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.of_batch import process_example
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.line import read_pairs
from pantry_tui.services.inunits import Units
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

STOCK = "6 jars chicken stock 500ml, pressure canned 25 min at 11 psi, larder, 1 oct"
BEANS = "7 500ml jars runner beans, pressure canned, larder"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 10, 3)) as pantry:
        household.change(pantry, altitude_ft=1700, units="metric")
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "cellar", "cellar", temp_f=43)
        yield pantry


async def _typed(pilot: Pilot[None], line: str) -> str:
    """What is shown below the line."""
    pilot.app.screen.query_one("#line", Input).value = line
    await pilot.pause()
    return str(pilot.app.screen.query_one("#reading", Static).visual)


@pytest.mark.parametrize(
    ("line", "why"),
    [
        (STOCK, "if so, say canner=dial"),
        ("8 butternut squash, cellar, 25 sept", "below 10 °C it is hurt by cold"),
        ("9 500 ml jars tomatoes, water bath, 5 min with lemon juice, larder", "is too little"),
    ],
)
async def test_why_a_batch_is_in_doubt_stands_first_where_it_is_typed_and_once_it_is_booked(
    p: Pantry, line: str, why: str
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        typed = " ".join((await _typed(pilot, line)).split())
        assert why in typed
        assert typed.index(why) < typed.index("Never taste")
        await pilot.press("enter")
        booked = str(pilot.app.screen.query_one("#reading", Static).visual)
        booked = " ".join(booked.split())
        assert "on every lid" in booked
        assert why in booked
        assert booked.index(why) < booked.index("Never taste")


async def test_what_is_sound_says_no_more_than_its_dates(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        assert "why " not in await _typed(pilot, "12 jars strawberry jam, larder, june")


async def test_a_line_that_comes_back_is_mended_at_its_end_and_cleared_by_one_key(
    p: Pantry,
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        await _typed(pilot, BEANS)
        await pilot.press("enter", "ctrl+z")
        line = pilot.app.screen.query_one("#line", Input)
        assert line.value == BEANS
        assert line.cursor_position == len(BEANS)
        await pilot.press("left", "left", "ctrl+u")
        assert line.value == ""


async def test_a_refusal_does_not_stand_under_the_line_that_was_mended(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        await _typed(pilot, "3 jars dill pickles 1l, larder")
        await pilot.press("enter")
        said = pilot.app.screen.query_one(SaidLine)
        assert said.display
        assert said.has_class("refused")
        await pilot.press("x")
        assert not said.display


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_example_of_a_record_can_be_typed_as_it_is_shown(units: str) -> None:
    """Converted as a sentence, its "20 psi=11" was a pressure of 138 kPa."""
    metric = units == "metric"
    shown = Units(metric=metric).text(process_example(metric)).replace(" (500 ml)", "")
    assert dict(read_pairs(shown)).keys() == {"minutes", "psi", "canner", "jar", "pack"}
    assert Units(metric=metric).text("write minutes=20 psi=11") == "write minutes=20 psi=11"


def test_pickles_that_were_said_to_be_processed_are_not_said_to_be_not(p: Pantry) -> None:
    line = "3 1 l jars dill pickles, {}larder, 20 aug"
    said = putup.put_up(p, putup.read(p, line.format("boiling-water canned, ")))
    assert dict(said.reading.process)["process"] == "boiling-water"
    assert said.standing == ("No process recorded: not checked.",)
    unsaid = putup.put_up(p, putup.read(p, line.format("vinegar pickle, ")))
    assert "Not said that the jars were processed" in unsaid.standing[0]


@pytest.mark.parametrize(
    ("line", "ways", "never"),
    [
        ("3 1 l jars dill pickles, larder", "boiling-water canned", "pressure canned"),
        ("3 1 l jars canned dill pickles, larder", "boiling-water canned", "pressure canned"),
        ("3 bottles elderflower cordial, larder", "frozen", "pressure canned"),
    ],
)
def test_the_ways_that_are_offered_are_those_of_the_food(
    p: Pantry, line: str, ways: str, never: str
) -> None:
    problems = " ".join(putup.read(p, line).problems)
    assert ways in problems
    assert never not in problems


@pytest.mark.parametrize(
    ("line", "mended"),
    [
        ("7 pint jars runner beans, pressure canned, larder", "write 473 ml or 568 ml"),
        ("1 chicken, frozen, larder, last month", "or unknown"),
    ],
)
def test_what_is_still_needed_says_what_to_write(p: Pantry, line: str, mended: str) -> None:
    assert mended in " ".join(putup.read(p, line).problems)
