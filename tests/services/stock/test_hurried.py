"""What stands too warm has hours: no list, paper, calendar or plan names a later day for it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app import rowtext
from pantry_tui.cli.printing import stock as printed
from pantry_tui.core.words import Group
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.output.calendar import calendar
from pantry_tui.services.output.door import until
from pantry_tui.services.output.paper import sheet
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import paces, week
from pantry_tui.services.stock import act, one_batch, places, view
from pantry_tui.services.stock.lines import ORDERS, lines

MOVED = date(2026, 11, 25)
LATER_DAYS = ("2026-11-26", "20261126", "26 Nov", "2026-11-27", "27 Nov", "Jan 2027")


def at(store: Path, hour: int, minute: int = 0) -> Pantry:
    return open_pantry(store, Clock(MOVED, 60 * hour + minute))


@pytest.fixture
def store(tmp_path: Path) -> Path:
    """Thawed mince, moved to a larder at ten."""
    path = tmp_path / "store.db"
    create(path, people=4)
    with open_pantry(path, date(2026, 11, 1)) as p:
        for name, climate in (("freezer", "freezer"), ("fridge", "fridge"), ("larder", "pantry")):
            places.add(p, name, climate)
        putup.put_up(p, putup.read(p, "3 1lb packs ground beef frozen freezer"))
        p.today = date(2026, 11, 24)
        act.thaw(p, "2A/1")
    with at(path, 10) as p:
        done = act.move(p, "2A/1", "larder")
        assert any("within 120 minutes" in said for said in done.warnings)
    return path


def test_no_later_day_is_said_of_it(store: Path) -> None:
    with at(store, 10, 30) as p:
        (row,) = [one for one in view.due(p) if one.place == "larder"]
        assert row.hurried
        assert row.discard_after == p.today
        assert row.good_until is None
        assert until(row) == "too warm: 2 hours only"
        assert rowtext.until(row) == "too warm: now"
        mine = [*row.reasons, *printed.due([row]), *sheet(p, "due").rows[0]]
        mine += [said for said in week.week(p).notes if "2A/1" in said]
        shown = one_batch.show(p, "2A")
        steps = next(steps for first, steps in shown.chain if first == "2A/1")
        mine += [step for step in steps if step.startswith("Safety")]
        assert not [said for said in mine if any(day in said for day in LATER_DAYS)]
        assert "DTSTART;VALUE=DATE:2026112" not in calendar(p)


def test_the_minutes_are_those_that_are_left(store: Path) -> None:
    with at(store, 11) as p:
        (row,) = [one for one in view.due(p) if one.place == "larder"]
        assert "within 120 minutes of 10:00, by 12:00" in row.reasons[0]
    with at(store, 12) as p:
        assert next(one for one in view.due(p) if one.place == "larder").hurried
    with at(store, 12, 1) as p:
        (row,) = [one for one in view.due(p) if one.place == "larder"]
        assert (row.verdict.value, row.hurried) == ("discard", False)


def test_the_week_says_to_act_at_once_and_no_pace_counts_it(store: Path) -> None:
    with at(store, 10, 30) as p:
        (said,) = [said for said in week.week(p).notes if said.startswith("2A/1")]
        assert "put it in the cold at once, or eat it now" in said
        assert all("2A/1" not in take.containers for take in week.week(p).take)
        found = paces.portions(p, Group.MEAT, paces.by_food(p)["ground beef"])
        assert p.today not in {*found.safety, *(one.by for one in found.whole)}
        assert lines(p, order=ORDERS[0]).total == 2
