"""The program with its store: facts are booked on the command line, the answers are its lists'.

Every line opens the store anew. What the command line refuses, or has no words for, is not booked;
`told` are the facts that it took, as it took them.
"""

from __future__ import annotations

import contextlib
import io
import json
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, time
from functools import partial
from pathlib import Path
from typing import Any
from unittest.mock import patch

from pantry_tui.cli.run import main
from pantry_tui.core.batchwork.tending import jobs_of, with_care
from pantry_tui.core.keeping.limits import assess
from pantry_tui.core.keeping.weather import warmth_f
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import fold_batch
from pantry_tui.core.log.fold_place import fold_place
from pantry_tui.core.log.payloads import place_of, touches
from pantry_tui.reference.tables import load_tables
from pantry_tui.reference.tending import load_tending
from pantry_tui.services import clock as clocks
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import open_pantry
from pantry_tui.services.stock import places
from pantry_tui.store import log
from pantry_tui.store.store import Store
from tests.judging.bound import Answer
from tests.judging.world import (
    DAY,
    CorrectedMade,
    Counted,
    Cut,
    Drawn,
    Fact,
    Left,
    LooksSound,
    Moved,
    Opened,
    PlaceChanged,
    PlaceOpened,
    PutUp,
    Reading,
    Ready,
    Redo,
    SignSeen,
    Thawed,
    Undo,
)

#: A day before any that is told.
_BEFORE = date(2026, 1, 1).toordinal()
NOWHERE = Answer("gone", None, False)


