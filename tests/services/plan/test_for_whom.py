"""Something big that is taken out to thaw says for whom it is, or that it is a lot; and when those
guests do not come any more, it is in the week, or the week says what to do with it."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act, places
from pantry_tui.services.stock.seen import At
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)
CANNED = "pressure canned, larder, 2026-08-01, minutes=75 psi=11 canner=dial pack=raw"
BIRD = "1 14 lb bag turkey, frozen, freezer, 2026-09-01"


@pytest.fixture
def p(p: Pantry) -> Pantry:
    places.add(p, "freezer", "freezer")
    up(p, f"9 pint jars beef, {CANNED}")
    return p


def test_a_bird_for_guests_says_on_which_day_they_come(p: Pantry) -> None:
    code = up(p, BIRD)
    appetite.read_table(p, "10 on sunday")
    assert act.thaw(p, code).warnings == ("It is for Sun 29 Nov 2026: 10 at the table.",)


def test_for_the_usual_table_it_is_said_to_be_a_lot(p: Pantry) -> None:
    (said,) = act.thaw(p, up(p, BIRD)).warnings
    assert said == (
        "It is about 14 servings, and about 4 of them are eaten by its last safe day, "
        "Sun 29 Nov 2026: share it, or cook all of it and freeze the rest as a meal."
    )


def test_for_guests_after_its_last_safe_day_it_is_too_early(p: Pantry) -> None:
    appetite.read_table(p, "10 on 3 dec")
    early, lot = act.thaw(p, up(p, BIRD)).warnings
    assert early.startswith("For Thu 3 Dec 2026, 10 at the table, that is too early")
    assert early.endswith("`undo` and take it out on Mon 30 Nov 2026.")
    assert "14 servings" in lot


@pytest.mark.parametrize(
    "line",
    [
        "1 1 lb pack ground beef, frozen, freezer, 2026-11-01",
        "1 8 lb bag chicken, frozen, freezer, 2026-11-01",
        "1 14 lb bag blueberries, frozen, freezer, 2026-11-01",
    ],
)
def test_what_the_usual_table_eats_or_is_no_main_says_nothing(p: Pantry, line: str) -> None:
    assert not act.thaw(p, up(p, line)).warnings


def test_what_was_taken_out_on_a_day_that_is_gone_asks_nobody(p: Pantry) -> None:
    assert not act.thaw(p, up(p, BIRD), at=At(TODAY - timedelta(days=1))).warnings


def test_without_its_guests_it_lies_on_a_day_or_the_accepted_week_says_what_to_do(
    p: Pantry,
) -> None:
    code = up(p, BIRD)
    appetite.read_table(p, "10 on monday")
    weeks.accept(p)
    act.thaw(p, code)
    appetite.read_table(p, "usual on monday")
    assert code not in [take.code for take in weeks.week(p).take]
    (said,) = [one for one in weeks.week(p).notes if f"{code}/1 turkeys" in one]
    assert "must be eaten by Sun 29 Nov 2026" in said
    weeks.accept(p)
    (take,) = [take for take in weeks.week(p).take if take.code == code]
    assert take.days[-1] <= date(2026, 11, 29)


def test_what_thaws_besides_an_accepted_week_is_told_to_accept_it_again(p: Pantry) -> None:
    weeks.accept(p)
    code = up(p, BIRD)
    act.thaw(p, code)
    (said,) = [one for one in weeks.week(p).notes if f"{code}/1 turkeys" in one]
    assert "the accepted week has no day for it: accept it again (`week --accept`), cook" in said
    weeks.accept(p)
    assert code in [take.code for take in weeks.week(p).take]
