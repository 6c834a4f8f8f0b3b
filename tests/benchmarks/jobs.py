"""Ten jobs of an evening, each typed in a real terminal from the due list of the demo on.

    python -m tests.benchmarks.jobs

needs tmux; prints how many keys each takes (a letter is a key, Enter is one), looks in the store
whether it was done, and names the keys that stood nowhere on the screen when they were pressed. A
job that was not done, or takes more keys than it may, fails the run.
"""

from __future__ import annotations

import os
import re
import shutil
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

from pantry_tui.core.log.events import Did
from pantry_tui.services.batchwork import putup
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.plan import week as weeks
from tests.app.test_evening import TODAY, Terminal

#: Seconds between two looks in the store, and after which a job was not done.
LOOKS_EVERY, PATIENCE = 0.2, 90.0
#: Keys with a name; everything else is typed letter by letter.
NAMED = frozenset({"Enter", "Escape", "Up", "Down", "Space", "F12"})


class Job(NamedTuple):
    """`steps`: keys, and the words that stand on the screen after them; the last words are "" where
    the store alone says that it was done. `most`: so many keys it may take, 0 for any number."""

    name: str
    steps: tuple[tuple[tuple[str, ...], str], ...]
    did: Did | None
    most: int = 0

    @property
    def keys(self) -> int:
        return sum(1 if key in NAMED else len(key) for keys, _ in self.steps for key in keys)


COUNTED = 20
JOBS = (
    Job("use the first that is to be eaten", ((("u",), ""),), Did.USE, 1),
    Job("open one by its lid code", ((("9fo",), ""),), Did.OPEN, 3),
    Job(
        "move 3 of 7",
        ((("3nm",), "Move to"), (("3", "la", "Enter"), "")),
        Did.MOVE,
        7,
    ),
    Job(
        f"count a shelf of {COUNTED} lines that agree",
        ((("c",), "Count which"), (("1",), "20 to go"), (("Enter",) * COUNTED + ("f",), "")),
        Did.COUNT,
        2 + COUNTED + 1,
    ),
    Job("accept the week", ((("W",), "proposed"), (("a",), "accepted")), None, 2),
    Job("what the week has today is eaten", ((("W",), "proposed"), (("e",), "")), Did.USE, 3),
    Job("put up again like last time", ((("p",), "Put up"), (("Up", "Enter"), "")), Did.PUT_UP, 3),
    Job(
        "find by words, and discard one",
        ((("/", "jerky", "Enter"), "Esc shows all"), (("d",), "why"), (("4",), "")),
        Did.DISCARD,
    ),
    Job(
        "fill a crock into jars",
        ((("5mf",), "into"), (("5 quart jars, fridge", "Enter"), "")),
        Did.READY,
    ),
    Job(
        "print the door sheet",
        ((("F12",), "rint"), (("1",), "what"), (("1",), "Where to"), (("1",), "printer")),
        None,
        4,
    ),
)


def main() -> int:
    if shutil.which("tmux") is None:
        print("tmux is not installed here.")
        return 1
    failed = 0
    print(f"{'job':<44}{'keys':>5}{'at most':>9}  done")
    for job in JOBS:
        done, unseen = play(job)
        failed += not done or bool(job.most and job.keys > job.most)
        most = str(job.most) if job.most else "-"
        typed = " ".join(key for keys, _ in job.steps for key in keys)
        shown = typed if len(typed) < 60 else f"{typed[:40]} ... {typed[-10:]}"
        said = f"   (not shown: {', '.join(unseen)})" if unseen else ""
        print(
            f"{job.name:<44}{job.keys:>5}{most:>9}  {'yes' if done else 'NO '}   {shown}{said}",
            flush=True,
        )
    return 1 if failed else 0


def play(job: Job) -> tuple[bool, list[str]]:
    """Whether the store, or the paper, shows that it was done; the keys that nobody could read."""
    with TemporaryDirectory() as folder, _printer(Path(folder)) as paper:
        store = Path(folder) / "demo.db"
        build_demo(store, TODAY)
        with open_pantry(store, TODAY) as p:
            _three_more(p)
            before = len(list(p.events))
        terminal = Terminal(store, Path(folder) / "tmux")
        try:
            screen, unseen = terminal.until("in store"), []
            for keys, words in job.steps:
                if not _stands(keys[0], screen):
                    unseen.append(keys[0])
                for key in keys:
                    terminal.press(key) if key in NAMED else terminal.press("-l", key)
                if words:
                    screen = terminal.until(words)
            return _done(job, store, before, paper), unseen
        except AssertionError as error:
            print(error)
            return False, []
        finally:
            terminal.end()


def _stands(key: str, screen: str) -> bool:
    """Whether the first letter of a key stands on the screen by itself, as keys do there."""
    first = key if key in NAMED else key[0]
    named = {"Up": "(?:Up|↑)", "Down": "(?:Down|↓)", "Escape": "Esc"}.get(first, re.escape(first))
    if first.isdigit():
        named = f"(?:[01]-9|digits|{first})"
    return re.search(rf"(?<!\S){named}(?!\w)", screen) is not None


def _three_more(p: Pantry) -> None:
    """The shelf that is counted first has seventeen lines in the demo."""
    for food in ("pears", "apricots", "cherries"):
        line = f"3 pint jars {food}, boiling-water canned, north wall, yesterday"
        putup.put_up(p, putup.read(p, line))


def _done(job: Job, store: Path, before: int, paper: Path) -> bool:
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        with open_pantry(store, TODAY) as p:
            did = [event.did for event in list(p.events)[before:]]
            if job.did is not None and job.did in did:
                return True
            if job.name == "accept the week" and weeks.accepted(p) is not None:
                return True
        if job.name == "print the door sheet" and paper.exists():
            return "What to eat first" in paper.read_text(encoding="utf-8")
        time.sleep(LOOKS_EVERY)
    return False


@contextmanager
def _printer(folder: Path) -> Iterator[Path]:
    """A printer program that keeps what it gets in a file."""
    paper, program = folder / "paper.txt", folder / "bin" / "lp"
    program.parent.mkdir()
    program.write_text(f"#!/bin/sh\ncat > {paper}.tmp && mv {paper}.tmp {paper}\n")
    program.chmod(0o755)
    path = os.environ["PATH"]
    os.environ["PATH"] = f"{program.parent}:{path}"
    try:
        yield paper
    finally:
        os.environ["PATH"] = path


if __name__ == "__main__":
    sys.exit(main())
