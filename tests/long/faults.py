"""Kills, journals cut off, full disks, at full size; several people at once."""

from __future__ import annotations

import tempfile
from pathlib import Path

from tests.faults import kills, power, together
from tests.long import Outcome


def run(scale: float) -> Outcome:
    with tempfile.TemporaryDirectory(prefix="pantry-tui-faults-") as name:
        folder = Path(name)
        killed = kills.trials(folder, round(1000 * scale), max(1, round(1 / scale)))
        cut, _, wrong = power.cut_journals(folder, max(1, round(1 / scale)))
        full, more = power.full_disks(folder)
        (folder / "evening").mkdir()
        acts = max(10, round(500 * scale))
        evening = together.faults(together.evening(folder / "evening", 8, acts))
    bad = [line for one in killed.values() for line in one.wrong] + wrong + more + evening
    print("\n".join(bad))
    kills_made = sum(one.tried for one in killed.values())
    note = f"{kills_made:,} kills, {cut:,} journals, {full:,} acts on a full disk, 8 people"
    return Outcome("faults", kills_made + cut + full + 8 * acts, len(bad), note)
