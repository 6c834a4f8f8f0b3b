"""200 households through twelve weeks each, with the eyes of a cook (tests/services/plan/
households.py): a main on every day while mains stand, enough and not too much of each role, nothing
that waits while another runs, every thaw feasible, reasons that differ."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from tests.long import Outcome
from tests.services.plan.households import WEEKS, hold

HOUSEHOLDS = 200


def run(scale: float) -> Outcome:
    """What fails is printed with the number of its household, from which it can be built again."""
    households, failed = max(1, round(HOUSEHOLDS * scale)), 0
    with TemporaryDirectory() as folder:
        for seed in range(households):
            found = hold(Path(folder), seed)
            failed += bool(found)
            print("\n".join(found), end="\n" if found else "", flush=True)
    return Outcome("households", households, failed, f"households, {WEEKS} weeks of each")
