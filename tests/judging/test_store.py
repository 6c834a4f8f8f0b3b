"""The stock tables say what the judge says, in whatever order things were booked.

`python -m tests.judging --store N` for the long run.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.judging.stores import store_faults

N, AT_ONCE = 50, 10


@pytest.mark.parametrize("first", range(0, N, AT_ONCE))
def test_the_stock_tables_say_what_the_judge_says(first: int, tmp_path: Path) -> None:
    found = [
        fault
        for seed in range(first, first + AT_ONCE)
        for fault in store_faults(seed, tmp_path / f"{seed}.db")
    ]
    assert not found, f"{len(found)} faults, such as\n{found[0]}"
