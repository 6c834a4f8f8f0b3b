"""What if: read from words, and reckoned beside what is."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.logbook import log
from pantry_tui.services.books.rows import FoodAhead, OutlookView
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.appetite import set_table
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.whatif import Typed, changed, read, read_line, what_if
from pantry_tui.services.stock import act, places
from pantry_tui.services.stock.seen import At
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """Beans, a jar a week for ten weeks, now and then two; carrots of which nothing is known."""
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("cellar", "cellar")):
            places.add(pantry, name, climate)
        line = "60 pint jars runner beans, pressure canned, larder, 2026-08-01"
        code = putup.put_up(pantry, putup.read(pantry, line)).code
        line = "1 crate carrots, cellar-stored, cellar, 2026-11-01 amount=40lb"
        putup.put_up(pantry, putup.read(pantry, line))
        for week in range(10, 0, -1):
            much = "2" if week % 4 == 0 else "1"
            act.use(pantry, code, much, at=At(TODAY - timedelta(weeks=week)))
        yield pantry


def of(found: OutlookView, food: str) -> FoodAhead:
    return next(one for one in found.foods if one.food == food)


def test_a_range_comes_from_eight_own_weeks(p: Pantry) -> None:
    found = outlook(p)
    beans, carrots = of(found, "runner beans"), of(found, "carrots")
    assert beans.lost_range is not None
    assert beans.runs_out_range is not None
    assert (carrots.lost_range, carrots.runs_out_range, carrots.range_says) == (None, None, "")
    assert found.range_note.startswith("A range for 1 of 2 foods")
    assert found.household.lost_range is not None
    assert outlook(p) == found, "the same from look to look"


def test_more_people_eat_more_and_the_log_is_not_touched(p: Pantry) -> None:
    events = len(log(p))
    both = what_if(p, read(p, Typed(people=4)))
    assert both.now == outlook(p)
    now, then = of(both.now, "runner beans"), of(both.what_if, "runner beans")
    assert then.rate == pytest.approx(2 * now.rate, abs=0.02)
    assert then.left < now.left
    assert len(log(p)) == events
    assert p.people == 2
    assert outlook(p) == both.now


def test_more_people_eat_up_sooner_what_no_log_tells_of(larder: Pantry) -> None:
    p = larder
    up(p, "20 pint jars peaches, boiling-water canned, larder, minutes=25, 2026-10-01")

    def gone(typed: Typed) -> date:
        return of(what_if(p, read(p, typed)).what_if, "peaches").runs_out or date.max

    now = of(outlook(p), "peaches").runs_out or date.max
    assert gone(Typed(people=3 * p.people)) < gone(Typed(people=2 * p.people)) < now
    fortnight = gone(Typed(guests=(f"{2 * p.people} from 24 dec to 7 jan",)))
    assert gone(Typed(people=3 * p.people)) <= fortnight
    assert gone(Typed(people=1)) == now, "fewer eat as fast as it is planned"


def test_guests_and_days_away_count_for_their_weeks_alone(p: Pantry) -> None:
    def left(typed: Typed) -> float:
        return of(what_if(p, read(p, typed)).what_if, "runner beans").left

    usual = of(outlook(p), "runner beans").left
    rate = of(outlook(p), "runner beans").rate
    guests = left(Typed(guests=["6 from 24 dec to 30 dec"]))
    assert guests == pytest.approx(usual - 3 * rate, abs=0.2), "six beside two are three weeks more"
    away = left(Typed(away=["24 dec to 30 dec"]))
    assert away == pytest.approx(usual + rate, abs=0.2)


def test_what_is_booked_at_the_table_counts_now(p: Pantry) -> None:
    usual = of(outlook(p), "runner beans")
    set_table(p, 6, date(2026, 12, 24), date(2026, 12, 30))
    assert of(outlook(p), "runner beans").left == pytest.approx(
        usual.left - 2 * usual.rate, abs=0.2
    )


def test_what_nobody_eats_is_left_or_lost_and_not_put_up(p: Pantry) -> None:
    both = what_if(p, read(p, Typed(without=["beans"])))
    beans = of(both.what_if, "runner beans")
    assert (beans.rate, beans.put_up) == (0, 0)
    assert beans.lost + beans.left == pytest.approx(beans.servings, abs=0.1)
    assert both.what_if.notes[0] == "Supposed: nobody eats runner beans."
    names = {one.food for one in changed(both)}
    assert "runner beans" in names
    assert "carrots" not in names


def test_so_many_servings_a_week_of_a_food(p: Pantry) -> None:
    both = what_if(p, read(p, Typed(eat=["carrots 15"])))
    carrots = of(both.what_if, "carrots")
    assert carrots.rate == 15
    assert "as supposed" in carrots.reckoning
    (pair,) = [one for one in changed(both) if one.food == "carrots"]
    assert "15.0 a week" in pair.then


def test_one_line_has_it_all(p: Pantry) -> None:
    line = "people 3, guests 6 from 24 dec to 2 jan, away 3 to 9 jan, without beans, eat carrots 5"
    found = read_line(p, line)
    assert found.people == 3
    assert found.table[date(2027, 1, 2)] == 9
    assert found.table[date(2027, 1, 3)] == 0
    assert found.without == {"runner beans"}
    assert found.eat == {"carrots": 5.0}
    assert len(found.says) == 5


def test_the_number_may_stand_first(p: Pantry) -> None:
    found = read_line(p, "4 people, 6 guests from 24 dec to 2 jan, without beans")
    assert found == read_line(p, "people 4, guests 6 from 24 dec to 2 jan, without beans")
    assert read_line(p, "three people").people == 3


@pytest.mark.parametrize(
    "line",
    ["4 beans", "no people", "4 people 5", "",
     "more", "people none", "people 0", "guests 6", "guests 6 from 2 jan to 24 dec 2026", "away",
     "away whenever", "without moon", "eat carrots", "eat moon 3", "eat vegetable 3"],
)  # fmt: skip
def test_what_is_not_understood_says_what_to_write(p: Pantry, line: str) -> None:
    with pytest.raises(BadInput):
        read_line(p, line)
