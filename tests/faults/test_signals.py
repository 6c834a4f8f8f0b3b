"""The app is told to end, or its terminal goes: what is booked stays, the terminal is as it was."""

from __future__ import annotations

import os
import pty
import signal
import subprocess
import sys
import termios
import time
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services.demo import build_demo
from pantry_tui.services.safekeeping.verify import verify
from tests.terminal import _read

TODAY = date(2026, 11, 25)
#: What leaves the other screen and shows the cursor again.
BACK = b"\x1b[?1049l"


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP", "SIGINT"])
def test_the_terminal_is_given_back(tmp_path: Path, name: str) -> None:
    path = tmp_path / "pantry.db"
    build_demo(path, TODAY)
    ours, theirs = pty.openpty()
    before = termios.tcgetattr(theirs)
    command = [sys.executable, "-m", "pantry_tui", "--store", str(path), "--today", "2026-11-25"]
    env = {**os.environ, "TERM": "xterm-256color"}
    child = subprocess.Popen(command, stdin=theirs, stdout=theirs, stderr=theirs, env=env)
    try:
        seen = _read(ours, ["jerky"], time.monotonic() + 120)
        assert "jerky" in seen
        assert termios.tcgetattr(theirs) != before, "the app has the terminal"
        child.send_signal(getattr(signal, name))
        if name == "SIGINT":  # ctrl+c is a key there, and ends nothing
            os.write(ours, b"q")
        _drain(ours, child)
        assert termios.tcgetattr(theirs) == before
    finally:
        child.kill()
        child.wait()
        os.close(ours)
        os.close(theirs)
    assert verify(path, TODAY).ok


def _drain(terminal: int, child: subprocess.Popen[bytes]) -> None:
    """Reads what is written until the program has ended, so that it never waits for a reader."""
    import select

    until = time.monotonic() + 120
    raw = b""
    while child.poll() is None and time.monotonic() < until:
        if select.select([terminal], [], [], 0.2)[0]:
            raw += os.read(terminal, 65536)
    while select.select([terminal], [], [], 0)[0]:
        raw += os.read(terminal, 65536)
    assert child.poll() is not None, "it did not end"
    assert BACK in raw


def test_a_terminal_that_takes_nothing_more_holds_up_no_end(tmp_path: Path) -> None:
    """A window that is closed at the other end may leave a line that nobody reads."""
    path = tmp_path / "pantry.db"
    build_demo(path, TODAY)
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "pantry_tui", "--store", str(path), "--today", "2026-11-25"]
    env = {**os.environ, "TERM": "xterm-256color"}
    child = subprocess.Popen(command, stdin=theirs, stdout=theirs, stderr=theirs, env=env)
    try:
        assert "jerky" in _read(ours, ["jerky"], time.monotonic() + 120)
        os.write(ours, b"SDWD" * 60)  # more is painted than the line holds, and nobody reads it
        child.send_signal(signal.SIGHUP)
        assert child.wait(timeout=120) == 128 + signal.SIGHUP
    finally:
        child.kill()
        child.wait()
        os.close(ours)
        os.close(theirs)
    assert verify(path, TODAY).ok


BUSY = """
import asyncio
from itertools import count
from types import SimpleNamespace
from pantry_tui.app.endings import heed_signals

async def main():
    heed_signals(SimpleNamespace(exit=lambda **_: None))
    print("busy", flush=True)
    for _ in count():
        pass

asyncio.run(main())
"""


def test_an_app_that_is_busy_ends_when_it_is_told() -> None:
    """A terminal is closed while a million letters that were pasted into it still wait."""
    child = subprocess.Popen([sys.executable, "-c", BUSY], stdout=subprocess.PIPE)
    try:
        assert child.stdout is not None
        assert child.stdout.readline() == b"busy\n"
        child.send_signal(signal.SIGHUP)
        assert child.wait(timeout=60) == 128 + signal.SIGHUP
    finally:
        child.kill()
        child.communicate()
