"""What left and stands there again was somewhere that nobody knows."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, count, places, undo, view
from pantry_tui.services.stock.rows import DueRow


def found_again(p: Pantry, line: str, place: str) -> list[DueRow]:
    """Of two one is given away, and two are counted there."""
    code = putup.put_up(p, putup.read(p, line)).code
    act.give(p, code, 1, "Ada")
    where = p.find_place(place)
    count.from_counts(p, where, {code: 2})
    count.finish(p, where)
    return [row for row in view.due(p) if row.code == code]


def test_what_only_the_cold_keeps_is_unknown_and_not_offered(larder: Pantry) -> None:
    places.add(larder, "chest", "freezer")
    rows = found_again(larder, "2 1 lb packs ground beef, frozen, chest", "chest")
    by_verdict = {row.verdict: row for row in rows}
    assert set(by_verdict) == {Verdict.SOUND, Verdict.UNKNOWN}
    back = by_verdict[Verdict.UNKNOWN]
    assert (back.count, back.usable) == (1, False)
    assert back.reasons[0].startswith("Given away and found again")


def test_more_than_was_given_away_was_overlooked(larder: Pantry) -> None:
    places.add(larder, "chest", "freezer")
    line = "2 1 lb packs ground beef, frozen, chest"
    code = putup.put_up(larder, putup.read(larder, line)).code
    where = larder.find_place("chest")
    count.from_counts(larder, where, {code: 3})
    count.finish(larder, where)
    (row,) = view.due(larder)
    assert (row.count, row.verdict) == (3, Verdict.SOUND)
    undo.undo(larder)
    act.give(larder, code, 1, "Ada")
    count.from_counts(larder, where, {code: 4})
    count.finish(larder, where)
    assert {row.verdict: row.count for row in view.due(larder)} == {
        Verdict.SOUND: 3, Verdict.UNKNOWN: 1
    }  # fmt: skip


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("2 pint jars peaches, boiling-water canned, larder, minutes=30", "larder"),
        ("2 jars onions, dried, larder", "larder"),
        ("2 lb onions, fresh, larder", "larder"),
    ],
)
def test_what_stands_on_any_shelf_comes_back_as_it_was(
    larder: Pantry, line: str, place: str
) -> None:
    if "lb" in line:
        line = line.replace("2 lb", "2 1-lb bags")
    (row,) = found_again(larder, line, place)
    assert row.verdict is not Verdict.UNKNOWN or row.usable
    assert not any("Given away" in one for one in row.reasons)


def counted(p: Pantry, code: str, place: str, number: int) -> list[DueRow]:
    """What stands of a batch once so many are counted there."""
    where = p.find_place(place)
    count.from_counts(p, where, {code: number})
    count.finish(p, where)
    return [row for row in view.due(p) if row.code == code]


def at(p: Pantry, day: date, clock: str) -> None:
    hour, minute = clock.split(":")
    p.clock = Clock(day, int(hour) * 60 + int(minute))


NOV_2, NOV_12 = date(2026, 11, 2), date(2026, 11, 12)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", Clock(NOV_2, 9 * 60)) as opened:
        for name, climate in (
            ("chest", "freezer"), ("fridge", "fridge"), ("shelf", "pantry"), ("kitchen", "room")
        ):  # fmt: skip
            places.add(opened, name, climate)
        yield opened


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


BEEF = "3 1-lb packs ground beef, frozen, chest"
CORN = "3 pint jars corn, pressure canned, shelf, minutes=55 psi=11 canner=dial"
JAM = "3 half-pint jars strawberry jam, shelf, minutes=10"


@pytest.mark.parametrize(
    ("line", "begun", "left", "place"),
    [
        (BEEF, "", "discard", "chest"),
        (BEEF, "", "use", "chest"),
        (BEEF, "thaw", "use", "chest"),
        (BEEF, "kitchen", "discard", "chest"),
        (CORN, "", "use", "shelf"),
        (CORN, "open", "use", "shelf"),
        (CORN, "", "discard", "shelf"),
        (JAM, "open", "use", "shelf"),
        (JAM, "", "discard", "shelf"),
    ],
)
def test_what_was_used_or_discarded_comes_back_as_itself_and_is_not_offered(
    p: Pantry, line: str, begun: str, left: str, place: str
) -> None:
    code = up(p, line)
    at(p, NOV_2, "10:00")
    one = f"{code}/1"
    if begun == "thaw":
        act.thaw(p, one)
    elif begun == "open":
        act.open_(p, one)
    elif begun:
        act.move(p, one, begun)
    at(p, NOV_2, "16:00")
    if left == "use":
        act.use(p, one)
    else:
        act.discard(p, one, why="too old")
    at(p, NOV_12, "9:00")
    before = [(row.verdict, row.usable) for row in view.due(p) if row.code == code]
    rows = counted(p, code, place, 3)
    assert sum(row.count for row in rows) == 3
    (back,) = (row for row in rows if one in row.container_ids)
    # Opened jam nobody knows how long it may stand: unknown, and offered last.
    assert (back.count, back.usable) == (1, (line, begun) == (JAM, "open"))
    others = [(row.verdict, row.usable) for row in rows if row is not back]
    assert others == before, "the others are as they were"
    undo.undo(p)
    assert sum(row.count for row in view.due(p)) == 2


def test_of_several_that_left_the_worst_is_the_one_that_was_found(p: Pantry) -> None:
    code = up(p, BEEF)
    at(p, NOV_2, "10:00")
    act.thaw(p, f"{code}/2")
    at(p, NOV_2, "16:00")
    act.missing(p, f"{code}/1")
    act.missing(p, f"{code}/2")
    at(p, NOV_12, "9:00")
    found = [name for row in counted(p, code, "chest", 2) for name in row.container_ids]
    assert sorted(found) == [f"{code}/2", f"{code}/3"]


def test_one_that_nobody_saw_leave_is_found_before_one_that_was_eaten(p: Pantry) -> None:
    code = up(p, CORN)
    act.open_(p, f"{code}/1")
    act.use(p, f"{code}/1")
    act.missing(p, f"{code}/2")
    (row,) = counted(p, code, "shelf", 2)
    assert (sorted(row.container_ids), row.usable) == ([f"{code}/2", f"{code}/3"], True)


def test_what_was_missing_stood_where_it_is_found_since_it_was_missed(p: Pantry) -> None:
    stew = up(p, "3 quart tubs stew, cooked meal, fridge")
    at(p, NOV_2, "10:30")
    act.missing(p, f"{stew}/1")
    at(p, NOV_2, "12:00")
    act.move(p, f"{stew}/2", "kitchen")
    at(p, NOV_2, "13:00")
    rows = counted(p, stew, "kitchen", 2)
    assert {name: row.verdict for row in rows for name in row.container_ids} == {
        f"{stew}/1": Verdict.DISCARD, f"{stew}/2": Verdict.EAT_SOON, f"{stew}/3": Verdict.EAT_SOON
    }  # fmt: skip


def test_what_was_missing_from_the_cold_and_is_found_in_it_lost_nothing(p: Pantry) -> None:
    beef = up(p, BEEF)
    act.missing(p, f"{beef}/1")
    at(p, NOV_12, "9:00")
    (row,) = counted(p, beef, "chest", 3)
    assert row.verdict is Verdict.SOUND


def test_an_opened_jar_found_on_a_shelf_was_out_of_the_cold_since_it_was_missed(
    p: Pantry,
) -> None:
    jam = up(p, JAM)
    act.open_(p, f"{jam}/1")
    act.missing(p, f"{jam}/1")
    at(p, NOV_12, "9:00")
    rows = counted(p, jam, "shelf", 3)
    (back,) = (row for row in rows if f"{jam}/1" in row.container_ids)
    assert (back.verdict, back.discard_after) == (Verdict.UNKNOWN, None)


def test_one_more_than_was_ever_put_up_stood_there_since_the_others_were(p: Pantry) -> None:
    stew = up(p, "2 quart tubs stew, cooked meal, fridge")
    at(p, NOV_2, "12:00")
    act.move(p, f"{stew}/1", "kitchen")
    act.move(p, f"{stew}/2", "kitchen")
    at(p, NOV_2, "13:00")
    rows = counted(p, stew, "kitchen", 3)
    assert {row.verdict: row.count for row in rows} == {Verdict.DISCARD: 1, Verdict.EAT_SOON: 2}