def say_moment(minute: int) -> str:
    """ "2026-03-02 18:30"."""
    day = date.fromordinal(minute // DAY).isoformat()
    return f"{day} {minute % DAY // 60:02}:{minute % 60:02}"


def _local(minute: int) -> datetime:
    """That minute by the clock of the computer; long before all others where none was said yet."""
    day, hour = date.fromordinal(minute // DAY or _BEFORE), time(minute % DAY // 60, minute % 60)
    return datetime.combine(day, hour).astimezone()


def _since(minutes: int | None) -> list[str]:
    return [] if minutes is None else ["--since", f"{minutes}m"]


class Stored:
    """A household in a file that is not there yet. `by_clock`: the clock of the computer says the
    moments of booking, which else are typed (`--today`): a word, and no clock."""

    def __init__(self, path: Path, *, by_clock: bool = False) -> None:
        self.path, self._by_clock = path, by_clock
        self.told: list[Fact] = []
        self._ids: dict[str, str] = {}
        self._codes: dict[str, str] = {}
        self._pounds: dict[str, float] = {}
        self._now = 0
        self._ran = 0  # for how many seconds the computer has run, 0: nobody knows
        self._line("init")

    # -- the command line ----------------------------------------------------------------------

    def _line(self, *typed: str) -> bool:
        return self._asked(*typed)[0]

    def _asked(self, *typed: str) -> tuple[bool, str]:
        words = ["--store", str(self.path)]
        clock = contextlib.ExitStack()
        if self._by_clock:
            clock.enter_context(patch.object(clocks, "real", partial(_local, self._now)))
            clock.enter_context(patch.object(clocks, "running_for", lambda: self._ran))
        elif self._now:
            words += ["--today", say_moment(self._now)]
        out, errors = io.StringIO(), io.StringIO()
        with clock, contextlib.redirect_stdout(out), contextlib.redirect_stderr(errors):
            code = main([*words, *typed])
        assert "Something is wrong inside" not in errors.getvalue(), (typed, errors.getvalue())
        return code == 0, out.getvalue()

    def _json(self, *typed: str) -> Any:
        done, said = self._asked("--json", *typed)
        assert done, typed
        return json.loads(said)

    def _named(self, container: str) -> str:
        batch, _, number = container.partition("/")
        return f"{self._codes[batch]}/{number}"

    # -- booking -------------------------------------------------------------------------------

    def book(self, fact: Fact) -> bool:
        """Book it at `fact.booked`; a move that the program makes of itself is taken back."""
        self._now = fact.booked
        container = getattr(fact.what, "container", "")
        if container and container.partition("/")[0] not in self._codes:
            return False
        before = self._place(container) if container else ""
        typed = self._typed(fact)
        if typed is None or not self._line(*typed):
            return False
        self._ids[fact.id] = self._newest()
        if isinstance(fact.what, PutUp):
            self._codes[fact.what.batch] = self._newest_code()
            if not fact.what.parts:
                fact = replace(fact, minute=None)  # a put-up is told the day alone
            assert isinstance(fact.what, PutUp)
            fact = self._as_frozen(fact, fact.what)
        self.told.append(fact)
        if isinstance(fact.what, Opened | Drawn) and fact.minute is not None:
            self._tell_where(fact, container, before)
        if (
            isinstance(fact.what, Opened | Thawed | Drawn)
            and self._place(container) != before != ""
        ):
            self._line("move", self._named(container), before, *self._at(fact))
        return True

    def _as_frozen(self, fact: Fact, w: PutUp) -> Fact:
        """What is fresh and is said to be put up in a freezer is frozen there: food frozen in time
        stays safe (USDA FSIS, Freezing and Food Safety). Eggs in their shells never are."""
        if w.method != "fresh" or w.food.name == "eggs":
            return fact
        row = self._row(f"{w.batch}/1")
        frozen = row is not None and row["method"] == "frozen"
        return replace(fact, what=replace(w, method="frozen")) if frozen else fact

    def _tell_where(self, fact: Fact, container: str, before: str) -> None:
        """The line says where it is opened: "opened 2A/1 in fridge". A move of that day whose hour
        nobody knows was before it, then."""
        row = self._row(container)
        if row is not None and row["state"] == "open" and row["place"] == before:
            # the row names the whole path of a place that stands in another
            what = Moved(container=container, place=before.rpartition(" › ")[2])
            self.told.append(replace(fact, id=f"{fact.id}, where", what=what))

    def _at(self, fact: Fact) -> list[str]:
        """`--at`, unless it is the booking itself."""
        if (fact.day, fact.minute) in ((fact.booked // DAY, None), divmod(fact.booked, DAY)):
            return []
        if fact.minute is None:
            return ["--at", date.fromordinal(fact.day).isoformat()]
        return ["--at", say_moment(fact.day * DAY + fact.minute)]

    def _typed(self, fact: Fact) -> list[str] | None:
        w, at = fact.what, self._at(fact)
        match w:
            case PlaceOpened() | PlaceChanged():
                if at and isinstance(w, PlaceChanged):
                    return None  # a place is changed from the booking on
                verb = "add" if isinstance(w, PlaceOpened) else "change"
                climate = [] if w.climate is None else ["--climate", w.climate]
                inside = getattr(w, "parent", None)
                climate += [] if inside is None else ["--in", inside]
                temp = [] if w.target_f is None else ["--temp", f"{w.target_f:g}F"]
                return ["place", verb, w.place, *climate, *temp]
            case Reading():
                return ["reading", w.place, f"{w.temp_f:g}F", *_since(w.since), *at]
            case Cut():
                start = "unknown" if w.start is None else say_moment(w.start)
                full = [] if w.fullness is None else [f"--{w.fullness}"]
                return ["outage", w.place, "--from", start, "--to", say_moment(w.end), *full]
            case PutUp():
                return self._repack(fact, w) if w.parts else self._put_up(fact, w)
            case Counted():
                code = self._codes.get(w.batch)
                return ["count", w.place, "--seen", f"{code}={w.n}", *at] if code else None
            case CorrectedMade():
                code = self._codes.get(w.batch)
                made = date.fromordinal(w.day).isoformat()
                return ["correct", code, "--made", made] if code else None
            case _:
                return self._of_container(w, at)

    def _repack(self, fact: Fact, w: PutUp) -> list[str] | None:
        """All of its one part."""
        (part,) = w.parts
        if part.partition("/")[0] not in self._codes:
            return None
        self._pounds[w.batch] = w.weight_lb
        vessels = "pint jars" if w.closed_vessel else "crocks"
        line = f"{len(w.containers)} {vessels} {w.food.name}, {w.method}, {w.place}"
        return ["repack", self._named(part), line, "--all", *self._at(fact)]

    def _put_up(self, fact: Fact, w: PutUp) -> list[str]:
        self._pounds[w.batch] = w.weight_lb
        told = [f"amount={w.weight_lb:g}lb", f"state={w.state}"]
        told += ["vacuum=yes"] if w.vacuum else []
        told += ["minutes=1"] if w.doubt else []
        if w.printed is not None:
            told.append(f"printed={date.fromordinal(w.printed).isoformat()}")
        words = ["putup", "--food", w.food.name, "--method", w.method, "--place", w.place]
        words += ["--count", str(len(w.containers)), "--size", "pint"]
        words += ["--container", _vessel(w)] if w.closed_vessel else ["--container", "crocks"]
        words += ["--made", date.fromordinal(fact.day).isoformat()]
        if not w.food.known:
            words += ["--group", w.food.group, "--acidity", w.food.acidity]
        return words + [part for one in told for part in ("--process", one)]

    def _of_container(self, w: Any, at: Sequence[str]) -> list[str] | None:
        name = self._named(w.container)
        match w:
            case Ready():
                return ["ready", name, *at]
            case Opened():
                return ["open", name, *at]
            case Thawed():
                return None if w.how == "done" else ["thaw", name, "--how", w.how, *at]
            case Moved():
                return ["move", name, w.place, *at]
            case Drawn():
                # Small enough that what is left is never less than is drawn.
                part = self._pounds[w.container.partition("/")[0]] * w.part / 8
                return ["use", name, *([] if w.part >= 1 else [f"{part:.4f} lb"]), *at]
            case Left():
                how = {"given": ["give"], "missing": ["missing"]}.get(w.how, ["discard"])
                why = [] if how != ["discard"] else ["--why", "too old"]
                return [*how, name, *why, *at]
            case LooksSound():
                return ["sign", name, "looks sound", *at]
            case SignSeen():
                return ["sign", name, w.sign, *at]
        return None

    def at_sea_level(self, batch: str) -> None:
        """The household's height, and the gauge of the canner."""
        assert self._line("household", "--altitude", "0ft")
        assert self._line("correct", self._codes[batch], "--process", "canner=dial")

    def timed(
        self, batch: str, at: int, words: tuple[str, ...], minutes: int, psi: int, ran: int
    ) -> bool:
        """Whether it takes an act of the timer, by a clock that says so, on a computer that has run
        for so many seconds."""
        self._now, self._ran = at, ran
        how = [f"{minutes} min {psi} psi"] if words[0] == "start" else []
        return self._line("timer", words[0], self._codes[batch], *how, *words[1:])

    def read_off(self, place: str, at: int) -> bool:
        self._now = at
        return self._line("reading", place, "60F")

    def undo(self, fact_id: str, booked: int) -> bool:
        self._now = booked
        done = fact_id in self._ids and self._line("undo", self._ids[fact_id])
        if done:
            self._tell(Undo(fact_id))
        return done

    def redo(self, fact_id: str, booked: int) -> bool:
        self._now = booked
        if not self.told or self.told[-1].what != Undo(fact_id):
            return False  # it would bring back another one
        done = self._line("redo")
        if done:
            self._tell(Redo(fact_id))
        return done

    def _tell(self, what: Undo | Redo) -> None:
        n = f"u{len(self.told)}"
        self.told.append(Fact(n, self._now // DAY, None, self._now, what))

    # -- reading -------------------------------------------------------------------------------

    def _newest(self) -> str:
        return str(self._json("log")[-1]["id"])

    def _newest_code(self) -> str:
        return str(self._json("log")[-1]["code"])

    def _place(self, container: str) -> str:
        row = self._row(container)
        return row["place"] if row else ""

    def _row(self, container: str) -> dict[str, Any] | None:
        name = self._named(container)
        return next((row for row in self._json("due") if name in row["container_ids"]), None)

    def rename(self, place: str, name: str) -> None:
        """Call a place otherwise; the command line has no words for it."""
        with open_pantry(self.path, Clock()) as p:
            places.change(p, place, name=name)

    def undo_and_redo(self) -> bool:
        """Take the newest act back and bring it again; False where it cannot be taken back."""
        return self._line("undo") and self._line("redo")

    def answer(self, container: str, now: int) -> Answer:
        """What its due list says."""
        self._now = now
        if container.partition("/")[0] not in self._codes:
            return NOWHERE
        row = self._row(container)
        if row is None:
            return NOWHERE
        last = row["discard_after"]
        day = None if last is None or not row["usable"] else date.fromisoformat(last).toordinal()
        return Answer(row["verdict"], day, row["usable"])

    def judged_anew(self, container: str, now: int) -> Answer:
        """What the judge says of its log, without its stock tables."""
        if container.partition("/")[0] not in self._codes:
            return NOWHERE
        code, _, number = self._named(container).partition("/")
        with contextlib.closing(Store(self.path)) as store:
            events = standing(log.select(store.db))
        return answer_of_log(events, code, int(number), now)


def answer_of_log(events: Sequence[Event], code: str, number: int, now: int) -> Answer:
    """A container's verdict, from the standing events of a whole log."""
    batches = {b for e in events for b in touches(e.payload)}
    held = [fold_batch(b, [e for e in events if b in touches(e.payload)]) for b in batches]
    found = next((one for one in held if one is not None and one[0].code == code), None)
    if found is None:
        return NOWHERE
    batch, boxes = found
    box = next(one for one in boxes if one.number == number)
    if not box.here:
        return NOWHERE
    folded = {
        name: fold_place([e for e in events if place_of(e.payload) == name])
        for name in {place_of(e.payload) for e in events} - {""}
    }
    known = {name: place for name, place in folded.items() if place is not None}
    day = date.fromordinal(now // DAY)
    then, warm = Clock(day, now % DAY).now, warmth_f(box.place, known)
    jobs = jobs_of(batch, box, warm, load_tending().get(batch.method, ()), day)
    judged = with_care(assess(batch, box, known, load_tables().book, then), jobs, then).on(day)
    # A list names no day beside what is not eaten.
    last = judged.discard_after if judged.usable else None
    return Answer(judged.verdict, None if last is None else last.toordinal(), judged.usable)


def _vessel(w: PutUp) -> str:
    return "packs" if w.method == "bought in" else "jars"
