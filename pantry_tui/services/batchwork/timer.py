"""The kitchen timer of a process. It is in the log, so it runs on whether or not the program does.

Once the pressure fell below what is published, the whole time begins anew (USDA AIB 539, Guide 1,
from memory; the stricter choice). What was reached is written into the record of the batch.
"""

from __future__ import annotations

import math
from datetime import datetime
from typing import NamedTuple

from pantry_tui.core.canned import thrown
from pantry_tui.core.log.events import Did
from pantry_tui.core.log.payloads import Clocked, Timer
from pantry_tui.core.log.timing import BROKEN_OFF
from pantry_tui.core.model import DAY_MIN, Batch, Timing
from pantry_tui.core.safety.jars import of_one_jar, read_jar
from pantry_tui.core.safety.measured import CANNERS, read_canner, read_time_and_psi
from pantry_tui.core.safety.possible import LONGEST
from pantry_tui.core.text import counted
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.lookup.process import process
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.store import log

#: Longer than that after its time nobody comes back to a canner, or the clock of the computer was
#: put on meanwhile: it is asked. Our own choice.
_LATE = 3 * 3600
#: By so many seconds a clock is set right without anybody having put it wrong. Our own choice.
_WOBBLE = 60
_AGAIN = "Bring it back to the pressure, then start it again: the whole time counts anew."


class TimerRow(NamedTuple):
    """One process that is timed. `left` whole minutes still to go, 0 when it is over; `down` while
    the pressure is down; `unsure` why the clock of the computer is not believed, "" mostly."""

    code: str
    food: str
    minutes: int
    psi: float | None
    began: str
    left: int
    down: bool
    drops: int
    unsure: str = ""


class _Gone(NamedTuple):
    """The seconds that surely went by since a start, and why the clock is not believed."""

    seconds: int
    unsure: str = ""


def running(p: Pantry) -> list[TimerRow]:
    """All that are timed, in the order in which they were first started."""
    events = log.of_kinds(p.store.db, (Did.TIMER,))
    batches = dict.fromkeys(event.batch for event in events)
    found = (p.load(id_) for id_ in batches)
    return [
        _row(p, held[0], held[0].timer)
        for held in found
        if held is not None and held[0].timer is not None
    ]


