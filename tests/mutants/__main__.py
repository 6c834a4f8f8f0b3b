"""`python -m tests.mutants [FILE ...]`: see the package."""

from __future__ import annotations

import argparse
import os
import sys

# Before hypothesis is told how many: whether a fault is noticed, not which example is least.
os.environ.setdefault("PANTRY_EXAMPLES", "0.2")
os.environ.setdefault("PANTRY_JUDGED", "40")

from tests.mutants.run import total, try_files
from tests.mutants.table import ROOT, core_files
from tests.mutants.trial import CannotTry


def main() -> int:
    """0 when enough faults are noticed, 1 when too few are, 2 when none could be tried."""
    it = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    it.add_argument("files", nargs="*", metavar="FILE", help="files of the core (default: all)")
    it.add_argument("--jobs", type=int, default=os.cpu_count() or 1, help="how many at once")
    it.add_argument("--share", type=float, default=1.0, help="try this part of the faults only")
    it.add_argument("--at-least", type=float, default=0.0, help="percentage that must be noticed")
    it.add_argument("--near", action="store_true", help="ask the near, quick tests alone")
    args = it.parse_args()
    files = args.files or core_files()
    try:
        scores = try_files(files, jobs=args.jobs, share=args.share, near=args.near)
    except CannotTry as why:
        print(why, file=sys.stderr)
        return 2
    return 0 if total(scores.values()).percent >= args.at_least else 1


if __name__ == "__main__":
    os.chdir(ROOT)
    sys.exit(main())
