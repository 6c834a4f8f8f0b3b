"""What a note says of some containers is held against all until somebody says which; of a pile the
bad ones are taken out."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.note_before import ASKS_WHICH, QUOTES, names_enough
from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import undo
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import as_typed, tried

BEANS = "5 pint jars green beans, pressure canned, larder, 2 nov, minutes=20 psi=11 canner=dial"
RECORD = (("minutes", "20"), ("psi", "11"), ("seal", "tight"))


def book(p: Pantry, line: str, note: str) -> str:
    return putup.put_up(p, putup.read(p, as_typed(line, note))).code


def verdicts(p: Pantry, code: str) -> list[Verdict]:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return [p.judge(one).verdict for one in p.containers_of(batch)]


def test_one_lid_is_held_against_all_until_it_is_named(chilled: Pantry) -> None:
    code = book(chilled, BEANS, "one lid popped up")
    assert set(verdicts(chilled, code)) == {Verdict.DO_NOT_TASTE}
    correct(chilled, code, process=RECORD, note="good ones")
    assert set(verdicts(chilled, code)) == {Verdict.DO_NOT_TASTE}, "which is not said"
    signs.mark(chilled, f"{code}/2", "swollen lid")
    assert set(verdicts(chilled, code)) == {Verdict.DO_NOT_TASTE}, "a sign lifts nothing"
    correct(chilled, code, note="the good ones")
    found = verdicts(chilled, code)
    assert found.pop(1) is Verdict.DO_NOT_TASTE
    assert set(found) == {Verdict.UNKNOWN}, "the others are looked at"
    signs.mark(chilled, f"{code}/1", "looks sound")
    assert verdicts(chilled, code)[0] not in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


def test_only_one_is_one(chilled: Pantry) -> None:
    code = book(chilled, BEANS, "only one lid popped up")
    signs.mark(chilled, f"{code}/2", "swollen lid")
    correct(chilled, code, note="fine")
    assert verdicts(chilled, code)[0] is Verdict.UNKNOWN


def test_two_lids_are_two_to_name(chilled: Pantry) -> None:
    code = book(chilled, BEANS, "two lids popped up")
    signs.mark(chilled, f"{code}/2", "swollen lid")
    correct(chilled, code, process=RECORD, note="fine")
    assert verdicts(chilled, code)[0] is Verdict.DO_NOT_TASTE, "one of them is still unnamed"
    signs.mark(chilled, f"{code}/3", "swollen lid")
    correct(chilled, code, note="fine now")
    assert verdicts(chilled, code)[0] is Verdict.UNKNOWN


@pytest.mark.parametrize(
    "note",
    [
        "all but one leaked", "more than one lid popped",
        "not just one lid popped", "at least one lid popped",
        "one lid popped, maybe more", "one jar or so leaked", "one lid popped and another leaked",
        "one lid popped Monday, one Tuesday", "one jar leaked here and one at Ann's",
        f"one lid popped; {'the rest are good so far, '* 9}; three jars leaked",
    ],
)  # fmt: skip
def test_one_that_is_named_answers_no_note_that_speaks_of_more(chilled: Pantry, note: str) -> None:
    code = book(chilled, BEANS, note)
    signs.mark(chilled, f"{code}/2", "swollen lid")
    for number in (1, 3, 4, 5):
        signs.mark(chilled, f"{code}/{number}", "looks sound")
    correct(chilled, code, note="sorted it")
    assert set(verdicts(chilled, code)) == {Verdict.DO_NOT_TASTE}


def test_a_quotation_that_was_cut_is_never_answered() -> None:
    """Logs of before hold quotations of 200 characters, which may have said more."""
    for length, enough in ((199, True), (200, False), (201, True)):
        note = "one lid popped".ljust(length, "x")
        assert names_enough(f"{QUOTES}{note!r}: {ASKS_WHICH}not checked.", 1) is enough


@pytest.mark.parametrize("note", ["from the allotment", "with allspice", "that bothers nobody"])
def test_a_word_that_begins_with_all_is_not_all(chilled: Pantry, note: str) -> None:
    assert "which is not said" in tried(chilled, BEANS, f"one lid popped {note}").reasons[0]
    line = "30 lb carrots, cellar-stored, cellar"
    assert tried(chilled, line, f"some are rotting {note}").verdict is Verdict.NEEDS_CARE


@pytest.mark.parametrize("note", ["all of one lot leaked", "both leaked", "50% leaked", "every 1"])
def test_what_is_said_of_all_asks_nobody_which(chilled: Pantry, note: str) -> None:
    assert not any("which is not said" in one for one in tried(chilled, BEANS, note).reasons)


def test_the_sign_that_answered_a_note_is_not_taken_back_alone(chilled: Pantry) -> None:
    code = book(chilled, BEANS, "one lid popped up")
    signs.mark(chilled, f"{code}/2", "swollen lid")
    sign = undo.newest(chilled)
    assert sign is not None
    correct(chilled, code, note="looked")
    with pytest.raises(Refused, match="Take that back first"):
        undo.undo(chilled, sign.id)
    undo.undo(chilled)
    undo.undo(chilled, sign.id)
    assert set(verdicts(chilled, code)) == {Verdict.DO_NOT_TASTE}


def test_a_pile_is_looked_over_before_its_note_goes(chilled: Pantry) -> None:
    code = book(chilled, "30 lb carrots, cellar-stored, cellar", "half are rotting")
    with pytest.raises(Refused, match="looks sound"):
        correct(chilled, code, note="fine")
    correct(chilled, code, note="half are rotting at one end")
    signs.mark(chilled, code, "looks sound")
    correct(chilled, code, note="fine")
    assert verdicts(chilled, code) == [Verdict.SOUND]


def test_it_asks_which(chilled: Pantry) -> None:
    assert "which is not said" in tried(chilled, BEANS, "one lid popped up").reasons[0]
    assert "which is not said" not in tried(chilled, BEANS, "the lids popped up").reasons[0]
    beef = "6 bags ground beef 1 lb, frozen, freezer"
    found = tried(chilled, beef, "one bag smelled off")
    assert found.verdict is Verdict.DO_NOT_TASTE
    assert "which is not said" in found.reasons[0]


@pytest.mark.parametrize("note", ["some are rotting", "going soft at the tips", "one is slimy"])
def test_of_a_pile_the_bad_ones_are_taken_out(chilled: Pantry, note: str) -> None:
    line = "30 lb carrots, cellar-stored, cellar"
    assert tried(chilled, line, note).verdict is Verdict.NEEDS_CARE
    code = book(chilled, line, note)
    signs.mark(chilled, code, "looks sound")
    assert verdicts(chilled, code) == [Verdict.SOUND]
    correct(chilled, code, note="a few more are rotting")
    assert verdicts(chilled, code) == [Verdict.NEEDS_CARE], "a look before it says nothing of it"


def test_cracked_eggs_are_taken_out_of_the_others(chilled: Pantry) -> None:
    assert tried(chilled, "30 eggs, fridge", "two are cracked").verdict is Verdict.NEEDS_CARE
    assert tried(chilled, "30 eggs, fridge", "cracked").verdict is Verdict.DISCARD


@pytest.mark.parametrize("note", ["rotting", "most of them are rotten", "all slimy"])
def test_a_pile_that_is_bad_is_discarded(chilled: Pantry, note: str) -> None:
    line = "30 lb carrots, cellar-stored, cellar"
    assert tried(chilled, line, note).verdict is Verdict.DISCARD
