"""A whole evening in a real terminal: rounds, the week, three jars at once, a power cut.

Driven through tmux at 80 by 24, as a person would; what stood on the screen after each step is
kept in evening.txt beside this file (`PANTRY_SNAPSHOTS=write` writes it anew).
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.events import Did
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry
from pantry_tui.services.plan import week as weeks

TODAY = date(2026, 11, 25)
RECORDING = Path(__file__).parent / "evening.txt"
pytestmark = pytest.mark.skipif(shutil.which("tmux") is None, reason="tmux is not installed here")


class Terminal:
    """A tmux pane with the app in it."""

    def __init__(self, store: Path, socket: Path) -> None:
        self.tmux = ["tmux", "-S", str(socket)]
        command = f"{sys.executable} -m pantry_tui --store {store} --today {TODAY}"
        self._run(
            "-f", "/dev/null", "new-session", "-d", "-s", "evening", "-x", "80", "-y", "24", command
        )
        self.kept: list[str] = []

    def _run(self, *words: str) -> str:
        environment = {**os.environ, "TERM": "xterm-256color", "LC_ALL": "C.UTF-8"}
        done = subprocess.run(
            [*self.tmux, *words], capture_output=True, text=True, check=False, env=environment
        )
        return done.stdout

    def screen(self) -> str:
        return self._run("capture-pane", "-p", "-t", "evening")

    def press(self, *keys: str) -> None:
        self._run("send-keys", "-t", "evening", *keys)

    def until(self, words: str) -> str:
        """Looks again and again until `words` stand on a screen that is painted; gives up after
        many looks."""
        shown, alike = "", 0
        for _ in range(4000):
            before, shown = shown, self.screen()
            alike = alike + 1 if shown == before else 0
            if words in shown and alike > 20:
                return shown
        raise AssertionError(f"{words!r} never came:\n{shown}")

    def step(self, title: str, keys: tuple[str, ...], words: str) -> None:
        self.press(*keys)
        shown = self.until(words)
        self.kept.append(f"== {title}: {' '.join(keys)}\n{shown.rstrip()}\n")

    def end(self) -> None:
        self._run("kill-server")


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    store = tmp_path / "demo.db"
    build_demo(store, TODAY)
    made = Terminal(store, tmp_path / "tmux")
    yield made
    made.end()


def test_a_full_evening(terminal: Terminal, tmp_path: Path) -> None:
    t = terminal
    t.step("launch", (), "in store")
    t.step("count a place", ("c",), "Count which place?")
    t.step("the one to count next", ("1",), "17 to go")
    t.step("two lines agree", ("Enter", "Enter"), "15 to go")
    t.step("one line does not", ("3", "Enter"), "14 to go")
    t.step("finish: the differences", ("f",), "unrecorded use")
    t.step("book them, and the next place", ("f",), "Count which place?")
    t.step("the second place", ("1",), "to go in larder")
    t.step("a line agrees, nothing differs", ("Enter", "f"), "as expected")
    t.step("book it; the third can wait", ("f",), "Count which place?")
    t.step("back to the list", ("Escape",), "in store")
    t.step("this week", ("W",), "proposed")
    t.step("accept it", ("a",), "accepted")
    t.step("the due list", ("D",), "in store")
    t.step("find the beans", ("/", "beans", "Enter"), "Esc shows all")
    t.step("mark three lines", ("Space", "Space", "Space"), "* runner")
    t.step("use one of each", ("u",), "3 times")
    t.step("all again", ("Escape",), "316 in store")
    t.step("the shelves", ("S",), "of 120")
    t.step("the freezer", ("/", "salmon", "Enter"), "Only what fits 'salmon'")
    t.step("the power was off there", ("x",), "what happened")
    t.step("it was", ("1",), "Where else")
    t.step("nowhere else", ("1",), "how many hours")
    t.step("sixty hours", ("60", "Enter"), "How full")
    t.step("full", ("1",), "Look at the food")
    t.step("all thawed", ("2",), "How warm")
    t.step("nobody knows", ("Enter",), "power cut of 60 h")
    t.step("read it", ("Escape",), "And now?")
    t.step("book the verdicts", ("1",), "Booked a power cut")
    t.press("q")
    text = "\n".join(t.kept)
    if os.environ.get("PANTRY_SNAPSHOTS") == "write":
        RECORDING.write_text(text, encoding="utf-8")
    assert RECORDING.exists()
    with open_pantry(tmp_path / "demo.db", TODAY) as p:
        did = [event.did for event in p.events]
        assert did.count(Did.COUNT) == 2
        assert did.count(Did.OUTAGE) == 1
        assert weeks.accepted(p) is not None
        used = [event for event in p.events if event.did is Did.USE and event.together]
        assert [event.together for event in used].count(used[-1].together) == 3
