"""An accepted week is judged as of now: what is not sound any more is told on its day, wherever the
week is shown, and the day proposes something in its stead or says that nothing stands in for it."""

from __future__ import annotations

import pytest

from pantry_tui.cli.printing import week as printed
from pantry_tui.services.lookup import signs
from pantry_tui.services.output import jsonable
from pantry_tui.services.output.calendar import calendar
from pantry_tui.services.output.kitchen import kitchen
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act, moving, places
from tests.services.plan.putting_up import CANNED, TODAY, up


@pytest.fixture
def p(four_places: Pantry) -> Pantry:
    places.add(four_places, "room", "room")
    return four_places


def test_what_is_found_spoilt_is_told_on_its_day_with_what_could_come(p: Pantry) -> None:
    up(p, f"1 pint jar beef, {CANNED}")
    up(p, f"9 pint jars chicken, {CANNED}")
    weeks.accept(p)
    take = next(one for one in weeks.week(p).take if one.food == "beef")
    day, (name,) = take.day, take.containers
    assert not weeks.week(p).fallen
    signs.mark(p, name, "bulging lid")
    found = weeks.week(p)
    (one,) = found.fallen
    assert (one.day, one.containers, one.stays) == (day, (name,), False)
    assert not any(name in take.containers for take in found.take)
    assert one.instead is not None
    assert one.instead.food == "chickens"
    taken = {id_ for take in found.take for id_ in take.containers}
    assert one.instead.name not in taken, "what lies on another day comes on that"
    assert one.told in printed.week(found)
    assert one.told in kitchen(p).notes
    assert jsonable.week(found)["fallen"][0]["instead"]["name"] == one.instead.name
    feed = calendar(p).replace("\r\n ", "")
    assert "In its stead" in feed
    wishes.pin(p, one.instead.name, day)
    assert any(one.instead.name in take.containers for take in weeks.week(p).take)


def test_what_was_thrown_or_given_away_is_told_and_what_was_eaten_is_not(p: Pantry) -> None:
    up(p, f"9 pint jars chicken, {CANNED}")
    weeks.accept(p)
    names = [name for one in weeks.week(p).take for name in one.containers]
    act.discard(p, names[1], why="power cut")
    act.give(p, names[2], to="Aunt Sunniva")
    act.use(p, names[3])
    said = {one.containers: one.said for one in weeks.week(p).fallen}
    assert said == {(names[1],): "it was discarded", (names[2],): "it was given away"}


def test_where_nothing_could_come_the_day_says_so(p: Pantry) -> None:
    code = up(p, f"2 pint jars beef, {CANNED}")
    weeks.accept(p)
    signs.mark(p, f"{code}/1", "bulging lid")
    said = [one.told for one in weeks.week(p).fallen]
    assert said
    assert all("Nothing stands in for it that day." in one for one in said)
    feed = calendar(p).replace("\r\n ", "")
    assert f"Left out: {code} beef" in feed, "also on a day on which nothing else lies"


def test_the_same_food_comes_before_another_of_its_kind(p: Pantry) -> None:
    up(p, f"6 pint jars chicken, {CANNED}")
    first = up(p, f"1 pint jar beef, {CANNED}")
    wishes.pin(p, first, TODAY)
    weeks.accept(p)
    second = up(p, f"1 pint jar beef, {CANNED}")
    signs.mark(p, f"{first}/1", "bulging lid")
    (one,) = weeks.week(p).fallen
    assert one.instead is not None
    assert one.instead.name == f"{second}/1"


def test_in_a_dish_only_its_own_food_stands_in(p: Pantry) -> None:
    beef = up(p, f"1 pint jar beef, {CANNED}")
    up(p, f"6 pint jars chicken, {CANNED}")
    dishes.keep(p, "pot roast = 2 beef")
    wishes.cook(p, "pot roast", TODAY)
    weeks.accept(p)
    signs.mark(p, f"{beef}/1", "bulging lid")
    (one,) = weeks.week(p).fallen
    assert one.told.endswith("Nothing stands in for it in pot roast.")


def test_what_nobody_knows_by_now_stays_and_says_so(p: Pantry) -> None:
    apples = up(p, "1 crate apples, cellar-stored, cellar, 2026-10-20 amount=20lb")
    weeks.accept(p)
    assert all(not take.now for take in weeks.week(p).take)
    moving.move(p, f"{apples}/1", "room")
    found = weeks.week(p)
    mine = [take for take in found.take if take.food == "apples"]
    assert mine
    assert {take.now for take in mine} == {"unknown"}
    first, *more = [one for one in found.fallen if one.code == apples]
    assert first.stays
    assert "No published figure" in first.told
    assert not any(one.why for one in more), "the reason is told once"
    assert any("apples, unknown" in line for line in printed.week(found))
    assert any("apples, unknown" in row[2] for row in kitchen(p).rows)
    done = weeks.eaten(p, mine[0].day)
    assert any("No published figure" in said for said in done.warnings), "not eaten unawares"


def test_what_the_household_put_there_unknown_is_no_news(p: Pantry) -> None:
    apples = up(p, "1 crate apples, cellar-stored, cellar, 2026-10-20 amount=20lb")
    moving.move(p, f"{apples}/1", "room")
    wishes.pin(p, f"{apples}/1", TODAY)
    weeks.accept(p)
    assert not weeks.week(p).fallen
    assert any(take.food == "apples" for take in weeks.week(p).take)
