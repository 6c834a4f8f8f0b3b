"""Who changes who sits at the table is told what of those days moves."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.accepting import accept


def _lies(p: Pantry) -> dict[str, set[date]]:
    found: dict[str, set[date]] = {}
    for one in weeks.week(p).take:
        found.setdefault(one.dish or f"{one.code} {one.food}", set()).add(one.day)
    return found


@pytest.mark.parametrize("line", ["10 on {}", "away {}"])
def test_what_lay_on_that_day_and_moves_is_named(demo: Pantry, line: str) -> None:
    told = 0
    for n in range(1, 6):
        day = demo.today + timedelta(days=n)
        before = _lies(demo)
        done = appetite.read_table(demo, line.format(day.isoformat()))
        after = _lies(demo)
        moved = {
            name for name, days in before.items() if day in days and days - after.get(name, set())
        }
        said = " ".join(done.warnings)
        if moved:
            told += 1
            assert "oved:" in said or "on no day any more:" in said.casefold()
            assert any(name in said for name in moved)
            others = {name for name, days in before.items() if day not in days}
            assert not any(name in said for name in others), "but for what it is about"
        appetite.read_table(demo, f"usual {day.isoformat()}")
    assert told


def test_of_days_beyond_the_week_nothing_moves(demo: Pantry) -> None:
    day = demo.today + timedelta(days=20)
    assert not appetite.read_table(demo, f"10 on {day.isoformat()}").warnings


def test_an_accepted_week_stays_and_says_what_to_do(demo: Pantry) -> None:
    accept(demo)
    day = demo.today + timedelta(days=2)
    (said,) = appetite.read_table(demo, f"10 on {day.isoformat()}").warnings
    assert "week --accept" in said
