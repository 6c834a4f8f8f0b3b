"""What a note says of some containers is held against all until somebody says which; of a pile the
bad ones are taken out."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.note_before import (
    asks_which,
    names_enough,
    of_a_changed_note,
    which,
)
from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, undo
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import as_typed, tried

BEANS = "5 pint jars green beans, pressure canned, larder, 2 nov, minutes=20 psi=11 canner=dial"
#: As logs of before have it.
OLD = (
    "Its note says {}: which is not said, so none is eaten until it is (`sign` with its number): "
    "not checked. Put the note right then; the others are looked at one by one."
)
RECORD = (("minutes", "20"), ("psi", "11"), ("seal", "tight"))


def book(p: Pantry, line: str, note: str) -> str:
    return putup.put_up(p, putup.read(p, as_typed(line, note))).code


def verdicts(p: Pantry, code: str) -> list[Verdict]:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return [p.judge(one).verdict for one in p.containers_of(batch)]


def usable(p: Pantry, code: str) -> list[bool]:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return [p.judge(one).usable for one in p.containers_of(batch)]


def test_one_lid_is_held_against_all_until_it_is_named(chilled: Pantry) -> None:
    code = book(chilled, BEANS, "one lid popped up")
    assert set(verdicts(chilled, code)) == {Verdict.UNKNOWN}
    assert not any(usable(chilled, code))
    correct(chilled, code, process=RECORD, note="good ones")
    assert set(verdicts(chilled, code)) == {Verdict.UNKNOWN}, "which is not said"
    signs.mark(chilled, f"{code}/2", "swollen lid")
    assert set(verdicts(chilled, code)) == {Verdict.UNKNOWN, Verdict.DO_NOT_TASTE}
    assert not any(usable(chilled, code)), "a sign lifts nothing"
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
    signs.mark(chilled, f"{code}/1", "looks sound")
    assert not usable(chilled, code)[0], "one of them is still unnamed"
    signs.mark(chilled, f"{code}/3", "swollen lid")
    correct(chilled, code, note="fine now")
    signs.mark(chilled, f"{code}/1", "looks sound")
    assert usable(chilled, code) == [True, False, False, False, False]


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
    assert not any(usable(chilled, code))


def test_a_quotation_that_was_cut_is_never_answered() -> None:
    """Logs of before hold quotations of 200 characters, which may have said more."""
    for length, enough in ((199, True), (200, False), (201, True)):
        note = "one lid popped".ljust(length, "x")
        assert names_enough(OLD.format(repr(note)), (1, 0)) is enough


@pytest.mark.parametrize("note", ["from the allotment", "with allspice", "that bothers nobody"])
def test_a_word_that_begins_with_all_is_not_all(chilled: Pantry, note: str) -> None:
    assert "but not which" in tried(chilled, BEANS, f"one lid popped {note}").reasons[0]
    line = "30 lb carrots, cellar-stored, cellar"
    assert tried(chilled, line, f"some are rotting {note}").verdict is Verdict.NEEDS_CARE


@pytest.mark.parametrize("note", ["all of one lot leaked", "both leaked", "50% leaked", "every 1"])
def test_what_is_said_of_all_asks_nobody_which(chilled: Pantry, note: str) -> None:
    assert not any("not which" in one for one in tried(chilled, BEANS, note).reasons)


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
    assert not any(usable(chilled, code))


def test_a_pile_is_looked_over_before_its_note_goes(chilled: Pantry) -> None:
    code = book(chilled, "30 lb carrots, cellar-stored, cellar", "half are rotting")
    with pytest.raises(Refused, match="looks sound"):
        correct(chilled, code, note="fine")
    correct(chilled, code, note="half are rotting at one end")
    signs.mark(chilled, code, "looks sound")
    correct(chilled, code, note="fine")
    assert verdicts(chilled, code) == [Verdict.SOUND]


def test_it_asks_which(chilled: Pantry) -> None:
    assert "but not which" in tried(chilled, BEANS, "one lid popped up").reasons[0]
    assert "but not which" not in tried(chilled, BEANS, "the lids popped up").reasons[0]
    beef = "6 bags ground beef 1 lb, frozen, freezer"
    found = tried(chilled, beef, "one bag smelled off")
    assert found.verdict is Verdict.UNKNOWN
    assert CAUTION in found.cautions, "none of them is offered"
    assert "but not which" in found.reasons[0]


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


@pytest.mark.parametrize(
    ("note", "those"),
    [
        ("2 jars had loose lids", "those 2, by number"),
        ("3 lids were loose", "those 3, by number"),
        ("one did not seal", "it, by number"),
        ("2 of 5 never sealed", "those 2, by number"),
        ("three out of the five failed to seal", "those 3, by number"),
        ("some lids came loose", "those 2, by number"),
        ("at least 2 lids came loose", "all that it means, by number"),
    ],
)
def test_any_number_of_loose_lids_asks_which_and_throws_no_other_jar_away(
    chilled: Pantry, note: str, those: str
) -> None:
    code = book(chilled, BEANS, note)
    assert set(verdicts(chilled, code)) == {Verdict.UNKNOWN}
    assert not any(usable(chilled, code))
    batch = next(one for one in chilled.stock.batches.values() if one.code == code)
    assert batch.doubt == (which(note, of_lids=True),)
    assert batch.doubt[0].startswith(f"Its note says {note!r}, but not which: none is eaten until ")
    assert those in batch.doubt[0]
    assert "failed" not in dict(batch.process).values(), "not said of each of them"


@pytest.mark.parametrize("note", ["none sealed", "5 of 5 did not seal", "did not seal"])
def test_of_all_jars_that_did_not_seal_nobody_is_asked(chilled: Pantry, note: str) -> None:
    code = book(chilled, BEANS, note)
    assert set(verdicts(chilled, code)) == {Verdict.DO_NOT_TASTE}


@pytest.mark.parametrize(
    "note",
    ["2 jars for Ann, lids tight", "put 2 lids aside for next year", "two batches, all sealed",
     "7 of 7 sealed", "2 lids of another maker"],
)  # fmt: skip
def test_a_number_of_jars_that_are_well_asks_nothing(chilled: Pantry, note: str) -> None:
    line = BEANS.replace("5 pint", "7 pint")
    assert not any("but not which" in one for one in tried(chilled, line, note).reasons)


def test_those_that_are_found_unsealed_on_the_day_itself_answer_it_too(chilled: Pantry) -> None:
    line = BEANS.replace("2 nov", "today").replace("5 pint", "4 pint")
    code = book(chilled, line, "2 jars had loose lids")
    signs.mark(chilled, f"{code}/1", "did not seal")
    correct(chilled, code, note="one in the fridge")
    assert not any(usable(chilled, code)[2:]), "one more is not named yet"
    signs.mark(chilled, f"{code}/2", "did not seal")
    correct(chilled, code, note="both are in the fridge")
    batch = next(one for one in chilled.stock.batches.values() if one.code == code)
    assert batch.doubt == ()


def test_a_jar_found_unsealed_is_not_the_one_that_bulged() -> None:
    assert names_enough(which("one lid loose", of_lids=True), (0, 1))
    assert not names_enough(which("one jar bulged"), (0, 1))
    assert names_enough(which("one jar bulged"), (1, 0))


def test_what_some_boxes_smelled_of_gives_the_others_no_longer_life(chilled: Pantry) -> None:
    """Cooked food keeps for days: which box it was is no matter once they are over."""
    stew = "3 boxes stew, cooked meal, fridge, {}"
    assert tried(chilled, stew.format("today"), "one box smells off").verdict is Verdict.UNKNOWN
    assert tried(chilled, stew.format("2 nov"), "one box smells off").verdict is Verdict.DISCARD


def test_jars_that_came_into_the_cold_are_judged_as_doubtful_ones_are(chilled: Pantry) -> None:
    code = book(chilled, BEANS, "one lid popped up")
    act.move(chilled, f"{code}/2", "fridge")
    assert verdicts(chilled, code)[1] is Verdict.DO_NOT_TASTE, "weeks later the cold saves none"


def test_the_sentence_of_an_older_log_is_put_as_today() -> None:
    old = OLD.format("'one lid popped'")
    assert asks_which(old)
    assert of_a_changed_note([old], "one lid popped", "2A") == (which("one lid popped"),)
    (said,) = of_a_changed_note([old], "fine", "2A")
    assert said.startswith("Its note said 'one lid popped' before, and another note lifts nothing")
    assert "which is not said" not in said
    assert asks_which(said)
    assert not asks_which("Its note says 'one, but not which: ': not checked.")
