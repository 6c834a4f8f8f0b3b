"""Infant formula is given to no child past the date on its pack, whatever that pack is (US FDA,
infant formula: the use-by date; USDA FSIS, Food Product Dating; both from memory)."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.plan import week
from pantry_tui.services.stock import places


@pytest.mark.parametrize("pack", ["tin", "can", "box", "bottle", "bag"])
@pytest.mark.parametrize("dated", ["use by", "best before", "expires"])
@pytest.mark.parametrize("sold", ["", ", sold=shelf"])
def test_it_is_discarded_after_its_date(tmp_path: Path, pack: str, dated: str, sold: str) -> None:
    create(tmp_path / "s.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "s.db", date(2026, 11, 29)) as p:
        places.add(p, "larder", "pantry")
        what = f"1 {pack} infant formula, bought in, larder, bought 1 may 2026"
        put_up(p, read(p, f"{what}, {dated} 1 oct 2026{sold}"))
        (one,) = p.containers_of(p.batches()[0])
        assert p.judge(one).verdict is Verdict.DISCARD
        assert week.week(p).take == ()


def test_until_then_a_tin_of_it_is_sound(tmp_path: Path) -> None:
    create(tmp_path / "s.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "s.db", date(2026, 11, 29)) as p:
        places.add(p, "larder", "pantry")
        put_up(p, read(p, "1 tin infant formula, bought in, larder, use by 1 feb 2027"))
        (one,) = p.containers_of(p.batches()[0])
        judged = p.judge(one)
        assert (judged.verdict, judged.discard_after) == (Verdict.SOUND, date(2027, 2, 1))
