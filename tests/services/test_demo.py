"""The demo store shows every kind of thing, on any day, and is all it says."""

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Method, State, Verdict
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry
from pantry_tui.services.stock import view


@pytest.mark.parametrize("today", [date(2026, 11, 25), date(2028, 2, 29), date(2031, 7, 4)])
def test_the_demo_never_goes_stale(tmp_path: Path, today: date) -> None:
    path = tmp_path / "demo.db"
    build_demo(path, today)
    with open_pantry(path, today) as p:
        assert 55 <= len(p.stock.batches) <= 70
        assert 330 <= len(p.stock.containers) <= 460
        assert len(p.stock.places) == 8
        rows = view.due(p)
        verdicts = {row.verdict for row in rows}
        assert {
            Verdict.SOUND,
            Verdict.EAT_SOON,
            Verdict.PAST_BEST,
            Verdict.DISCARD,
            Verdict.TEND,
        } <= verdicts
        assert {State.OPEN, State.THAWED, State.WORKING} <= {row.state for row in rows}
        opened = [row for row in rows if row.state is State.OPEN]
        assert any(row.days_left is not None and row.days_left < 0 for row in opened)
        # Whoever opens it in the morning finds nothing that is still to come.
        assert all(event.day < today for event in p.events)


def test_the_demo_shows_what_containers_really_hold(tmp_path: Path) -> None:
    """Two sacks of other weights, a part-eaten roast, a crock that was filled into jars and a jam
    out of the freezer, each with what it came from."""
    today = date(2026, 11, 25)
    build_demo(tmp_path / "demo.db", today)
    with open_pantry(tmp_path / "demo.db", today) as p:
        rows = view.due(p)
        held = {(row.food, row.amount) for row in rows}
        assert {("potatoes", "38 lb"), ("potatoes", "50 lb"), ("beef roasts", "2.5 lb")} <= held
        made = {
            batch.food.name: p.stock.batches[p.stock.containers[batch.parts[0]].batch]
            for batch in p.batches()
            if batch.parts
        }
        assert {name: (of.food.name, of.method) for name, of in made.items()} == {
            "sauerkraut": ("sauerkraut", Method.LACTIC),
            "strawberry jam": ("strawberries", Method.FROZEN),
        }
        (jars,) = (row for row in rows if row.food == "sauerkraut" and row.count == 6)
        assert (jars.place, jars.state) == ("fridge", State.SEALED)
