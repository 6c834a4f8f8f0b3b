"""Faults held against tests, each in a forked process of its own.

The tests of a room are collected once. A forked process watches them run without a fault; then for
each fault another one puts it into the loaded function, or works out anew what a module assigns,
and runs the tests that come by. Where that cannot be done, or is not noticed although it runs
while a module is loaded, the module is loaded anew, in a process that has nothing of ours in it
yet, which takes longer.
"""

from __future__ import annotations

import ast
import os
import pickle
import signal
import sys
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from enum import Enum
from functools import cache
from pathlib import Path

import pytest

from tests.mutants.faults import Fault, faults
from tests.mutants.forked import FAILED, Ended, Running, folder_for_all, fork, running_now, wait
from tests.mutants.reach import Line, Reach, Watch, forget_answers
from tests.mutants.readers import readers
from tests.mutants.swap import Finder, rebind, swap
from tests.mutants.table import CORE, ROOT

#: A fault may make a loop endless: it is noticed when a test works for this long, and, should it
#: wait for ever, when so much time has passed that no busy machine explains it.
WORK_S, WORK_TIMES = 5.0, 4.0
WAIT_TIMES = 30.0
_LOAD_ANEW, _NO_TESTS = 100, 5
_OPTIONS = (
    *("-q", "-s", "--import-mode=importlib", "--strict-markers", "--strict-config"),
    *("-p", "no:cacheprovider", "-p", "no:xdist"),
    *("-o", "addopts="),
)


class CannotTry(Exception):
    """One sentence that says why."""


class End(Enum):
    """What became of a fault."""

    NOTICED = "noticed"
    UNNOTICED = "unnoticed"
    NOT_REACHED = "no test comes by"
    LOAD_ANEW = "its module has to be loaded anew"


@dataclass
class Target:
    """A file and the faults of it that are tried."""

    file: str
    tree: ast.Module
    found: list[Fault]

    @classmethod
    def of(cls, file: str) -> Target:
        """With every fault. Raises OSError."""
        tree = ast.parse((ROOT / file).read_text(encoding="utf-8"), file)
        return cls(file, tree, faults(tree))

    @property
    def path(self) -> str:
        return str(ROOT / self.file)


@dataclass
class Tried:
    """Of each target what became of its faults, in their order, and who comes by."""

    ends: dict[str, list[End]] = field(default_factory=dict)
    reach: Reach = field(default_factory=Reach)


def hold(targets: Sequence[Target], tests: Sequence[str], jobs: int) -> Tried:
    """The faults of the targets held against the tests. Raises CannotTry unless all tests pass
    without a fault."""
    with folder_for_all() as folder:
        kept = folder / "tried"

        def run() -> int:
            plugin = _Session(targets, jobs, kept, folder)
            plugin.watch.start()
            return int(pytest.main([*_OPTIONS, *tests], plugins=[plugin]))

        wait(fork(run, folder, say=True))
        if not kept.exists():
            named = " ".join(tests)
            raise CannotTry(f"The tests do not run: try `pytest {named}`.")
        tried: Tried = pickle.loads(kept.read_bytes())
        if tried.reach.failed:
            named = ", ".join(tried.reach.failed[:3])
            raise CannotTry(f"The tests must pass before a fault is put in: {named}.")
        for target in targets:
            _load_anew(target, tried, jobs, folder)
    return tried


class _Session:
    """A pytest plugin that runs the tests it collected again and again, in forked processes."""

    def __init__(self, targets: Sequence[Target], jobs: int, kept: Path, folder: Path) -> None:
        self.targets, self.jobs, self.kept, self.folder = targets, jobs, kept, folder
        self.watch = Watch([*_core(), *(target.path for target in targets)])

    def pytest_collection_finish(self) -> None:
        _prepare()
        self.watch.finish()

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        if session.testsfailed:
            return True
        items = {item.nodeid: item for item in session.items}
        tried = Tried(reach=self._watched(session))
        if not tried.reach.failed:
            for target in self.targets:
                ends = tried.ends[target.file] = self._try(target, tried.reach, items)
                _say(target, ends)
        self.kept.write_bytes(pickle.dumps(tried))
        return True

    def _watched(self, session: pytest.Session) -> Reach:
        reach = self.folder / "reach"

        def run() -> int:
            session.config.pluginmanager.register(self.watch)
            _run(session.items)
            self.watch.finish()
            reach.write_bytes(pickle.dumps(self.watch.reach))
            return 0

        wait(fork(run, self.folder))
        found: Reach = pickle.loads(reach.read_bytes())
        return found

    def _try(self, target: Target, reach: Reach, items: dict[str, pytest.Item]) -> list[End]:
        noticed: Counter[str] = Counter()
        ends = [End.NOT_REACHED] * len(target.found)
        with Running(self.jobs, self.folder) as running:
            for n, fault in enumerate(target.found):
                tests = reach.tests_at(_lines(target, fault), noticed)
                if not tests:
                    continue
                for end in running.start(n, _in_place(target, fault, tests, reach, items)):
                    _note(end, ends, noticed)
            for end in running.all():
                _note(end, ends, noticed)
        return ends


