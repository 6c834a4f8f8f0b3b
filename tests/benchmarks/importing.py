"""What an import of a long list costs: time, and the most memory that the process ever held.

    python -m tests.benchmarks.importing [ROWS] [--book]

looks ROWS rows through (100,000 unless said), as `import FILE --dry-run` does, and prints both;
with --book they are put up as well, which takes many times as long. For bounded memory compare two
lengths: the list is read a row at a time and no row is kept.
"""

from __future__ import annotations

import argparse
import resource
from datetime import date, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 25)
FOODS = (
    "plum jam;7;jars;500 ml;larder", "strawberry jam;9;jars;250 ml;larder",
    "peas;4;bags;500 g;freezer", "ground beef;2;packs;500 g;freezer",
)  # fmt: skip


def written(path: Path, rows: int) -> Path:
    """A list of so many rows, each with a day of its own year."""
    with path.open("w", encoding="utf-8") as handle:
        handle.write("Item;Qty;Container;Size;Where;Date\n")
        for n in range(rows):
            day = TODAY - timedelta(days=n % 700)
            handle.write(f"{FOODS[n % len(FOODS)]};{day.isoformat()}\n")
    return path


def held() -> float:
    """The most memory that this process ever held, in MiB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def measure(rows: int, *, book: bool) -> tuple[float, float, float, int]:
    """Seconds, MiB before and at most, and how many rows could be booked."""
    with TemporaryDirectory() as folder:
        create(Path(folder) / "store.db", units="metric")
        with open_pantry(Path(folder) / "store.db", TODAY) as p:
            places.add(p, "larder", "pantry")
            places.add(p, "freezer", "freezer")
            path = written(Path(folder) / "list.csv", rows)
            before, began = held(), perf_counter()
            found = import_list(p, path, dry_run=not book)
            return perf_counter() - began, before, held(), found.batches


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("rows", type=int, nargs="?", default=100_000)
    parser.add_argument("--book", action="store_true")
    args = parser.parse_args()
    seconds, before, most, batches = measure(args.rows, book=args.book)
    print(f"{args.rows:,} rows, {batches:,} of them sound: {seconds:.1f} s")
    print(f"{before:.0f} MiB before, {most:.0f} MiB at most")


if __name__ == "__main__":
    main()
