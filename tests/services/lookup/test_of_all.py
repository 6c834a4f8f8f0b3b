"""Who fell ill after eating of a jar, and what is recalled, speaks of the whole batch, and no look
takes it back (US CDC on botulism; US FDA and USDA FSIS on recalls; from memory)."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, correct, leaving, places, undo

BEANS = "5 pint jars runner beans, pressure canned, larder, minutes=20 psi=11, 2026-09-01"
ILLNESS = (
    "Ann had double vision after eating it",
    "we were ill after eating it",
    "hospital says botulism",
    "Ben's eyelids drooped the next day",
    "stomach ache all night after it",
    "she could not swallow and her speech was slurred",
    "taken to hospital by ambulance after supper",
    "food poisoning, says the doctor",
    "blurred vision, dry mouth",
    "trouble breathing after the beans",
)
RECALLED = (
    "recalled", "recalled by the maker for botulism", "on the recall list", "under recall",
    "product recall notice", "called back by the shop",
)  # fmt: skip
INNOCENT = ("label faded", "smells fine", "no mould", "recalled how good they were")


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "s.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "s.db", date(2026, 11, 29)) as pantry:
        places.add(pantry, "larder", "pantry")
        put_up(pantry, read(pantry, BEANS))
        yield pantry


def code(p: Pantry) -> str:
    return p.batches()[0].code


def verdicts(p: Pantry) -> set[Verdict]:
    return {p.judge(one).verdict for one in p.containers_of(p.batches()[0]) if one.here}


@pytest.mark.parametrize("words", [*ILLNESS, *RECALLED])
@pytest.mark.parametrize("used", [True, False])
def test_all_of_the_batch_goes_and_no_look_brings_it_back(
    p: Pantry, words: str, used: bool
) -> None:
    if used:
        act.use(p, f"{code(p)}/1")
    said = signs.mark(p, f"{code(p)}/1", words)
    assert verdicts(p) <= {Verdict.DO_NOT_TASTE, Verdict.DISCARD}
    assert any("all of this batch" in one for one in said.do)
    for number in range(2, 6):
        signs.mark(p, f"{code(p)}/{number}", "looks sound")
    assert verdicts(p) <= {Verdict.DO_NOT_TASTE, Verdict.DISCARD}


@pytest.mark.parametrize("words", [ILLNESS[0], RECALLED[0]])
def test_it_holds_where_it_is_the_reason_of_throwing_one_away_and_is_taken_back_as_one(
    p: Pantry, words: str
) -> None:
    leaving.discard(p, f"{code(p)}/1", why=words)
    assert verdicts(p) <= {Verdict.DO_NOT_TASTE, Verdict.DISCARD}
    undo.undo(p)
    assert verdicts(p) == {Verdict.SOUND}


def test_who_fell_ill_gets_help_first(p: Pantry) -> None:
    said = signs.mark(p, f"{code(p)}/1", ILLNESS[0])
    assert "medical help at once" in said.do[0]


@pytest.mark.parametrize("words", ILLNESS[:4])
def test_a_note_that_says_so_counts_for_all_of_it(p: Pantry, words: str) -> None:
    correct.correct(p, code(p), note=words)
    assert verdicts(p) <= {Verdict.DO_NOT_TASTE, Verdict.DISCARD}


@pytest.mark.parametrize(
    "note",
    ["for Gran, who has trouble swallowing", "for the hospital fete", "Ben was in hospital",
     "I recalled the old recipe", "doctor's orders: less salt"],
)  # fmt: skip
def test_a_note_of_somebody_s_health_says_nothing_of_the_food(p: Pantry, note: str) -> None:
    correct.correct(p, code(p), note=note)
    assert verdicts(p) == {Verdict.SOUND}
