"""Tables for a spreadsheet: what they hold, and that nothing in them is a formula."""

from __future__ import annotations

import csv
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books import rating
from pantry_tui.services.books.logbook import entries
from pantry_tui.services.output.spreadsheet import TABLES, export_table
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places, view


def table(p: Pantry, folder: Path, what: str) -> list[list[str]]:
    to = folder / f"{what}.csv"
    count = export_table(p, to, what)
    with to.open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.reader(file))
    assert len(rows) == count + 1
    assert len({len(row) for row in rows}) == 1
    assert to.stat().st_mode & 0o777 == 0o600
    return rows


@pytest.mark.parametrize("what", TABLES)
def test_dates_are_iso_and_units_stand_in_the_head(demo: Pantry, tmp_path: Path, what: str) -> None:
    head, *rows = table(demo, tmp_path, what)
    assert rows
    assert len(set(head)) == len(head)
    for n, name in enumerate(head):
        cells = [row[n] for row in rows if row[n]]
        if name.endswith("(date)"):
            assert all(date.fromisoformat(cell).isoformat() == cell for cell in cells), name
        elif "(" in name and "hour" not in name:
            assert all(float(cell) is not None for cell in cells), name


def test_stock_and_log_are_what_the_lists_show(demo: Pantry, tmp_path: Path) -> None:
    head, *rows = table(demo, tmp_path, "stock")
    assert sum(int(row[head.index("containers")]) for row in rows) == sum(
        row.count for row in view.due(demo)
    )
    assert [row[0] for row in rows] == [row.code for row in view.due(demo)]
    assert len(table(demo, tmp_path, "log")) == len(entries(demo)) + 1


@pytest.mark.parametrize(
    "name", ["=1+1", "+49 attic", "-attic", "@attic", " =1+1", "\t=1+1", "＝1+1", "\u202e=1"]
)
def test_no_name_is_a_formula(larder: Pantry, tmp_path: Path, name: str) -> None:
    places.add(larder, name, "pantry")
    where = next(one.name for one in larder.places.values() if one.name not in ("larder", "fridge"))
    line = putup.read(larder, "3 pint jars peaches, boiling-water canned, larder, minutes=30")
    code = putup.put_up(larder, line).code
    from pantry_tui.services.stock import act

    rating.taste(larder, code, "again", name)
    act.move(larder, code, where) if hasattr(act, "move") else None
    for what in TABLES:
        for row in table(larder, tmp_path, what)[1:]:
            for cell in row:
                number = cell.lstrip("-").replace(".", "", 1).isdigit()
                assert number or not cell.startswith(("=", "+", "-", "@", "\t", "\r", "＝")), cell


def test_it_never_overwrites_and_knows_its_tables(demo: Pantry, tmp_path: Path) -> None:
    there = tmp_path / "there.csv"
    there.write_text("mine")
    with pytest.raises(Refused, match="already there"):
        export_table(demo, there, "stock")
    assert there.read_text() == "mine"
    with pytest.raises(BadInput, match="stock, log, year, losses"):
        export_table(demo, tmp_path / "new.csv", "moon")
    assert not (tmp_path / "new.csv").exists()
