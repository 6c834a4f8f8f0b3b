"""What the judge alone of a batch cannot be asked: parts, counts, timers, clocks that ran ahead.

Told on the command line, asked of the lists: never more lenient than the papers.
`python -m tests.judging --made N`, `--counted N`, `--clocks N` and `--timers N` for the long run.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.judging.bound import faults, too_lenient
from tests.judging.careless import CARELESS_OF_KIN, answer_of, seeing
from tests.judging.clocks import random_ahead
from tests.judging.evaluator import judge
from tests.judging.histories import random_count, random_descent
from tests.judging.stores import ahead_of_the_truth, lenient
from tests.judging.timers import fit, random_steps, timer_faults
from tests.judging.world import Counted, History, PutUp

N = int(os.environ.get("PANTRY_JUDGED", "400")) // 60

KINDS: dict[str, Callable[[int, Path], Iterator[str]]] = {
    "made of others": lambda seed, path: lenient(random_descent(seed), path),
    "counted": lambda seed, path: lenient(random_count(seed), path),
    "a clock ahead": lambda seed, path: ahead_of_the_truth(*random_ahead(seed), path),
    "timed": timer_faults,
}


@pytest.mark.parametrize("kind", list(KINDS))
def test_never_more_lenient(kind: str, tmp_path: Path) -> None:
    found = [fault for seed in range(N) for fault in KINDS[kind](seed, tmp_path / f"{seed}.db")]
    assert not found, f"{len(found)} faults, such as\n{found[0]}"


@pytest.mark.parametrize("name", list(CARELESS_OF_KIN))
def test_a_careless_program_is_found_out(name: str) -> None:
    draw, sight = CARELESS_OF_KIN[name]
    assert any(faults(draw(seed), seeing(sight)) for seed in range(300))


def test_a_program_that_believes_every_clock_is_found_out() -> None:
    """One that takes a moment of the wrong clock for the true one is milder than the truth."""

    def believed(seed: int) -> bool:
        true, told = random_ahead(seed)
        later = History(told.facts, true.now + 400 * 1440)
        truth = History(true.facts, later.now)
        return any(too_lenient(answer_of(later, c), judge(truth, c)) for c in true.containers)

    assert any(believed(seed) for seed in range(300))


def test_some_of_what_is_timed_is_fit() -> None:
    n = sum(fit(random_steps(seed)) for seed in range(200))
    assert 20 < n < 150


def test_histories_make_something_of_something_and_count_it() -> None:
    made = [
        [f.what for f in random_descent(seed).facts if isinstance(f.what, PutUp) and f.what.parts]
        for seed in range(60)
    ]
    assert all(made)
    assert len({(w.method, w.food.name) for one in made for w in one}) > 20
    assert all(
        any(isinstance(f.what, Counted) for f in random_count(seed).facts) for seed in range(60)
    )
