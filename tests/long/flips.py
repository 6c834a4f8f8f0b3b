"""Bits that turn over, pages that are lost or change places."""

from __future__ import annotations

import tempfile
from pathlib import Path

from tests.faults.flips import summary, trials
from tests.long import Outcome


def run(scale: float) -> Outcome:
    with tempfile.TemporaryDirectory(prefix="pantry-tui-flips-") as name:
        found = trials(Path(name), round(1000 * scale), round(200 * scale), seed=1)
    wrong = [one for one in found if one.wrong]
    for one in wrong:
        print(f"{one.what}: {', '.join(one.wrong)}")
    told = ", ".join(f"{many:,} {how}" for how, many in sorted(summary(found).items()))
    return Outcome("flips", len(found), len(wrong), told)