def _row(p: Pantry, batch: Batch, timer: Timing) -> TimerRow:
    down = not timer.since
    gone = _Gone(0) if down else _gone(p, timer)
    left = max(0, -(-(timer.minutes * 60 - gone.seconds) // 60))
    return TimerRow(
        batch.code, batch.food.name, timer.minutes, timer.psi, timer.since, left, down,
        timer.drops, gone.unsure,
    )  # fmt: skip


def _gone(p: Pantry, timer: Timing) -> _Gone:
    """How long it surely ran: by the clock, and by how long the computer has run since, whichever
    is less. Where that is not known, as long after its time as nobody waits nothing is sure."""
    clock = int((p.clock.recorded - datetime.fromisoformat(timer.since)).total_seconds())
    passed = p.clock.ticks - timer.ticks if timer.ticks and p.clock.ticks else -1
    needed = timer.minutes * 60
    if passed < 0:
        late = clock > needed + _LATE
        return _Gone(clock, _long_ago(clock, timer.minutes) if late else _put_back(clock))
    sure = min(clock, passed)
    moved = sure < needed and abs(clock - passed) > _WOBBLE
    return _Gone(sure, _moved(sure, timer.minutes) if moved else "")


def _long_ago(seconds: int, minutes: int) -> str:
    return (
        f"By the clock it was started {seconds // 3600} hours ago, for "
        f"{counted(minutes, 'minutes')}: was the clock put on since?"
    )


def _put_back(seconds: int) -> str:
    return "By the clock it was not started yet: the clock was put back." if seconds < 0 else ""


def _moved(seconds: int, minutes: int) -> str:
    return (
        f"The clock was moved since it was started: {max(0, seconds // 60)} of "
        f"{counted(minutes, 'minutes')} surely went by."
    )


def _seconds_left(p: Pantry, timer: Timing) -> int:
    return timer.minutes * 60 - _gone(p, timer).seconds


@booked
def start(p: Pantry, ref: str, typed: str = "") -> Done:
    """Start the time, or start it again after a drop. Without minutes they are looked up by the
    record of the batch. Raises BadInput where they cannot be, Refused while it runs."""
    batch = batch_named(p, ref)
    old = batch.timer
    if old is not None and old.since:
        raise Refused(
            f"{batch.code} is timed already: {counted(_row(p, batch, old).left, 'minutes')} left."
        )
    _refuse_too_late(p, batch)
    minutes, psi = _asked(p, batch, typed, old)
    p.book(Timer(batch.id, Clocked.START, minutes, psi, p.clock.ticks))
    at = f" at {psi:g} psi" if psi is not None else ""
    again = "again, the whole time: " if old is not None else ""
    return Done(
        f"Timing {batch.code} {batch.food.name}: {again}{counted(minutes, 'minutes')}{at}.", ()
    )


def _refuse_too_late(p: Pantry, batch: Batch) -> None:
    """What was put up stands in the warm until it is processed, and is processed again within a day
    (USDA AIB 539, Guide 1, as the extension services repeat it), or it is thrown away. What only
    should have been recorded is put right in the record. Raises Refused."""
    came = min(one.turns[0].when.last for one in p.containers_of(batch) if one.turns)
    made = batch.made is None or (p.today - batch.made).days <= 1
    if made and p.clock.minute_now - came <= DAY_MIN:
        return
    raise Refused(
        f"{batch.code} was put up more than a day ago: only within 24 hours it is processed, or "
        f"processed again, and after that: {thrown(batch.food)}. What was timed then and is not "
        f"recorded: `correct {batch.code} --process minutes=25`."
    )


def _asked(p: Pantry, batch: Batch, typed: str, old: Timing | None) -> tuple[int, float | None]:
    """Minutes and pressure as typed, as before the drop, or as published."""
    if not typed.strip():
        return (old.minutes, old.psi) if old is not None else published(p, batch)
    minutes, psi = read_time_and_psi(typed)
    if minutes is None:
        raise BadInput(f"{typed[:30]!r} is no time: write 25 minutes, or 25 min 11 psi.")
    if not 1 <= minutes <= LONGEST:
        raise BadInput(f"No published process takes {minutes:g} minutes: 1 to {LONGEST}.")
    if psi is not None and batch.method is not Method.PRESSURE:
        raise BadInput(f"{batch.code} is {batch.method}: say the time alone, {minutes:g} min.")
    return math.floor(minutes), psi


def published(p: Pantry, batch: Batch) -> tuple[int, float | None]:
    """The one published time for what is recorded of it. Raises BadInput where that leaves more
    than one open, or none."""
    record = dict(batch.process)
    canner = read_canner(record.get("canner", ""))
    if canner not in CANNERS:
        canner = "boiling-water" if batch.method is not Method.PRESSURE else ""
    jar = read_jar(of_one_jar(record, batch.processed))
    if not canner or jar is None:
        raise BadInput("Say how long: the record names no jar or no gauge; write 25 min 11 psi.")
    pack = record.get("pack")
    said = process(p.tables, batch.food.name, jar, canner, pack, p.altitude_ft)
    if said["answer"] != "process":
        raise BadInput(f"Say how long: {said['reasons'][0]}")
    if said["minutes"] is None:
        raise BadInput("Say how long: several processes are published, see `process`.")
    return said["minutes"], said["psi"]


@booked
def drop(p: Pantry, ref: str) -> Done:
    """The pressure fell below what is published, or the boil stopped: until a process is recorded
    the jars are in doubt."""
    batch, _ = _timed(p, ref, up=True)
    p.book(_said(p, batch, Clocked.DROP))
    told = f"{batch.code} {batch.food.name}: the pressure is down. {_AGAIN}"
    return Done(told, _in_doubt(p, batch))


@booked
def done(p: Pantry, ref: str, early: bool = False, whole: bool = False) -> Done:
    """It is over: minutes and pressure go into the record. Refused before the time is over unless
    `early`, which records what it had, and where the clock is not believed, unless a person says
    that it ran for the `whole` time."""
    batch, timer = _timed(p, ref, up=True)
    left, unsure = _seconds_left(p, timer), _gone(p, timer).unsure
    if whole and left > 0 and not unsure:
        raise Refused(
            f"The clock is right, and {-(-left // 60)} of {timer.minutes} minutes are left: let it "
            "run, or say that it was ended early."
        )
    if whole:
        left = 0
    elif unsure and (left <= 0 or not early):
        code = batch.code
        raise Refused(
            f"{unsure} If it ran for all of its time, `timer done {code} --whole`; if not, "
            f"`timer cancel {code}`, and record what it had."
        )
    elif left > 0 and not early:
        raise Refused(
            f"{-(-left // 60)} of {timer.minutes} minutes are left: let it run, or say that it "
            "was ended early."
        )
    had = timer.minutes if left <= 0 else timer.minutes - -(-left // 60)
    said = [("minutes", str(max(0, had)))]
    if timer.psi is not None:
        said.append(("psi", f"{timer.psi:g}"))
    with p.together():
        p.book(_said(p, batch, Clocked.DONE, whole=whole))
        told = correct(p, batch.code, process=said)
    at = f" at {timer.psi:g} psi" if timer.psi is not None else ""
    return Done(f"{batch.code} {batch.food.name}: {had} minutes{at} recorded.", told.warnings)


@booked
def cancel(p: Pantry, ref: str) -> Done:
    """Stop timing; nothing is recorded. What was broken off before its time is in doubt until a
    process is recorded; of what ran for all of it, it is said how to record that."""
    batch, timer = _timed(p, ref, up=False)
    ran = bool(timer.since) and _seconds_left(p, timer) <= 0
    p.book(_said(p, batch, Clocked.CANCEL))
    told = f"{batch.code} {batch.food.name} is timed no more; nothing was recorded."
    whole = counted(timer.minutes, "minutes")
    record = f"All of its {whole} had run: `undo` this, and `timer done {batch.code}` records them."
    return Done(told, (*((record,) if ran else ()), *_in_doubt(p, batch)))


def _said(p: Pantry, batch: Batch, told: Clocked, *, whole: bool = False) -> Timer:
    return Timer(batch.id, told, ticks=p.clock.ticks, whole=whole)


def _in_doubt(p: Pantry, batch: Batch) -> tuple[str, ...]:
    """What now stands against it, and what to do where it was timed by mistake."""
    if BROKEN_OFF not in (found := p.stock.batches[batch.id]).doubt:
        return ()
    return (BROKEN_OFF, found.possible, "If it was started by mistake: `undo` this and the start.")


def _timed(p: Pantry, ref: str, *, up: bool) -> tuple[Batch, Timing]:
    batch = batch_named(p, ref)
    timer = batch.timer
    if timer is None:
        raise Refused(f"{batch.code} {batch.food.name} is not timed: start its timer first.")
    if up and not timer.since:
        raise Refused(f"The pressure of {batch.code} is down. {_AGAIN}")
    return batch, timer
