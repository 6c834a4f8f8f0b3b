"""What takes too long for every day, at full size: `python -m tests.long`.

One after the other the runs below are made and one table is printed. `python -m tests.long
histories` makes that one alone, `--scale 0.1` a tenth of each.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple


class Outcome(NamedTuple):
    """A line of the table: how many were tried, how many of them failed, and what to say of it."""

    name: str
    tried: int
    failed: int
    note: str


#: 1.0 is the full size. What failed is printed by the run itself, so that it can be repeated.
Run = Callable[[float], Outcome]

#: A name -> the module whose `run` makes it.
RUNS = {
    "browser": "tests.long.browser",
    "faults": "tests.long.faults",
    "flips": "tests.long.flips",
    "histories": "tests.long.histories",
    "keys": "tests.long.keys",
    "households": "tests.long.households",
    "mutants": "tests.mutants.run",
    "weeks": "tests.long.weeks",
}
