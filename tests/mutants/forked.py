"""Forked processes, each with a folder of its own for all that it writes."""

from __future__ import annotations

import os
import shutil
import signal
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import NoReturn

from tests.mutants.table import ROOT

#: How a process ends in which a test failed, or anything was raised.
FAILED = 1
_RUNNING = "PANTRY_MUTANT_TEST"


@dataclass
class Ended:
    """How the trial of fault `n` ended; `test` is the one that was running last."""

    n: int
    code: int
    test: str


class Running:
    """Up to `jobs` forked processes at once, each with a folder of its own for what it writes."""

    def __init__(self, jobs: int, folder: Path) -> None:
        self.jobs, self.folder = jobs, folder
        self.trials: dict[int, tuple[int, Path]] = {}

    def __enter__(self) -> Running:
        return self

    def __exit__(self, *_: object) -> None:
        list(self.all())

    def start(self, n: int, run: Callable[[], int]) -> Iterator[Ended]:
        """Starts one; those that ended to make room for it."""
        while len(self.trials) >= self.jobs:
            yield self._next()
        own = Path(tempfile.mkdtemp(dir=self.folder))
        self.trials[fork(run, own)] = (n, own)

    def all(self) -> Iterator[Ended]:
        while self.trials:
            yield self._next()

    def _next(self) -> Ended:
        process, status = os.wait()
        n, own = self.trials.pop(process)
        said = own / "running"
        test = said.read_text(encoding="utf-8") if said.exists() else ""
        shutil.rmtree(own, ignore_errors=True)
        return Ended(n, os.waitstatus_to_exitcode(status), test)


@contextmanager
def folder_for_all() -> Iterator[Path]:
    with tempfile.TemporaryDirectory(prefix="pantry-mutants-", ignore_cleanup_errors=True) as name:
        yield Path(name)


def wait(process: int) -> int:
    return os.waitstatus_to_exitcode(os.waitpid(process, 0)[1])


def fork(run: Callable[[], int], folder: Path, *, say: bool = False) -> int:
    """The number of a new process that ends with what `run` says, and writes into `folder`;
    unless it may `say` something nothing that it prints is seen."""
    process = os.fork()
    return process or _end_with(run, folder, say)


def _end_with(run: Callable[[], int], folder: Path, say: bool) -> NoReturn:
    code = FAILED
    try:
        signal.signal(signal.SIGALRM, signal.SIG_DFL)
        signal.signal(signal.SIGPROF, signal.SIG_DFL)
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in range(2 if say else 3):
            os.dup2(nowhere, stream)
        os.environ["PYTEST_DEBUG_TEMPROOT"] = tempfile.tempdir = str(folder)
        os.environ[_RUNNING] = str(folder / "running")
        os.chdir(ROOT)
        code = run()
    finally:
        # Whatever was raised, and whatever runs at exit: this process is a copy, and ends here.
        os._exit(code)


def running_now(test: str) -> None:
    """Leaves a word in the folder of this process, for when it is ended."""
    Path(os.environ[_RUNNING]).write_text(test, encoding="utf-8")
