"""Why a line is in the week: short, with its number; the pace is the one that the outlook says."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.words import Group
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.appetite import set_people, set_table
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.paces import paced
from pantry_tui.services.stock import act, places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("cellar", "cellar")):
            places.add(pantry, name, climate)
        yield pantry


def whys(p: Pantry, code: str) -> list[str]:
    found = weeks.week(p)
    return [take.why[0] for take in (*found.take, *found.beside) if take.code == code]


def why(p: Pantry, code: str) -> str:
    return whys(p, code)[0]


def test_a_pace_is_the_outlook_s(p: Pantry) -> None:
    code = up(p, "9 pint jars beets, pressure canned, larder, 2026-08-20")
    said = why(p, code)
    assert said == "1 of 9 jars; one jar every four weeks lasts to July."
    (row,) = outlook(p).foods
    assert "one jar every four weeks lasts to July" in row.pace_says
    found = paced(p, "beets", row_group(p))
    assert round(found.pace.can, 2) == row.pace_can
    assert (found.unit.noun, found.harvest) == ("jars", row.harvest)


def test_what_the_week_eats_of_what_must_go_is_still_told_by_its_date(p: Pantry) -> None:
    """Of its last days, and not of its best ones: also when the accepted week eats all of it."""
    up(p, "1 pack ground beef, bought in, fridge, best by 2026-11-27, amount=1lb")
    assert paced(p, "ground beef", Group.MEAT).passing == "pass their date"
    weeks.accept(p)
    found = paced(p, "ground beef", Group.MEAT)
    assert found.stands.in_week.servings == found.pace.servings
    assert found.passing == "pass their date"


def row_group(p: Pantry) -> Group:
    facts = p.facts("beets")
    assert facts is not None
    return facts.group


def test_what_would_be_lost_says_how_fast(p: Pantry) -> None:
    code = up(p, "16 pint jars plums, boiling-water canned, larder, 2026-02-20")
    assert "a week, or some pass their best on Sat 20 Feb 2027" in why(p, code)
    assert why(p, code).startswith("1 of 16 jars; ")


def test_what_one_person_cannot_finish_is_shared_or_frozen_where_that_is_published(
    p: Pantry,
) -> None:
    set_people(p, 1)
    beans = up(p, "2 quart jars runner beans, pressure canned, larder, 2025-12-01")
    places.add(p, "freezer", "freezer")
    beef = up(p, "2 3 lb packs beef, frozen, freezer, 2025-12-01")
    milk = up(p, "1 gallon bottle milk, bought in, fridge, best by 2026-11-30")
    wishes.pin(p, milk, TODAY)
    wishes.pin(p, beef, TODAY + timedelta(days=3))
    said = {take.code: " ".join(take.why) for take in weeks.week(p).take}
    how = f'freeze them (`repack {beans} "1 box runner beans, freezer"`) on the first day'
    assert f"more than you can eat by its last safe day: share them or {how}" in said[beans]
    assert "share them, or cook them and freeze the meal, on the first day" in said[beef]
    assert "freeze" not in said[milk]
    assert "share them on the first day" in said[milk]


def test_open_due_past_best_pinned_and_out_of_a_crate(p: Pantry) -> None:
    opened = up(p, "2 pint jars peaches, boiling-water canned, larder, 2026-08-01")
    act.open_(p, opened)
    due = up(p, "3 pint jars pears, boiling-water canned, larder, 2025-11-27")
    old = up(p, "3 pint jars apricots, boiling-water canned, larder, 2025-10-01")
    crate = up(p, "1 crate carrots, cellar-stored, cellar, 2026-11-01 amount=30lb")
    pinned = up(p, "3 pint jars beets, pressure canned, larder, 2026-09-01")
    wishes.pin(p, f"{pinned}/1", TODAY + timedelta(days=2))
    assert why(p, opened) == "It is open: its clock runs; it is 1 of 2 jars."
    assert why(p, due).startswith("Best by Fri 27 Nov 2026; it is ")
    assert why(p, old).startswith("Past its best since Thu 1 Oct 2026; it is ")
    assert "You chose it; it is 1 of 3 jars." in whys(p, pinned)
    assert why(p, crate).startswith("2 of 90 servings; ")


def test_the_last_one_is_called_so(p: Pantry) -> None:
    code = up(p, "1 pint jar beets, pressure canned, larder, 2026-09-01")
    assert why(p, code).startswith("The last jar; ")


def test_what_the_week_has_beyond_the_pace_is_not_there_because_of_it(p: Pantry) -> None:
    """ "One jar every six weeks lasts to July" beside the third jar in a week is no reason."""
    code = up(p, "9 pint jars beets, pressure canned, larder, 2026-08-20")
    first, *rest = whys(p, code)
    assert first == "1 of 9 jars; one jar every four weeks lasts to July."
    assert rest
    for number, said in enumerate(rest, 2):
        assert f"with it {number} this week" in said
        assert "ahead of its pace of one jar every four weeks" in said
        assert "lasts" not in said


def test_what_goes_before_all_are_away_says_so(p: Pantry) -> None:
    trout = up(p, "6 packs trout, hot smoked, fridge, 8 oz each")
    set_table(p, 0, date(2026, 11, 27), date(2026, 12, 20))
    assert whys(p, trout)[0].startswith("Eat by Sat 5 Dec 2026, when nobody is at home; it is ")


def test_what_stands_in_no_vessel_goes_by_its_name(p: Pantry) -> None:
    eggs = up(p, "24 eggs, bought, fridge")
    assert " of 24 eggs; " in why(p, eggs)
    assert " eggs a week" in why(p, eggs)
