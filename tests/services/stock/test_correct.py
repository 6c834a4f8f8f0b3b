"""The record can be put right; the dates follow, and the old record stays in the log."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.log.payloads import Correct
from pantry_tui.core.model import Held
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.logbook import log
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, one_batch, places, readings, undo
from pantry_tui.services.stock.correct import correct

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    line = "3 pint jars snap beans, pressure canned, larder, 2026-08-01 minutes=20 psi=11"
    putup.put_up(larder, putup.read(larder, line))
    return larder


def test_a_wrong_day_is_put_right(p: Pantry) -> None:
    act.open_(p, "2A")
    opened = {row.state: row for row in one_batch.show(p, "2A").rows}
    correct(p, "2A", made="2026-07-01")
    after = {row.state: row for row in one_batch.show(p, "2A").rows}
    assert all(row.best_by == date(2027, 7, 1) for row in after.values())
    assert [r.discard_after for r in after.values()] == [r.discard_after for r in opened.values()]
    assert any("corrected" in line for line in log(p, "2A"))
    undo.undo(p)
    assert {row.best_by for row in one_batch.show(p, "2A").rows} == {date(2027, 8, 1)}
    correct(p, "2A", made="unknown")
    assert {row.best_by for row in one_batch.show(p, "2A").rows} == {None}


def test_a_process_that_was_too_short_takes_the_date_away(p: Pantry) -> None:
    said = correct(p, "2A", process=[("minutes", "10")])
    assert said.warnings
    (row,) = one_batch.show(p, "2A").rows
    assert row.verdict is Verdict.DO_NOT_TASTE
    assert row.best_by is None
    correct(p, "2A", process=[("minutes", "20")], note="timer misread")
    assert one_batch.show(p, "2A").rows[0].verdict is Verdict.SOUND
    assert one_batch.show(p, "2A").note == "timer misread"


def test_what_cannot_be_is_refused(p: Pantry) -> None:
    act.use(p, "2A")
    with pytest.raises(BadInput):
        correct(p, "2A")
    with pytest.raises(BadInput):
        correct(p, "9Z", made="today")
    with pytest.raises(BadInput):
        correct(p, "2A", made="2027-01-01")


def test_a_place_is_changed_from_today_on(p: Pantry) -> None:
    before = one_batch.show(p, "2A").rows[0].best_by
    places.change(p, "larder", temp_f=65, capacity=50)
    place = p.find_place("larder")
    assert (place.target, place.capacity) == (65, 50)
    assert [fact.target_f for fact in place.facts if isinstance(fact, Held)] == [60, 65]
    places.change(p, "larder", name="north larder", climate="cellar")
    assert p.find_place("north larder").climate.value == "cellar"
    after = one_batch.show(p, "2A").rows[0].best_by
    assert before is not None
    assert after is not None
    assert before - timedelta(days=1) <= after <= before, "a minute at 65 F counts, never more"
    readings.read(p, "north larder", 55)
    assert p.find_place("north larder").temperature_f == 55
    with pytest.raises(BadInput):
        places.change(p, "north larder", climate="tropical")


def test_a_note_changes_no_judgement(p: Pantry) -> None:
    """What stood against a batch on its day stands, whatever a publication or the household's
    altitude says by now: only what a process is judged by may lift it."""
    batch = p.stock.batches[next(iter(p.stock.batches))]
    p.book(Correct(batch.id, doubt=("It was found too short then.",), possible="Freeze it."))
    was = p.stock.batches[batch.id].doubt, one_batch.show(p, "2A").rows
    assert "It was found too short then." in was[0]
    correct(p, "2A", note="for Aunt Sunniva")
    correct(p, "2A", made="2026-08-02")
    correct(p, "2A", made="2026-08-01")
    now = p.stock.batches[batch.id]
    assert (now.doubt, now.note) == (was[0], "for Aunt Sunniva")
    assert [(row.verdict, row.usable, row.reasons) for row in one_batch.show(p, "2A").rows] == [
        (row.verdict, row.usable, row.reasons) for row in was[1]
    ]
    # As older programs wrote it: a note with nothing against the batch.
    p.book(Correct(batch.id, note="oak shelf", doubt=(), possible=""))
    now = p.stock.batches[batch.id]
    assert (now.doubt, now.possible, now.note) == (was[0], "Freeze it.", "oak shelf")
    correct(p, "2A", process=[("minutes", "25")])
    assert p.stock.batches[batch.id].doubt == ()
