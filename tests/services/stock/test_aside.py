"""What is said beside the log is taken back in its turn with what is booked."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, week, wishes
from pantry_tui.services.stock import act

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(demo: Pantry) -> Pantry:
    return demo


def test_the_last_thing_goes_first_booked_or_said(p: Pantry) -> None:
    before = len(p.events)
    week.accept(p)
    act.use(p, week.week(p).take[0].containers[0])
    appetite.set_table(p, 0, p.today + timedelta(days=1))
    assert "nobody at home" in act.undo(p).message
    assert appetite.appetite(p).sit(p.today + timedelta(days=1)) == p.people
    assert week.accepted(p) is not None
    assert "used" in act.undo(p).message
    assert week.accepted(p) is not None
    assert "Kept the week" in act.undo(p).message
    assert week.accepted(p) is None
    assert len(p.events) == before + 2, "the use and its undoing"


def test_ceilings_and_wishes_go_back_to_what_they_were(p: Pantry) -> None:
    appetite.set_ceiling(p, "fish", "2")
    appetite.set_ceiling(p, "fish", "0")
    act.undo(p)
    assert appetite.appetite(p).groups["fish"] == 2
    act.undo(p)
    assert "fish" not in appetite.appetite(p).groups
    name = week.week(p).take[-1].containers[0]
    on = [take.day for take in week.week(p).take if name in take.containers]
    wishes.pin(p, name, p.today + timedelta(days=5))
    act.undo(p)
    assert [take.day for take in week.week(p).take if name in take.containers] == on


def test_what_changed_nothing_is_nothing_to_take_back(p: Pantry) -> None:
    appetite.set_ceiling(p, "fish", "usual")
    last = p.last_standing()
    assert last is not None
    act.undo(p)
    assert p.last_standing() != last
