"""What is said beside the log is taken back in its turn with what is booked."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, week, wishes
from pantry_tui.services.stock import act, undo

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(demo: Pantry) -> Pantry:
    return demo


def test_the_last_thing_goes_first_booked_or_said(p: Pantry) -> None:
    before = len(p.events)
    week.accept(p)
    act.use(p, week.week(p).take[0].containers[0])
    appetite.set_table(p, 0, p.today + timedelta(days=1))
    assert "0 at the table" in undo.undo(p).message
    assert appetite.appetite(p).sit(p.today + timedelta(days=1)) == p.people
    assert week.accepted(p) is not None
    assert "used" in undo.undo(p).message
    assert week.accepted(p) is not None
    assert "the week: accepted" in undo.undo(p).message
    assert week.accepted(p) is None
    assert len(p.events) == before + 6, "each of the three, and its undoing"


def test_ceilings_and_wishes_go_back_to_what_they_were(p: Pantry) -> None:
    appetite.set_ceiling(p, "fish", "2")
    appetite.set_ceiling(p, "fish", "0")
    undo.undo(p)
    assert appetite.appetite(p).groups["fish"] == 2
    undo.undo(p)
    assert "fish" not in appetite.appetite(p).groups
    name = week.week(p).take[-1].containers[0]
    on = [take.day for take in week.week(p).take if name in take.containers]
    wishes.pin(p, name, p.today + timedelta(days=5))
    undo.undo(p)
    assert [take.day for take in week.week(p).take if name in take.containers] == on


def test_what_changed_nothing_is_nothing_to_take_back(p: Pantry) -> None:
    appetite.set_ceiling(p, "fish", "usual")
    last = undo.newest(p)
    assert last is not None
    undo.undo(p)
    assert undo.newest(p) != last
