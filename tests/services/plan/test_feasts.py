"""A bird is taken out in time for guests who come soon after the week."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import appetite, week
from pantry_tui.services.stock import act, places

TODAY = date(2026, 11, 27)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "freezer", "freezer")
        places.add(pantry, "fridge", "fridge")
        for line in (
            "1 24 lb turkey, frozen, freezer, 2026-10-20",
            "9 1 lb packs ground beef, frozen, freezer, 2026-11-01",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def told(p: Pantry) -> list[str]:
    return [note for note in week.week(p).notes if "could be the main" in note]


def birds(p: Pantry) -> list[tuple[date, date | None]]:
    return [(one.day, one.thaw_by) for one in week.week(p).take if one.food == "turkeys"]


def test_guests_of_this_week_have_the_bird_and_it_thaws_in_time(p: Pantry) -> None:
    appetite.read_table(p, "6 guests on thursday")
    assert birds(p) == [(date(2026, 12, 3), date(2026, 11, 28))]
    (take,) = [one for one in week.week(p).take if one.food == "turkeys"]
    assert take.reasons[0].startswith("For the 8 at the table")
    assert not told(p)


def test_for_guests_of_the_next_week_it_is_said_when_to_take_it_out(p: Pantry) -> None:
    assert not told(p)
    appetite.read_table(p, "6 guests fri 4 dec")
    (said,) = told(p)
    assert "8 at the table" in said
    assert "Sun 29 Nov 2026" in said
    assert not birds(p), "it waits for them"
    appetite.read_table(p, "away sun 29 nov")
    (said,) = told(p)
    assert "Sat 28 Nov 2026" in said, "a day sooner, when somebody is there"


def test_guests_too_few_or_too_far_ahead_are_no_word_yet(p: Pantry) -> None:
    appetite.read_table(p, "4 on fri 4 dec")
    appetite.read_table(p, "8 on wed 9 dec")
    assert not told(p)


def test_where_nobody_can_take_it_out_it_is_said_while_there_is_time_to_ask(p: Pantry) -> None:
    appetite.read_table(p, "6 guests mon 14 dec")
    assert not told(p)
    appetite.read_table(p, "away fri 4 dec to sun 13 dec")
    (said,) = told(p)
    assert "nobody is at home" in said
    assert "Wed 9 Dec 2026" in said
    appetite.read_table(p, "2 on 9 dec")
    assert not told(p), "somebody is there that day, and it is said when it is nearer"


def day_after(p: Pantry) -> list[str]:
    return [note for note in week.week(p).notes if "the day after this week" in note]


def test_the_day_after_the_week_has_something_taken_out_for_it(p: Pantry) -> None:
    (said,) = day_after(p)
    assert "For Fri 4 Dec 2026" in said
    assert "on Thu 3 Dec 2026 to thaw" in said
    week.accept(p)
    p.today = date(2026, 12, 3)
    (said,) = day_after(p)
    act.thaw(p, said.partition("move ")[2].split()[0])
    assert not day_after(p), "it was taken out"


def test_nothing_is_taken_out_where_a_main_is_ready_without(p: Pantry) -> None:
    (said,) = day_after(p)
    assert "ground beef" in said
    appetite.read_table(p, "away 4 dec")
    assert not day_after(p)
    appetite.read_table(p, "usual 4 dec")
    assert day_after(p)
    places.add(p, "larder", "pantry")
    line = "9 pint jars venison, pressure canned, larder, 2026-10-01"
    putup.put_up(p, putup.read(p, line))
    assert not day_after(p)
