"""Food for the table of which nothing is published is named as such, and how it is planned."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.app.inkeys import in_keys
from pantry_tui.cli.printing import week as printed
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.accepting import accept
from pantry_tui.services.stock import reserve
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    up(larder, "20 lb potatoes, cellar-stored, larder, 2026-11-01")
    return larder


def said(p: Pantry, *, unknown: bool = False) -> list[str]:
    found = weeks.week(p, unknown=unknown).notes
    return [one for one in found if one.startswith("No published figure, so on no day")]


def test_greens_without_a_figure_are_named_with_the_way_to_plan_them(p: Pantry) -> None:
    kale = up(p, "2 lb kale, fresh, fridge, today")
    (one,) = said(p)
    assert one == (
        f"No published figure, so on no day: {kale} kale. `week --unknown` plans it too."
    )
    assert one in printed.week(weeks.week(p))
    assert in_keys(one, {}, "week").endswith("k (pin) plans it too.")
    chard = up(p, "1 lb chard, fresh, fridge, today")
    (one,) = said(p)
    assert f"{kale} kale" in one
    assert f"{chard} chard" in one
    assert "plans them too" in one


def test_asked_for_or_pinned_nothing_is_said_of_it(p: Pantry) -> None:
    kale = up(p, "2 lb kale, fresh, fridge, today")
    assert not said(p, unknown=True)
    wishes.pin(p, kale, TODAY + timedelta(days=1))
    assert not said(p)
    accept(p)
    assert not said(p)
    chard = up(p, "1 lb chard, fresh, fridge, today")
    (one,) = said(p)
    assert f"{chard} chard" in one
    assert "kale" not in one


def test_of_an_accepted_week_it_is_said_too(p: Pantry) -> None:
    up(p, "2 lb kale, fresh, fridge, today")
    accept(p)
    assert len(said(p)) == 1


@pytest.mark.parametrize(
    "line",
    [
        "4 bottles cider, alcohol ferment, larder, 2026-06-01",  # a drink lies on no day anyway
        "6 pint jars applesauce, boiling-water canned, larder, minutes=20, 2026-06-01",
        "2 lb chicken thighs, fresh, fridge, today",
    ],
)
def test_of_what_lies_on_no_day_for_another_reason_nothing_is_said(p: Pantry, line: str) -> None:
    up(p, line)
    assert not said(p)


def test_what_is_set_apart_is_not_named(p: Pantry) -> None:
    kale = up(p, "2 lb kale, fresh, fridge, today")
    reserve.reserve(p, kale, words="Aunt Sunniva")
    assert not said(p)
