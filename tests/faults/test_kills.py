"""A few kills; `python -m tests.faults.kills` is the same at full size."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest


@pytest.mark.skipif(not hasattr(os, "fork"), reason="a child is forked and killed")
def test_a_killed_program_loses_nothing_that_was_acknowledged() -> None:
    """In a process of its own, which forks."""
    command = [sys.executable, "-m", "tests.faults.kills", "--acts", "8", "--every", "40"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.count(" 0 wrong") == 5
