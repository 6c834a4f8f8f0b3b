"""What was booked wrongly is put right on its line of the log."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.page import Page
from pantry_tui.core.log.payloads import Outage, Reading
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.logbook import log as log_text
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, put_right, readings, undo
from tests.app.screens import painted

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("fridge, fridge", "ice chest, freezer", "cellar, cellar"):
            places.add_line(pantry, line)
        putup.put_up(pantry, putup.read(pantry, "2 packs pork, frozen, ice chest"))
        yield pantry


def newest(p: Pantry) -> object:
    return p.events[-1].payload


def squeezed(text: str) -> str:
    return " ".join(text.split())


async def test_a_reading_is_put_right_where_the_log_has_it_field_by_field(p: Pantry) -> None:
    readings.read_typed(p, "cellar", "70F")
    first = p.events[-1].id
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("l")
        said = painted(pilot)
        assert f"Its id: {first[-6:]}." in said, "what `correct` takes at a command line"
        assert "w puts it right" in said
        await pilot.press("w", "1", *"50F", "enter")
        assert "Measured 50 \N{DEGREE SIGN}F in cellar: what of it is wrong?" in painted(pilot)
        await pilot.press("2", *"yesterday 18:30", "enter", "3", *"90 %", "enter", "escape")
        read = newest(p)
        assert isinstance(read, Reading)
        assert (read.temp_f, read.humidity) == (50, 90)
        assert (p.events[-1].day, p.events[-1].at) == (date(2026, 11, 24), 18 * 60 + 30)
        # On the line of the old one it is what stands in its place that is put right.
        await pilot.press("slash", *first[-6:], "enter", "end", "w")
        assert "Measured 50" in painted(pilot)
    assert len([one for one in p.find_place("cellar").facts if hasattr(one, "temp_f")]) == 1


async def test_a_power_cut_is_asked_anew_for_its_place_or_for_all_that_were_booked_with_it(
    p: Pantry,
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "x", "1", *"40", "enter", "enter", "1", "l")
        cuts = [one for one in p.events if isinstance(one.payload, Outage)]
        assert len(cuts) == 2
        await pilot.press("w")
        assert "all 2 that were booked with it" in painted(pilot)
        await pilot.press("2", *"3", "enter")
        new = [one.payload for one in p.events if isinstance(one.payload, Outage)][2:]
        assert [(one.hours, one.instead_of) for one in new] == [(3, cuts[1].id), (3, cuts[0].id)]
        assert "by it, until now discard" in squeezed(painted(pilot))
        await pilot.press("escape", "z")
        assert len(p.find_place("fridge").facts) == 2, "what it holds, and the first word"


async def test_of_one_place_all_that_is_known_of_it_is_asked_anew(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "x", "3", "1", *"40", "enter", "2", "2", "enter", "enter", "1")
        wrong = newest(p)
        assert isinstance(wrong, Outage)
        assert wrong.ice is False
        await pilot.press("l", "w", "1", *"40", "enter", "1", "1", "enter")
        right = newest(p)
        assert isinstance(right, Outage)
        assert (right.ice, right.full, right.hours) == (True, True, 40)
        await pilot.press("escape", "l", "down", "down", "w")
        assert "what is to be put right" in painted(pilot), "the record of a batch"
        await pilot.press("escape", "down", "w")
        assert "Of this nothing is put right here" in painted(pilot)


async def test_enter_on_a_reading_shows_it_whole(p: Pantry) -> None:
    readings.read_typed(p, "cellar", "70F")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("l", "enter")
        assert isinstance(pilot.app.screen, Page)
        assert "measured 70 \N{DEGREE SIGN}F in cellar. " in squeezed(painted(pilot))
        assert "w puts it right" in painted(pilot)


async def test_what_is_put_right_has_a_mark_and_what_is_taken_back_names_no_key_for_it(
    p: Pantry,
) -> None:
    readings.read_typed(p, "cellar", "70F")
    put_right.reading(p, p.events[-1].id, "50F")
    readings.read_typed(p, "cellar", "51F")
    undo.undo(p)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("l")
        lines = painted(pilot).splitlines()
        assert [line for line in lines if "measured 70" in line and "(put right since)" in line]
        assert not [line for line in lines if "measured 50" in line and "put right since" in line]
        assert "51 \N{DEGREE SIGN}F in cellar (undone)" in painted(pilot)
        assert "It was taken back" in painted(pilot)
        assert "put right" not in squeezed(lines[-1] + lines[-2])
        await pilot.press("down")
        shown = squeezed(" ".join(painted(pilot).splitlines()[-3:])).replace("\u00a0", " ")
        assert "w put right" in shown
    undo.undo(p)
    assert "put right since" not in "".join(log_text(p))
