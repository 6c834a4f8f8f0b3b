"""Running the tests of a file in a forked process: once to watch them, then once for each fault."""

from __future__ import annotations

import ast
import importlib.abc
import importlib.util
import os
import pickle
import signal
import sys
import tempfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from importlib.machinery import ModuleSpec, SourceFileLoader
from pathlib import Path
from types import CodeType, ModuleType
from typing import NoReturn

import pytest

from tests.mutants.faults import Fault
from tests.mutants.reach import Reach, Watch
from tests.mutants.table import ROOT

#: A fault may make a loop endless: it is noticed when its tests work for this long, and, should
#: one wait for ever, when so much time has passed that no busy machine explains it.
WORK_S, WORK_TIMES = 15.0, 4.0
WAIT_TIMES = 30.0
_NO_TESTS = 5
_OPTIONS = (
    *("-q", "-x", "--import-mode=importlib", "--strict-markers", "--strict-config"),
    *("-p", "no:cacheprovider", "-p", "no:xdist"),
    *("-o", "addopts="),
)


class CannotTry(Exception):
    """One sentence that says why."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A running process that has one fault in it."""

    fault: Fault
    process: int


def watch(file: str, tests: Sequence[str]) -> Reach:
    """The tests of `file` run once without a fault. Raises CannotTry unless all pass."""
    path = str(ROOT / file)
    with tempfile.TemporaryDirectory(prefix="pantry-mutants-") as folder:
        kept = Path(folder) / "reach"

        def run() -> int:
            plugin = Watch(path)
            plugin.start()
            options = [one for one in _OPTIONS if one != "-x"]
            code = pytest.main([*options, *tests], plugins=[plugin])
            kept.write_bytes(pickle.dumps(plugin.reach))
            return int(code)

        code = _code(os.waitpid(_fork(run), 0)[1])
        if not kept.exists():
            raise CannotTry(f"The tests of {file} do not run: try `pytest {' '.join(tests)}`.")
        reach: Reach = pickle.loads(kept.read_bytes())
    if code:
        named = ", ".join(reach.failed[:3]) or f"pytest ended with {code}"
        raise CannotTry(f"The tests of {file} must pass before a fault is put in: {named}.")
    return reach


def start(file: str, tree: ast.Module, fault: Fault, tests: list[str], seconds: float) -> Trial:
    """A process that runs `tests` with the fault in `file`."""

    def run() -> int:
        work = WORK_S + WORK_TIMES * seconds
        signal.setitimer(signal.ITIMER_PROF, work)
        signal.setitimer(signal.ITIMER_REAL, WAIT_TIMES * work)
        fault.put()
        sys.meta_path.insert(0, _Finder(file, tree))
        files = list(dict.fromkeys(name.partition("::")[0] for name in tests))
        return int(pytest.main([*_OPTIONS, *files], plugins=[_Only(tests)]))

    return Trial(fault, _fork(run))


def survived(status: int) -> bool:
    """What the end of a trial says: did every test pass? Raises CannotTry if none ran."""
    code = _code(status)
    if code == _NO_TESTS:
        raise CannotTry("A fault's tests were not found again: run it once more.")
    return code == 0


def _code(status: int) -> int:
    return os.waitstatus_to_exitcode(status)


def _fork(run: Callable[[], int]) -> int:
    """The number of a new process that ends with what `run` says; nothing it writes is seen."""
    process = os.fork()
    return process or _end_with(run)


def _end_with(run: Callable[[], int]) -> NoReturn:
    code = 1
    try:
        signal.signal(signal.SIGALRM, signal.SIG_DFL)
        signal.signal(signal.SIGPROF, signal.SIG_DFL)
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in range(3):
            os.dup2(nowhere, stream)
        os.chdir(ROOT)
        code = run()
    finally:
        # Whatever was raised, and whatever runs at exit: this process is a copy, and ends here.
        os._exit(code)


class _Only:
    """A pytest plugin: of what was collected, these tests in this order."""

    def __init__(self, tests: list[str]) -> None:
        self.places = {name: n for n, name in enumerate(tests)}

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        chosen = [item for item in items if item.nodeid in self.places]
        items[:] = sorted(chosen, key=lambda item: self.places[item.nodeid])


class _Finder(importlib.abc.MetaPathFinder):
    """Loads the one file from a tree in memory."""

    def __init__(self, file: str, tree: ast.Module) -> None:
        self.name = file.removesuffix("/__init__.py").removesuffix(".py").replace("/", ".")
        self.path = str(ROOT / file)
        self.tree = tree

    def find_spec(
        self, fullname: str, _path: Sequence[str] | None, _target: ModuleType | None = None
    ) -> ModuleSpec | None:
        if fullname != self.name:
            return None
        loader = _Loader(fullname, self.path)
        loader.tree = self.tree
        return importlib.util.spec_from_file_location(fullname, self.path, loader=loader)


class _Loader(SourceFileLoader):
    tree: ast.Module

    def get_code(self, _fullname: str) -> CodeType:
        return compile(self.tree, self.path, "exec")
