"""Columns of a list that decide a verdict are read or their row is refused: no jar comes in as if
it were shut, strong and at sea level because its column was not understood."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import State, Verdict
from pantry_tui.services.batchwork.detail_columns import named_by, pair_of
from pantry_tui.services.batchwork.imported import Imported
from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, view
from pantry_tui.services.stock.rows import DueRow

TODAY = date(2026, 11, 26)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=0)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("chest", "freezer")):
            places.add(pantry, name, climate)
        yield pantry


HEAD = "food,method,qty,size,place,made"
BEANS = "runner beans,pressure canned,1,pint jar,{place},2026-11-20"


def brought(p: Pantry, heading: str, cell: str, row: str = "", place: str = "larder") -> Imported:
    path = p.path.with_name("list.csv")
    line = (row or BEANS).format(place=place)
    path.write_text(f"{HEAD},minutes,psi,{heading}\n{line},20,11,{cell}\n", encoding="utf-8")
    return import_list(p, path)


def only(p: Pantry) -> DueRow:
    (row,) = view.due(p)
    return row


@pytest.mark.parametrize(
    ("heading", "field", "cell", "value"),
    [
        ("altitude (km)", "altitude", "1.8", "1.8 km"),
        ("Altitude km", "altitude", "2,4", "2.4 km"),
        ("vinegar (g/l)", "vinegar", "50", "5%"), ("Vinegar g/l", "vinegar", "42,5", "4.25%"),
        ("salt (g/l)", "salt", "22", "22 g/l"), ("Salt (g)", "salt", "60", "60 g"),
        ("status", "state", "Thawed", "thawed"), ("Status", "state", "in use", "open"),
        ("opened", "state", "yes", "open"), ("Opened?", "state", "x", "open"),
        ("thawed", "state", "y", "thawed"),
    ],
)  # fmt: skip
def test_what_a_column_says_is_read_in_the_unit_of_its_heading(
    heading: str, field: str, cell: str, value: str
) -> None:
    named = named_by(heading)
    assert named is not None
    assert (named.field, pair_of(field, heading, cell)) == (field, (field, value))


@pytest.mark.parametrize("cell", ["", "no", "-", "not yet"])
def test_what_was_not_opened_is_shut(p: Pantry, cell: str) -> None:
    assert brought(p, "opened", cell).booked
    assert (only(p).state, only(p).usable) == (State.SEALED, True)


def test_an_altitude_in_kilometres_decides_the_pressure(p: Pantry) -> None:
    assert brought(p, "altitude (km)", "1.8").booked
    assert "5,906 ft" in only(p).reasons[0]


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("altitude (furlong)", "9"), ("vinegar (g/l)", "strong"), ("status", "eaten"),
        ("opened", "perhaps"), ("opened", "2026-12-24"), ("thawed", "2026-11-20"),
    ],
)  # fmt: skip
def test_a_cell_that_is_not_understood_refuses_its_row(p: Pantry, heading: str, cell: str) -> None:
    found = brought(p, heading, cell)
    assert not found.booked
    ((line, column, value),) = {(one.line, one.column, one.value) for one in found.bad}
    assert (line, column, value) == (2, heading, cell)
    assert not view.due(p)


@pytest.mark.parametrize("cell", ["2026-11-24", "24.11.2026", "24 Nov 2026"])
def test_a_day_on_which_it_was_opened_begins_its_days(p: Pantry, cell: str) -> None:
    assert brought(p, "opened", cell, place="fridge").booked
    row = only(p)
    assert (row.state, row.place, row.discard_after) == (State.OPEN, "fridge", date(2026, 11, 27))


def test_what_stands_open_in_the_larder_is_not_put_into_the_refrigerator(p: Pantry) -> None:
    assert brought(p, "opened", "2026-11-24").booked
    assert (only(p).place, only(p).verdict) == ("larder", Verdict.DISCARD)


def test_opened_nobody_knows_when_counts_from_the_day_made(p: Pantry) -> None:
    assert brought(p, "opened", "yes", place="fridge").booked
    assert only(p).discard_after == date(2026, 11, 23)


def test_two_columns_of_its_state_are_asked_about(p: Pantry) -> None:
    path = p.path.with_name("list.csv")
    line = BEANS.format(place="fridge")
    path.write_text(f"{HEAD},opened,status\n{line},yes,\n", encoding="utf-8")
    found = import_list(p, path)
    assert [(one.about, one.typed) for one in found.asks] == [("column", "state")]
    assert not found.booked
