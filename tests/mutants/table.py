"""Which tests are asked about which file: near ones first, far ones about what those left."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parent.parent.parent
CORE = "pantry_tui/core"


class Asked(NamedTuple):
    """`near` speak of the room itself and are quick; `far` come by it on their way."""

    near: tuple[str, ...]
    far: tuple[str, ...]


#: The second judge, held against the program.
_JUDGING = (
    "tests/judging/test_never_more_lenient.py::test_never_more_lenient",
    "tests/judging/test_order.py::test_the_program_keeps_the_laws",
)

#: What a path begins with -> its tests. The first that fits counts.
TESTS: dict[str, Asked] = {
    "pantry_tui/core/keeping/": Asked(
        ("tests/core/keeping",),
        (
            *_JUDGING,
            "tests/published/test_keeping.py",
            "tests/services/stock",
            "tests/services/lookup",
            "tests/services/batchwork",
        ),
    ),
    "pantry_tui/core/log/": Asked(
        ("tests/core/log",),
        ("tests/store", "tests/services/stock", "tests/services/books", "tests/services/batchwork"),
    ),
    "pantry_tui/core/plan/": Asked(
        ("tests/core/plan",),
        (
            "tests/published/test_planning.py",
            "tests/published/test_yields.py",
            "tests/services/plan",
        ),
    ),
    "pantry_tui/core/safety/": Asked(
        (
            "tests/core/safety",
            "tests/core/keeping/test_outcome.py",
            "tests/core/keeping/test_working.py",
            "tests/services/batchwork/test_metric_jars.py",
            "tests/published/test_outage.py",
            "tests/published/test_process.py",
            "tests/published/test_said.py",
            "tests/published/test_signs.py",
        ),
        (
            "tests/reference",
            "tests/services/stock",
            "tests/services/lookup",
            "tests/services/batchwork",
        ),
    ),
    "pantry_tui/core/": Asked(
        ("tests/core",),
        ("tests/published/test_keeping.py", "tests/reference", "tests/store", "tests/services"),
    ),
}


def room_of(file: str) -> str:
    """What the path of `file` (from the root) begins with. Raises KeyError where no tests are
    named for it."""
    for start in TESTS:
        if file.startswith(start):
            return start
    raise KeyError(file)


def core_files() -> list[str]:
    """Every file of the core that has something in it, as paths from the root."""
    found = sorted((ROOT / CORE).rglob("*.py"))
    return [path.relative_to(ROOT).as_posix() for path in found if path.stat().st_size]
