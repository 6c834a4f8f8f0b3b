"""python -m tests.judging [N] [FIRST]: N random histories against the program, faults shrunk.

Without a connected program the judge is run against itself, which shows the cost of a run.
"""

from __future__ import annotations

import sys
from collections import Counter

from tests.judging.adapter import Mirror, play, program
from tests.judging.bound import Fault, faults, shrunk
from tests.judging.histories import random_history

#: Shown in full: the first of each reason, so that one fault does not hide the others.
MOST_SHOWN = 25


def main(argv: list[str]) -> int:
    """0 where the program was never more lenient, else 1."""
    n = int(argv[0]) if argv else 20_000
    first = int(argv[1]) if len(argv) > 1 else 0
    judged = program()
    if judged is None:
        print("no program is connected in tests/judging/adapter.py: judging the judge itself")
        judged = play(Mirror)
    found: list[Fault] = []
    for seed in range(first, first + n):
        found += faults(random_history(seed), judged)
    shown: dict[str, Fault] = {}
    for f in found:
        shown.setdefault(f.bound.reason, f)
    for f in list(shown.values())[:MOST_SHOWN]:
        print(f"{f}\nshrunk to\n{shrunk(f, judged)}\n")
    seeds = sorted({f.history.note for f in found}, key=lambda s: int(s.split()[1]))
    print(f"{n} histories, {len(seeds)} with a fault, {len(found)} containers")
    for why, times in Counter(f.bound.reason for f in found).most_common():
        print(f"{times:6}  {why}")
    if seeds:
        print("seeds:", ", ".join(s.split()[1] for s in seeds[:200]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
