"""The program is never more lenient than the papers, over random histories.

`PANTRY_JUDGED=20000 pytest tests/judging` or `python -m tests.judging 20000` for the long run.
"""

from __future__ import annotations

import os

import pytest

from tests.judging.adapter import Mirror, play
from tests.judging.bound import Program, faults, shrunk
from tests.judging.careless import CARELESS, answer_of, seeing
from tests.judging.histories import random_history
from tests.judging.world import PutUp

N = int(os.environ.get("PANTRY_JUDGED", "400"))

#: Of a rare fault the first may come late; of most it is among the first fifty.
SEARCHED = range(max(N, 4000))


def test_never_more_lenient(program: Program) -> None:
    found = [f for seed in range(N) for f in faults(random_history(seed), program)]
    seeds = sorted({f.history.note for f in found})
    assert not found, f"{len(seeds)} of {N}: {seeds[:40]}\n{shrunk(found[0], program)}"


@pytest.mark.parametrize("name", list(CARELESS))
def test_a_careless_program_is_found_out(name: str) -> None:
    """Each fault that a program once had shows within the same histories."""
    careless = seeing(CARELESS[name])
    found = next((f for seed in SEARCHED for f in faults(random_history(seed), careless)), None)
    assert found is not None, f"{name} was not noticed in {len(SEARCHED)} histories"
    small = shrunk(found, careless)
    assert small.why
    assert len(small.history.facts) <= len(found.history.facts)


def test_the_judge_never_finds_itself_lenient() -> None:
    mirror = play(Mirror)
    for seed in range(N):
        assert not faults(random_history(seed), mirror)


def test_histories_are_alive() -> None:
    """Enough of them end with food that may still be eaten, with a date and without one."""
    answers = [
        answer_of(h, c) for seed in range(400) for h in [random_history(seed)] for c in h.containers
    ]
    for dated in (True, False):
        for usable in (True, False):
            n = sum(a.usable == usable and (a.discard_after is not None) == dated for a in answers)
            assert n >= len(answers) // 20, (dated, usable, n)


def test_histories_know_every_kind_of_fact_and_every_method() -> None:
    """Nothing that can happen is left out."""
    facts = [f.what for seed in range(400) for f in random_history(seed).facts]
    assert len({type(w).__name__ for w in facts}) == 15
    assert len({w.method for w in facts if isinstance(w, PutUp)}) == 26


def test_a_seed_tells_the_same_history() -> None:
    assert random_history(11) == random_history(11)
