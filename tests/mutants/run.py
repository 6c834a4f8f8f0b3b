"""Every fault of some files tried, and what was not noticed printed."""

from __future__ import annotations

import ast
import os
import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random

from tests.long import Outcome
from tests.mutants.faults import Fault, faults
from tests.mutants.reach import Reach
from tests.mutants.reasons import REASONS
from tests.mutants.table import ROOT, core_files, named_for
from tests.mutants.trial import CannotTry, Trial, start, survived, watch

_SAID_EVERY = 50


@dataclass
class Score:
    """How many faults were tried, and those that no test noticed, as they are printed."""

    tried: int = 0
    explained: int = 0
    unnoticed: list[str] = field(default_factory=list)

    @property
    def percent(self) -> float:
        return 100.0 * (1 - len(self.unnoticed) / self.tried) if self.tried else 100.0

    def add(self, other: Score) -> None:
        self.tried += other.tried
        self.explained += other.explained
        self.unnoticed += other.unnoticed

    def said(self) -> str:
        noticed = self.tried - len(self.unnoticed)
        reasons = f", {self.explained} of them explained" if self.explained else ""
        return f"{noticed} of {self.tried} faults noticed{reasons}: {self.percent:.1f} %"


def try_files(files: Sequence[str], *, jobs: int, share: float = 1.0) -> Score:
    """Tries `share` of the faults of each file. Raises CannotTry."""
    _load_what_tests_load()
    total = Score()
    for file in files:
        score = _try_file(file, jobs, share)
        print(f"{file}: {score.said()}", flush=True)
        for one in score.unnoticed:
            print(one, flush=True)
        total.add(score)
    if len(files) > 1:
        print(f"all: {total.said()}")
    return total


def _try_file(file: str, jobs: int, share: float) -> Score:
    try:
        source, tests = (ROOT / file).read_text(encoding="utf-8"), named_for(file)
    except (OSError, KeyError):
        raise CannotTry(f"{file} is no file that tests/mutants/table.py names tests for.") from None
    tree = ast.parse(source, file)
    found = faults(tree)
    if share < 1:
        found = [one for one in found if Random(f"{one.line} {one.change()}").random() < share]
    reach = watch(file, [test for test in tests if (ROOT / test).exists()])
    score = Score(len(found))
    open_ = []
    for fault in found:
        if _key(file, fault) in REASONS:
            score.explained += 1
        else:
            open_.append(fault)
    unnoticed = sorted(_unnoticed(file, tree, open_, reach, jobs), key=lambda pair: pair[0].line)
    score.unnoticed = [_said(file, fault, why) for fault, why in unnoticed]
    if share >= 1:
        made = {_key(file, fault) for fault in found}
        for key in [key for key in REASONS if key[0] == file and key not in made]:
            print("A reason for a fault that is no longer made:", *key)
    return score


def _unnoticed(
    file: str, tree: ast.Module, found: Sequence[Fault], reach: Reach, jobs: int
) -> list[tuple[Fault, str]]:
    running: dict[int, Trial] = {}
    left: list[tuple[Fault, str]] = []

    def end_one() -> None:
        process, status = os.wait()
        trial = running.pop(process)
        if survived(status):
            left.append((trial.fault, ""))

    for n, fault in enumerate(found):
        if n and n % _SAID_EVERY == 0:
            print(f"{file}: {n} of {len(found)} ...", file=sys.stderr, flush=True)
        tests = reach.tests_at(fault.lines())
        if not tests:
            left.append((fault, " (no test comes by)"))
            continue
        if len(running) >= jobs:
            end_one()
        trial = start(file, tree, fault, tests, reach.seconds(tests))
        running[trial.process] = trial
    while running:
        end_one()
    return left


def _key(file: str, fault: Fault) -> tuple[str, str, str, str]:
    return (file, fault.within, *fault.change())


def _said(file: str, fault: Fault, why: str) -> str:
    before, after = fault.change()
    return f"  {file}:{fault.line} {fault.within}{why}\n    - {before}\n    + {after}"


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
    score = try_files(core_files(), jobs=os.cpu_count() or 1, share=scale)
    return Outcome("mutants", score.tried, len(score.unnoticed), score.said())
