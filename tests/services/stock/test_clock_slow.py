"""Two clocks that differ by minutes: what the slower one is told of is no milder than what the
other one had been told, and what it books came after what had been booked before."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.ahead import SLIGHT
from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, lines, places, readings
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 27)
NOON = 12 * 60
#: Minutes by which the other clock is slower; up to them clocks differ without a wrong day.
SLOWER = (1, 25, SLIGHT)


@pytest.fixture(params=[False, True], ids=["clock", "typed"])
def typed(request: pytest.FixtureRequest) -> bool:
    return bool(request.param)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    store = tmp_path / "store.db"
    create(store, people=2, clock=Clock(date(2026, 11, 20), 600))
    with open_pantry(store, Clock(date(2026, 11, 20), 600)) as p:
        for name in ("fridge", "freezer", "room"):
            places.add(p, name, name)
    return store


def at(path: Path, minute: int, typed: bool, does: Callable[[Pantry], object]) -> None:
    day, left = divmod(minute, 24 * 60)
    with open_pantry(path, Clock(date.fromordinal(TODAY.toordinal() + day), left, typed)) as p:
        does(p)


def up(line: str) -> Callable[[Pantry], object]:
    return lambda p: putup.put_up(p, putup.read(p, line))


def to(place: str) -> Callable[[Pantry], object]:
    return lambda p: act.move(p, "2A", place)


def shown(path: Path, minute: int, typed: bool) -> tuple[Verdict, Verdict, str]:
    """The verdict that is judged, the one of its line, and where it stands."""
    found: list[tuple[Verdict, Verdict, str]] = []

    def look(p: Pantry) -> None:
        (box,) = p.stock.containers.values()
        (row,) = lines.of_code(p, "2A", all_of_it=True)
        found.append((p.judge(box).verdict, row.verdict, p.where(box)))

    at(path, minute, typed, look)
    return found[0]


@pytest.mark.parametrize("slower", SLOWER)
def test_what_stood_too_long_stays_so_by_a_slower_clock(
    path: Path, slower: int, typed: bool
) -> None:
    at(path, NOON, typed, up("2 lb ground beef, fresh, fridge"))
    at(path, NOON + 60, typed, to("room"))
    at(path, NOON + 181, typed, to("fridge"))
    gone = (Verdict.DISCARD, Verdict.DISCARD, "fridge")
    assert shown(path, NOON + 181, typed) == gone
    assert shown(path, NOON + 181 - slower, typed) == gone


def test_what_was_cut_off_too_long_stays_so_by_a_slower_clock(path: Path, typed: bool) -> None:
    at(path, NOON, typed, up("2 lb ground beef, fresh, fridge"))
    at(path, NOON + 121, typed, lambda p: readings.read(p, "fridge", 55, since=121))
    gone = (Verdict.DISCARD, Verdict.DISCARD, "fridge")
    assert shown(path, NOON + 121, typed) == gone
    assert shown(path, NOON + 100, typed) == gone


def test_a_day_that_came_stays_so_by_a_slower_clock(path: Path, typed: bool) -> None:
    """It was looked at a few minutes after midnight, and again by a clock before it."""
    midnight = 24 * 60
    at(path, -midnight + NOON, typed, up("2 lb ground beef, fresh, fridge"))
    at(path, midnight + 5, typed, lambda p: readings.read(p, "fridge", 38))
    gone = (Verdict.DISCARD, Verdict.DISCARD, "fridge")
    assert shown(path, midnight + 5, typed) == gone
    assert shown(path, midnight - 15, typed) == gone


@pytest.mark.parametrize("slower", SLOWER)
def test_what_is_put_back_by_a_slower_clock_is_back(path: Path, slower: int, typed: bool) -> None:
    at(path, NOON, typed, up("2 lb ground beef, fresh, fridge"))
    at(path, NOON + 60, typed, to("room"))
    at(path, NOON + 60 - slower, typed, to("fridge"))
    for later in (60 - slower, 60, 90, 300):
        verdict, line, where = shown(path, NOON + later, typed)
        assert where == "fridge"
        assert verdict is line is Verdict.EAT_SOON


def test_what_is_taken_out_by_a_slower_clock_counts_from_its_minute(
    path: Path, typed: bool
) -> None:
    """It was put into the fridge by the other clock: out of it from the earliest that it may be."""
    at(path, NOON, typed, up("2 lb ground beef, fresh, fridge"))
    at(path, NOON + 10, typed, to("room"))
    at(path, NOON + 60, typed, to("fridge"))
    at(path, NOON + 40, typed, to("room"))
    assert shown(path, NOON + 60, typed)[2] == "room"
    assert shown(path, NOON + 131, typed)[:2] == (Verdict.DISCARD, Verdict.DISCARD)


def test_there_and_back_by_the_slower_clock_stays_in_its_order(path: Path, typed: bool) -> None:
    at(path, NOON, typed, up("2 lb ground beef, frozen, freezer"))
    at(path, NOON + 60, typed, to("fridge"))
    at(path, NOON + 36, typed, to("freezer"))
    at(path, NOON + 40, typed, to("fridge"))
    at(path, NOON + 45, typed, to("freezer"))
    assert shown(path, NOON + 46, typed)[2] == "freezer"
    assert shown(path, NOON + 600, typed)[2] == "freezer"


def test_a_move_of_an_hour_before_it_came_is_refused(path: Path) -> None:
    with open_pantry(path, Clock(TODAY, 480)) as p:
        places.add(p, "second fridge", "fridge")
    at(path, 16 * 60 + 41, True, up("2 pint jars eggs, fresh, fridge"))
    at(path, 11 * 60 + 46, True, lambda p: act.open_(p, "2A/1"))
    moved = At(TODAY, 11 * 60 + 47)
    with pytest.raises(Refused, match=r"was put up on .* at 16:41"):
        at(path, 15 * 60, True, lambda p: act.move(p, "2A/1", "second fridge", at=moved))
