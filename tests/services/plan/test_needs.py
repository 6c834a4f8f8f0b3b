"""What the week has to heed, by the log: no group is made to last of which much got too old."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Group
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import candidates
from pantry_tui.services.plan.needs import needs
from pantry_tui.services.stock import act


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    """A household in its second year: 20 jars of carrots a summer."""
    for day in ("2025-08-10", "2026-08-10"):
        line = f"20 pint jars carrots, pressure canned, larder, minutes=25, psi=11, {day}"
        putup.put_up(larder, putup.read(larder, line))
    return larder


def shares(p: Pantry) -> set[Group | str]:
    return set(needs(p, candidates(p, p.today), appetite(p), p.today).shares)


def lose(p: Pantry, why: str) -> None:
    (code,) = {batch.code for batch in p.stock.batches.values() if str(batch.made) < "2026"}
    act.discard(p, f"{code}/1", why=why)


def test_what_got_too_old_is_not_kept_back_any_more(p: Pantry) -> None:
    assert shares(p) == {Group.VEGETABLE}
    lose(p, "nobody would eat it")
    assert shares(p) == set()
    p.today += timedelta(weeks=52)
    assert shares(p) == {Group.VEGETABLE}, "a year later it is tried again"


def test_what_was_lost_otherwise_says_nothing_of_how_much_there_is(p: Pantry) -> None:
    lose(p, "soft, slimy or rotten")
    assert shares(p) == {Group.VEGETABLE}
