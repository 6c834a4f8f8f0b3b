"""What a batch is and how it is kept can be put right: judged anew, said where that makes it
milder, and refused where what was done since rests on it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.inkeys import in_keys
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.parted import TWO_RECORDS, _of_batch
from pantry_tui.core.words import Method, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.books.logbook import log
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, places, undo
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.view import due
from tests.furnished import furnished

TODAY = date(2026, 11, 25)
FIRST, SECOND = "17957855591060000054da1cb2", "179578555917100000c87feab7"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(tmp_path, TODAY, ("larder",), ["3 pint jars dill, dried, larder"]) as pantry:
        yield pantry


def _one(p: Pantry) -> str:
    return due(p)[0].code


def test_another_food_and_method_are_judged_as_if_they_had_been_said_at_first(p: Pantry) -> None:
    code = _one(p)
    done = correct(p, code, food="dill pickles", method="vinegar pickle")
    assert "until now dill" in done.message
    [row] = due(p)
    made = put_up(p, read(p, "3 pint jars dill pickles, vinegar pickle, larder"))
    twin = next(one for one in due(p) if one.code == made.code)
    assert (row.food, row.method) == ("dill pickles", Method.VINEGAR_PICKLE)
    assert (row.verdict, row.best_by, row.reasons) == (twin.verdict, twin.best_by, twin.reasons)
    assert "it is dill pickles, vinegar pickle" in log(p, code)[-1]


def test_what_is_stored_is_what_the_log_says(p: Pantry) -> None:
    correct(p, _one(p), food="beets")
    assert verify(p.path, TODAY).ok
    undo.undo(p)
    assert due(p)[0].food == "dill"
    undo.redo(p)
    assert due(p)[0].food == "beets"


def test_a_milder_verdict_is_said_and_a_deadly_record_is_no_sound_jar(p: Pantry) -> None:
    beans = "2 pint jars runner beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
    code = put_up(p, read(p, f"{beans}, altitude=300ft")).code
    correct(p, code, method="boiling-water canned")
    row = next(one for one in due(p) if one.code == code)
    assert not row.usable
    assert row.verdict not in (Verdict.SOUND, Verdict.EAT_SOON)
    back = correct(p, code, method="pressure canned")
    assert "milder" in back.message


def test_what_was_begun_keeps_its_method_and_the_line_comes_back(p: Pantry) -> None:
    code = _one(p)
    act.open_(p, code)
    with pytest.raises(Refused, match="rests on it") as refused:
        correct(p, code, method="freeze-dried")
    line = refused.value.message.rpartition(": ")[2]
    again = read(p, line)
    assert (again.food, again.method, again.count) == ("dill", Method.DRIED, 3)
    assert (again.problems, again.unread) == ((), ())


def test_a_ferment_that_stood_finished_is_put_up_anew(p: Pantry) -> None:
    with pytest.raises(Refused, match="otherwise since then"):
        correct(p, _one(p), method="lactic ferment")


@pytest.mark.parametrize(("count", "how"), [(5, "count the place"), (2, "missing")])
def test_how_many_says_what_to_do(p: Pantry, count: int, how: str) -> None:
    with pytest.raises(Refused, match=how) as refused:
        correct(p, _one(p), count=count)
    assert "3 pint jars dill" in refused.value.message


def test_a_heap_says_what_is_in_it_and_not_that_it_is_one(p: Pantry) -> None:
    code = put_up(p, read(p, "3 butternut squash, larder")).code
    with pytest.raises(Refused, match="one with 3 in it: count the place"):
        correct(p, code, count=4)
    with pytest.raises(BadInput, match="3 are recorded already"):
        correct(p, code, count=3)


def test_what_changes_nothing_is_not_booked(p: Pantry) -> None:
    code, before = _one(p), len(log(p))
    with pytest.raises(BadInput, match="is dill already"):
        correct(p, code, food="dill")
    with pytest.raises(BadInput, match="is dill here, which"):
        correct(p, code, food="dill weed")
    with pytest.raises(BadInput, match="is dried already"):
        correct(p, code, method="dried")
    assert len(log(p)) == before
    assert "beets" in correct(p, code, food="beets", method="dried").message


def test_what_is_now_to_be_discarded_has_become_no_milder(p: Pantry) -> None:
    places.add(p, "fridge", "fridge")
    code = put_up(p, read(p, "chicken soup, cooked meal, fridge")).code
    done = correct(p, code, made="unknown")
    row = next(one for one in due(p) if one.code == code)
    assert row.verdict is Verdict.DISCARD
    assert "milder" not in done.message


@pytest.mark.parametrize("food", ["dill pickels", "", "beans"])
def test_a_food_that_is_none_or_several_is_asked_about(p: Pantry, food: str) -> None:
    with pytest.raises(BadInput):
        correct(p, _one(p), food=food)
    assert due(p)[0].food == "dill"


def test_two_stores_that_put_it_right_otherwise_leave_it_in_doubt() -> None:
    def events(method: Method, id_: str) -> list[Event]:
        payload = said.Correct("b", method=method)
        return [Event(id_, "2026-11-25T10:00:00+00:00", TODAY, payload)]

    [added] = _of_batch(events(Method.DRIED, FIRST), events(Method.FROZEN, SECOND))
    assert isinstance(added.payload, said.Correct)
    assert added.payload.doubt == (TWO_RECORDS,)
    assert not list(_of_batch(events(Method.DRIED, FIRST), events(Method.DRIED, SECOND)))


@pytest.mark.parametrize("more", [{"note": "x"}, {"size": "half-gallon jars"}, {"made": "unknown"}])
def test_what_a_later_correction_found_is_not_believed_of_the_food_before(
    p: Pantry, more: dict[str, str]
) -> None:
    """Peaches have no process in half-gallon jars, apple juice has (USDA AIB 539)."""
    code = put_up(p, read(p, "2 half-gallon jars peaches, boiling-water canned, larder")).code

    def row() -> DueRow:
        return next(one for one in due(p) if one.code == code)

    assert not row().usable
    correct(p, code, food="apple juice")
    wrong = undo.newest(p)
    assert wrong is not None
    assert row().usable
    correct(p, code, **more)  # type: ignore[arg-type]
    undo.undo(p, wrong.id)
    assert (row().food, row().usable) == ("peaches", False)
    undo.redo(p)
    assert row().usable
    assert verify(p.path, p.today).ok


@pytest.mark.parametrize("method", ["dried", "frozen", "vinegar pickle"])
def test_what_was_canned_for_too_short_a_time_is_no_other_food_by_a_word(
    p: Pantry, method: str
) -> None:
    line = "3 pint jars runner beans, pressure canned, larder, minutes=5 psi=11 canner=dial"
    code = put_up(p, read(p, line)).code
    with pytest.raises(Refused, match="psi=11"):
        correct(p, code, method=method)
    row = next(one for one in due(p) if one.code == code)
    assert (row.method, row.usable) == (Method.PRESSURE, False)
    correct(p, code, method="boiling-water canned")
    assert not next(one for one in due(p) if one.code == code).usable


def test_how_much_there_is_is_counted_and_no_detail(p: Pantry) -> None:
    with pytest.raises(BadInput, match="count the place"):
        correct(p, _one(p), process=[("amount", "18 lb")])


def test_bought_food_in_a_freezer_says_how_it_is_put_right(p: Pantry) -> None:
    places.add(p, "chest", "freezer")
    code = put_up(p, read(p, "1 pack pork, frozen, chest")).code
    correct(p, code, method="bought in")
    row = next(one for one in due(p) if one.code == code)
    assert row.verdict is Verdict.UNKNOWN
    assert f"`correct {code} --method frozen`" in row.reasons[0]
    assert "correct" not in in_keys(row.reasons[0]) or "`" not in in_keys(row.reasons[0])
    correct(p, code, method="frozen")
    row = next(one for one in due(p) if one.code == code)
    assert row.verdict is Verdict.SOUND
