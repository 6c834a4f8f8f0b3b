"""The calendar: complete, escaped, read back by a general library, and a feed that updates."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar, Event

from pantry_tui.core.text import begun
from pantry_tui.services.batchwork import putup, tending
from pantry_tui.services.demo import build_demo
from pantry_tui.services.output.calendar import JOBS_AHEAD, calendar
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.stock import act, places, readings, undo, view

TODAY = date(2026, 11, 25)
HOSTILE = "beans; [/x], <b>\\ ünï " + "x" * 90


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("attic", "room"), ("fridge", "fridge")):
            places.add(pantry, name, climate)
        places.add(pantry, "freezer", "freezer")
        yield pantry


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def events(p: Pantry) -> dict[str, Event]:
    """By UID, none twice, each of them whole."""
    text = calendar(p)
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    found = [one for one in Calendar.from_ical(text).walk() if isinstance(one, Event)]
    assert all(not one.errors for one in found)
    by_uid = {str(one["UID"]): one for one in found}
    assert len(by_uid) == len(found)
    for one in found:
        assert one.decoded("DTEND") > one.decoded("DTSTART")
        assert isinstance(one.decoded("DTSTAMP"), datetime)
        assert one.decoded("LAST-MODIFIED") == one.decoded("DTSTAMP")
    return by_uid


def one(found: dict[str, Event], words: str) -> Event:
    (event,) = [each for each in found.values() if words in str(each["SUMMARY"])]
    return event


def day(event: Event) -> Any:
    return event.decoded("DTSTART")


def edition(event: Event) -> int:
    return int(event.decoded("SEQUENCE"))


def test_every_date_ahead_is_in_it_and_no_name_breaks_it(p: Pantry) -> None:
    dried = putup.from_flags(
        p, food=HOSTILE, method="dried", place="larder", count=2, group="vegetable",
        acidity="low-acid",
    )  # fmt: skip
    putup.put_up(p, dried)
    up(p, "3 pint jars peaches, boiling-water canned, larder, 1 aug")
    found = events(p)
    assert day(one(found, "Best by: 3A peaches")) == date(2027, 8, 1)
    assert HOSTILE.lower() in str(one(found, "Best by: 2A")["SUMMARY"])


def test_the_demo_has_each_date_and_each_job_once(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        said = [str(each["SUMMARY"]) for each in events(demo).values()]
        for row in view.due(demo):
            if row.usable and row.good_until and row.good_until >= TODAY:
                assert any(s.startswith(f"Best by: {row.code} ") for s in said), row
        for job in tending.jobs(demo, JOBS_AHEAD):
            assert any(s.startswith(f"{begun(job.job)}:") for s in said), job


def test_the_same_store_gives_the_same_file(p: Pantry) -> None:
    up(p, "3 pint jars peaches, boiling-water canned, larder, 1 aug")
    weeks.accept(p)
    assert calendar(p) == calendar(p)


def test_what_moves_keeps_its_name_and_is_newer(p: Pantry) -> None:
    code = up(p, "3 pint jars peaches, boiling-water canned, larder, 1 aug")
    before = events(p)
    was = one(before, f"Best by: {code}")
    act.use(p, code)
    readings.read(p, "larder", 80.0)
    after = events(p)
    now = after[str(was["UID"])]
    assert edition(now) > edition(was)
    assert now.decoded("LAST-MODIFIED") >= was.decoded("LAST-MODIFIED")
    assert "2 in larder" in str(now["SUMMARY"])
    undo.undo(p)
    again = events(p)[str(was["UID"])]
    assert edition(again) > edition(now), "taking back is a change as well"


def test_what_nobody_touched_is_as_it_was(p: Pantry) -> None:
    quiet = up(p, "3 pint jars plums, boiling-water canned, larder, 1 aug")
    other = up(p, "3 pint jars peaches, boiling-water canned, attic, 1 aug")
    before = events(p)
    act.use(p, other)
    after = events(p)
    uid = str(one(before, f"Best by: {quiet}")["UID"])
    assert before[uid].to_ical() == after[uid].to_ical()


def test_what_is_gone_is_gone_and_nothing_else(p: Pantry) -> None:
    code = up(p, "1 pint jar peaches, boiling-water canned, larder, 1 aug")
    other = up(p, "1 pint jar plums, boiling-water canned, larder, 1 aug")
    before = events(p)
    act.use(p, code)
    gone = set(before) - set(events(p))
    assert gone == {str(one(before, f"Best by: {code}")["UID"])}
    assert other


def test_a_jar_in_another_place_with_another_day_is_another_thing(p: Pantry) -> None:
    code = up(p, "3 pint jars peaches, boiling-water canned, larder, 1 aug")
    alone = events(p)
    act.open_(p, code)
    found = events(p)
    assert set(alone) < set(found)
    opened = one(found, f"Discard after: {code} peaches (open)")
    assert day(opened) == TODAY + timedelta(days=3)
    p.today = TODAY + timedelta(days=1)
    act.open_(p, code)
    assert len(events(p)) == len(found) + 1


def test_the_accepted_week_is_in_it_with_what_thaws_and_what_is_opened(p: Pantry) -> None:
    up(p, "4 1 lb packs ground beef, frozen, freezer, 1 aug")
    up(p, "4 pint jars beets, pressure canned, larder, 1 aug")
    jam = up(p, "4 half-pint jars strawberry jam, jam, larder, 1 aug")
    assert not any(uid.startswith(("eat", "thaw", "open")) for uid in events(p))
    weeks.accept(p)
    found, plan = events(p), weeks.week(p)
    assert plan.take
    for take in plan.take:
        for on in take.days:
            meal = found[next(uid for uid in found if uid.startswith(f"eat-{on:%Y%m%d}"))]
            assert f"{take.code} {take.food}" in str(meal["SUMMARY"])
            assert day(meal) == on
        if take.thaw_by:
            thaw = [e for u, e in found.items() if u.startswith("thaw") and day(e) == take.thaw_by]
            assert any(take.code in str(e["SUMMARY"]) for e in thaw)
    assert [jam] == [take.code for take in plan.beside]
    assert day(one(found, "Open beside the meals")) == plan.beside[0].day


def test_a_week_that_changes_moves_its_days_and_a_day_eaten_out_is_gone(p: Pantry) -> None:
    up(p, "9 pint jars beets, pressure canned, larder, 2025-12-01")
    weeks.accept(p)
    before = {u: e for u, e in events(p).items() if u.startswith("eat")}
    last = max(day(e) for e in before.values())
    wishes.out(p, last)
    after = {u: e for u, e in events(p).items() if u.startswith("eat")}
    assert last not in {day(e) for e in after.values()}
    both = set(after) & set(before)
    assert both
    assert all(edition(after[uid]) > edition(before[uid]) for uid in both)
    weeks.forget(p)
    assert not any(uid.startswith("eat") for uid in events(p))


def test_a_late_job_stands_on_today_and_is_newer_each_day(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as demo:
        late = next(job for job in tending.jobs(demo) if job.overdue)
        words = f"{late.job.capitalize()}: {late.code} "
        (uid,) = [u for u, e in events(demo).items() if words in str(e["SUMMARY"])]
        was = events(demo)[uid]
        demo.today = TODAY + timedelta(days=1)
        now = events(demo)[uid]
        assert (day(was), day(now)) == (TODAY, TODAY + timedelta(days=1))
        assert edition(now) == edition(was) + 1


def test_harvests_ahead_are_a_week_each(p: Pantry) -> None:
    for year in (2024, 2025, 2026):
        up(p, f"9 pint jars peaches, boiling-water canned, larder, {year}-08-2{year % 10}")
    harvest = one(events(p), "Harvest: peaches")
    assert day(harvest) == date(2027, 8, 25)
    assert harvest.decoded("DTEND") == date(2027, 9, 1)
