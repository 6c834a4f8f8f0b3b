"""500 random stores and their weeks, this one and one ahead: nothing is planned to be eaten after
its date as that day will find it."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from tests.long import Outcome
from tests.services.plan.weeks_at_random import hold

STORES = 500


def run(scale: float) -> Outcome:
    """What fails is printed with the number of its store, from which it can be built again."""
    stores, failed = max(1, round(STORES * scale)), 0
    with TemporaryDirectory() as folder:
        for seed in range(1000, 1000 + stores):
            found = hold(Path(folder), seed)
            failed += bool(found)
            print("\n".join(found), end="\n" if found else "", flush=True)
    return Outcome("weeks", stores, failed, "stores, two weeks of each")
