"""What was booked by a clock that ran ahead is judged no milder than at the earliest moment at
which it may have happened: before the wrong day and after it."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import ClockAhead
from pantry_tui.core.words import SEVERITY, State, Verdict
from pantry_tui.services import clock as clocks
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, outage, places, readings, undo, view
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.seen import At

LONG_SINCE = Clock(date(2026, 10, 1), 600)
BEFORE = Clock(date(2026, 11, 20), 18 * 60)
AFTER = Clock(date(2026, 11, 28), 9 * 60)
AHEAD = date(2028, 3, 2)
#: Clocks that were ahead by more than a year, by days, and by hours of the same day.
WRONG = (
    Clock(AHEAD),
    Clock(AHEAD, 600),
    Clock(date(2026, 12, 3), 600),
    Clock(AFTER.today, 1200),
    Clock(AFTER.today + timedelta(days=1)),
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    store = tmp_path / "store.db"
    create(store, people=2, clock=LONG_SINCE)
    with open_pantry(store, LONG_SINCE) as p:
        for name in ("fridge", "freezer", "pantry"):
            places.add(p, name, name)
    return store


def at(path: Path, clock: Clock, does: Callable[[Pantry], object]) -> None:
    with open_pantry(path, clock) as p:
        does(p)


def up(line: str) -> Callable[[Pantry], object]:
    return lambda p: putup.put_up(p, putup.read(p, line))


def shown(path: Path, clock: Clock, code: str = "2A") -> tuple[Verdict, date | None]:
    with open_pantry(path, clock) as p:
        (box, *_) = (one for one in p.stock.containers.values() if name(p, one.batch) == code)
        judged = p.judge(box)
        return judged.verdict, judged.discard_after


def name(p: Pantry, batch: str) -> str:
    return p.stock.batches[batch].code


def cut(p: Pantry, hours: float) -> None:
    """The power came back just now."""
    freezer = p.find_place("freezer")
    end = outage.now_of(p)
    outage.book(p, freezer, outage.cut_of(p, freezer, end - timedelta(hours=hours), end))


def booked_since(path: Path) -> None:
    """Something else, by a clock that is right again."""
    at(path, AFTER, up("2 pint jars peach jam, jam, pantry"))


#: What happens after a put-up on the 20th: (what was put up, what happens to it).
ACTS: dict[str, tuple[str, Callable[[Pantry], object]]] = {
    "open": (
        "1 quart jar peaches, boiling-water canned minutes=25 pack=hot, pantry",
        lambda p: act.open_(p, "2A"),
    ),
    "thaw": ("2 lb ground beef, frozen, freezer", lambda p: act.thaw(p, "2A")),
    "warm": ("2 lb ground beef, fresh, fridge", lambda p: act.move(p, "2A", "pantry")),
    "read": ("2 lb ground beef, frozen, freezer", lambda p: readings.read(p, "freezer", 55)),
    "cut": ("2 lb ground beef, frozen, freezer", lambda p: cut(p, 72)),
}


@pytest.mark.parametrize("wrong", WRONG)
def test_what_is_put_up_counts_from_the_last_booking_before(path: Path, wrong: Clock) -> None:
    at(path, BEFORE, lambda p: places.add(p, "shed", "room"))
    at(path, wrong, up("2 lb ground beef, fresh, fridge"))
    booked_since(path)
    honest = BEFORE.today + timedelta(days=1)  # fresh mince: one day
    for clock in (AFTER, wrong, Clock(AHEAD + timedelta(days=9))):
        assert shown(path, clock) == (Verdict.DISCARD, honest)


@pytest.mark.parametrize("wrong", WRONG)
@pytest.mark.parametrize("what", ACTS)
def test_what_happens_to_it_is_no_milder_than_at_once(path: Path, what: str, wrong: Clock) -> None:
    line, does = ACTS[what]
    at(path, BEFORE if "fresh" in line else LONG_SINCE, up(line))
    at(path, BEFORE, lambda p: places.add(p, "shed", "room"))
    honest = path.with_name("honest.db")
    shutil.copy(path, honest)
    at(honest, BEFORE, does)
    at(path, wrong, does)
    booked_since(path)
    for clock in (AFTER, wrong, Clock(AHEAD + timedelta(days=9))):
        verdict, last = shown(path, clock)
        least, soonest = shown(honest, clock)
        assert SEVERITY.index(verdict) <= SEVERITY.index(least)
        assert soonest is not None
        assert (last or date.min) <= soonest
        assert any("by a clock that was ahead" in one for one in standing(path, clock))


def standing(path: Path, clock: Clock) -> tuple[str, ...]:
    with open_pantry(path, clock) as p:
        return p.judge(next(iter(p.stock.containers.values()))).standing


def test_a_cut_that_is_still_to_come_by_its_clock_strikes_now(path: Path) -> None:
    at(path, LONG_SINCE, up(ACTS["cut"][0]))
    at(path, Clock(AHEAD, 600), ACTS["cut"][1])
    assert shown(path, AFTER)[0] is Verdict.DISCARD


def test_lists_offer_nothing_that_may_be_over_before_its_clock_is_found_out(path: Path) -> None:
    """Nothing was booked since the clock was put back; what an opened cordial may not have stood
    in decides, and not the day on which the table was written."""
    at(path, BEFORE, up("2 pint bottles elderflower cordial, sugar preserve, pantry"))
    at(path, Clock(AHEAD, 600), lambda p: act.open_(p, "2A/1"))
    at(path, Clock(AHEAD, 601), lambda p: act.move(p, "2A/1", "pantry"))
    with open_pantry(path, AFTER) as p:
        usable = {row.state: row.usable for row in view.due(p)}
    assert usable == {State.OPEN: False, State.SEALED: True}


@pytest.mark.parametrize("wrong", WRONG)
def test_a_look_by_a_clock_that_was_ahead_says_nothing_of_a_sign_seen_since(
    path: Path, wrong: Clock
) -> None:
    at(path, BEFORE, up("3 pint jars runner beans, pressure canned minutes=20 psi=11, pantry"))
    at(path, BEFORE, lambda p: signs.mark(p, "2A/3", "bulging lid"))
    assert shown(path, BEFORE)[0] is Verdict.UNKNOWN
    at(path, wrong, lambda p: signs.mark(p, "2A/1", "looks sound"))
    at(path, AFTER, lambda p: signs.mark(p, "2A/2", "bulging lid"))
    for clock in (AFTER, wrong, Clock(AHEAD + timedelta(days=9))):
        assert shown(path, clock)[0] is Verdict.UNKNOWN


def test_a_day_that_is_put_right_counts_and_is_named_no_more(path: Path) -> None:
    at(path, Clock(AHEAD), up("2 lb ground beef, fresh, fridge"))
    booked_since(path)
    at(path, AFTER, lambda p: correct(p, "2A", made="2026-11-28"))
    assert shown(path, AFTER) == (Verdict.EAT_SOON, date(2026, 11, 29))
    assert standing(path, AFTER) == ()


def test_only_by_its_id_is_it_taken_back_that_a_clock_was_ahead(path: Path) -> None:
    """Whoever undoes act after act does not lift it; who knows better names it."""
    at(path, Clock(AHEAD), up("2 lb ground beef, fresh, fridge"))
    booked_since(path)
    at(path, AFTER, undo.undo)
    assert shown(path, AFTER)[0] is Verdict.DISCARD
    with open_pantry(path, AFTER) as p:
        (marked,) = (one for one in p.events if isinstance(one.payload, ClockAhead))
        undo.undo(p, marked.id)
    assert shown(path, Clock(AHEAD))[0] is not Verdict.DISCARD


def test_where_nothing_was_booked_before_nobody_knows_its_day(tmp_path: Path) -> None:
    path = tmp_path / "new.db"
    create(path, people=2, clock=Clock(AHEAD))
    at(path, Clock(AHEAD), lambda p: places.add(p, "fridge", "fridge"))
    at(path, Clock(AHEAD), up("2 lb ground beef, fresh, fridge"))
    at(path, AFTER, lambda p: places.add(p, "larder", "pantry"))
    for clock in (AFTER, Clock(AHEAD + timedelta(days=9))):
        assert shown(path, clock)[0] is Verdict.DISCARD


def test_a_clock_that_goes_on_says_nothing(path: Path) -> None:
    """Days told of the past, and a clock that is set right by a minute, are no clock ahead."""
    at(path, AFTER, up("2 pint jars peach jam, jam, pantry, 2026-10-01"))
    at(path, AFTER, lambda p: act.open_(p, "2A", at=At(date(2026, 11, 21))))
    at(path, AFTER._replace(minute=9 * 60 - 1), lambda p: places.add(p, "hall", "room"))
    at(path, Clock(AFTER.today), lambda p: places.add(p, "shed", "room"))
    at(path, AFTER, lambda p: places.add(p, "attic", "room"))
    with open_pantry(path, AFTER) as p:
        assert not any(isinstance(one.payload, ClockAhead) for one in p.events)


#: Clocks that are set right by half an hour at most, by minutes.
SLIGHT = (3, 20, 30)


def back(minutes: int, clock: Clock = AFTER) -> Clock:
    assert clock.minute is not None
    return clock._replace(minute=clock.minute - minutes)


@pytest.mark.parametrize("minutes", SLIGHT)
def test_a_clock_that_is_put_back_by_minutes_costs_minutes(path: Path, minutes: int) -> None:
    at(path, BEFORE, lambda p: places.add(p, "shed", "room"))
    at(path, AFTER, up("2 lb ground beef, fresh, fridge"))
    at(path, back(minutes), up("2 pint jars peach jam, jam, pantry"))
    assert shown(path, AFTER) == (Verdict.EAT_SOON, AFTER.today + timedelta(days=1))
    assert standing(path, AFTER) == ()


def test_more_than_half_an_hour_may_be_any_time(path: Path) -> None:
    at(path, BEFORE, lambda p: places.add(p, "shed", "room"))
    at(path, AFTER, up("2 lb ground beef, fresh, fridge"))
    at(path, back(31), up("2 pint jars peach jam, jam, pantry"))
    assert shown(path, AFTER) == (Verdict.DISCARD, BEFORE.today + timedelta(days=1))


@pytest.mark.parametrize("start", [0, 3])
@pytest.mark.parametrize("minutes", SLIGHT[1:])
def test_what_a_clock_booked_in_its_order_stays_in_it(path: Path, minutes: int, start: int) -> None:
    """Out to the table, back into the cold, and the clock is put back to when it was taken out or
    before."""
    at(path, BEFORE, up("4 half-pint jars strawberry jam, jam minutes=10, pantry"))
    at(path, BEFORE, lambda p: act.open_(p, "2A/1"))
    at(path, AFTER, lambda p: places.add(p, "shed", "room"))
    at(path, back(-start), lambda p: act.move(p, "2A/1", "pantry"))
    at(path, back(-minutes), lambda p: act.move(p, "2A/1", "fridge"))
    honest = shown(path, back(-minutes))
    at(path, AFTER, lambda p: act.open_(p, "2A/2"))
    for later in (64, 90, 24 * 60):
        day, minute = divmod((AFTER.minute or 0) + later, 24 * 60)
        clock = Clock(AFTER.today + timedelta(days=day), minute)
        assert shown(path, clock) == honest


def test_minutes_in_the_warm_that_were_told_count_whole(path: Path) -> None:
    """Two and a half hours on the table are too long, though the clock is put back."""
    at(path, back(30), up("2 lb ground beef, fresh, fridge"))
    at(path, AFTER, lambda p: act.move(p, "2A", "pantry"))
    at(path, back(-150), lambda p: act.move(p, "2A", "fridge"))
    at(path, back(-130), up("2 pint jars peach jam, jam, pantry"))
    assert shown(path, back(-151))[0] is Verdict.DISCARD


@pytest.mark.parametrize(
    ("first", "then"),
    [
        ("2026-11-01T01:50:00-04:00", "2026-11-01T01:05:00-05:00"),  # summer time ends
        ("2026-11-01T18:00:00-05:00", "2026-11-01T17:10:00-06:00"),  # carried one zone west
    ],
)
def test_an_hour_that_the_zone_puts_back_is_no_step_back(
    path: Path, monkeypatch: pytest.MonkeyPatch, first: str, then: str
) -> None:
    lines = ("2 lb ground beef, fresh, fridge", "2 pint jars peach jam, jam, pantry")
    for now, line in zip((first, then), lines, strict=True):
        said = datetime.fromisoformat(now)
        monkeypatch.setattr(clocks, "real", lambda said=said: said)
        at(path, Clock(), up(line))
    with open_pantry(path, Clock()) as p:
        assert not any(isinstance(one.payload, ClockAhead) for one in p.events)
    assert shown(path, Clock()) == (Verdict.EAT_SOON, date(2026, 11, 2))
