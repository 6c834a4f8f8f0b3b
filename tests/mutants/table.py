"""Which tests are asked about which file, those that are nearest first."""

from __future__ import annotations

from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
CORE = "pantry_tui/core"

#: What a path begins with -> its tests. The first that fits counts.
TESTS: dict[str, tuple[str, ...]] = {
    "pantry_tui/core/keeping/": (
        "tests/core/keeping",
        "tests/published/test_keeping.py",
        "tests/services/stock",
        "tests/services/lookup",
        "tests/services/batchwork",
    ),
    "pantry_tui/core/log/": (
        "tests/core/log",
        "tests/store",
        "tests/services/stock",
        "tests/services/books",
        "tests/services/batchwork",
    ),
    "pantry_tui/core/plan/": (
        "tests/core/plan",
        "tests/published/test_planning.py",
        "tests/published/test_yields.py",
        "tests/services/plan",
    ),
    "pantry_tui/core/safety/": (
        "tests/core/safety",
        "tests/published/test_outage.py",
        "tests/published/test_process.py",
        "tests/published/test_signs.py",
        "tests/reference",
        "tests/services/stock",
        "tests/services/lookup",
        "tests/services/batchwork",
    ),
    "pantry_tui/core/": ("tests/core", "tests/reference", "tests/store", "tests/services"),
}


def named_for(file: str) -> tuple[str, ...]:
    """The tests of `file` (its path from the root). Raises KeyError where none are named."""
    for start, tests in TESTS.items():
        if file.startswith(start):
            return tests
    raise KeyError(file)


def core_files() -> list[str]:
    """Every file of the core that has something in it, as paths from the root."""
    found = sorted((ROOT / CORE).rglob("*.py"))
    return [path.relative_to(ROOT).as_posix() for path in found if path.stat().st_size]
