"""What a note names as the pH of a ferment: above the line it has not worked enough, whatever its
days; while it still works, that is no fault."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, one_batch
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import speaks_against

LINE = "2 quart jars sauerkraut, fermented, fridge, 2026-10-01, salt=2.5% ph=3.9"
TOO_HIGH = """
pH was 5
ph 5
pH 4.8
pH of 5.2 after three weeks
ph strip said 5
measured pH 4.7
pH paper showed between 5 and 6
acidity 5 on the strip
ph meter 4.9
pH came to 4.8 only
pH still above 5
never got below pH 5
pH never under 4.6
pH not below 4.6
p.H. was 5
the pH stayed at 5
pH = 5
pH: 5.0
test strip read 5.5
pH around 5
"""
WELL = """
pH 3.6
pH was 3.4 when ready
pH 5 at the start, 3.5 at the end
pH 4.0
pH from 6 down to 3.5
pH below 4
pH under 4.6
started at pH 6, now 3.6
2.5% salt
day 5
pH 3.5 after 5 weeks
pH 5 on day 2, 3.6 on day 14
pH meter broke
measured the pH, fine
pH fell from 5.8 to 3.7
no pH strips
pH 4.1, 5 weeks in all
"""


def _noted(p: Pantry, note: str) -> Verdict:
    code = putup.put_up(p, putup.read(p, LINE)).code
    act.ready(p, code)
    correct(p, code, note=note)
    (row,) = one_batch.show(p, code).rows
    return row.verdict


@pytest.mark.parametrize("note", TOO_HIGH.strip().splitlines())
def test_a_ferment_of_a_high_ph_is_not_eaten(larder: Pantry, note: str) -> None:
    assert _noted(larder, note) not in (Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST)


@pytest.mark.parametrize("note", WELL.strip().splitlines())
def test_a_sour_one_stays_what_it_is(larder: Pantry, note: str) -> None:
    assert _noted(larder, note) is _noted(larder, "crisp")


@pytest.mark.parametrize("note", ["pH 5 today", "pH was 5"])
def test_what_still_works_is_not_held_to_it(kitchen: Pantry, note: str) -> None:
    line = "2 quart jars sauerkraut, fermented, fridge, 2026-11-20, salt=2.5%"
    assert not speaks_against(kitchen, line, note)
