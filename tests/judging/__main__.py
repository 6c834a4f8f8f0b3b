"""python -m tests.judging [N] [FIRST]: N random histories against the program, faults shrunk.

--store N [FIRST]   the same through the store and the command line
--made N [FIRST], --counted, --clocks, --timers   what was made of other containers, what a
                    count finds, what a clock that ran ahead had booked, what a timer says of a
                    process: through the store
--laws N [FIRST]    the laws of order, splitting and adding
--table [METHOD]    the whole table of method, state, climate, warmth and class of food
Without a connected program the judge is run against itself, which shows the cost of a run.
"""

from __future__ import annotations

import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from tests.judging.adapter import Mirror, play, program
from tests.judging.bound import Fault, faults, shrunk
from tests.judging.clocks import random_ahead
from tests.judging.histories import random_count, random_descent, random_history
from tests.judging.laws import never_later, never_longer, order_law, splitting
from tests.judging.stores import ahead_of_the_truth, lenient, store_faults
from tests.judging.table import METHODS, size, unanswered
from tests.judging.timers import timer_faults

#: Shown in full: the first of each reason, so that one fault does not hide the others.
MOST_SHOWN = 25

TOLD: dict[str, Callable[[int, Path], Iterator[str]]] = {
    "--made": lambda seed, path: lenient(random_descent(seed), path),
    "--counted": lambda seed, path: lenient(random_count(seed), path),
    "--clocks": lambda seed, path: ahead_of_the_truth(*random_ahead(seed), path),
    "--timers": timer_faults,
}


def main(argv: list[str]) -> int:
    """0 where the program was never more lenient, else 1."""
    how = argv[0] if argv and argv[0].startswith("--") else ""
    if how == "--table":
        return _table(argv[1:])
    numbers = [int(one) for one in (argv[1:] if how else argv)]
    n, first = ([*numbers, 0] if len(numbers) == 1 else numbers) or (20_000, 0)
    if how == "--store":
        return _stores(range(first, first + n))
    if how in TOLD:
        return _found(range(first, first + n), TOLD[how])
    if how == "--laws":
        return _laws(range(first, first + n))
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


def _stores(seeds: range) -> int:
    return _found(seeds, store_faults)


def _found(seeds: range, faults_of: Callable[[int, Path], Iterator[str]]) -> int:
    found = 0
    with tempfile.TemporaryDirectory(prefix="pantry-judged-") as folder:
        for seed in seeds:
            path = Path(folder) / f"{seed}.db"
            for fault in faults_of(seed, path):
                found += 1
                print(fault, end="\n\n", flush=True)
            path.unlink()
    print(f"{len(seeds)} stores, {found} faults")
    return 1 if found else 0


def _laws(seeds: range) -> int:
    judged, found = program() or play(Mirror), Counter[str]()
    for seed in seeds:
        history = random_history(seed)
        broken = {
            "order": order_law(judged, history, seed),
            "never later": never_later(judged, history),
            "splitting": splitting(judged, history, seed),
            "never longer": never_longer(judged, history, seed),
        }
        for law, said in broken.items():
            if said:
                found[law] += 1
                print(f"{law}, seed {seed}, {said}", end="\n\n", flush=True)
    print(f"{len(seeds)} histories, 4 laws, broken {sum(found.values())} times {dict(found) or ''}")
    return 1 if found else 0


def _table(methods: Sequence[str]) -> int:
    judged, found = program() or play(Mirror), 0
    for method in methods or METHODS:
        wrong = list(unanswered(judged, method))
        found += len(wrong)
        print(f"{method}: {size() // len(METHODS):,} cells, {len(wrong)} wrong", flush=True)
        print("".join(f"  {one}\n" for one in wrong[:10]), end="")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
