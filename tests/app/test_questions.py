"""Questions say what Enter alone takes, and their keys; what is said once is not said twice."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.inkeys import in_keys
from pantry_tui.app.main import PantryApp
from pantry_tui.core.safety.seals import FIRST
from pantry_tui.services.batchwork import putup
from pantry_tui.services.output.plain_words import plainly
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places
from tests.app.screens import painted

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "fridge", "fridge")
        yield pantry


def said(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize(("told", "kept"), [(None, None), (1500, 1500)])
async def test_both_first_questions_say_what_enter_alone_takes(
    tmp_path: Path, told: int | None, kept: int | None
) -> None:
    create(tmp_path / "store.db", altitude_ft=told, people=3)
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("1")
            await pilot.pause()
            shown = said(painted(pilot))
            assert ("Enter alone: 1500 ft" if told else "Enter alone: not said") in shown
            assert "for example 900 ft" in shown
            await pilot.press("enter")
            shown = said(painted(pilot))
            assert "Enter alone: 3." in shown
            assert "for example 4" in shown
            await pilot.press("enter")
        assert (p.altitude_ft, p.people) == (kept, 3)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("in march", "Sun 1 Mar 2026 (the first day of March 2026"),
        ("05/2025", "Thu 1 May 2025 (the first day of May 2025"),
        ("2024", "Mon 1 Jan 2024 (the first day of 2024"),
        ("12 march", "Thu 12 Mar 2026"),
        ("2026-03-01", "Sun 1 Mar 2026"),
    ],
)
async def test_a_month_that_is_taken_from_its_first_day_is_said_to_be(
    p: Pantry, typed: str, says: str
) -> None:
    putup.put_up(p, putup.read(p, "1 pint jar plum jam, larder"))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *f"12 jars strawberry jam, larder, {typed}")
        shown = said(painted(pilot))
    assert says in shown
    assert ("first day" in says) is ("first day" in shown)


async def test_the_reason_that_stands_under_the_list_is_not_said_twice(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, "2 packs pork, fresh, fridge, 2026-11-01"))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("u")
        shown = said(painted(pilot))
    assert "Not done: 2A/1: discard." in shown
    assert shown.count("Never taste to find out") == 1
    assert shown.count("Discard after") == 1


async def test_a_question_mark_in_a_choice_shows_its_keys_and_the_choice_stays(p: Pantry) -> None:
    putup.put_up(p, putup.read(p, "3 packs pork, fresh, fridge, yesterday"))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("m", "question_mark")
        shown = painted(pilot)
        assert "Keys of this question" in shown
        assert "Digits say how many." in shown
        await pilot.press("escape")
        assert "Move to which place?" in painted(pilot)
        await pilot.press("escape", "d", "question_mark")
        assert "Digits take one" in painted(pilot)


def test_the_seals_name_the_key_that_books_them_and_paper_names_none() -> None:
    assert in_keys(FIRST).startswith("Check the seals first (see . (jobs)):")
    assert plainly(FIRST).startswith("Check the seals first: that")


async def test_the_altitude_is_asked_at_the_first_canned_batch_also_where_its_place_is_new(
    p: Pantry,
) -> None:
    line = "7 pint jars runner beans, pressure canned, attic, minutes=20 psi=11 canner=dial"
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("escape", "p", *line, "enter")
        assert "How high do you live" in painted(pilot)
        await pilot.press(*"900 ft", "enter")
        assert "There is no place called 'attic'" in painted(pilot)
        await pilot.press("1")
    assert p.altitude_ft == 900
    assert [one.food.name for one in p.batches()] == ["runner beans"]
