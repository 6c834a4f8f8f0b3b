"""When a crop comes in: by own batches of several years, else by the table of this half of the
world."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.harvest import ahead, middle, month_of, next_of
from pantry_tui.services.stock import undo
from tests.furnished import furnished

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(tmp_path, TODAY) as pantry:
        yield pantry


def up(p: Pantry, food: str, day: str) -> None:
    putup.put_up(p, putup.read(p, f"4 pint jars {food}, boiling-water canned, larder, {day}"))


def test_the_median_is_of_years_and_goes_about_new_year() -> None:
    assert middle([date(2026, 8, 1)]) == date(2026, 8, 1)
    busy = [date(2025, 8, 20), *(date(2026, 8, n) for n in (1, 2, 3))]
    assert middle(busy) == date(2026, 8, 11), "a year is one year, however often it was canned"
    assert middle([date(2024, 12, 28), date(2026, 1, 3)]).month in (12, 1)
    far = [date(2021, 3, 1), date(2024, 9, 1), date(2025, 9, 3), date(2026, 9, 2)]
    assert middle(far) == date(2026, 9, 2), "of the last years"


def test_what_came_early_is_not_looked_for_again_this_year(p: Pantry) -> None:
    assert next_of(p, "peaches", date(2026, 6, 20)) == date(2026, 7, 1)
    up(p, "peaches", "2026-06-10")
    assert next_of(p, "peaches", date(2026, 6, 20)) == date(2027, 7, 1)
    assert next_of(p, "peaches", date(2027, 5, 20)) == date(2027, 7, 1)


def test_one_year_says_no_more_than_the_table_and_two_do(p: Pantry) -> None:
    assert month_of(p, "peaches") == 7
    up(p, "peaches", "2026-09-10")
    assert month_of(p, "peaches") == 7
    up(p, "peaches", "2025-09-14")
    assert month_of(p, "peaches") == 9
    assert next_of(p, "peaches", TODAY) == date(2027, 9, 1)
    (one,) = ahead(p)
    assert (one.food, one.first, one.own) == ("peaches", date(2027, 9, 12), True)
    assert month_of(p, "no such food") is None


def test_a_southern_household_is_not_told_to_wait_for_july(p: Pantry) -> None:
    household.change(p, half="south")
    assert month_of(p, "peaches") == 1
    assert next_of(p, "peaches", TODAY) == date(2027, 1, 1)
    undo.undo(p)
    assert month_of(p, "peaches") == 7


def test_crops_that_came_in_half_a_year_later_tell_of_the_south(p: Pantry) -> None:
    up(p, "peaches", "2026-02-01")
    up(p, "plums", "2026-01-13")
    up(p, "apricots", "2026-01-13")
    assert month_of(p, "tomatoes") == 7
    up(p, "pears", "2026-03-03")
    assert month_of(p, "tomatoes") == 1
    household.change(p, half="north")
    assert month_of(p, "tomatoes") == 7, "its own word goes first"
