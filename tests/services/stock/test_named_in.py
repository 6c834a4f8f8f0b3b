"""What a note says was made with a batch is in doubt when that is."""

from __future__ import annotations

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.safety.note_codes import put_in
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, one_batch, places, undo

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
