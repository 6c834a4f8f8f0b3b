"""Which tests come by which lines of some files, found once by watching them run.

What runs while the tests are collected, and what a shared fixture does, counts for every test
that may depend on it.
"""

from __future__ import annotations

import sys
import time
from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from types import CodeType, FrameType
from typing import Any

import pytest

#: A line: the path of its file and its number.
Line = tuple[str, int]


@dataclass
class Reach:
    """`always`: lines that count for all; `by_test`: a test's own, and the seconds it works."""

    always: set[Line] = field(default_factory=set)
    by_test: dict[str, tuple[set[Line], float]] = field(default_factory=dict)
    failed: list[str] = field(default_factory=list)

    def tests_at(self, lines: Iterable[Line], noticed: Mapping[str, int]) -> list[str]:
        """The tests that come by one of the lines: quick ones first, and those before them that
        have `noticed` so many faults nearby already."""
        wanted = frozenset(lines)
        everyone = bool(wanted & self.always)
        found = [name for name, (own, _) in self.by_test.items() if everyone or wanted & own]
        return sorted(found, key=lambda name: self.by_test[name][1] / (1 + noticed.get(name, 0)))

    def seconds(self, test: str) -> float:
        return self.by_test[test][1]


class Watch:
    """A pytest plugin that fills a Reach for the files at `paths`."""

    def __init__(self, paths: Collection[str]) -> None:
        self.paths = frozenset(paths)
        self.reach = Reach()
        self._now = self.reach.always
        self._unseen: dict[CodeType, set[int]] = {}
        self._shared: dict[str, set[Line]] = defaultdict(set)
        self._shared_s: dict[str, float] = defaultdict(float)
        self._fixtures: dict[str, tuple[str, ...]] = {}

    def _call(self, frame: FrameType, _event: str, _arg: object) -> Any:
        code = frame.f_code
        if code.co_filename not in self.paths:
            return None
        unseen = self._unseen.get(code)
        if unseen is None:
            unseen = self._unseen[code] = {n for _, _, n in code.co_lines() if n is not None}
        self._saw(unseen, code.co_filename, frame.f_lineno)
        # Of what has been gone through in full nothing more can be learnt.
        return self._line if unseen else None

    def _line(self, frame: FrameType, event: str, _arg: object) -> Any:
        if event == "line":
            code = frame.f_code
            self._saw(self._unseen.setdefault(code, set()), code.co_filename, frame.f_lineno)
        return self._line

    def _saw(self, unseen: set[int], path: str, line: int) -> None:
        unseen.discard(line)
        self._now.add((path, line))

    def _turn_to(self, lines: set[Line]) -> set[Line]:
        before, self._now = self._now, lines
        self._unseen = {}
        return before

    def start(self) -> None:
        sys.settrace(self._call)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        before = self._turn_to(set())
        forget_answers()
        shared = sum(self._shared_s.values())
        started = time.process_time()
        self.start()
        result = yield
        took = time.process_time() - started - (sum(self._shared_s.values()) - shared)
        self.reach.by_test[item.nodeid] = (self._now, took)
        self._fixtures[item.nodeid] = tuple(getattr(item, "fixturenames", ()))
        self._turn_to(before)
        return result

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef[object]) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        before = self._turn_to(self._shared[fixturedef.argname])
        started = time.process_time()
        result = yield
        self._shared_s[fixturedef.argname] += time.process_time() - started
        self._turn_to(before)
        return result

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.reach.failed.append(report.nodeid)

    def pytest_sessionfinish(self) -> None:
        self.finish()

    def finish(self) -> None:
        """What shared fixtures did and took counts for all who asked for them."""
        sys.settrace(None)
        for name, (own, took) in list(self.reach.by_test.items()):
            asked = self._fixtures[name]
            lines = own.union(*(self._shared.get(one, set()) for one in asked))
            seconds = took + sum(self._shared_s.get(one, 0.0) for one in asked)
            self.reach.by_test[name] = (lines, seconds)


def forget_answers() -> None:
    """Empty every cache of the core: each test runs what it asks for."""
    for name, module in list(sys.modules.items()):
        if name.startswith("pantry_tui.core"):
            for held in list(vars(module).values()):
                if getattr(held, "__module__", None) == name and hasattr(held, "cache_clear"):
                    held.cache_clear()
