"""The timer of a process runs on while the program does not; a drop takes the whole time again."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import Timer
from pantry_tui.core.log.timing import BROKEN_OFF, NOT_DONE
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import timer
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.clock import Clock
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act, places, undo, view
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.rows import DueRow

TODAY = date(2026, 11, 25)
ROOT = Path(__file__).resolve().parents[3]
BEANS = "7 pint jars runner beans, pressure canned, canner=weighted, pack=hot, larder"


def at(p: Pantry, clock: str) -> None:
    hour, minute = clock.split(":")
    p.clock = Clock(TODAY, int(hour) * 60 + int(minute))


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", Clock(TODAY, 9 * 60)) as opened:
        places.add(opened, "larder", "pantry")
        yield opened


def made(p: Pantry, line: str = BEANS) -> str:
    return put_up(p, read(p, line)).code


def process_of(p: Pantry, code: str) -> dict[str, str]:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return dict(batch.process)


def test_the_published_time_is_looked_up_and_booked_when_it_is_over(p: Pantry) -> None:
    code = made(p)
    # MSU 1997 (USDA): snap beans, pint, weighted to 1,000 ft: 20 minutes at 10 psi.
    assert "20 minutes at 10 psi" in timer.start(p, code).message
    at(p, "9:12")
    assert timer.running(p)[0].left == 8
    with pytest.raises(Refused, match="8 of 20 minutes are left"):
        timer.done(p, code)
    at(p, "9:20")
    assert timer.running(p)[0].left == 0
    assert timer.done(p, code).warnings == ()
    assert (process_of(p, code)["minutes"], process_of(p, code)["psi"]) == ("20", "10")
    assert timer.running(p) == []


def test_a_drop_of_pressure_takes_the_whole_time_again(p: Pantry) -> None:
    """USDA AIB 539: from the beginning."""
    code = made(p)
    timer.start(p, code)
    at(p, "9:19")
    timer.drop(p, code)
    row = timer.running(p)[0]
    assert (row.down, row.left, row.drops) == (True, 20, 1)
    at(p, "9:30")
    with pytest.raises(Refused, match="pressure"):
        timer.done(p, code)
    assert "the whole time" in timer.start(p, code).message
    at(p, "9:49")
    with pytest.raises(Refused, match="1 of 20"):
        timer.done(p, code)
    at(p, "9:50")
    timer.done(p, code)
    assert process_of(p, code)["minutes"] == "20"


def test_ended_early_it_is_recorded_as_it_was_and_doubted(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    at(p, "9:14")
    told = timer.done(p, code, early=True)
    assert process_of(p, code)["minutes"] == "14"
    assert any("too little" in one for one in told.warnings)


def test_a_timer_that_is_cancelled_or_taken_back_records_nothing(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code, "25 min 11 psi")
    timer.cancel(p, code)
    assert "minutes" not in process_of(p, code)
    timer.start(p, code, "25")
    undo.undo(p)
    assert timer.running(p) == []
    undo.redo(p)
    assert timer.running(p)[0].minutes == 25
    with pytest.raises(Refused, match="timed already"):
        timer.start(p, code)


def test_one_undo_takes_the_end_and_its_record_back(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    at(p, "9:25")
    timer.done(p, code)
    undo.undo(p)
    assert "minutes" not in process_of(p, code)
    assert timer.running(p)[0].left == 0


@pytest.mark.parametrize(
    ("line", "typed"),
    [
        ("7 pint jars runner beans, pressure canned, larder", ""),  # which gauge
        ("7 jars runner beans, pressure canned, canner=dial, larder", ""),  # which jar
        ("7 pint jars tomatoes, boiling-water canned, acid=lemon, larder", ""),  # in what
        (BEANS, "a while"),
        (BEANS, "900"),
    ],
)
def test_what_is_not_one_published_time_is_asked_for(p: Pantry, line: str, typed: str) -> None:
    with pytest.raises(BadInput) as told:
        timer.start(p, made(p, line), typed)
    assert told.value.message.endswith(".")
    assert timer.running(p) == []


def test_it_runs_on_when_the_program_is_killed(p: Pantry, tmp_path: Path) -> None:
    """kill -9 right after the start was told as done: the time and the store are whole."""
    code = made(p)
    p.store.close()
    script = (
        "import sys; from pathlib import Path; from datetime import date\n"
        "from pantry_tui.services.clock import Clock\n"
        "from pantry_tui.services.pantry import open_pantry\n"
        "from pantry_tui.services.batchwork import timer\n"
        f"p = open_pantry(Path({str(tmp_path / 'store.db')!r}), Clock(date(2026, 11, 25), 540))\n"
        f"timer.start(p, {code!r}); print('started', flush=True); sys.stdin.read()\n"
    )
    running = subprocess.Popen(
        [sys.executable, "-c", script],
        cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert running.stdout is not None
    assert running.stdout.readline() == "started\n"
    os.kill(running.pid, signal.SIGKILL)
    running.communicate()
    assert running.returncode == -signal.SIGKILL
    with open_pantry(tmp_path / "store.db", Clock(TODAY, 9 * 60 + 15)) as again:
        row = timer.running(again)[0]
        assert (row.code, row.left, row.psi) == (code, 5, 10)
        at(again, "9:20")
        timer.done(again, code)
        assert process_of(again, code)["minutes"] == "20"


@pytest.mark.parametrize(
    ("typed", "minutes", "psi"),
    [
        ("20 min 5 psi", 20, 5), ("20 min at 10 lb", 20, 10), ("20 min at 11-5 psi", 20, 5),
        ("20-25 min, 11 pounds pressure", 20, 11), ("11 psi 20 min", 20, 11), ("25 11", 25, 11),
        ("1 h 15 min at 10 lbs", 75, 10), ("1 h 15, 10 psi", 75, 10), ("20.9 min", 20, None),
        ("twenty minutes at eleven pounds", 20, 11), ("20 min 11 lb 5 psi", 20, 5),
    ],
)  # fmt: skip
def test_every_pressure_that_is_typed_is_recorded_the_least_of_several(
    p: Pantry, typed: str, minutes: int, psi: float | None
) -> None:
    code = made(p)
    timer.start(p, code, typed)
    assert (timer.running(p)[0].minutes, timer.running(p)[0].psi) == (minutes, psi)
    at(p, "11:00")
    told = timer.done(p, code).warnings
    assert process_of(p, code).get("psi") == (None if psi is None else f"{psi:g}")
    if psi == 5:
        assert any("too little" in one for one in told)


@pytest.mark.parametrize(
    "typed",
    ["20 min 5 p.s.i.", "20 min not 5 psi", "25 min 11", "11-5 psi", "20 min 11 or 5 psi",
     "20 min 11, 5 psi", "20 min @ 10"],
)  # fmt: skip
def test_a_pressure_that_is_not_understood_is_refused(p: Pantry, typed: str) -> None:
    code = made(p)
    with pytest.raises(BadInput, match="write 25 minutes, or 25 min 11 psi"):
        timer.start(p, code, typed)
    timer.start(p, code)
    timer.drop(p, code)
    with pytest.raises(BadInput):
        timer.start(p, code, typed)
    assert timer.running(p)[0].down, "nor do the minutes of before stand in for it"


def test_boiling_water_has_no_pressure(p: Pantry) -> None:
    code = made(p, "7 pint jars tomatoes, boiling-water canned, acid=lemon, larder")
    with pytest.raises(BadInput, match="time alone"):
        timer.start(p, code, "45 min 11 psi")


WHOLE = BEANS + ", minutes=20, psi=10"


def doubt_of(p: Pantry, code: str) -> tuple[str, ...]:
    return next(one for one in p.stock.batches.values() if one.code == code).doubt


@pytest.mark.parametrize("line", [BEANS, WHOLE])
@pytest.mark.parametrize("broken", [(timer.drop,), (timer.cancel,), (timer.drop, timer.cancel)])
def test_a_process_that_was_broken_off_is_in_doubt_until_one_is_recorded(
    p: Pantry, line: str, broken: tuple[Callable[[Pantry, str], Done], ...]
) -> None:
    code = made(p, line)
    timer.start(p, code)
    at(p, "9:10")
    for one in broken:
        told = one(p, code)
    assert told.warnings[0] == BROKEN_OFF
    assert "24 hours" in told.warnings[1]
    (row,) = (one for one in view.due(p) if one.code == code)
    assert (row.verdict, row.usable) == (Verdict.UNKNOWN, False)
    correct(p, code, process=[("pack", "hot")])
    assert BROKEN_OFF in doubt_of(p, code), "to say how they were packed is no process"
    correct(p, code, process=[("minutes", "20"), ("psi", "10")])
    assert doubt_of(p, code) == ()


def test_the_whole_time_again_lifts_it_and_so_does_an_undo(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    timer.cancel(p, code)
    assert doubt_of(p, code) == (BROKEN_OFF,)
    undo.undo(p)
    assert doubt_of(p, code) == (NOT_DONE,), "it runs again"
    timer.drop(p, code)
    timer.start(p, code)
    assert doubt_of(p, code) == (BROKEN_OFF,), "it is not over yet"
    at(p, "9:20")
    timer.done(p, code)
    assert doubt_of(p, code) == ()


def test_what_ran_its_whole_time_was_not_broken_off(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    at(p, "9:20")
    (said,) = timer.cancel(p, code).warnings
    assert (
        said == f"All of its 20 minutes had run: `undo` this, and `timer done {code}` records them."
    )
    assert doubt_of(p, code) == ()
    undo.undo(p)
    timer.done(p, code)
    assert process_of(p, code)["minutes"] == "20", "as is advised"


def test_of_what_was_down_no_time_had_run(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    timer.drop(p, code)
    at(p, "9:30")
    assert timer.cancel(p, code).warnings[0] == BROKEN_OFF


def test_what_is_not_canned_has_no_process_to_break_off(p: Pantry) -> None:
    code = made(p, "2 jars onions, dried, larder")
    timer.start(p, code, "30 min")
    assert timer.cancel(p, code).warnings == ()
    assert doubt_of(p, code) == ()


def row_of(p: Pantry, code: str) -> DueRow:
    (row,) = (one for one in view.due(p) if one.code == code)
    return row


@pytest.mark.parametrize("line", [BEANS, WHOLE])
def test_what_is_being_timed_is_not_done_and_not_used(p: Pantry, line: str) -> None:
    """Also with a process recorded before (it is done again within 24 hours), and also when the
    time is long over: nobody said that it was."""
    code = made(p, line)
    assert row_of(p, code).usable
    timer.start(p, code)
    for clock in ("9:10", "9:21", "23:00"):
        at(p, clock)
        assert doubt_of(p, code)[0] == NOT_DONE
        assert (row_of(p, code).verdict, row_of(p, code).usable) == (Verdict.UNKNOWN, False)
        assert code not in {one.code for one in weeks.week(p).take}
        for taken in (act.use, act.give):
            with pytest.raises(Refused, match="being timed"):
                taken(p, code)
    timer.done(p, code, whole=True)
    assert doubt_of(p, code) == ()
    assert row_of(p, code).usable


def test_a_process_recorded_by_hand_ends_that_doubt(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    correct(p, code, note="the blue jars")
    assert doubt_of(p, code) == (NOT_DONE,)
    correct(p, code, process=[("minutes", "20"), ("psi", "10")])
    assert doubt_of(p, code) == ()


def test_a_note_that_something_was_left_out_does_not_keep_it_timed(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    correct(p, code, note="not vented")
    at(p, "9:30")
    timer.cancel(p, code)
    assert NOT_DONE not in doubt_of(p, code)


def words(p: Pantry) -> list[str]:
    """The ids of the words of timers, oldest first."""
    return [one.id for one in p.events if isinstance(one.payload, Timer)]


@pytest.mark.parametrize("taken_back", [(0,), (2,), (0, 2)])
def test_an_end_whose_start_was_taken_back_is_none(p: Pantry, taken_back: tuple[int, ...]) -> None:
    code = made(p)
    timer.start(p, code)
    at(p, "9:05")
    timer.drop(p, code)
    at(p, "9:10")
    timer.start(p, code)
    at(p, "9:30")
    timer.done(p, code)
    assert doubt_of(p, code) == ()
    ids = words(p)
    for one in taken_back:
        undo.undo(p, ids[one])
    fine = taken_back == (0,)  # the second start, and its whole time, stand
    assert doubt_of(p, code) == (() if fine else (BROKEN_OFF,))


def test_a_fall_whose_start_was_taken_back_stays_one(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    timer.drop(p, code)
    undo.undo(p, words(p)[0])
    assert doubt_of(p, code) == (BROKEN_OFF,)


def test_an_end_by_a_clock_that_was_ahead_is_none(p: Pantry) -> None:
    """Fifteen minutes by the right clock, an hour by the wrong one."""
    code = made(p)
    timer.start(p, code)
    at(p, "10:00")
    timer.done(p, code)
    assert doubt_of(p, code) == ()
    at(p, "9:15")
    places.change(p, "larder", temp_f=60)
    made(p, "2 jars onions, dried, larder")
    assert doubt_of(p, code) == (BROKEN_OFF,)
    assert not row_of(p, code).usable
    p.clock = Clock(date(2026, 11, 28), 9 * 60)
    assert doubt_of(p, code) == (BROKEN_OFF,), "the hour of the wrong clock comes and goes"
    correct(p, code, process=[("minutes", "20")])
    assert doubt_of(p, code) == ()


def test_a_start_by_a_clock_that_was_ahead_counts_from_when_it_surely_was(p: Pantry) -> None:
    """It was started between 9:00 and 9:15, whatever the clock said."""
    code = made(p)
    at(p, "11:00")
    timer.start(p, code)
    at(p, "9:15")
    made(p, "2 jars onions, dried, larder")
    at(p, "11:20")
    timer.done(p, code)
    assert doubt_of(p, code) == ()


@pytest.mark.parametrize(("ended", "fine"), [("9:10", False), ("9:20", True)])
def test_a_start_before_the_put_up_counts_from_that(p: Pantry, ended: str, fine: bool) -> None:
    """Put up at 9:00, started when the clock said 8:30: one of the two was wrong."""
    code = made(p)
    at(p, "8:30")
    timer.start(p, code)
    at(p, ended)
    timer.done(p, code)
    assert doubt_of(p, code) == (() if fine else (BROKEN_OFF,))


def days_on(p: Pantry, days: int, clock: str = "9:00") -> None:
    hour, minute = clock.split(":")
    p.clock = Clock(TODAY + timedelta(days=days), int(hour) * 60 + int(minute))


@pytest.mark.parametrize("days", [2, 19])
def test_jars_that_stood_for_more_than_a_day_are_not_processed_again(p: Pantry, days: int) -> None:
    """USDA AIB 539, guide 1, as the extension services repeat it: within 24 hours."""
    code = made(p, f"{BEANS}, minutes=5, psi=5")
    days_on(p, days)
    with pytest.raises(Refused, match=r"only within 24 hours .* without tasting"):
        timer.start(p, code, "25 min 11 psi")


def test_nor_when_the_pressure_fell_and_nobody_came_back(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    timer.drop(p, code)
    days_on(p, 1, "9:30")
    with pytest.raises(Refused, match="more than a day ago"):
        timer.start(p, code)
    days_on(p, 1, "8:30")
    timer.start(p, code)


def test_that_it_ran_for_the_whole_time_is_no_word_against_a_clock_that_is_right(p: Pantry) -> None:
    code = made(p)
    timer.start(p, code)
    at(p, "9:01")
    with pytest.raises(Refused, match="19 of 20 minutes are left"):
        timer.done(p, code, whole=True)
