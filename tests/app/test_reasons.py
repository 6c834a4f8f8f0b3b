"""What was seen on a jar is the first reason for which it is discarded."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.reasons import REASONS, reasons_for
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.stock import places
from tests.app.screens import painted
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("sign", "first"),
    [("mould on food or lid", "mould"), ("bulging lid", "bulging, leaking or spurting"),
     ("dark food at the top, tight seal", REASONS[0])],
)  # fmt: skip
async def test_the_sign_that_was_recorded_is_the_first_reason_offered(
    tmp_path: Path, sign: str, first: str
) -> None:
    create(tmp_path / "store.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "larder", "pantry")
        code = up(p, "1 pint jar peaches, boiling-water canned, larder, 2026-08-01")
        assert reasons_for(p, f"{code}/1") == REASONS
        signs.mark(p, f"{code}/1", sign)
        found = reasons_for(p, f"{code}/1")
        assert found[0] == first
        assert sorted(found) == sorted(REASONS), "and none is lost"
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("d")
            assert f"1  {first}" in painted(pilot)


def test_an_unknown_code_has_the_usual_reasons(tmp_path: Path) -> None:
    create(tmp_path / "store.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        assert reasons_for(p, "9Z/1") == REASONS
        assert reasons_for(p, "") == REASONS
