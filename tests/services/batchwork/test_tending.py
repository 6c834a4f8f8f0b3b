"""The small jobs: when they fall due, what being late means, and that one key does them.

`tending_demo.txt` is the calendar of the demo household; PANTRY_SNAPSHOTS=write makes it anew.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import tending
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.lookup import signs
from pantry_tui.services.output.calendar import calendar
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week
from pantry_tui.services.stock import act, places, readings, undo, view

TODAY = date(2026, 11, 25)
#: What is left where no day makes a ferment ready.
PH = "measure its pH"
GOLDEN = Path(__file__).parent / "tending_demo.txt"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as opened:
        for name, climate, temp in (
            ("kitchen", "room", 72.0), ("larder", "pantry", 62.0), ("cellar", "cellar", 38.0),
            ("attic", "room", 82.0), ("fridge", "fridge", None),
        ):  # fmt: skip
            places.add(opened, name, climate, None, temp)
        yield opened


def made(p: Pantry, line: str) -> str:
    return put_up(p, read(p, line)).code


def due(p: Pantry, within: int = 0) -> dict[str, date]:
    return {row.job: row.due for row in tending.jobs(p, within)}


def days(p: Pantry, within: int = 60) -> dict[str, int]:
    return {job: (day - TODAY).days for job, day in due(p, within).items()}


def verdict(p: Pantry, code: str) -> Verdict:
    return next(row.verdict for row in view.due(p) if row.code == code)


def test_seals_are_checked_the_day_after(p: Pantry) -> None:
    made(p, "7 pint jars peaches, boiling-water canned, minutes=30, larder")
    assert days(p) == {"check the seals": 1}
    assert due(p) == {}
    p.today = TODAY + timedelta(days=1)
    assert list(due(p)) == ["check the seals"]
    assert not tending.jobs(p)[0].overdue


def test_unchecked_seals_make_jars_need_care_until_they_are_checked(p: Pantry) -> None:
    code = made(p, "7 pint jars runner beans, pressure canned, minutes=20, psi=11, larder")
    for after, expected in ((0, Verdict.SOUND), (2, Verdict.SOUND), (3, Verdict.NEEDS_CARE)):
        p.today = TODAY + timedelta(days=after)
        assert verdict(p, code) is expected, after
    with pytest.raises(Refused):
        act.use(p, code)
    tending.tend(p, code)
    assert verdict(p, code) is Verdict.SOUND
    assert due(p) == {}
    undo.undo(p)
    assert verdict(p, code) is Verdict.NEEDS_CARE
    undo.redo(p)
    assert verdict(p, code) is Verdict.SOUND


def test_nobody_is_asked_about_seals_of_long_ago(p: Pantry) -> None:
    made(p, "7 pint jars peaches, boiling-water canned, minutes=30, larder, 2026-10-14")
    made(p, "7 pint jars plums, boiling-water canned, minutes=20, larder, made unknown")
    assert due(p, 60) == {}


def test_who_books_a_batch_some_days_late_is_asked_for_its_seals_all_the_same(p: Pantry) -> None:
    """And has the grace of one that was booked on the day from then on."""
    made_on = TODAY - timedelta(days=5)
    code = made(p, f"7 pint jars peaches, boiling-water canned, minutes=30, larder, {made_on}")
    assert due(p)
    assert verdict(p, code) is not Verdict.NEEDS_CARE
    p.today = TODAY + timedelta(days=2)
    assert verdict(p, code) is Verdict.NEEDS_CARE
    tending.tend(p, code)
    assert verdict(p, code) is Verdict.SOUND


def test_a_late_job_is_asked_for_no_more_after_its_last_day(p: Pantry) -> None:
    code = made(p, "7 pint jars peaches, boiling-water canned, minutes=30, larder")
    p.today = TODAY + timedelta(days=14)
    assert verdict(p, code) is Verdict.NEEDS_CARE
    p.today = TODAY + timedelta(days=15)
    assert verdict(p, code) is Verdict.SOUND
    assert due(p) == {}


@pytest.mark.parametrize(
    ("line", "jobs"),
    [
        # MSU 01600078: 70-75 F three to four weeks, 60-65 F five to six, below 60 F it may not.
        ("1 crock sauerkraut, lactic ferment, kitchen", {"skim": 3, "taste": 21}),
        ("1 crock sauerkraut, lactic ferment, larder", {"skim": 3, "taste": 35}),
        ("1 crock sauerkraut, lactic ferment, cellar", {"skim": 3, PH: 35, "warm it": 0}),
        ("1 crock sauerkraut, lactic ferment, attic", {"skim": 3, PH: 21, "cool it": 0}),
        # USDA AIB 539: dills 70-75 F three to four weeks, 55-65 F five to six.
        ("1 crock dill pickles, lactic ferment, kitchen", {"skim": 3, "taste": 21}),
        ("1 crock dill pickles, lactic ferment, larder", {"skim": 3, "taste": 35}),
        # Colorado State: kimchi a day or two at room warmth, three or four in the refrigerator.
        ("2 quart jars kimchi, lactic ferment, kitchen", {"skim": 3, "taste": 1}),
        ("2 quart jars kimchi, lactic ferment, fridge", {"skim": 3, "taste": 3}),
        # UC Master Food Preservers: vegetables two to seven weeks; none is published for the cool.
        ("1 crock fermented carrots, lactic ferment, kitchen", {"skim": 3, "taste": 14}),
        ("1 crock fermented carrots, lactic ferment, larder", {"skim": 3, "taste": 35}),
        ("1 crock fermented carrots, lactic ferment, cellar", {"skim": 3, PH: 35, "warm it": 0}),
        ("1 crock mushrooms, lactic ferment, kitchen", {"skim": 3, PH: 14}),
        # Too little salt: it has to be discarded before it would be skimmed.
        ("1 crock sauerkraut, lactic ferment, kitchen, salt=1%", {}),
        # Iowa State: dried fruit is shaken daily, four to ten days.
        ("4 quart jars apples, dried, larder", {"shake the jar": 1}),
        ("4 quart jars carrots, dried, larder", {}),
        # Mississippi State: flavoured vinegar steeps three to four weeks.
        ("1 bottle herb vinegar, flavoured vinegar, larder, state=working", {"strain": 21}),
        # UC Davis, UNL, Handbook 66, Iowa State: curing in the warm.
        ("1 net onions, cellar-stored, kitchen", {"end the curing": 14, "sort": 14}),
        ("1 net garlic, cellar-stored, attic", {"end the curing": 14, "sort": 14}),
        ("6 winter squash, cellar-stored, attic", {"end the curing": 10, "sort": 14}),
        ("1 crate sweet potatoes, cellar-stored, attic", {"end the curing": 7, "sort": 14}),
        ("1 sack potatoes, cellar-stored, larder", {"end the curing": 7, "sort": 14}),
        ("1 sack potatoes, cellar-stored, cellar", {"sort": 14}),
        ("4 pint jars strawberry jam, jam, larder", {"check the seals": 1}),
        ("4 pint jars dill pickles, fridge pickle, fridge", {}),
    ],
)
def test_each_method_has_its_days(p: Pantry, line: str, jobs: dict[str, int]) -> None:
    made(p, line)
    assert days(p) == jobs


def test_what_comes_again_counts_from_when_it_was_done(p: Pantry) -> None:
    code = made(p, "1 crock sauerkraut, lactic ferment, kitchen")
    p.today = TODAY + timedelta(days=5)
    done = tending.tend(p, code)
    assert "skim" in done.message
    assert days(p)["skim"] == 8
    with pytest.raises(Refused, match="next"):
        tending.tend(p, code)
    tending.tend(p, code, "taste")
    assert "taste" not in days(p)
    with pytest.raises(BadInput, match="no job"):
        tending.tend(p, code, "polish")


def test_a_move_to_the_cold_changes_what_is_asked(p: Pantry) -> None:
    code = made(p, "1 crock sauerkraut, lactic ferment, kitchen")
    act.move(p, code, "larder")
    assert days(p)["taste"] == 35
    act.ready(p, code)
    assert days(p) == {}


def test_what_promises_a_day_and_what_refuses_it_say_the_same(p: Pantry) -> None:
    code = made(p, "1 crock sauerkraut, lactic ferment, cellar")
    job = next(one for one in tending.jobs(p, 60) if one.job == PH)
    p.today = job.due
    said = act.ready(p, code).message
    assert job.how.split(": ", 1)[1] in said
    undo.undo(p)
    readings.read(p, "cellar", 70.0)
    later = next(one for one in tending.jobs(p, 60) if one.job == "taste")
    p.today = later.due - timedelta(days=1)
    assert "Called ready" in act.ready(p, code).message
    undo.undo(p)
    p.today = later.due
    assert "Called ready" not in act.ready(p, code).message


def test_a_late_skimming_is_said_beside_the_verdict(p: Pantry) -> None:
    code = made(p, "1 crock sauerkraut, lactic ferment, kitchen")
    p.today = TODAY + timedelta(days=8)
    row = next(row for row in view.due(p) if row.code == code)
    assert row.verdict is Verdict.NEEDS_CARE
    assert any("Late since" in reason and "skim" in reason for reason in row.reasons)
    tending.tend(p, code)
    row = next(row for row in view.due(p) if row.code == code)
    assert not any("Late since" in reason for reason in row.reasons)


def test_what_has_to_be_discarded_is_not_tended(p: Pantry) -> None:
    code = made(p, "1 crock sauerkraut, lactic ferment, kitchen")
    p.today = TODAY + timedelta(days=8)
    assert days(p)
    signs.mark(p, code, "slimy")
    row = next(row for row in view.due(p) if row.code == code)
    assert row.verdict in UNFIT
    assert days(p) == {}
    assert not any("Late since" in one for one in row.reasons)
    assert list(tending.sentences(p, p.today, p.today + timedelta(days=7))) == []
    with pytest.raises(Refused):
        tending.tend(p, code)
    undo.undo(p)
    assert days(p)


def test_nothing_is_asked_of_a_day_by_which_it_has_to_be_discarded(p: Pantry) -> None:
    """Doubtful jars are saved within a day, and their seals are checked in that time alone."""
    code = made(p, "3 pint jars peaches, boiling-water canned, minutes=1, larder")
    made(p, "3 pint jars plums, boiling-water canned, minutes=30, larder")
    assert [row.due for row in tending.jobs(p, 60)] == 2 * [TODAY + timedelta(days=1)]
    p.today = TODAY + timedelta(days=2)
    assert verdict(p, code) in UNFIT
    assert [row.food for row in tending.jobs(p)] == ["plums"]


def test_of_a_batch_of_which_some_must_go_the_rest_is_tended(p: Pantry) -> None:
    code = made(p, "2 quart jars kimchi, lactic ferment, kitchen")
    signs.mark(p, f"{code}/1", "slimy")
    signs.mark(p, f"{code}/2", "looks sound")
    rows = {row.container_ids: row.verdict in UNFIT for row in view.due(p)}
    assert rows == {(f"{code}/1",): True, (f"{code}/2",): False}
    assert days(p)


def test_neighbours_that_spoil_each_other_are_named_on_moving(p: Pantry) -> None:
    made(p, "1 crate carrots, cellar-stored, cellar")
    apples = made(p, "2 crates apples, cellar-stored, larder")
    said = act.move(p, apples, "cellar").warnings
    assert any("Apples beside carrots" in one and "bitterness" in one for one in said)
    beets = made(p, "1 crate beets, cellar-stored, larder")
    assert not any("beside" in one for one in act.move(p, beets, "cellar").warnings)
    potatoes = made(p, "1 sack potatoes, cellar-stored, larder")
    assert any("Apples beside potatoes" in one for one in act.move(p, potatoes, "cellar").warnings)
    pears = made(p, "1 crate pears, cellar-stored, larder")
    said = act.move(p, pears, "cellar").warnings
    assert any("Pears beside carrots" in one for one in said)
    assert not any("apples beside pears" in one.casefold() for one in said)


def test_a_dial_gauge_is_tested_yearly_once_it_is_used(p: Pantry) -> None:
    made(p, "7 pint jars beets, pressure canned, minutes=30, psi=11, canner=weighted, larder")
    assert "test it" not in days(p, 400)
    made(p, "7 pint jars beets, pressure canned, minutes=30, psi=11, canner=dial, larder")
    assert days(p, 400)["test it"] == 365
    p.today = TODAY + timedelta(days=30)
    tending.tend(p, "gauge")
    assert days(p, 400)["test it"] == 395


def test_jobs_stand_in_the_week_and_in_the_calendar(p: Pantry) -> None:
    code = made(p, "1 crock sauerkraut, lactic ferment, kitchen")
    assert any(f"skim {code} sauerkraut" in note for note in week.week(p).notes)
    text = calendar(p).replace("\r\n ", "")
    assert f"SUMMARY:Skim: {code} sauerkraut" in text
    assert "DTSTART;VALUE=DATE:20261128" in text


def test_the_calendar_of_the_demo_household(demo: Pantry) -> None:
    rows = tending.jobs(demo, 60)
    text = "".join(
        f"{row.due}{' late' if row.overdue else ''} | {row.code} {row.food} | {row.job}\n"
        for row in rows
    )
    if os.environ.get("PANTRY_SNAPSHOTS") == "write":
        GOLDEN.write_text(text, encoding="utf-8")
    assert text == GOLDEN.read_text(encoding="utf-8")


def test_after_each_act_the_jobs_are_those_that_another_window_finds(p: Pantry) -> None:
    crock = made(p, "1 crock sauerkraut, lactic ferment, kitchen")
    beets = "2 pint jars beets, pressure canned, minutes=30, psi=11, larder"
    plain = made(p, beets)
    dial = made(p, f"{beets}, canner=dial")
    acts = (
        lambda: tending.tend(p, crock, "skim"),
        lambda: act.ready(p, crock),
        lambda: undo.undo(p),
        lambda: act.use(p, plain),
        lambda: act.move(p, plain, "cellar"),
        lambda: act.use(p, dial, "all"),
        lambda: undo.undo(p),
        lambda: readings.read(p, "cellar", 44.0),
        lambda: made(p, "1 crate pears, cellar-stored, larder"),
        lambda: setattr(p, "today", TODAY + timedelta(days=9)),
        lambda: tending.tend(p, plain, "check the seals"),
    )
    for do in acts:
        do()
        with open_pantry(p.path, p.clock) as another:
            assert tending.jobs(p, 400) == tending.jobs(another, 400)
