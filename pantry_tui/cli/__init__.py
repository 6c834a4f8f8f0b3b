"""The command line. `program` is the console script; everything else is loaded when it runs."""

from __future__ import annotations

import gc
from collections.abc import Sequence

#: A command makes much that it needs to its end and hardly a cycle: looking for those among all
#: that was loaded, again and again, is a twentieth of its time.
_OBJECTS_BEFORE_A_LOOK = 200_000


def program() -> int:
    """One command in a process of its own. Returns the exit code."""
    gc.set_threshold(_OBJECTS_BEFORE_A_LOOK)
    try:
        return main()
    finally:
        gc.freeze()  # nor is all of it looked through once more because the process ends


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns the exit code: 0 done, 1 refused, 2 bad input."""
    from pantry_tui.cli.run import main as run

    return run(argv)
