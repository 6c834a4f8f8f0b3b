"""Whole programs, timed from outside: run to their end, or in a terminal until rows are painted."""

from __future__ import annotations

import fcntl
import os
import pty
import re
import select
import signal
import struct
import subprocess
import sys
import termios
from collections.abc import Collection, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).parents[2]
PYTHON = (sys.executable,)
OURS = (*PYTHON, "-m", "pantry_tui")

#: So many lid codes on the screen are a list, not a word in passing.
LINES = 5
#: Seconds after which a program that paints nothing has failed.
PATIENCE = 300.0

_ESCAPES = re.compile(
    rb"\x1b(?:\[[0-9;?<=>]*[ -/]*[@-~]|[\]P][^\x07\x1b]*(?:\x07|\x1b\\)|[@-Z\\-_])"
)
_CODE = re.compile(rb"(?<![0-9A-Za-z])[2-9][A-Z](?:[2-9][A-Z])*[2-9]?(?![0-9A-Za-z])")


@dataclass(frozen=True, slots=True)
class Sample:
    """Seconds on the wall, seconds of CPU, and the most memory it had, in KiB."""

    wall: float
    cpu: float
    kib: int = 0


def environment(home: Path) -> dict[str, str]:
    """A person's environment with a home of its own and a terminal of 80 columns."""
    kept = {
        k: v for k, v in os.environ.items() if not k.startswith(("PANTRY_", "XDG_", "PYTHONDONT"))
    }
    paths = [str(ROOT), *filter(None, [os.environ.get("PYTHONPATH")])]
    return {
        **kept, "HOME": str(home), "TERM": "xterm-256color", "COLORTERM": "truecolor",
        "LANG": "C.UTF-8", "PYTHONPATH": os.pathsep.join(paths),
    }  # fmt: skip


def run(argv: Sequence[str], env: Mapping[str, str]) -> Sample:
    """Runs a command to its end. Raises RuntimeError when it fails."""
    began = perf_counter()
    child = subprocess.Popen(
        argv, env=env, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE
    )
    assert child.stderr is not None
    said = child.stderr.read()
    _, status, used = os.wait4(child.pid, 0)
    wall = perf_counter() - began
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode:
        raise RuntimeError(f"{' '.join(argv)}: {said.decode(errors='replace')}")
    return Sample(wall, used.ru_utime + used.ru_stime)


def painted(argv: Sequence[str], env: Mapping[str, str], codes: Collection[str]) -> Sample:
    """Starts an app in a terminal and waits until rows with some of these lid codes are painted;
    then quits it by `q`. Raises RuntimeError when they never are."""
    known = {code.encode() for code in codes}
    here, there = pty.openpty()
    fcntl.ioctl(there, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    began = perf_counter()
    # A group and not a session of its own: sessions share a busy machine between them, and all that
    # is compared here has to have the same share of it.
    child = subprocess.Popen(
        argv, env=env, cwd=ROOT, stdin=there, stdout=there, stderr=there, process_group=0
    )
    os.close(there)
    try:
        seen = b""
        while len(known.intersection(_CODE.findall(_ESCAPES.sub(b" ", seen)))) < LINES:
            part = _read(here, PATIENCE)
            at = perf_counter()
            if not part:
                raise RuntimeError(f"{' '.join(argv)} painted no rows: {seen[-400:]!r}")
            seen += part
        found = Sample(at - began, _cpu(child.pid), _peak(child.pid))
        os.write(here, b"q")
        while _read(here, 10.0):
            pass
        child.wait(10)
        return found
    finally:
        with suppress(ProcessLookupError):
            os.killpg(child.pid, signal.SIGKILL)
        child.wait()
        os.close(here)


def _read(terminal: int, patience: float) -> bytes:
    """What the program writes next; nothing when it is gone or stays silent."""
    ready, _, _ = select.select([terminal], [], [], patience)
    try:
        return os.read(terminal, 65536) if ready else b""
    except OSError:  # the other end of the terminal is closed
        return b""


def _cpu(pid: int) -> float:
    """Seconds of CPU that the threads of a running process have had."""
    tasks = Path(f"/proc/{pid}/task")
    return sum(int(task.read_text().split()[0]) for task in tasks.glob("*/schedstat")) / 1e9


def _peak(pid: int) -> int:
    """KiB: the highest resident size of a running process.

    Not `ru_maxrss`: that one remembers the parent's size from before the child became itself.
    """
    for line in Path(f"/proc/{pid}/status").read_text().splitlines():
        if line.startswith("VmHWM:"):
            return int(line.split()[1])
    return 0
