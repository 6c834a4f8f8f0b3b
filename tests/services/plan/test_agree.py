"""The week and the outlook say the same of what will be lost: whether more of a food falls due than
is eaten, how fast it must be eaten and by when; what the accepted week has no room for is lost
there too; and how much is lost is one figure."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import view
from tests.services.plan import households

HURRY = re.compile(r"[^;:]+, or some pass their (?:date|best) on [^.]+")
AS_NOW = re.compile(r"or as you eat it now about")
BEYOND = "more falls due than this household eats"
SEEDS = (11, 12, 13)


def disagree(p: Pantry) -> Iterator[str]:
    found, ahead = weeks.week(p), {one.food: one for one in outlook(p).foods}
    for take in found.take:
        mine, its = take.why[0], ahead[take.food]
        if BEYOND in mine and BEYOND not in its.pace_says:
            yield f"{mine} but {its.pace_says}"
        hurry = HURRY.search(mine)
        rate = hurry.group().strip() if hurry else ""
        known = AS_NOW.search(its.pace_says) or "accepted week" in its.pace_says
        if rate and not known and rate not in its.pace_says:
            yield f"{rate} but {its.pace_says}"
    for one in ahead.values():
        told = BEYOND in one.pace_says or AS_NOW.search(one.pace_says)
        if told and not one.lost:
            yield f"{one.pace_says} but {one.lost} lost"
    codes = {row.code: row.food for row in view.due(p)}
    for note in found.notes:
        if "has no room for it in time" in note:
            food = codes[re.split(r"[/ ,]", note.removeprefix("of "))[0]]
            if not ahead[food].lost:
                yield f"{note} but the outlook loses none of it"


def test_in_the_demo_and_when_days_of_it_went_by(demo: Pantry) -> None:
    assert not list(disagree(demo))
    weeks.accept(demo)
    for _ in range(4):
        assert not list(disagree(demo))
        demo.today += timedelta(days=1)


@pytest.mark.parametrize("seed", SEEDS)
def test_in_other_households(tmp_path: Path, seed: int) -> None:
    with households.build(tmp_path / "store.db", seed) as p:
        assert not list(disagree(p))
        weeks.accept(p)
        assert not list(disagree(p))


def test_what_must_go_and_lies_on_no_day_of_the_accepted_week_is_lost(demo: Pantry) -> None:
    weeks.accept(demo)
    demo.today = date(2026, 11, 27)
    (said,) = [one for one in weeks.week(demo).notes if one.startswith("5K/1 chicken stock must")]
    assert "has no room for it" in said
    stock = next(one for one in outlook(demo).foods if one.food == "chicken stock")
    assert stock.lost >= 1


def test_accepting_a_week_makes_nothing_else_pass_its_date(demo: Pantry) -> None:
    """At the pace that its dates ask for, potatoes are eaten in time before and after."""
    before = next(one for one in outlook(demo).foods if one.food == "potatoes")
    weeks.accept(demo)
    after = next(one for one in outlook(demo).foods if one.food == "potatoes")
    assert (before.lost, after.lost) == (0, 0)
    assert after.pace_need == before.pace_need
