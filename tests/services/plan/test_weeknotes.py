"""A week says that no main stands, that the week before was not booked, what is only open."""

from __future__ import annotations

from datetime import date, timedelta
from math import inf

import pytest

from pantry_tui.cli.printing import week as printed
from pantry_tui.core import dates
from pantry_tui.core.words import Role
from pantry_tui.services.output.kitchen import kitchen
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.plan.at_risk import soon_after
from pantry_tui.services.stock import act, places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    return larder


def notes(p: Pantry, part: str) -> list[str]:
    return [one for one in weeks.week(p).notes if part in one]


def mains(p: Pantry) -> set[str]:
    return {take.food for take in weeks.week(p).take if take.role == Role.MAIN}


def test_where_neither_meat_nor_fish_stands_pulses_are_the_mains(p: Pantry) -> None:
    up(p, "4 1 lb bags chickpeas, dried, larder, made 2026-10-01")
    up(p, "4 quart jars peaches, water-bath canned, larder, made 2026-09-01")
    up(p, "4 pint jars runner beans, pressure canned, larder, made 2026-09-01")
    assert mains(p) == {"chickpeas"}, "green beans are no pulses"
    assert not weeks.week(p).no_main
    up(p, "4 pint jars chicken, pressure canned, larder, made 2026-09-01")
    assert mains(p) == {"chickens"}


def test_without_pulses_it_says_what_a_main_is_and_with_a_main_nothing(p: Pantry) -> None:
    up(p, "4 quart jars peaches, water-bath canned, larder, made 2026-09-01")
    said = weeks.week(p).no_main
    assert "meat" in said
    up(p, "4 pint jars chicken, pressure canned, larder, made 2026-09-01")
    assert not weeks.week(p).no_main


def test_of_an_empty_store_nothing_is_said_of_mains(p: Pantry) -> None:
    assert not weeks.week(p).no_main


def test_an_accepted_week_that_passed_unbooked_is_named_until_another_begins(p: Pantry) -> None:
    beans = up(p, "2 pint jars chicken, pressure canned, larder, made 2026-09-01")
    jam = up(p, "2 half-pint jars raspberry jam, water-bath canned, larder, made 2026-07-01")
    weeks.accept(p)
    p.today = TODAY + timedelta(days=6)
    assert not notes(p, "is over"), "its last day"
    p.today = TODAY + timedelta(days=7)
    (said,) = notes(p, "is over")
    assert f"{beans} chicken" in said
    assert jam not in said, "a jam is no meal of a day"
    weeks.accept(p)
    assert not notes(p, "is over")


def test_of_a_week_of_which_all_was_booked_nothing_is_said(p: Pantry) -> None:
    up(p, "2 pint jars chicken, pressure canned, larder, made 2026-09-01")
    weeks.accept(p)
    for day in sorted({day for take in weeks.week(p).take for day in take.days}):
        p.today = day
        weeks.eaten(p, day)
    p.today = TODAY + timedelta(days=8)
    assert not notes(p, "is over")


def test_of_an_open_jam_nobody_knows_how_many_servings_are_left(p: Pantry) -> None:
    jam = up(p, "2 half-pint jars raspberry jam, water-bath canned, larder, made 2026-07-01")
    said = printed.week(weeks.week(p))
    assert any(f"{jam} raspberry jam, 8 servings in larder" in line for line in said)
    act.open_(p, jam)
    said = printed.week(weeks.week(p))
    assert any(f"{jam} raspberry jam, open in fridge" in line for line in said)


def test_what_ends_today_and_is_only_open_beside_the_meals_is_named_on_top(p: Pantry) -> None:
    places.add(p, "cold shelf", "fridge")
    code = up(p, "2 half-pint jars pesto, in oil, cold shelf, made 2026-11-24")
    batch = p.batch(code)
    assert batch is not None
    ends = p.judge(p.containers_of(batch)[0]).discard_after
    assert ends is not None
    p.today = ends - timedelta(days=1)
    assert not weeks.week(p).urgent
    p.today = ends
    found = weeks.week(p)
    (said,) = found.urgent
    both = f"{code}/1, {code}/2 pesto"
    assert said == f"{both}: this is the last safe day, eat today or discard."
    assert [take.food for take in found.beside] == ["pesto"]
    assert found.notes[0] == said
    assert printed.week(found)[1] == said, "above the meals"
    assert printed.week(found).count(said) == 1


def test_days_that_are_gone_and_not_marked_eaten_are_named_and_not_shown_as_to_come(
    p: Pantry,
) -> None:
    code = up(p, "9 pint jars chicken, pressure canned, larder, made 2026-09-01")
    weeks.accept(p)
    assert not notes(p, "not marked eaten")
    p.today = TODAY + timedelta(days=3)
    (said,) = notes(p, "not marked eaten")
    assert f"{code} chicken" in said
    assert said.startswith("Wed 25 Nov 2026 to Fri 27 Nov 2026: not marked eaten")
    lines = printed.week(weeks.week(p))
    assert not any(line.startswith("Wed 25 Nov 2026  ") for line in lines)
    assert any(line.startswith("Sat 28 Nov 2026  ") for line in lines)
    assert kitchen(p).parts[0][0].startswith("Sat 28 Nov 2026"), "the page for the kitchen"


def test_what_ends_soon_after_the_week_is_told_while_it_can_be_helped(p: Pantry) -> None:
    code = up(p, f"4 lb jerky, dried, larder, {p.today - timedelta(days=6)}")
    (said,) = notes(p, "will be left after this week")
    assert f"of {code}/1 jerky" in said
    assert dates.say(p.today + timedelta(days=8)) in said
    act.use(p, code, "3.9 lb")
    assert not notes(p, "will be left after this week")


def test_what_lies_on_a_day_takes_nothing_off_the_others_of_its_batch(p: Pantry) -> None:
    code = up(p, f"3 2-lb bags jerky, dried, larder, {p.today - timedelta(days=6)}")
    batch = p.batch(code)
    assert batch is not None
    first, draft = p.containers_of(batch)[0].id, weekdraft.load(p)
    (alone,) = soon_after(p, draft, {})
    (others,) = soon_after(p, draft, {first: [(p.today, inf)]})
    many = [float(said.partition(" ")[0]) for said in (alone, others)]
    assert many[1] == pytest.approx(many[0] * 2 / 3)


def test_what_ends_later_than_that_is_the_outlook_s(p: Pantry) -> None:
    up(p, f"4 lb jerky, dried, larder, {p.today - timedelta(days=4)}")
    assert weeks.week(p).end + timedelta(days=3) < p.today + timedelta(days=10)
    assert not notes(p, "will be left after this week")
