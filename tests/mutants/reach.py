"""Which tests come by which lines of a file, found once by watching them run.

What runs while the tests are collected, and what a shared fixture does, counts for every test
that may depend on it.
"""

from __future__ import annotations

import sys
import time
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from types import FrameType
from typing import Any

import pytest


@dataclass
class Reach:
    """`always`: lines that count for all; `by_test`: a test's own, and the seconds it works."""

    always: set[int] = field(default_factory=set)
    by_test: dict[str, tuple[set[int], float]] = field(default_factory=dict)
    failed: list[str] = field(default_factory=list)

    def tests_at(self, lines: range) -> list[str]:
        """The tests that come by one of the lines, quick ones first."""
        wanted = set(lines)
        everyone = bool(wanted & self.always)
        found = [name for name, (own, _) in self.by_test.items() if everyone or wanted & own]
        return sorted(found, key=lambda name: self.by_test[name][1])

    def seconds(self, tests: list[str]) -> float:
        return sum(self.by_test[name][1] for name in tests)


class Watch:
    """A pytest plugin that fills a Reach for the file at `path`."""

    def __init__(self, path: str) -> None:
        self.path = path
        self.reach = Reach()
        self._now = self.reach.always
        self._shared: dict[str, set[int]] = defaultdict(set)
        self._fixtures: dict[str, tuple[str, ...]] = {}

    def _call(self, frame: FrameType, _event: str, _arg: object) -> Any:
        if frame.f_code.co_filename != self.path:
            return None
        self._now.add(frame.f_lineno)
        return self._line

    def _line(self, frame: FrameType, event: str, _arg: object) -> Any:
        if event == "line":
            self._now.add(frame.f_lineno)
        return self._line

    def start(self) -> None:
        sys.settrace(self._call)

    def pytest_collection_finish(self) -> None:
        # The tables are read once in a process, by whichever test needs them first.
        from pantry_tui.reference.tables import load_tables

        load_tables()

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        before, self._now = self._now, set()
        started = time.process_time()
        self.start()
        result = yield
        self.reach.by_test[item.nodeid] = (self._now, time.process_time() - started)
        self._fixtures[item.nodeid] = tuple(getattr(item, "fixturenames", ()))
        self._now = before
        return result

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef[object]) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        before, self._now = self._now, self._shared[fixturedef.argname]
        result = yield
        self._now = before
        return result

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.reach.failed.append(report.nodeid)

    def pytest_sessionfinish(self) -> None:
        sys.settrace(None)
        for name, (own, _) in self.reach.by_test.items():
            own.update(*(self._shared[one] for one in self._fixtures[name]))
