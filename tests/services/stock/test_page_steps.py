"""The page of a batch has a step behind every date that it shows, and no caution twice."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.texts import batch_text
from pantry_tui.core import dates
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places
from pantry_tui.services.stock.one_batch import show

TODAY = date(2026, 11, 29)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge"):
            places.add_line(pantry, line)
        yield pantry


def steps(p: Pantry, line: str) -> tuple[list[str], date | None, date | None]:
    """The steps of a batch that is put up, and its dates."""
    view = show(p, put_up(p, read(p, line)).code)
    (row,) = view.rows
    return list(view.chain[0][1]), row.best_by, row.discard_after


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("12 eggs, fresh, fridge, printed=2026-12-20", "Safety and quality: the printed date"),
        ("2 tins tuna, bought in, larder, printed=2028-05-01", "Quality: the printed date"),
        ("12 eggs, fresh, fridge, yesterday", "Quality, sealed from Sat 28 Nov 2026"),
    ],
)
def test_the_best_by_day_has_its_step(p: Pantry, line: str, said: str) -> None:
    found, best, _ = steps(p, line)
    assert best is not None
    mine = [one for one in found if one.startswith(said)]
    assert len(mine) == 1
    assert dates.say(best) in mine[0]


def test_a_printed_date_behind_the_last_safe_day_is_no_step(p: Pantry) -> None:
    found, _, last = steps(p, "1 qt milk, bought in, fridge, today, printed=2027-12-20")
    assert last is not None
    assert last < date(2027, 12, 20)
    assert not any("printed date" in one for one in found)


def test_no_caution_stands_on_the_page_twice(p: Pantry) -> None:
    line = "6 pint jars runner beans, pressure canned, larder, today, note=never reached pressure"
    text = batch_text(show(p, put_up(p, read(p, line)).code))
    assert text.count(CAUTION) == 1
