"""Two mains have an evening each where one is free; where none is, the line says so."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.stock import places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)
CANNED = "pressure canned, larder, 2026-08-01, minutes=75 psi=11 canner=dial pack=raw"


@pytest.fixture
def p(p: Pantry) -> Pantry:
    places.add(p, "freezer", "freezer")
    return p


def second(p: Pantry) -> list[str]:
    return [why for take in weeks.week(p).take for why in take.why if "second main" in why]


def test_two_that_fall_due_on_one_day_have_an_evening_each(p: Pantry) -> None:
    for food in ("cod", "salmon"):
        up(p, f"1 pack {food}, fresh, fridge, amount=0.75lb")
    days = [take.days for take in weeks.week(p).take]
    assert days == [(TODAY,), (TODAY + timedelta(days=1),)]
    assert not second(p)


def test_where_no_other_evening_is_free_the_line_says_so(p: Pantry) -> None:
    up(p, f"9 pint jars chicken, {CANNED}")
    weeks.accept(p)
    day = weeks.week(p).take[-1].day
    wishes.pin(p, up(p, f"1 pint jar pork, {CANNED}"), day)
    (said,) = second(p)
    assert said == (
        "A second main beside pork that evening: no other evening on which it could come is free."
    )


def test_where_one_is_free_the_line_names_it(p: Pantry) -> None:
    up(p, f"1 pint jar chicken, {CANNED}")
    weeks.accept(p)
    wishes.pin(p, up(p, f"1 pint jar pork, {CANNED}"), TODAY)
    (said,) = second(p)
    assert said.endswith(": it could also come on Fri 27 Nov 2026.")


def test_what_the_household_put_beside_another_needs_no_reason(p: Pantry) -> None:
    code = up(p, f"3 pint jars beef, {CANNED}")
    other = up(p, f"3 pint jars chicken, {CANNED}")
    wishes.pin(p, code, TODAY)
    wishes.pin(p, other, TODAY)
    assert len([take for take in weeks.week(p).take if TODAY in take.days]) == 2
    assert not second(p)


def test_mains_for_several_days_follow_on_each_other(p: Pantry) -> None:
    """Else an evening between two of them is too few for a third of two days."""
    for food in ("peaches", "applesauce"):
        up(p, f"9 pint jars {food}, boiling-water canned, larder, 2026-08-01")
    for food in ("beef", "chicken", "pork"):
        up(p, f"1 pint jar {food}, {CANNED}")
    found = [take for take in weeks.week(p).take if take.role == "main"]
    days = [day for take in found for day in take.days]
    assert len(days) == len(set(days)) == 6
    assert not second(p)
