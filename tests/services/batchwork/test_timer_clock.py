"""What a timer says is no more than what surely passed, wherever the clock was moved to."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.log.timing import BROKEN_OFF
from pantry_tui.errors import Refused
from pantry_tui.services import clock
from pantry_tui.services.batchwork import timer
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

BEANS = "7 pint jars runner beans, pressure canned, canner=dial, larder"


class Computer:
    """Its clock, and how long it has run."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.clock, self.ran = datetime(2026, 11, 25, 9, tzinfo=UTC), 5000
        patch.setattr(clock, "real", self._now)
        patch.setattr(clock, "running_for", lambda: self.ran)

    def _now(self) -> datetime:
        return self.clock.astimezone()

    def wait(self, minutes: float, *, ahead: timedelta = timedelta()) -> None:
        self.clock += timedelta(minutes=minutes) + ahead
        self.ran += int(minutes * 60)


@pytest.fixture
def computer(monkeypatch: pytest.MonkeyPatch) -> Computer:
    return Computer(monkeypatch)


@pytest.fixture
def p(tmp_path: Path, computer: Computer) -> Iterator[Pantry]:
    assert computer.ran
    create(tmp_path / "store.db", altitude_ft=0)
    with open_pantry(tmp_path / "store.db", Clock()) as opened:
        places.add(opened, "larder", "pantry")
        yield opened


def started(p: Pantry) -> str:
    code = put_up(p, read(p, BEANS)).code
    timer.start(p, code, "25 min 11 psi")
    return code


def doubt_of(p: Pantry, code: str) -> tuple[str, ...]:
    return next(one.doubt for one in p.stock.batches.values() if one.code == code)


def minutes_of(p: Pantry, code: str) -> str | None:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return dict(batch.process).get("minutes")


@pytest.mark.parametrize("ahead", [timedelta(minutes=20), timedelta(hours=1), timedelta(days=1)])
def test_a_clock_that_is_put_on_makes_no_minute_of_it(
    p: Pantry, computer: Computer, ahead: timedelta
) -> None:
    code = started(p)
    computer.wait(5, ahead=ahead)
    (row,) = timer.running(p)
    assert (row.left, bool(row.unsure)) == (20, True)
    with pytest.raises(Refused, match="moved since it was started: 5 of 25 minutes"):
        timer.done(p, code)
    timer.done(p, code, early=True)
    assert minutes_of(p, code) == "5"


def test_once_the_time_surely_passed_nothing_is_asked(p: Pantry, computer: Computer) -> None:
    code = started(p)
    computer.wait(25, ahead=timedelta(days=1))
    assert timer.running(p)[0].unsure == ""
    timer.done(p, code)
    assert minutes_of(p, code) == "25"
    assert BROKEN_OFF not in doubt_of(p, code)


def test_nor_where_nobody_comes_back_before_the_next_morning(p: Pantry, computer: Computer) -> None:
    code = started(p)
    computer.wait(14 * 60)
    timer.done(p, code)
    assert minutes_of(p, code) == "25"


@pytest.mark.parametrize("ahead", [timedelta(days=1), timedelta(days=-1)])
def test_on_a_computer_that_was_started_anew_it_is_asked(
    p: Pantry, computer: Computer, ahead: timedelta
) -> None:
    code = started(p)
    computer.wait(5, ahead=ahead)
    computer.ran = 60
    with pytest.raises(Refused, match="--whole"):
        timer.done(p, code)


def test_on_one_that_was_started_anew_the_clock_alone_counts(p: Pantry, computer: Computer) -> None:
    code = started(p)
    computer.wait(26)
    computer.ran = 60
    timer.done(p, code)
    assert minutes_of(p, code) == "25"
    assert BROKEN_OFF not in doubt_of(p, code)


def test_a_person_may_say_that_it_ran_for_the_whole_time(p: Pantry, computer: Computer) -> None:
    code = started(p)
    computer.wait(26, ahead=timedelta(days=-1))
    timer.done(p, code, whole=True)
    assert minutes_of(p, code) == "25"
    assert BROKEN_OFF not in doubt_of(p, code)


def test_what_a_clock_alone_had_booked_is_no_process(p: Pantry, computer: Computer) -> None:
    """Cancelled after what the clock says was its whole time, it was broken off all the same."""
    code = started(p)
    computer.wait(5, ahead=timedelta(hours=1))
    timer.cancel(p, code)
    assert BROKEN_OFF in doubt_of(p, code)
