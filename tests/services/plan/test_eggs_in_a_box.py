"""Eggs are taken out of their box one by one, and those that are left keep as they did."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.model import Container
from pantry_tui.core.words import State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act
from tests.services.plan.putting_up import up

MADE = date(2026, 11, 20)


def one(p: Pantry, code: str) -> Container:
    """The only container of a batch."""
    return next(
        one for one in p.stock.containers.values() if p.stock.batches[one.batch].code == code
    )


@pytest.mark.parametrize("box", ["1 box of 12 eggs, fresh", "1 tray of a dozen eggs, bought"])
@pytest.mark.parametrize("much", ["2 eggs", "2", "half"])
def test_what_is_left_in_the_box_keeps_as_it_did(p: Pantry, box: str, much: str) -> None:
    code = up(p, f"{box}, fridge, {MADE}")
    before = p.assess(one(p, code)).discard_after
    act.use(p, code, much)
    after = one(p, code)
    assert after.left is not None
    assert after.left.number == (6 if much == "half" else 10)
    assert after.state is State.SEALED
    assert p.assess(after).discard_after == before
    assert p.assess(after).on(p.today).verdict is Verdict.SOUND


@pytest.mark.parametrize("line", ["1 carton milk, bought", "1 box of 6 sausages, bought"])
def test_what_is_no_egg_in_its_shell_is_opened_with_its_box(p: Pantry, line: str) -> None:
    code = up(p, f"{line}, fridge, {p.today}")
    act.use(p, code, "half")
    assert one(p, code).state is State.OPEN
