"""Every law that is held against random examples, over many and new ones."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.long import Outcome

ROOT = Path(__file__).resolve().parent.parent.parent
#: So many times the everyday number of examples, at full size.
TIMES = 20
_COUNTED = "PANTRY_COUNTED"
# As the pinned hypothesis words its statistics; were it worded anew, none would be counted, which
# counts as a failure.
_EXAMPLES = re.compile(r"(\d+) passing, (\d+) failing")


def run(scale: float) -> Outcome:
    """`scale` of TIMES as many examples as every day, new at each run."""
    times = max(1.01, TIMES * scale)
    with tempfile.TemporaryDirectory(prefix="pantry-long-") as folder:
        counted = Path(folder) / "counted.json"
        done = subprocess.run(
            [
                *(sys.executable, "-m", "pytest", "-n", "0", "-m", "hypothesis"),
                *("-p", "tests.long.histories", "-p", "no:cacheprovider", "tests"),
            ],
            cwd=ROOT,
            env={**os.environ, "PANTRY_EXAMPLES": str(times), _COUNTED: str(counted)},
            check=False,
        )
        if not counted.exists():
            return Outcome("histories", 0, 1, f"pytest ended with {done.returncode}")
        examples, laws, failed = json.loads(counted.read_text(encoding="utf-8"))
    if not examples:
        return Outcome("histories", 0, 1, "no examples were counted")
    return Outcome("histories", examples, failed, f"examples of {laws} laws; {failed} laws broken")


class _Counter:
    """A pytest plugin: how many examples passed by, and how many laws were broken."""

    def __init__(self, path: Path) -> None:
        self.path, self.examples, self.laws, self.failed = path, 0, 0, 0

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_makereport(
        self, item: pytest.Item, call: pytest.CallInfo[None]
    ) -> Iterator[None]:
        result = yield
        if call.when == "call":
            said = getattr(item, "hypothesis_statistics", "")
            self.examples += sum(int(n) for found in _EXAMPLES.findall(said) for n in found)
            self.laws += 1
        self.failed += call.excinfo is not None
        return result

    def pytest_sessionfinish(self) -> None:
        text = json.dumps([self.examples, self.laws, self.failed])
        self.path.write_text(text, encoding="utf-8")


def pytest_configure(config: pytest.Config) -> None:
    if _COUNTED in os.environ:
        config.pluginmanager.register(_Counter(Path(os.environ[_COUNTED])))
