"""`python -m tests.long [NAME ...]`: see the package."""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Sequence
from importlib import import_module

from tests.long import RUNS, Outcome, Run


def main() -> int:
    """0 when nothing failed, otherwise 1."""
    it = argparse.ArgumentParser(prog="python -m tests.long", description=__doc__)
    it.add_argument("names", nargs="*", metavar="NAME", help=f"of {', '.join(RUNS)} (default: all)")
    it.add_argument("--scale", type=float, default=1.0, help="1 is the full size")
    args = it.parse_args()
    unknown = [name for name in args.names if name not in RUNS]
    if unknown:
        it.error(f"there is no run {unknown[0]!r}: there are {', '.join(RUNS)}")
    lines: list[tuple[Outcome, float]] = []
    for name in args.names or RUNS:
        print(f"== {name}", flush=True)
        started = time.monotonic()
        lines.append((_made(name, args.scale), time.monotonic() - started))
    print("\n" + table(lines))
    return 1 if any(outcome.failed for outcome, _ in lines) else 0


def _made(name: str, scale: float) -> Outcome:
    """A run that breaks down has failed, and the others are still made."""
    run: Run = import_module(RUNS[name]).run
    try:
        return Outcome(*run(scale))
    except Exception as error:
        return Outcome(name, 0, 1, f"broke down: {type(error).__name__}: {error}")


def table(lines: Sequence[tuple[Outcome, float]]) -> str:
    """One line a run: name, tried, failed, minutes, note."""
    rows = [("run", "tried", "failed", "minutes", "")]
    rows += [
        (one.name, f"{one.tried:,}", f"{one.failed:,}", f"{seconds / 60:.1f}", one.note)
        for one, seconds in lines
    ]
    widths = [max(len(row[n]) for row in rows) for n in range(4)]
    return "\n".join(
        "  ".join(
            (row[0].ljust(widths[0]), *(row[n].rjust(widths[n]) for n in (1, 2, 3)), row[4])
        ).rstrip()
        for row in rows
    )


if __name__ == "__main__":
    sys.exit(main())
