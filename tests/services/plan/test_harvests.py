"""When a crop comes in, north and south of the equator."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.plan.pace import first_month, turned
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.harvests import harvest_month
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import places

START = date(2026, 2, 10)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", units="metric")
    with open_pantry(tmp_path / "store.db", START) as pantry:
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "chest", "freezer")
        yield pantry


def up(p: Pantry, line: str, day: date) -> None:
    p.today = day
    putup.put_up(p, putup.read(p, line))


@pytest.mark.parametrize(("month", "there"), [(1, 7), (6, 12), (7, 1), (8, 2), (12, 6)])
def test_the_other_side_of_the_equator_is_half_a_year_off(month: int, there: int) -> None:
    assert turned(month) == there
    assert turned(there) == month


@pytest.mark.parametrize(
    ("months", "first"),
    [
        ([6, 7, 9], 6), ([12, 1, 2], 12), ([11, 1, 2, 3], 11), ([8], 8), ([], None),
        ([1, 4, 7, 10], None), (range(1, 13), None), ([2, 2, 3], 2),
    ],
)  # fmt: skip
def test_the_first_month_stands_behind_the_longest_gap(
    months: list[int], first: int | None
) -> None:
    assert first_month(months) == first


def test_the_table_is_turned_for_a_southern_garden_and_for_no_other(p: Pantry) -> None:
    table = p.tables.index.find("tomatoes")
    assert table is not None
    month = table.harvest_month
    assert month is not None
    assert harvest_month(p, "tomatoes") == month
    household.change(p, garden="south")
    assert harvest_month(p, "tomatoes") == turned(month)
    household.change(p, garden="north")
    assert harvest_month(p, "tomatoes") == month
    assert harvest_month(p, "nothing known") is None


def test_own_batches_tell_better_after_a_year(p: Pantry) -> None:
    household.change(p, garden="south")
    table = harvest_month(p, "strawberries")
    up(p, "6 500 g bags strawberries, frozen, chest", START)
    p.today = START + timedelta(days=364)
    assert harvest_month(p, "strawberries") == table, "less than a year of it is known"
    up(p, "6 500 g bags strawberries, frozen, chest", date(2027, 11, 20))
    up(p, "4 500 g bags strawberries, frozen, chest", date(2027, 12, 18))
    assert harvest_month(p, "strawberries") == 11
    household.change(p, garden="north")
    assert harvest_month(p, "strawberries") == 6


def test_what_was_made_of_the_store_or_bought_is_no_harvest(p: Pantry) -> None:
    household.change(p, garden="south")
    table = harvest_month(p, "strawberries")
    up(p, "6 500 g bags strawberries, bought in, chest, printed=2028-01-31", date(2026, 7, 1))
    p.today = date(2027, 9, 1)
    assert harvest_month(p, "strawberries") == table


def test_a_southern_outlook_ends_at_the_southern_harvest(p: Pantry) -> None:
    up(p, "8 500 g bags strawberries, frozen, chest", date(2026, 1, 20))
    p.today = date(2026, 9, 1)
    (north,) = (row for row in outlook(p).foods if row.food == "strawberries")
    household.change(p, garden="south")
    (south,) = (row for row in outlook(p).foods if row.food == "strawberries")
    assert (north.harvest, south.harvest) == (date(2027, 6, 1), date(2026, 12, 1))