def _own_lines(target: Target, fault: Fault) -> frozenset[Line]:
    return frozenset((target.path, line) for line in fault.lines())


def _lines(target: Target, fault: Fault) -> frozenset[Line]:
    """Who comes by these may notice it: its own, or of what a module assigns those that read it."""
    own = _own_lines(target, fault)
    if fault.called:
        return own
    return readers(target.path, fault.statement, _core()) or own


@cache
def _core() -> tuple[str, ...]:
    return tuple(str(path) for path in sorted((ROOT / CORE).rglob("*.py")))


def _say(target: Target, ends: list[End]) -> None:
    """While it runs: how many are left, and which."""
    both = zip(target.found, ends, strict=True)
    left = [(fault, end) for fault, end in both if end is not End.NOTICED]
    print(f"... {target.file}: {len(left)} of {len(ends)} left", file=sys.stderr)
    for fault, end in left:
        print(fault.said(target.file, f" ({end.value})"), file=sys.stderr, flush=True)


def _in_place(
    target: Target,
    fault: Fault,
    tests: Sequence[str],
    reach: Reach,
    items: dict[str, pytest.Item],
) -> Callable[[], int]:
    at_load = not fault.called or bool(reach.always & _own_lines(target, fault))

    def run() -> int:
        fault.put()
        forget_answers()
        if fault.called:
            done = swap(target.file, target.path, target.tree, fault.within)
        else:
            done = rebind(target.file, target.tree, fault.statement)
        if not done:
            return _LOAD_ANEW
        watchman = _Watchman(reach)
        items[tests[0]].config.pluginmanager.register(watchman)
        _run([items[test] for test in tests])
        # What ran while the module was loaded ran without the fault.
        return _LOAD_ANEW if at_load else 0

    return run


def _run(items: Sequence[pytest.Item]) -> None:
    for item, after in zip(items, [*items[1:], None], strict=True):
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=after)


class _Watchman:
    """A pytest plugin that ends the process at the first test that fails or takes too long."""

    def __init__(self, reach: Reach) -> None:
        self.reach = reach

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        running_now(item.nodeid)
        work = WORK_S + WORK_TIMES * self.reach.seconds(item.nodeid)
        signal.setitimer(signal.ITIMER_PROF, work)
        signal.setitimer(signal.ITIMER_REAL, WAIT_TIMES * work)
        return (yield)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            os._exit(FAILED)


def _load_anew(target: Target, tried: Tried, jobs: int, folder: Path) -> None:
    """The faults that could not be put into what was loaded."""
    noticed: Counter[str] = Counter()
    ends, reach = tried.ends[target.file], tried.reach
    with Running(jobs, folder) as running:
        for n, fault in enumerate(target.found):
            if ends[n] is End.LOAD_ANEW:
                tests = reach.tests_at(_lines(target, fault), noticed)
                for end in running.start(n, _loaded_anew(target, fault, tests, reach)):
                    _note(end, ends, noticed)
        for end in running.all():
            _note(end, ends, noticed)


def _loaded_anew(target: Target, fault: Fault, tests: list[str], reach: Reach) -> Callable[[], int]:
    def run() -> int:
        fault.put()
        sys.meta_path.insert(0, Finder(target.file, target.path, target.tree))
        files = list(dict.fromkeys(name.partition("::")[0] for name in tests))
        return int(pytest.main([*_OPTIONS, *files], plugins=[_Only(tests), _Watchman(reach)]))

    return run


class _Only:
    """A pytest plugin: of what was collected, these tests in this order."""

    def __init__(self, tests: list[str]) -> None:
        self.places = {name: n for n, name in enumerate(tests)}

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        chosen = [item for item in items if item.nodeid in self.places]
        items[:] = sorted(chosen, key=lambda item: self.places[item.nodeid])


def _note(one: Ended, ends: list[End], noticed: Counter[str]) -> None:
    if one.code == _NO_TESTS:
        raise CannotTry("A fault's tests were not found again: run it once more.")
    if one.code == _LOAD_ANEW:
        ends[one.n] = End.LOAD_ANEW
    elif one.code == 0:
        ends[one.n] = End.UNNOTICED
    else:
        ends[one.n] = End.NOTICED
        noticed[one.test] += 1


def _prepare() -> None:
    """What each forked process would otherwise do anew: read the tables, look for constants."""
    import gc

    from hypothesis import given
    from hypothesis import strategies as st

    from pantry_tui.reference.tables import load_tables

    load_tables()

    @given(st.integers())
    def nothing(_: int) -> None:
        pass

    nothing()
    gc.freeze()
