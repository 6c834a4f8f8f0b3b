"""Every fault of some files tried, and what was not noticed printed."""

from __future__ import annotations

import os
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from random import Random

from tests.long import Outcome
from tests.mutants.faults import Fault
from tests.mutants.reasons import REASONS
from tests.mutants.table import TESTS, core_files, room_of
from tests.mutants.trial import CannotTry, End, Target, hold

#: (file, function, before, after)
Key = tuple[str, str, str, str]


@dataclass
class Score:
    """How many faults were tried, why some cannot be noticed, and those that no test noticed."""

    tried: int = 0
    explained: list[str] = field(default_factory=list)
    unnoticed: list[str] = field(default_factory=list)

    @property
    def noticed(self) -> int:
        return self.tried - len(self.unnoticed)

    @property
    def percent(self) -> float:
        return 100.0 * self.noticed / self.tried if self.tried else 100.0

    def add(self, other: Score) -> None:
        self.tried += other.tried
        self.explained += other.explained
        self.unnoticed += other.unnoticed

    def said(self) -> str:
        reasons = f", {len(self.explained)} of them explained" if self.explained else ""
        return f"{self.noticed} of {self.tried} faults noticed{reasons}: {self.percent:.1f} %"


def try_files(
    files: Sequence[str], *, jobs: int, share: float = 1.0, near: bool = False
) -> dict[str, Score]:
    """Tries `share` of the faults of each file, with `near` against the near tests alone, and
    prints what was found. Raises CannotTry."""
    _load_what_tests_load()
    rooms: dict[str, list[str]] = defaultdict(list)
    for file in files:
        try:
            rooms[room_of(file)].append(file)
        except KeyError:
            raise CannotTry(f"{file} is no file that tests/mutants/table.py names.") from None
    scores: dict[str, Score] = {}
    for room, within in rooms.items():
        for file, score in _try_room(room, within, jobs, share, near).items():
            scores[file] = score
            print(f"{file}: {score.said()}", *score.unnoticed, *score.explained, sep="\n")
    print(table(scores), flush=True)
    return scores


def total(scores: Iterable[Score]) -> Score:
    found = Score()
    for score in scores:
        found.add(score)
    return found


def table(scores: Mapping[str, Score]) -> str:
    """A line a file: how many of its faults were noticed, of how many, in per cent."""
    lines = [(file, score) for file, score in scores.items() if score.tried]
    lines.append(("all", total(scores.values())))
    width = max(len(file) for file, _ in lines)
    return "\n".join(
        f"{file.ljust(width)}  {one.noticed:5} of {one.tried:5} {one.percent:6.1f} %"
        for file, one in lines
    )


def _try_room(
    room: str, files: Sequence[str], jobs: int, share: float, near: bool
) -> dict[str, Score]:
    targets, scores = [], {}
    for file in files:
        try:
            target = Target.of(file)
        except OSError:
            raise CannotTry(f"There is no file {file}.") from None
        if share >= 1:
            _name_old_reasons(file, target.found)
        else:
            target.found = [one for one in target.found if _drawn(one, share)]
        scores[file] = Score(len(target.found))
        for fault in target.found:
            if why := REASONS.get(_key(file, fault)):
                scores[file].explained.append(fault.said(file, f" (cannot be noticed: {why})"))
        target.found = [one for one in target.found if _key(file, one) not in REASONS]
        targets.append(target)
    left = _unnoticed(targets, TESTS[room].near, jobs)
    if not near:
        left = _unnoticed([target for target, _ in left if target.found], TESTS[room].far, jobs)
    for target, ends in left:
        scores[target.file].unnoticed = [
            fault.said(target.file, f" ({end.value})" if end is End.NOT_REACHED else "")
            for fault, end in zip(target.found, ends, strict=True)
        ]
    return scores


def _unnoticed(
    targets: Sequence[Target], tests: Sequence[str], jobs: int
) -> list[tuple[Target, list[End]]]:
    """The targets with the faults that these tests leave, and how each ended."""
    if not any(target.found for target in targets):
        return []
    tried = hold(targets, tests, jobs)
    left = []
    for target in targets:
        both = zip(target.found, tried.ends[target.file], strict=True)
        open_ = [(fault, end) for fault, end in both if end is not End.NOTICED]
        target.found = [fault for fault, _ in open_]
        ends: list[End] = [end for _, end in open_]
        left.append((target, ends))
    return left


def _drawn(fault: Fault, share: float) -> bool:
    return Random(f"{fault.line} {fault.change()}").random() < share


def _name_old_reasons(file: str, found: Sequence[Fault]) -> None:
    made = {_key(file, fault) for fault in found}
    for key in REASONS:
        if key[0] == file and key not in made:
            print("A reason for a fault that is no longer made:", *key)


def _key(file: str, fault: Fault) -> Key:
    return (file, fault.within, *fault.change())


def _load_what_tests_load() -> None:
    """What every forked process would load anew; nothing of ours, which the fault is in."""
    import dateutil.relativedelta
    import hypothesis.strategies
    import pint
    import pytest_asyncio
    import sqlite_utils

    assert all((dateutil, hypothesis, pint, pytest_asyncio, sqlite_utils))


def run(scale: float) -> Outcome:
    """For tests.long: the whole core, or `scale` of its faults."""
    score = total(try_files(core_files(), jobs=os.cpu_count() or 1, share=scale).values())
    return Outcome("mutants", score.tried, len(score.unnoticed), score.said())
