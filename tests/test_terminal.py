"""The demo in a terminal; and the check itself, which must be able to fail."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services.demo import build_demo
from tests.terminal import NotShown, open_demo, watch

pytest.importorskip("pty", reason="there are no such terminals on this system")


def test_the_demo_opens_on_its_due_list_and_q_ends_it() -> None:
    assert open_demo([sys.executable, "-m", "pantry_tui"])


KEY = "import os, tty; tty.setcbreak(0); print('2A', flush=True); os.read(0, 1)"


@pytest.mark.parametrize(
    ("script", "complaint"),
    [
        ("print('hello')", "never showed 2A: its last words were 'hello'"),
        ("pass", "never showed 2A: it wrote nothing"),
        (f"{KEY}; raise SystemExit(3)", "ended with 3"),
    ],
)
def test_what_a_person_would_not_take_for_the_app_is_told_in_one_sentence(
    script: str, complaint: str
) -> None:
    with pytest.raises(NotShown, match=complaint) as told:
        watch([sys.executable, "-c", script], ["2A"], env=os.environ)
    assert "\n" not in str(told.value)


def test_a_program_that_heeds_no_key_is_told_and_ended() -> None:
    with pytest.raises(NotShown, match="did not end"):
        watch([sys.executable, "-c", "input(); input()"], [], env=os.environ, wait_s=0.1)


def test_a_program_that_ends_at_the_key_is_taken() -> None:
    watch([sys.executable, "-c", KEY], ["2A"], env=os.environ)


def test_a_program_that_is_not_there_is_told_in_one_sentence() -> None:
    with pytest.raises(NotShown, match="does not start"):
        open_demo(["no-such-program-here"])


APP = [sys.executable, "-m", "pantry_tui"]


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP"])
def test_told_to_end_the_app_leaves_the_terminal_as_it_was(tmp_path: Path, name: str) -> None:
    store = tmp_path / "demo.db"
    build_demo(store, date.today())
    told = [*APP, "--store", str(store)]
    env = {**os.environ, "TERM": "xterm-256color"}
    last = watch(told, ["in store"], env=env, told=getattr(signal, name))
    assert "\x1b[?1049l" in last, "back from the other screen"
    assert "\x1b[?25h" in last, "with a cursor"


def test_without_a_terminal_one_sentence_says_what_to_do(tmp_path: Path) -> None:
    store = tmp_path / "demo.db"
    build_demo(store, date.today())
    done = subprocess.run(
        [*APP, "--store", str(store)],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert "needs a terminal" in done.stderr
    assert done.stderr.count("\n") == 1
    assert not done.stdout
