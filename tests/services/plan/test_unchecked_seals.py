"""Canned jars of which nobody has booked that the seals held: no plan lays them on a day on which
they will need care, and wherever they are offered the reason says to check the seals first."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.safety import seals
from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.reference.tending import load_tending
from pantry_tui.services.batchwork import tending
from pantry_tui.services.output import labels, paper
from pantry_tui.services.output.plain_words import plainly
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.rows import WeekView
from pantry_tui.services.stock import act, places, undo, view
from tests.services.plan.putting_up import up

MADE = date(2026, 11, 24)
TODAY = MADE + timedelta(days=1)
#: The second day after the one on which they were to be looked at.
CARE = MADE + timedelta(days=3)
VENISON = "6 pint jars venison, pressure canned, minutes=75 psi=11 canner=dial pack=hot, larder, "
PEACHES = "6 pint jars peaches, boiling-water canned, minutes=20 pack=hot, larder, "


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "s.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "s.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("chest", "freezer")):
            places.add(pantry, name, climate)
        yield pantry


def days_of(found: WeekView, code: str) -> set[date]:
    return {day for one in (*found.take, *found.beside) if one.code == code for day in one.days}


def offered(found: WeekView, code: str) -> list[tuple[str, ...]]:
    rows = (*found.take, *found.beside, *found.more, *found.kept)
    return [one.reasons for one in rows if one.code == code]


@pytest.mark.parametrize("line", [VENISON, PEACHES])
def test_it_lies_on_no_day_on_which_it_will_need_care(p: Pantry, line: str) -> None:
    code = up(p, line + MADE.isoformat())
    found = weeks.week(p)
    assert all(day < CARE for day in days_of(found, code))
    reasons = offered(found, code)
    assert reasons
    assert all(seals.FIRST in one for one in reasons)
    assert any(f"Not planned from {CARE:%a} {CARE.day} Nov" in note for note in found.notes)
    tending.tend(p, code)
    found = weeks.week(p)
    assert max(days_of(found, code)) >= CARE or line == PEACHES
    assert not any(seals.FIRST in one for one in offered(found, code))
    assert not any("Not planned from" in note for note in found.notes)


@pytest.mark.parametrize("line", [VENISON, PEACHES])
def test_a_week_that_begins_then_has_none(p: Pantry, line: str) -> None:
    code = up(p, line + MADE.isoformat())
    assert not offered(weeks.week(p, CARE), code)


def test_what_the_plan_foresees_is_what_the_day_finds(p: Pantry) -> None:
    code = up(p, VENISON + MADE.isoformat())
    for day in (TODAY, CARE - timedelta(days=1), CARE):
        p.today = day
        row = next(one for one in view.due(p) if one.code == code)
        assert (row.verdict is Verdict.NEEDS_CARE) is (day >= CARE)
        assert row.standing == (seals.FIRST,)
        assert bool(days_of(weeks.week(p), code)) is (day < CARE)
    with pytest.raises(Refused, match="check the seals"):
        act.open_(p, code)


def test_a_day_before_the_last_fact_foresees_it_too(p: Pantry) -> None:
    code = up(p, VENISON + MADE.isoformat())
    p.today = CARE
    view.due(p)
    p.today = TODAY
    assert all(day < CARE for day in days_of(weeks.week(p), code))


def test_a_step_that_is_late_no_longer_keeps_it_out(p: Pantry) -> None:
    code = up(p, VENISON + MADE.isoformat())
    view.due(p)  # foresees that it will need care, and until when
    later = MADE + timedelta(weeks=9)
    with open_pantry(p.path, later) as fresh:
        weeks.accept(fresh)  # the first thing that is done on that day, before anything is shown
        found = weeks.week(fresh)
        assert next(one for one in view.due(fresh) if one.code == code).verdict is Verdict.SOUND
    assert max(days_of(found, code)) >= later + timedelta(days=3)
    assert all(seals.FIRST in one for one in offered(found, code))


def test_it_cannot_be_put_on_such_a_day(p: Pantry) -> None:
    code = up(p, VENISON + MADE.isoformat())
    wishes.pin(p, code, CARE - timedelta(days=1))
    with pytest.raises(Refused, match="check the seals first"):
        wishes.pin(p, code, CARE)
    tending.tend(p, code)
    wishes.pin(p, code, CARE)
    assert CARE in days_of(weeks.week(p), code)


def test_what_was_planned_once_they_were_checked_is_left_out_when_that_is_taken_back(
    p: Pantry,
) -> None:
    code = up(p, VENISON + MADE.isoformat())
    tending.tend(p, code)
    newest = undo.newest(p)
    assert newest is not None
    weeks.accept(p)
    assert max(days_of(weeks.week(p), code)) >= CARE
    undo.undo(p, newest.id)
    found = weeks.week(p)
    assert all(day < CARE for day in days_of(found, code))
    said = [one.told for one in found.fallen]
    assert any("see to it first" in one and seals.FIRST in one for one in said)


def test_a_supper_that_needs_no_thawing_says_it(p: Pantry) -> None:
    up(p, "20 1 lb packs ground beef, frozen, chest, 2026-11-01")
    code = up(p, VENISON + MADE.isoformat())
    found = weeks.week(p)
    mine = [one for one in found.no_thaw if one.code == code]
    assert all(one.day < CARE and seals.FIRST in one.standing for one in mine)
    named = [
        note for note in found.notes if note.startswith("Ready without thawing") and code in note
    ]
    assert len(named) == bool(mine)
    assert all("check the seals first" in note for note in named)


def test_papers_say_it_and_labels_do_not(p: Pantry) -> None:
    code = up(p, VENISON + MADE.isoformat())
    assert plainly(seals.FIRST) in "\n".join(paper.sheet(p, "larder").notes)
    assert all(seals.FIRST not in one.caution for one in labels.labels(p, [code]))


def test_there_is_such_a_job() -> None:
    asked = {
        method for method, rows in load_tending().items() for r in rows if r.job == seals.CHECK
    }
    assert {"pressure canned", "boiling-water canned", "jam", "vinegar pickle"} <= asked


@pytest.mark.parametrize("line", [VENISON, PEACHES])
def test_that_nobody_asks_for_it_any_more_does_not_settle_it(p: Pantry, line: str) -> None:
    code = up(p, line + MADE.isoformat())
    p.today = MADE + timedelta(days=60)
    assert not any(job.job == seals.CHECK for job in tending.jobs(p))
    assert seals.FIRST in next(one for one in view.due(p) if one.code == code).standing
    tending.tend(p, code)
    assert not next(one for one in view.due(p) if one.code == code).standing


def test_what_came_into_the_log_long_after_is_not_asked_for_it(p: Pantry) -> None:
    code = up(p, VENISON + (MADE - timedelta(days=60)).isoformat())
    assert not next(one for one in view.due(p) if one.code == code).standing
