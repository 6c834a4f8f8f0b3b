"""What a note says was made with a batch is in doubt when that is."""

from __future__ import annotations

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.safety.note_codes import put_in
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, correct, one_batch, outage, places, undo
from pantry_tui.services.stock.cut_times import read_stretch

BEANS = "4 pint jars runner beans, pressure canned, larder, 1 aug"


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def stew(p: Pantry, note: str) -> str:
    reading = putup.read(p, "3 bags peas, frozen, chest, yesterday")
    return putup.put_up(p, replace(reading, note=note)).code


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    """Beans 2A, and a freezer."""
    places.add(larder, "chest", "freezer")
    assert up(larder, BEANS) == "2A"
    return larder


def verdict(p: Pantry, code: str) -> Verdict:
    return one_batch.show(p, code).rows[0].verdict


@pytest.mark.parametrize(
    "note",
    ["fried in 2A", "with a spoon of 2A in it", "stirred up with 2A", "2A used up in it",
     "with 2A/1", "half of 2a mixed in", "using the rest of 2A"],
)  # fmt: skip
def test_a_code_of_what_went_into_it_is_read(note: str) -> None:
    assert put_in(note) == ("2A",)


@pytest.mark.parametrize(
    "note",
    ["same recipe as 2A", "stored with 2A", "next to 2A", "better than 2A", "instead of 2A",
     "not with 2A", "without 2A", "with 5f salt", "label of 2A", "see 2A", "canned with 2A",
     "with 2 apples", "with 2 lb of peas", ""],
)  # fmt: skip
def test_a_code_beside_it_is_none(note: str) -> None:
    assert put_in(note) == ()


@pytest.mark.parametrize("note", ["fried in 2A", "with a spoon of 2A in it", "2A used up in it"])
@pytest.mark.parametrize("saw", ["swollen lid", "an odd thing in it"])
def test_what_was_made_with_it_is_in_doubt_when_it_is(p: Pantry, note: str, saw: str) -> None:
    made = stew(p, note)
    before = verdict(p, made)
    told = signs.mark(p, "2A/1", saw).do
    assert any(made in one and "2A is in it" in one for one in told)
    row = one_batch.show(p, made).rows[0]
    assert row.verdict is Verdict.UNKNOWN
    assert not row.usable
    undo.undo(p)
    assert verdict(p, made) is before
    signs.mark(p, "2A/1", saw)
    for number in (1, 2, 3):
        signs.mark(p, f"{made}/{number}", "looks sound")
    assert verdict(p, made) is before


def test_it_is_so_when_it_was_in_doubt_before_and_when_a_jar_was_thrown_away(p: Pantry) -> None:
    first = stew(p, "fried in 2A")
    act.discard(p, "2A/1", why="mould")
    assert verdict(p, first) is Verdict.UNKNOWN
    assert verdict(p, stew(p, "stirred up with 2A")) is Verdict.UNKNOWN


def test_what_only_names_it_and_what_is_made_with_a_sound_one_stays_quiet(p: Pantry) -> None:
    sound, beside = stew(p, "fried in 2A"), stew(p, "stored with 2A")
    assert verdict(p, sound) is Verdict.SOUND
    signs.mark(p, "2A/1", "low liquid, tight seal")
    assert verdict(p, sound) is Verdict.SOUND
    act.discard(p, "2A/2", why="too old")
    assert verdict(p, sound) is Verdict.SOUND
    signs.mark(p, "2A/1", "swollen lid")
    assert verdict(p, beside) is Verdict.SOUND


def reasons(p: Pantry, code: str) -> str:
    return " ".join(one_batch.show(p, code).rows[0].reasons)


@pytest.mark.parametrize("note", ["fried in 2A", "with a spoon of 2A in it", "2A used up in it"])
def test_a_process_that_is_put_right_later_is_followed(p: Pantry, note: str) -> None:
    made, beside = stew(p, note), stew(p, "stored with 2A")
    further = stew(p, f"stirred up with {made}")
    correct.correct(p, "2A", process=[("minutes", "20"), ("psi", "10")])
    assert verdict(p, "2A") is Verdict.DO_NOT_TASTE
    for code in (made, further):
        assert verdict(p, code) is Verdict.UNKNOWN
        assert not one_batch.show(p, code).rows[0].usable
    assert "that 2A is in it" in reasons(p, made)
    assert verdict(p, beside) is Verdict.SOUND
    undo.undo(p)
    assert {verdict(p, made), verdict(p, further)} == {Verdict.SOUND}


def cut(p: Pantry, place: str, stretch: str) -> None:
    where = p.find_place(place)
    assert where is not None
    outage.book(p, where, outage.cut_of(p, where, *read_stretch(p, stretch)))


@pytest.mark.parametrize("opened", [False, True])
def test_a_power_cut_before_it_was_made_is_followed(p: Pantry, opened: bool) -> None:
    places.add(p, "cold", "fridge")
    ham = up(p, "2 boxes cooked chicken, cooked meal, cold, 3 days ago")
    if opened:
        act.use(p, f"{ham}/2")
    made = stew(p, f"fried in {ham}")
    assert verdict(p, made) is Verdict.SOUND
    cut(p, "cold", "2 days ago 01:00 to 2 days ago 09:00")
    assert verdict(p, made) is Verdict.UNKNOWN
    assert f"that {ham} is in it" in reasons(p, made)
    undo.undo(p)
    assert verdict(p, made) is Verdict.SOUND


def test_what_is_told_by_a_note_that_is_put_right_counts(p: Pantry) -> None:
    made, other = stew(p, ""), stew(p, "with peas")
    signs.mark(p, "2A/1", "swollen lid")
    assert verdict(p, made) is Verdict.SOUND
    told = correct.correct(p, made, note="fried in 2A").message
    assert "in doubt too" in told
    assert verdict(p, made) is Verdict.UNKNOWN
    undo.undo(p)
    assert verdict(p, made) is Verdict.SOUND
    correct.correct(p, made, note="fried in 2A")
    for number in (1, 2, 3):
        signs.mark(p, f"{made}/{number}", "looks sound")
    correct.correct(p, made, note="fried in 2A, best year ever")
    assert verdict(p, made) is Verdict.SOUND
    correct.correct(p, other, note="stored with 2A")
    assert verdict(p, other) is Verdict.SOUND


def test_batches_that_name_each_other_are_judged(p: Pantry) -> None:
    first = stew(p, "")
    second = stew(p, f"fried in {first}")
    correct.correct(p, first, note=f"fried in {second}")
    assert {verdict(p, first), verdict(p, second)} == {Verdict.SOUND}
