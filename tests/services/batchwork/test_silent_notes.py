"""A note that is held against nothing speaks for nothing, and it is said so; one that was changed
goes on standing as what it said before."""

from __future__ import annotations

import pytest

from pantry_tui.app.texts import batch_text
from pantry_tui.cli.printing import putup as printed
from pantry_tui.cli.printing import stock as shown
from pantry_tui.core.keeping.doubt import NOTE_STANDS
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import one_batch
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.undo import undo
from pantry_tui.store import log
from tests.services.batchwork.noting import as_typed, tried

HONEY = "2 half-pint jars honey, larder"
BEANS = "3 pint jars runner beans, pressure canned, larder, minutes=20, psi=11, altitude=500ft"


def _booked(p: Pantry, line: str, note: str = "") -> str:
    return putup.put_up(p, putup.read(p, as_typed(line, note))).code


def _shown(p: Pantry, code: str) -> tuple[str, str]:
    view = one_batch.show(p, code)
    return "\n".join(shown.batch(view)), batch_text(view)


@pytest.mark.parametrize("line", [HONEY, BEANS])
def test_what_raised_nothing_is_said_to_decide_nothing(larder: Pantry, line: str) -> None:
    code = _booked(larder, line, "from Anna")
    for text in _shown(larder, code):
        assert text.count(NOTE_STANDS) == 1
        assert f"`correct {code}`" in text
    bare = _booked(larder, line)
    assert [text for text in _shown(larder, bare) if NOTE_STANDS in text] == []


@pytest.mark.parametrize(
    ("line", "note"),
    [
        (HONEY, "with raw garlic"), (BEANS, "gauge dropped below 10 for a while"),
        ("3 jars dried apples, larder", "still damp"),
    ],
)  # fmt: skip
def test_what_raised_something_says_that_alone(larder: Pantry, line: str, note: str) -> None:
    made = tried(larder, line, note)
    assert any(note in one for one in made.reasons)
    assert made.note_aside == ""
    assert [
        text for text in _shown(larder, _booked(larder, line, note)) if NOTE_STANDS in text
    ] == []


def test_it_is_said_in_the_answer_once(larder: Pantry) -> None:
    made = putup.put_up(larder, putup.read(larder, f'{HONEY}, note="from Anna"'))
    assert "\n".join(printed.putup(made)).count(NOTE_STANDS) == 1
    assert correct(larder, made.code, note="heather").message.count(NOTE_STANDS) == 1
    assert NOTE_STANDS not in correct(larder, made.code, size="pint").message
    assert NOTE_STANDS not in correct(larder, made.code, note="").message
    dry = tried(larder, HONEY, "from Anna")
    assert dry.note_aside == f"{NOTE_STANDS}."


def test_the_foods_own_name_as_it_was_typed_is_no_note_to_be_told_of(larder: Pantry) -> None:
    made = tried(larder, "2 lb mince, bought in, fridge", "")
    assert (made.reading.food, made.reading.note) == ("ground beef", "mince")
    assert made.note_aside == ""
    assert tried(larder, "2 lb mince, bought in, fridge", "from Anna").note_aside


def test_a_changed_note_says_what_it_said_before_and_how_that_is_lifted(larder: Pantry) -> None:
    code = _booked(larder, HONEY)
    correct(larder, code, note="with raw garlic")
    (batch,) = larder.stock.batches.values()
    assert "Its note says 'with raw garlic'" in batch.doubt[0]
    for note in ("lovely", "heather"):
        correct(larder, code, note=note)
        (batch,) = larder.stock.batches.values()
        assert len(batch.doubt) == 1
        assert batch.doubt[0].startswith("Its note said 'with raw garlic' before")
        assert f"`log {code}`" in batch.doubt[0]
        assert "each by `undo ID`" in batch.doubt[0]
    for event in reversed(list(log.of_batch(larder.store.db, batch.id))[1:]):
        judged = larder.judge(larder.containers_of(larder.stock.batches[batch.id])[0])
        assert judged.verdict is Verdict.UNKNOWN
        undo(larder, event.id)
    (batch,) = larder.stock.batches.values()
    assert batch.doubt == ()
    assert larder.judge(larder.containers_of(batch)[0]).verdict is Verdict.SOUND


def test_food_thrown_away_by_a_note_stays_so_when_the_note_is_changed(larder: Pantry) -> None:
    code = _booked(larder, "2 boxes chicken soup, fridge", "left out overnight")
    correct(larder, code, note="chilled at once")
    (batch,) = larder.stock.batches.values()
    assert batch.doubt[0].startswith("Its note said 'left out overnight' before")
    assert larder.judge(larder.containers_of(batch)[0]).verdict is Verdict.DISCARD


def _doubts(larder: Pantry) -> tuple[str, ...]:
    (batch,) = larder.stock.batches.values()
    return batch.doubt


def test_a_size_that_is_put_right_answers_no_earlier_note(larder: Pantry) -> None:
    code = _booked(larder, HONEY)
    correct(larder, code, note="with raw garlic")
    correct(larder, code, note="lovely", size="pint")
    assert _doubts(larder)[0].startswith("Its note said 'with raw garlic' before")
    correct(larder, code, size="half-pint")
    assert _doubts(larder)[0].startswith("Its note said 'with raw garlic' before")


def test_an_earlier_note_is_answered_by_what_it_asks_for_and_by_nothing_else(
    larder: Pantry,
) -> None:
    beans = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
    code = _booked(larder, f"{beans} altitude=400", "only about 8 psi")
    correct(larder, code, note="lovely", process=[("headspace", "1 in")])
    assert any("said 'only about 8 psi' before" in one for one in _doubts(larder))
    correct(larder, code, process=[("psi", "11")])
    assert not any("8 psi" in one for one in _doubts(larder))
