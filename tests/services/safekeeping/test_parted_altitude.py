"""Two parted logs, one of which says a higher altitude: jars of either, judged by the lower, are
checked by the higher, as if it had been said where they stand (USDA AIB 539, times by altitude)."""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from datetime import date
from itertools import permutations
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.safekeeping import transfer
from pantry_tui.services.stock import places, view

TODAY = date(2026, 11, 26)
LINE = "2 pint jars {food}, boiling-water canned, larder, minutes=25 pack=raw"


def at(path: Path, *acts: str) -> None:
    """Book each: a food is put up, a number of feet is said."""
    with open_pantry(path, TODAY) as p:
        for one in acts:
            if one.isdigit():
                household.change(p, altitude_ft=int(one))
            else:
                putup.put_up(p, putup.read(p, LINE.format(food=one)))


def verdicts(path: Path) -> dict[str, Verdict]:
    with open_pantry(path, TODAY) as p:
        return {row.food: row.verdict for row in view.due(p)}


@pytest.mark.parametrize("first", [True, False])
@pytest.mark.parametrize("acts", list(permutations(["plums", "6500"])))
def test_jars_of_both_are_checked_by_the_higher(
    tmp_path: Path, acts: Sequence[str], first: bool
) -> None:
    low, high = tmp_path / "low.db", tmp_path / "high.db"
    create(low, altitude_ft=500)
    with open_pantry(low, TODAY) as p:
        places.add(p, "larder", "pantry")
    at(low, "peaches")
    assert verdicts(low) == {"peaches": Verdict.SOUND}
    shutil.copy(low, high)
    if first:
        at(low, "pears")
    at(high, *acts)
    if not first:
        at(low, "pears")
    for path in (low, high):
        with open_pantry(path, TODAY) as p:
            transfer.export_log(p, path.with_suffix(".json"))
    for path, other in ((low, high), (high, low)):
        transfer.import_log(path, other.with_suffix(".json"), TODAY)
        assert verdicts(path) == dict.fromkeys(("peaches", "pears", "plums"), Verdict.UNKNOWN)
