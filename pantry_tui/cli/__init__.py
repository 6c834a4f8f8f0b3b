"""The command line. `main` is the console script; everything else is loaded when it runs."""

from __future__ import annotations

from collections.abc import Sequence


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns the exit code: 0 done, 1 refused, 2 bad input."""
    from pantry_tui.cli.run import main as run

    return run(argv)
