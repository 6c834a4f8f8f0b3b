"""What a note says of some containers is held against all until somebody says which; of a pile the
bad ones are taken out."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import undo
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import as_typed, cold_places, tried

BEANS = "5 pint jars green beans, pressure canned, larder, 2 nov, minutes=20 psi=11 canner=dial"
RECORD = (("minutes", "20"), ("psi", "11"), ("seal", "tight"))


@pytest.fixture
def larder(larder: Pantry) -> Pantry:
    return cold_places(larder)


def book(p: Pantry, line: str, note: str) -> str:
    return putup.put_up(p, putup.read(p, as_typed(line, note))).code


def verdicts(p: Pantry, code: str) -> list[Verdict]:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return [p.judge(one).verdict for one in p.containers_of(batch)]


def test_one_lid_is_held_against_all_until_it_is_named(larder: Pantry) -> None:
    code = book(larder, BEANS, "one lid popped up")
    assert set(verdicts(larder, code)) == {Verdict.DO_NOT_TASTE}
    correct(larder, code, process=RECORD, note="good ones")
    assert set(verdicts(larder, code)) == {Verdict.DO_NOT_TASTE}, "which is not said"
    signs.mark(larder, f"{code}/2", "swollen lid")
    assert set(verdicts(larder, code)) == {Verdict.DO_NOT_TASTE}, "a sign lifts nothing"
    correct(larder, code, note="the good ones")
    found = verdicts(larder, code)
    assert found.pop(1) is Verdict.DO_NOT_TASTE
    assert set(found) == {Verdict.UNKNOWN}, "the others are looked at"
    signs.mark(larder, f"{code}/1", "looks sound")
    assert verdicts(larder, code)[0] not in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


def test_only_one_is_one(larder: Pantry) -> None:
    code = book(larder, BEANS, "only one lid popped up")
    signs.mark(larder, f"{code}/2", "swollen lid")
    correct(larder, code, note="fine")
    assert verdicts(larder, code)[0] is Verdict.UNKNOWN


def test_two_lids_are_two_to_name(larder: Pantry) -> None:
    code = book(larder, BEANS, "two lids popped up")
    signs.mark(larder, f"{code}/2", "swollen lid")
    correct(larder, code, process=RECORD, note="fine")
    assert verdicts(larder, code)[0] is Verdict.DO_NOT_TASTE, "one of them is still unnamed"
    signs.mark(larder, f"{code}/3", "swollen lid")
    correct(larder, code, note="fine now")
    assert verdicts(larder, code)[0] is Verdict.UNKNOWN


@pytest.mark.parametrize(
    "note",
    [
        "all but one leaked", "more than one lid popped",
        "not just one lid popped", "at least one lid popped",
        "one lid popped, maybe more", "one jar or so leaked", "one lid popped and another leaked",
        "one lid popped Monday, one Tuesday", "one jar leaked here and one at Ann's",
    ],
)  # fmt: skip
def test_one_that_is_named_answers_no_note_that_speaks_of_more(larder: Pantry, note: str) -> None:
    code = book(larder, BEANS, note)
    signs.mark(larder, f"{code}/2", "swollen lid")
    for number in (1, 3, 4, 5):
        signs.mark(larder, f"{code}/{number}", "looks sound")
    correct(larder, code, note="sorted it")
    assert set(verdicts(larder, code)) == {Verdict.DO_NOT_TASTE}


def test_the_sign_that_answered_a_note_is_not_taken_back_alone(larder: Pantry) -> None:
    code = book(larder, BEANS, "one lid popped up")
    signs.mark(larder, f"{code}/2", "swollen lid")
    sign = undo.newest(larder)
    assert sign is not None
    correct(larder, code, note="looked")
    with pytest.raises(Refused, match="Take that back first"):
        undo.undo(larder, sign.id)
    undo.undo(larder)
    undo.undo(larder, sign.id)
    assert set(verdicts(larder, code)) == {Verdict.DO_NOT_TASTE}


def test_a_pile_is_looked_over_before_its_note_goes(larder: Pantry) -> None:
    code = book(larder, "30 lb carrots, cellar-stored, cellar", "half are rotting")
    with pytest.raises(Refused, match="looks sound"):
        correct(larder, code, note="fine")
    correct(larder, code, note="half are rotting at one end")
    signs.mark(larder, code, "looks sound")
    correct(larder, code, note="fine")
    assert verdicts(larder, code) == [Verdict.SOUND]


def test_it_asks_which(larder: Pantry) -> None:
    assert "which is not said" in tried(larder, BEANS, "one lid popped up").reasons[0]
    assert "which is not said" not in tried(larder, BEANS, "the lids popped up").reasons[0]
    beef = "6 bags ground beef 1 lb, frozen, freezer"
    found = tried(larder, beef, "one bag smelled off")
    assert found.verdict is Verdict.DO_NOT_TASTE
    assert "which is not said" in found.reasons[0]


@pytest.mark.parametrize("note", ["some are rotting", "going soft at the tips", "one is slimy"])
def test_of_a_pile_the_bad_ones_are_taken_out(larder: Pantry, note: str) -> None:
    line = "30 lb carrots, cellar-stored, cellar"
    assert tried(larder, line, note).verdict is Verdict.NEEDS_CARE
    code = book(larder, line, note)
    signs.mark(larder, code, "looks sound")
    assert verdicts(larder, code) == [Verdict.SOUND]
    correct(larder, code, note="a few more are rotting")
    assert verdicts(larder, code) == [Verdict.NEEDS_CARE], "a look before it says nothing of it"


def test_cracked_eggs_are_taken_out_of_the_others(larder: Pantry) -> None:
    assert tried(larder, "30 eggs, fridge", "two are cracked").verdict is Verdict.NEEDS_CARE
    assert tried(larder, "30 eggs, fridge", "cracked").verdict is Verdict.DISCARD


@pytest.mark.parametrize("note", ["rotting", "most of them are rotten", "all slimy"])
def test_a_pile_that_is_bad_is_discarded(larder: Pantry, note: str) -> None:
    line = "30 lb carrots, cellar-stored, cellar"
    assert tried(larder, line, note).verdict is Verdict.DISCARD
