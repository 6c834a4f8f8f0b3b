"""Bits that turn over in a store, pages that are lost or change places: never without a word.

    python -m tests.faults.flips                 1,000 bits, 200 zeroed and 200 swapped pages
    python -m tests.faults.flips --bits 100 --pages 20 --seed 7

Each time one thing is hurt in a copy of a furnished store and a person asks all that a person asks,
each question as if it were the first. An answer must be the right one or a refusal. What opens and
answers rightly may be hurt in a place that nobody asked about; `verify` is asked last.
"""

from __future__ import annotations

import argparse
import itertools
import random
import re
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from pantry_tui.errors import PantryError
from pantry_tui.services.books.logbook import entries
from pantry_tui.services.demo import build_demo
from pantry_tui.services.household import facts
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, lines, one_batch, view
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.store import damage

TODAY = date(2026, 11, 25)
PAGE = 4096

Ask = Callable[[Pantry], object]


def _window(p: Pantry) -> object:
    """As the app shows it: the first rows, the heads, how many in all."""
    source = lines.lines(p)
    return source.total, source.heads(), source.rows(0, 40)


def _batches(p: Pantry) -> object:
    p.stock.load_all()
    return sorted(map(repr, p.stock.loaded.values())), _places(p)


def _places(p: Pantry) -> object:
    return [replace(one, facts=tuple(one.facts)) for _, one in sorted(p.places.items())]


def _next(p: Pantry) -> object:
    """The day to come, which rests on the ladders."""
    p.today = date(2027, 2, 25)
    return view.due(p)


#: What a person asks, each as if it were the first thing.
QUESTIONS: dict[str, Ask] = {
    "due": view.due,
    "list": _window,
    "due within": lambda p: view.due(p, 30),
    "due in february": _next,
    "shelves": view.shelves,
    "counts": lines.shelves,
    "one place": lambda p: view.due(p, place="larder"),
    "find": lambda p: view.find(p, "apples"),
    "batch": lambda p: p.load(batch_named(p, "2A").id),
    "batches": _batches,
    "log": entries,
    "household": lambda p: (facts(p), p.home, _places(p)),
    "show": lambda p: one_batch.show(p, "2A"),
    "use": lambda p: (_used(p), _left(p)),
}


def _used(p: Pantry) -> object:
    done = act.use(p, "2A")
    return done.message, done.warnings


def _left(p: Pantry) -> object:
    return [row for row in view.due(p) if row.code == "2A"]


@dataclass(frozen=True, slots=True)
class Trial:
    """What was hurt, and which questions were answered wrongly; whether anything was said, and
    whether `verify` sees it."""

    what: str
    wrong: tuple[str, ...]
    said: bool
    verified: bool


class Bench:
    """A furnished store and what it answers while it is whole."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / "pantry.db"
        build_demo(self.path, TODAY)
        with open_pantry(self.path, TODAY) as p:
            view.due(p)
        self.whole = self._content = self.path.read_bytes()
        self.right = {name: self._ask(ask) for name, ask in QUESTIONS.items()}

    def _ask(self, ask: Ask) -> str:
        self.path.write_bytes(self._content)
        damage.forget(self.path)
        with open_pantry(self.path, TODAY) as p:
            # When it was judged is no part of an answer, but of what a screen saw.
            return re.sub("stamp='[0-9a-f]+'", "", repr(ask(p)))

    def try_(self, what: str, content: bytes) -> Trial:
        self._content = content
        wrong, said = [], False
        for name, ask in QUESTIONS.items():
            try:
                if self._ask(ask) != self.right[name]:
                    wrong.append(name)
            except PantryError:
                said = True
            except Exception as error:  # a traceback is a fault whatever else is true
                wrong.append(f"{name} ({type(error).__name__}: {error})")
        self.path.write_bytes(content)
        damage.forget(self.path)
        try:
            seen = not verify(self.path, TODAY).ok
        except PantryError:
            seen = True
        except Exception as error:
            seen = True
            wrong.append(f"verify ({type(error).__name__}: {error})")
        return Trial(what, tuple(wrong), said, seen)


def bits(content: bytes, chance: random.Random, many: int) -> Iterator[tuple[str, bytes]]:
    """One bit turned over, anywhere in the file."""
    for _ in range(many):
        at = chance.randrange(len(content) * 8)
        hurt = bytearray(content)
        hurt[at // 8] ^= 1 << at % 8
        yield f"bit {at}, page {at // 8 // PAGE + 1}", bytes(hurt)


def zeroed(content: bytes, chance: random.Random, many: int) -> Iterator[tuple[str, bytes]]:
    """One to four pages of nothing."""
    pages = len(content) // PAGE
    for _ in range(many):
        hurt = bytearray(content)
        which = chance.sample(range(pages), chance.randint(1, 4))
        for page in which:
            hurt[page * PAGE : (page + 1) * PAGE] = bytes(PAGE)
        yield f"pages {[page + 1 for page in which]} zeroed", bytes(hurt)


def swapped(content: bytes, chance: random.Random, many: int) -> Iterator[tuple[str, bytes]]:
    """Two pages that change places."""
    pages = [content[at : at + PAGE] for at in range(0, len(content), PAGE)]
    for _ in range(many):
        one, other = chance.sample(range(len(pages)), 2)
        hurt = list(pages)
        hurt[one], hurt[other] = hurt[other], hurt[one]
        yield f"pages {one + 1} and {other + 1} swapped", b"".join(hurt)


def alike(content: bytes, chance: random.Random, many: int) -> Iterator[tuple[str, bytes]]:
    """Two pages of one kind that change places: each still reads as what it should be."""
    pages = [content[at : at + PAGE] for at in range(0, len(content), PAGE)]
    kinds: dict[int, list[int]] = {}
    for number, page in enumerate(pages[1:], 1):
        kinds.setdefault(page[0], []).append(number)
    pairs = [pair for some in kinds.values() for pair in itertools.combinations(some, 2)]
    for one, other in chance.sample(pairs, many):
        hurt = list(pages)
        hurt[one], hurt[other] = hurt[other], hurt[one]
        yield f"pages {one + 1} and {other + 1}, alike", b"".join(hurt)


def trials(folder: Path, many_bits: int, many_pages: int, seed: int) -> list[Trial]:
    chance = random.Random(seed)
    bench = Bench(folder)
    hurt = [
        *bits(bench.whole, chance, many_bits),
        *zeroed(bench.whole, chance, many_pages),
        *swapped(bench.whole, chance, many_pages),
        *alike(bench.whole, chance, many_pages),
    ]
    return [bench.try_(what, content) for what, content in hurt]


def summary(found: Sequence[Trial]) -> dict[str, int]:
    """How many trials ended how."""
    return dict(
        Counter(
            "answered wrongly"
            if one.wrong
            else "refused"
            if one.said
            else "found by verify"
            if one.verified
            else "hurt nothing"
            for one in found
        )
    )


def main() -> int:
    parser = argparse.ArgumentParser(description="Bits and pages that go wrong.")
    parser.add_argument("--bits", type=int, default=1000)
    parser.add_argument("--pages", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    args = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pantry-tui-flips-") as name:
        found = trials(Path(name), args.bits, args.pages, args.seed)
    for kind in ("bit", "zeroed", "swapped", "alike"):
        mine = [one for one in found if kind in one.what.split()]
        print(f"{kind}: {len(mine)} tried, {summary(mine)}")
    wrong = [one for one in found if one.wrong]
    for one in wrong:
        print(f"{one.what}: {', '.join(one.wrong)}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
