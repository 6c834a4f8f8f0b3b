"""The year of a food adds up, and losses name the changes that would save most."""

from __future__ import annotations

import itertools
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.losses import losses
from pantry_tui.services.books.year import years
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import act, undo
from pantry_tui.services.stock import count as rounds

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def test_a_year_is_reckoned_by_hand(p: Pantry) -> None:
    p.today = date(2025, 8, 10)
    old = up(p, "10 pint jars peaches, boiling-water canned, larder")
    p.today = date(2025, 12, 1)
    act.use(p, old, "3")
    act.give(p, old, 1, "Aunt Sunniva")
    p.today = date(2026, 2, 1)
    act.discard(p, old, 1, "seal failed")
    rounds.from_counts(p, p.find_place("larder"), {old: 4})  # five stand: one was eaten unseen
    rounds.finish(p, p.find_place("larder"))
    p.today = date(2026, 8, 5)
    new = up(p, "6 pint jars peaches, boiling-water canned, larder")
    p.today = TODAY
    act.use(p, new, "2")
    first, second = years(p, "peach")
    assert (first.start, first.end) == (date(2025, 8, 10), date(2026, 8, 5))
    assert (first.opening, first.made, first.given, first.lost, first.unrecorded) == (
        0,
        10,
        1,
        1,
        1,
    )
    assert (first.closing, first.eaten) == (4, 3)
    assert (second.opening, second.made, second.closing, second.eaten) == (4, 6, 8, 2)
    assert second.end is None


def test_every_year_of_the_demo_adds_up(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        found = years(demo)
        names = {one.food for one in found}
        for one in found:
            assert one.eaten >= 0, one
        for name in names:
            mine = [one for one in found if one.food == name]
            assert all(a.closing == b.opening for a, b in itertools.pairwise(mine))
            used = sum(
                c.fate == "used"
                for c in demo.stock.containers.values()
                if demo.stock.batches[c.batch].food.name == name
            )
            if not any(one.unit for one in mine):
                assert sum(one.eaten for one in mine) == pytest.approx(used, abs=1)
    with pytest.raises(BadInput), open_pantry(tmp_path / "demo.db", TODAY) as demo:
        years(demo, "moon cheese")


def test_losses_name_the_two_worst(p: Pantry) -> None:
    many = up(p, "9 pint jars plums, boiling-water canned, larder")
    bad = up(p, "5 pint jars pears, boiling-water canned, larder")
    one = up(p, "3 pint jars peaches, boiling-water canned, larder")
    act.discard(p, many, 6, "past its date")
    act.discard(p, bad, 4, "seal failed")
    act.discard(p, one, 1, "mould")
    found = losses(p)
    assert [row.food for row in found.rows] == ["plums", "pears", "peaches"]
    assert found.servings == 44
    assert found.share == pytest.approx(44 / 68, abs=0.001)
    assert "6 fewer of plums" in found.changes[0]
    assert "pears" in found.changes[1]
    assert "seal failed" in found.changes[1]
    assert found.rows[0].seasons == {"autumn": 24.0}
    undo.undo(p)
    assert len(losses(p).rows) == 2
    assert losses(p, date(2026, 12, 1)).rows == ()
