"""What was made of other containers is never judged more leniently than they allow.

Asked of the store and its lists, since a batch's parts are other batches.
`python -m tests.judging --made N` for the long run.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.judging.bound import faults
from tests.judging.careless import CARELESS_OF_PARTS, seeing
from tests.judging.histories import random_descent
from tests.judging.stores import lenient
from tests.judging.world import PutUp

N = int(os.environ.get("PANTRY_JUDGED", "400")) // 40


def test_never_more_lenient_than_its_parts(tmp_path: Path) -> None:
    found = [
        fault
        for seed in range(N)
        for fault in lenient(random_descent(seed), tmp_path / f"{seed}.db")
    ]
    assert not found, f"{len(found)} faults, such as\n{found[0]}"


@pytest.mark.parametrize("name", list(CARELESS_OF_PARTS))
def test_a_careless_program_is_found_out(name: str) -> None:
    careless = seeing(CARELESS_OF_PARTS[name])
    assert any(faults(random_descent(seed), careless) for seed in range(100))


def test_histories_make_something_of_something() -> None:
    made = [
        [f.what for f in random_descent(seed).facts if isinstance(f.what, PutUp) and f.what.parts]
        for seed in range(60)
    ]
    assert all(made)
    assert len({(w.method, w.food.name) for one in made for w in one}) > 20
