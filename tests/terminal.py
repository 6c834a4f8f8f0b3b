"""A command opened in a terminal, as a person sees it: does the due list come, and does `q` end it?

`python -m tests.terminal .venv/bin/pantry-tui` opens that program's demo. Needs nothing but the
standard library, so that it runs before the test extra is there.
"""

from __future__ import annotations

import json
import os
import re
import select
import shlex
import struct
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

WAIT_S = 60.0
SIZE = (24, 80)
# What a terminal is told beside what stands on it: colours, cursor, titles, modes, questions.
_CONTROL = re.compile(
    rb"\x1b(?:\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*(?:\x07|\x1b\\)|[P_^X][^\x1b]*\x1b\\|[ -/]*[0-~])"
)


class NotShown(Exception):
    """One sentence for the person who runs the check."""


def watch(
    command: Sequence[str],
    words: Sequence[str],
    *,
    env: Mapping[str, str],
    wait_s: float = WAIT_S,
    told: int | None = None,
) -> str:
    """Opens `command` in a terminal of 24 by 80, waits until all `words` stood on it, presses `q`,
    or sends the signal `told`. -> what it wrote then, with its control sequences.

    Raises NotShown when they do not come, when it does not end, or ends with an error.
    """
    # Where there are no such terminals (Windows), these do not load.
    import fcntl
    import pty
    import termios

    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", *SIZE, 0, 0))
    said = shlex.join(command)
    child = subprocess.Popen(
        command, stdin=theirs, stdout=theirs, stderr=theirs, env=env, start_new_session=True
    )
    os.close(theirs)
    try:
        seen = _read(ours, words, time.monotonic() + wait_s)
        missing = [word for word in words if word not in seen]
        if missing:
            raise NotShown(f"`{said}` never showed {', '.join(missing)}: {_tail(seen)}")
        if told is None:
            os.write(ours, b"q")
        else:
            child.send_signal(told)
        last = _raw(ours, time.monotonic() + wait_s)
        try:
            code = child.wait(timeout=wait_s)
        except subprocess.TimeoutExpired:
            raise NotShown(f"`{said}` did not end {wait_s:.0f} seconds after `q`.") from None
        if code != (0 if told is None else 128 + told):  # as a shell tells of a signal
            raise NotShown(f"`{said}` ended with {code} after `q`.")
        return last
    finally:
        child.kill()
        child.wait()
        os.close(ours)


def _read(terminal: int, words: Sequence[str] | None, until: float) -> str:
    """What was written: until all words are there (None: until it closes) or the time is up."""
    raw, text = b"", ""
    while (left := until - time.monotonic()) > 0:
        if words is not None and all(word in text for word in words):
            break
        if not select.select([terminal], [], [], left)[0]:
            break
        try:
            more = os.read(terminal, 1 << 16)
        except OSError:  # Linux says so when the other side has closed.
            break
        if not more:
            break
        raw += more
        text = _CONTROL.sub(b" ", raw).decode("utf-8", "replace")
    return text


def _raw(terminal: int, until: float) -> str:
    """All that is written until the terminal closes, or the time is up."""
    raw = b""
    while (left := until - time.monotonic()) > 0 and select.select([terminal], [], [], left)[0]:
        try:
            more = os.read(terminal, 1 << 16)
        except OSError:  # Linux says so when the other side has closed.
            break
        if not more:
            break
        raw += more
    return raw.decode("utf-8", "replace")


def _tail(text: str) -> str:
    last = " ".join(text.split())[-200:]
    return f"its last words were {last!r}." if last else "it wrote nothing."


def open_demo(program: Sequence[str], wait_s: float = WAIT_S) -> str:
    """`program demo` shows the first row of its due list, and `q` ends it. -> that lid code.

    Raises NotShown.
    """
    with tempfile.TemporaryDirectory(prefix="pantry-terminal-") as folder:
        env = {
            **{name: text for name, text in os.environ.items() if not name.startswith("PANTRY_")},
            "HOME": folder,
            "TERM": "xterm-256color",
            "LC_ALL": "C.UTF-8",
            # The list and the screen are of the same day, though midnight should pass between.
            "PANTRY_TODAY": date.today().isoformat(),
        }
        store = str(Path(folder) / "demo.db")
        _answer([*program, "demo", "--init", store], env)
        code, food = _first_row(_answer([*program, "--store", store, "due", "--json"], env))
        watch([*program, "demo"], [code, food], env=env, wait_s=wait_s)
    return code


def _first_row(answer: str) -> tuple[str, str]:
    """Its lid code, and the first word of its food: a narrow column may cut the others off."""
    try:
        row = json.loads(answer)[0]
        return str(row["code"]), str(row["food"]).split()[0]
    except (ValueError, LookupError, TypeError):
        raise NotShown(f"`due --json` gave no rows: {_tail(answer)}") from None


def _answer(command: Sequence[str], env: Mapping[str, str]) -> str:
    try:
        done = subprocess.run(command, env=env, capture_output=True, text=True, check=False)
    except OSError as error:
        raise NotShown(f"`{shlex.join(command)}` does not start: {error.strerror}.") from None
    if done.returncode:
        raise NotShown(f"`{shlex.join(command)}` failed: {_tail(done.stderr)}")
    return done.stdout


if __name__ == "__main__":
    try:
        print(f"The demo opened on lid code {open_demo(sys.argv[1:])} and ended at `q`.")
    except NotShown as wrong:
        sys.exit(str(wrong))
