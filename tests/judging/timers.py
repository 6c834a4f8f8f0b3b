"""Processes that are timed: a jar is fit once a whole published process surely ran.

Runner beans in pints, dial gauge, at sea level: 20 minutes at 11 psi (USDA, Complete Guide to Home
Canning, AIB 539, guide 4). After a drop of pressure the whole time counts again (the same, guide
1). README: "jars that are being timed, and those whose process was broken off, are in doubt until
it is done or one is recorded". What truly ran counts, whatever a clock that ran ahead made of it.

lax: once a whole process is done, nothing that is timed later takes it back; what is cancelled and
had no drop of pressure was started by mistake; and where nothing was timed the jar's own record
speaks, not the timer.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tests.judging.papers import food
from tests.judging.stored import Stored
from tests.judging.telling import START
from tests.judging.world import DAY, Fact, PlaceOpened, PutUp, moment

MINUTES, PSI = 20, 11


@dataclass(frozen=True)
class Step:
    """What was done with the timer, on which true minute, and what the clock said then."""

    at: int
    clock: int
    words: tuple[str, ...]
    minutes: int = 0
    psi: int = 0


def random_steps(seed: int) -> tuple[Step, ...]:
    """A morning at the canner; now and then the clock is a day or three ahead for some of it."""
    r = random.Random(f"timer {seed}")
    at, steps = moment(START, 10), list[Step]()
    n = r.choice((2, 2, 3, 4, 5, 6))
    wrong = range(n)[r.randrange(n) :][: r.choice((1, 1, 2))] if r.random() < 0.4 else range(0)
    ahead = r.choice((20, 60, 200, DAY, 3 * DAY))
    for i in range(n):
        at += r.choice((1, 5, 19, 20, 21, 26, 40))
        last = steps[-1].words[0] if steps else ""
        done = r.choice((("done",), ("done", "--early")))
        may = [("start",)] if last != "start" else [done, done, done, ("drop",), ("cancel",)]
        words = r.choice(may) if r.random() < 0.9 else r.choice((("start",), done, ("drop",)))
        minutes, psi = r.choice((15, 19, 20, 20, 25)), r.choice((10, 11, 11, 11, 12))
        steps.append(Step(at, at + (ahead if i in wrong else 0), words, minutes, psi))
    return tuple(steps)


def fit(steps: tuple[Step, ...]) -> bool:
    """Whether a jar may be offered after these steps, all of which were booked."""
    running: Step | None = None
    short = False
    for s in steps:
        if s.words[0] == "start":
            running = s
        elif s.words[0] == "done" and running is not None:
            ran = min(s.at - running.at, running.minutes)
            if ran >= MINUTES and running.psi >= PSI:
                return True
            running, short = None, True
        else:
            running, short = None, short or s.words[0] == "drop"
    return running is None and not short


def timer_faults(seed: int, path: Path) -> Iterator[str]:
    """Where the list of a store at `path` offers a jar whose process did not surely run."""
    stored, steps, put_up = Stored(path, by_clock=True), random_steps(seed), moment(START, 9)
    # Every other household started its computer anew in between, or times on another one.
    since = put_up if seed % 2 else None
    batch = PutUp("A", food("runner beans"), "pressure canned", ("A/1",), "larder")
    for at, what in ((put_up - 1, PlaceOpened("larder", "pantry")), (put_up, batch)):
        assert stored.book(Fact(f"f{at}", at // DAY, None, at, what))
    stored.at_sea_level("A")

    def takes(s: Step) -> bool:
        ran = 0 if since is None else (s.at - since) * 60
        return stored.timed("A", s.clock, s.words, s.minutes, s.psi, ran)

    booked = tuple(filter(takes, steps))
    end = steps[-1].at
    assert stored.read_off("larder", end + 1)  # by the right clock, which shows the wrong one
    if fit(booked):
        return
    for later in (30, 5 * DAY):
        said = stored.answer("A/1", end + later)
        if said.usable:
            told = "\n".join(map(str, booked))
            yield f"timer, seed {seed}, {later} minutes later: {said.word}, offered, after\n{told}"
