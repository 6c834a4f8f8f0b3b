"""The table of stock comes in again: how many, of what size, of which day, and judged no milder."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.text import singular
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.output.spreadsheet import export_table
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, view
from pantry_tui.services.stock.pick import batch_named

#: What may not be eaten, in doubt, and the rest, of which the best-by date is no safety.
_HOW_BAD = {**dict.fromkeys(UNFIT, 2), Verdict.UNKNOWN: 1}


def _rows(path: Path) -> list[list[str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.reader(file))


@pytest.fixture
def table(demo: Pantry, tmp_path: Path) -> Path:
    """The demo as it was exported."""
    export_table(demo, path := tmp_path / "stock.csv", "stock")
    return path


def test_the_own_table_of_stock_comes_in_with_its_counts_sizes_and_days(
    demo: Pantry, table: Path, tmp_path: Path
) -> None:
    create(tmp_path / "new.db", altitude_ft=demo.altitude_ft)
    with open_pantry(tmp_path / "new.db", demo.today) as p:
        for one in demo.places.values():
            above = demo.places[one.parent].name if one.parent else None
            places.add(p, one.name, one.climate, above)
        looked = import_list(p, table, dry_run=True)
        bad = {one.line for one in looked.bad}
        head, *rows = _rows(table)
        kept = [row for line, row in enumerate(rows, start=2) if line not in bad]
        assert len(kept) > 60
        with table.open("w", newline="") as file:
            csv.writer(file).writerows([head, *kept])
        assert import_list(p, table).booked
        assert looked.no_day == []

        came = sorted(view.due(p), key=lambda row: batch_named(p, row.code).id)
        assert len(came) == len(kept)
        for line, new in zip(kept, came, strict=True):
            cell = dict(zip(head, line, strict=True))
            made = batch_named(p, new.code).made
            assert (new.food, new.count, new.place) == (
                cell["food"], int(cell["containers"]), cell["place"]
            )  # fmt: skip
            assert made is not None
            assert made.isoformat() == cell["made (date)"]
            bad_now = max(_HOW_BAD.get(new.verdict, 0), 0 if new.usable else 1)
            assert bad_now >= _HOW_BAD.get(Verdict(cell["verdict"]), 0), cell
            # What is drawn from by weight or by the piece has its size in another column.
            size = cell["size"].replace(" litre ", " l ")
            assert cell["left in each"] or singular(new.size) == singular(size)


def test_containers_are_the_count_in_the_list_of_others_too(demo: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text(
        "Food,Kept,Containers,Size,Where,Made\n"
        "plum jam,jam,7,half-pint jars,larder,2026-09-02\n"
        "plum jam,jam,2,pint jars,larder,2026-09-03\n"
        "pears,dried,3,bags,larder,2026-09-04\n"
    )
    looked = import_list(demo, path, dry_run=True)
    assert looked.bad == []
    assert looked.columns["count"] == "Containers"
    before = {row.code for row in view.due(demo)}
    import_list(demo, path)
    came = [row for row in view.due(demo) if row.code not in before]
    assert sorted((row.count, row.size) for row in came) == [
        (2, "pint jars"), (3, "bags"), (7, "half-pint jars")
    ]  # fmt: skip
