"""The losses of twelve months as one number, and what was saved by eating in time."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.losses import losses
from pantry_tui.services.books.rows import YearOfLosses
from pantry_tui.services.books.year_words import year_of_losses as said
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, undo
from tests.furnished import furnished

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(tmp_path, TODAY) as pantry:
        yield pantry


def up(p: Pantry, day: str) -> str:
    line = f"20 pint jars plums, boiling-water canned, larder, {day}"
    return putup.put_up(p, putup.read(p, line)).code


def test_it_is_of_twelve_months_and_the_twelve_before(p: Pantry) -> None:
    code = up(p, "2025-01-10")
    p.today = date(2025, 6, 1)
    act.discard(p, code, 3, "nobody would eat it")
    p.today = date(2026, 3, 1)
    act.discard(p, code, 1, "past its date")
    act.use(p, code, "3")
    p.today = TODAY
    year = losses(p).year
    assert (year.lost, year.before) == (4, 12)
    assert year.share == 0.25
    assert year.saved == 0, "what is past its best already was not eaten in time"
    assert losses(p, date(2026, 10, 1)).year == year, "whatever is looked at"


def test_what_is_eaten_in_its_last_four_weeks_is_saved(p: Pantry) -> None:
    best = date(2027, 1, 1)
    p.today = best - timedelta(weeks=7)
    code = up(p, "2026-01-01")
    for weeks, times in ((6, 2), (3, 1), (0, 1)):
        p.today = best - timedelta(weeks=weeks)
        act.use(p, code, str(times))
    assert losses(p).year == YearOfLosses(0.0, 0.0, 8.0, 0.0)
    undo.undo(p)
    assert losses(p).year.saved == 4


def test_it_is_said_in_one_sentence() -> None:
    assert said(YearOfLosses(12.0, 0.031, 46.0, 30.0)) == (
        "Lost in twelve months: 12 servings, 3.1% of what was eaten and lost (30 in the twelve "
        "before them); 46 saved by being eaten in their last four weeks."
    )
    assert said(YearOfLosses(0.0, 0.0, 0.0, None)) == (
        "Lost in twelve months: 0 servings; none saved by being eaten in their last four weeks."
    )
