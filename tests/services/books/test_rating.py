"""What was said at table, and what is reserved: the log, the lists, undo, and never a verdict."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.words import Rating, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.logbook import log
from pantry_tui.services.books.rating import split, taste, verdicts
from pantry_tui.services.books.year import years
from pantry_tui.services.lookup import signs
from pantry_tui.services.lookup.recall import recall
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.week import week
from pantry_tui.services.plan.wishes import pin
from pantry_tui.services.stock import act, one_batch, reserve, undo, view
from pantry_tui.services.stock import count as rounds

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


@pytest.fixture
def code(p: Pantry) -> str:
    return up(p, "4 pint jars peaches, boiling-water canned, larder, 2026-08-10")


def kept(p: Pantry) -> list[str]:
    return [one for row in view.due(p) if row.reserved for one in row.container_ids]


def test_a_taste_stands_in_the_batch_the_log_the_search_and_the_year(p: Pantry, code: str) -> None:
    taste(p, code, "change", "less sugar")
    taste(p, code, "not-again", "too soft")
    shown = one_batch.show(p, code)
    assert [line.split(": ", 1)[1] for line in shown.tasted] == [
        "change: less sugar",
        "not again: too soft",
    ]
    assert "rated" in shown.history[-1]
    assert "not again" in shown.history[-1]
    assert [row.code for row in view.find(p, "not again")] == [code]
    assert [row.code for row in view.find(p, "less sugar")] == [code]
    beside = f"not again: {code} (too soft)"
    assert verdicts(p, "peaches") == (beside,)
    assert years(p, "peaches")[-1].tasted == (beside,)
    assert outlook(p).foods[0].tasted == (beside,)
    undo.undo(p)
    assert p.stock.batches[p.batch(code).id].rated[-1].rating is Rating.CHANGE  # type: ignore[union-attr]


def test_a_batch_is_tasted_when_it_is_eaten_up_and_odd_words_are_refused(
    p: Pantry, code: str
) -> None:
    act.use(p, code, "4")
    taste(p, f"{code}/2", "again")
    assert one_batch.show(p, code).tasted
    assert split(["Not", "again", "too", "sweet"]) == ("Not again", "too sweet")
    with pytest.raises(BadInput, match="again, not-again, change"):
        taste(p, code, "lovely")
    with pytest.raises(BadInput):
        taste(p, "9ZZ", "again")


def test_what_is_kept_is_passed_over_unless_it_is_named(p: Pantry, code: str) -> None:
    reserve.reserve(p, code, 3, "Aunt Sunniva")
    assert len(kept(p)) == 3
    act.use(p, code)
    with pytest.raises(Refused, match="reserved for Aunt Sunniva"):
        act.use(p, code)
    with pytest.raises(Refused, match="reserved for Aunt Sunniva"):
        act.open_(p, code)
    named = kept(p)[0]
    done = act.open_(p, named)
    assert any("was reserved for Aunt Sunniva" in one for one in done.warnings)
    assert named not in kept(p), "what is opened is no gift any more"
    assert len(kept(p)) == 2


def test_a_gift_takes_what_was_kept_for_it(p: Pantry, code: str) -> None:
    reserve.reserve(p, f"{code}/2", words="Aunt Sunniva")
    reserve.reserve(p, f"{code}/3", words="gift")
    assert act.give(p, code, to="aunt sunniva").containers == (f"{code}/2",)
    undo.undo(p)
    assert act.give(p, code, to="the neighbours").containers == (f"{code}/3",)
    undo.undo(p)
    done = act.give(p, code, 4, to="the neighbours")
    assert done.containers[0] == f"{code}/3"
    assert done.containers[-1] == f"{code}/2"
    assert any("Sunniva" in one for one in done.warnings)


def test_nothing_unfit_is_kept_or_given(p: Pantry, code: str) -> None:
    reserve.reserve(p, f"{code}/1", words="gift")
    signs.mark(p, f"{code}/1", "swollen lid")
    with pytest.raises(Refused):
        act.give(p, f"{code}/1")
    with pytest.raises(Refused, match="Look at every container"):
        act.give(p, code, 3)
    for number in (2, 3, 4):
        signs.mark(p, f"{code}/{number}", "looks sound")
    with pytest.raises(Refused):
        act.give(p, code, 4)
    assert f"{code}/1" not in act.give(p, code, 3).containers
    with pytest.raises(Refused):
        act.give(p, code, 1)
    with pytest.raises(Refused):
        reserve.reserve(p, f"{code}/1")


def test_keeping_apart_never_touches_a_verdict_or_a_date(p: Pantry, code: str) -> None:
    before = {(r.verdict, r.best_by, r.discard_after) for r in view.due(p)}
    reserve.reserve(p, code, 2)
    rows = view.due(p)
    assert {(r.verdict, r.best_by, r.discard_after) for r in rows} == before
    assert [r.remark for r in rows if r.reserved] == [" (for gift)"]
    p.today = date(2028, 1, 1)
    assert {r.verdict for r in view.due(p)} == {Verdict.PAST_BEST}
    assert len(recall(p, code)) == 4
    act.discard(p, code, 4, "past its date")
    assert kept(p) == []


def test_free_undo_and_the_counts_apart(p: Pantry, code: str) -> None:
    reserve.reserve(p, code, 3)
    (peaches,) = outlook(p).foods
    assert (peaches.servings, peaches.reserved) == (4, 3)
    year = years(p, "peaches")[-1]
    assert (year.closing, year.reserved) == (4, 3)
    assert len(view.find(p, "for gift")) == 1
    reserve.free(p, code, 1)
    assert len(kept(p)) == 2
    reserve.free(p, code)
    assert kept(p) == []
    undo.undo(p)
    assert len(kept(p)) == 2
    assert any("reserved" in line and "for gift" in line for line in log(p, code))
    with pytest.raises(Refused, match="Only 2"):
        reserve.free(p, code, 3)
    with pytest.raises(Refused, match="Only 2"):
        reserve.reserve(p, code, 3)
    with pytest.raises(BadInput):
        reserve.reserve(p, code, 0)
    with pytest.raises(BadInput):
        reserve.reserve(p, code, 1, "  ")


def test_a_round_takes_what_was_eaten_unseen_from_the_table_stock(p: Pantry, code: str) -> None:
    reserve.reserve(p, f"{code}/1")
    rounds.from_counts(p, p.find_place("larder"), {code: 2})
    rounds.finish(p, p.find_place("larder"))
    gone = {c.number for c in p.stock.containers.values() if not c.here}
    assert len(gone) == 2
    assert 1 not in gone


def test_the_week_leaves_a_gift_alone_unless_it_is_named(p: Pantry, code: str) -> None:
    p.today = date(2027, 7, 25)  # a fortnight before its date: all of it would be proposed
    reserve.reserve(p, code, 4)
    assert [take.code for take in week(p).take] == []
    with pytest.raises(Refused, match="reserved for gift"):
        pin(p, code, date(2027, 7, 27))
    pin(p, f"{code}/2", date(2027, 7, 27))
    assert [take.containers for take in week(p).take] == [(f"{code}/2",)]
    reserve.free(p, code)
    assert week(p).take
