"""A day that is typed as today is a person's word: said of a time before the last booking it makes
no clock that was ahead, unless the computer's own clock was."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import ClockAhead, Open
from pantry_tui.core.words import Verdict
from pantry_tui.services import clock as clocks
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, readings, undo
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.seen import At

Act = Callable[[Pantry], object]
#: A day that has come by the clock of any computer, and one that has not.
COME, TO_COME = date(2001, 11, 27), date(2090, 11, 27)
MORNING = 10 * 60


def up(line: str) -> Act:
    return lambda p: putup.put_up(p, putup.read(p, line))


SOUP = up("3 boxes chicken soup, fridge")
JAM = up("2 half-pint jars plum jam, pantry minutes=10")


def read(p: Pantry) -> object:
    return readings.read(p, "pantry", 60)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Begun on a day that has come, by a clock that is right."""
    store = tmp_path / "store.db"
    began = Clock(date(2001, 10, 1), 600)
    create(store, people=2, clock=began)
    with open_pantry(store, began) as p:
        for name in ("fridge", "freezer", "pantry"):
            places.add(p, name, name)
    return store


def at(path: Path, clock: Clock, *acts: Act) -> None:
    with open_pantry(path, clock) as p:
        for one in acts:
            one(p)


def typed(day: date, minute: int | None = MORNING) -> Clock:
    return Clock(day, minute, typed=True)


def shown(path: Path, clock: Clock) -> tuple[Verdict, date | None]:
    with open_pantry(path, clock) as p:
        judged = p.judge(next(iter(p.stock.containers.values())))
        return judged.verdict, judged.discard_after


def notes(path: Path, clock: Clock) -> list[str]:
    with open_pantry(path, clock) as p:
        return [one.id for one in p.events if isinstance(one.payload, ClockAhead)]


@pytest.mark.parametrize("minute", [None, 18 * 60])
def test_a_day_before_the_last_booking_is_said_as_with_at(path: Path, minute: int | None) -> None:
    at(path, typed(COME), SOUP)
    at(path, typed(COME - timedelta(days=1), minute), read)
    later = typed(COME, MORNING + 5)
    assert notes(path, later) == []
    assert shown(path, later) == (Verdict.EAT_SOON, COME + timedelta(days=3))


def test_a_day_that_had_not_come_was_no_today(path: Path) -> None:
    """Typed by mistake, and then the right one."""
    at(path, typed(TO_COME), SOUP)
    at(path, typed(COME), read)
    assert notes(path, typed(COME))
    assert shown(path, typed(COME))[0] is Verdict.DISCARD


def test_what_a_wrong_clock_booked_is_found_by_a_day_that_is_typed(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    says(monkeypatch, datetime(2090, 11, 27, 10, tzinfo=UTC))
    at(path, Clock(), SOUP)
    says(monkeypatch, datetime(2026, 11, 28, 10, tzinfo=UTC))
    at(path, typed(date(2026, 11, 28)), read)
    assert shown(path, Clock())[0] is Verdict.DISCARD
    # Of a clock it is no word: to take the reading back lifts nothing, then or on that day.
    says(monkeypatch, datetime(2090, 11, 27, 11, tzinfo=UTC))
    at(path, Clock(), undo.undo)
    assert notes(path, Clock())
    assert shown(path, Clock())[0] is Verdict.DISCARD


def test_a_day_typed_while_the_clock_was_wrong_hides_nothing(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    says(monkeypatch, datetime(2090, 11, 27, 10, tzinfo=UTC))
    at(path, Clock(), SOUP)
    says(monkeypatch, datetime(2090, 11, 27, 11, tzinfo=UTC))
    at(path, typed(date(2026, 11, 20)), read)
    says(monkeypatch, datetime(2026, 11, 28, 10, tzinfo=UTC))
    at(path, Clock(), JAM)
    assert shown(path, Clock())[0] is Verdict.DISCARD


def says(monkeypatch: pytest.MonkeyPatch, now: datetime) -> None:
    """The clock of the computer."""
    monkeypatch.setattr(clocks, "real", now.astimezone)


def test_a_note_that_a_word_made_goes_with_it(path: Path) -> None:
    at(path, typed(TO_COME), SOUP)
    at(path, typed(TO_COME - timedelta(days=1)), read)
    later = typed(TO_COME, MORNING + 5)
    assert shown(path, later)[0] is Verdict.DISCARD
    with open_pantry(path, later) as p:
        assert undo.undo(p).message == "Took back: measured 60 F in pantry."
    assert shown(path, later) == (Verdict.EAT_SOON, TO_COME + timedelta(days=3))
    at(path, later, undo.redo)
    assert shown(path, later)[0] is Verdict.DISCARD


def test_a_note_stays_while_now_is_before_what_it_speaks_of(path: Path) -> None:
    at(path, typed(TO_COME), SOUP)
    at(path, typed(COME), read, undo.undo)
    assert shown(path, typed(COME))[0] is Verdict.DISCARD
    assert shown(path, typed(TO_COME, MORNING + 5))[0] is Verdict.DISCARD


def test_a_note_that_is_named_goes_alone(path: Path) -> None:
    at(path, typed(TO_COME), SOUP)
    at(path, typed(TO_COME - timedelta(days=1)), read)
    later = typed(TO_COME, MORNING + 5)
    (note,) = notes(path, later)
    at(path, later, lambda p: undo.undo(p, note))
    assert shown(path, later)[0] is Verdict.EAT_SOON
    with open_pantry(path, later) as p:
        assert p.places[p.find_place("pantry").id].reading is not None


def test_its_day_is_put_right_as_is_advised(path: Path) -> None:
    """Also to a day after that on which the wrong clock was found out."""
    at(path, typed(TO_COME), SOUP)
    at(path, typed(TO_COME - timedelta(days=1)), read)
    later = typed(TO_COME, MORNING + 5)
    assert "Put right the day on which it was made." in advice(path, later)
    at(path, later, lambda p: correct(p, "2A", made=TO_COME.isoformat()))
    assert advice(path, later) == ""
    assert shown(path, later) == (Verdict.EAT_SOON, TO_COME + timedelta(days=3))


def test_what_was_done_to_it_is_taken_back_and_booked_again_as_is_advised(path: Path) -> None:
    at(path, Clock(COME, 600), up("2 quart jars peaches, boiling-water canned minutes=25 pack=hot, "
                                  "pantry"))  # fmt: skip
    at(path, Clock(TO_COME, 600), lambda p: act.open_(p, "2A/1"))
    right = Clock(COME + timedelta(days=9), 600)
    at(path, right, JAM)
    assert "Take it back and book it again with its day." in advice(path, right)
    with open_pantry(path, right) as p:
        (opened,) = (one.id for one in p.events if isinstance(one.payload, Open))
        undo.undo(p, opened)
        act.open_(p, "2A/1", at=At(COME + timedelta(days=8)))
    assert advice(path, right) == ""


def advice(path: Path, clock: Clock) -> str:
    with open_pantry(path, clock) as p:
        judged = p.judge(next(iter(p.stock.containers.values())))
        return " ".join(one for one in judged.standing if "clock that was ahead" in one)
