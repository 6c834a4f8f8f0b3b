"""The power fails: a journal that is cut off at every page, a disk that is full.

    python -m tests.faults.power

An act is stopped just before its commit, when the changed pages and the journal of the old ones are
both in their files. A journal that is whole brings the store back as it was. One that is cut off
(on a disk that said it had written and had not) brings back a part: that is said, never shown.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from pantry_tui.errors import PantryError, StoreError
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry
from pantry_tui.services.stock import act, places, view
from pantry_tui.store import copies, damage
from tests.faults.flips import QUESTIONS

TODAY = date(2026, 11, 25)
#: A page of the journal: its number, the page, a check sum; before them a sector of heading.
RECORD, HEADING = 4 + 4096 + 4, 512


class Blackout:
    """A store and its journal in the middle of a commit, and what the store answered before."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / "pantry.db"
        self.journal = folder / "pantry.db-journal"
        build_demo(self.path, TODAY)
        with open_pantry(self.path, TODAY) as p:
            view.due(p)
        self.before = self.path.read_bytes()
        names = [name for name in QUESTIONS if name != "use"]
        self.right = {name: {self._asked(name, self.before)} for name in names}
        self._restore(self.before, b"")  # to judge what ran out until february writes, too
        self.after, self.old_pages = self._half_written()
        # Without its journal all of it may have come to the disk: then it is done.
        done = self.path.read_bytes()
        for name in names:
            self.right[name].add(self._asked(name, done))

    def _half_written(self) -> tuple[bytes, bytes]:
        with open_pantry(self.path, TODAY) as p:
            p.store.db.execute("PRAGMA cache_size = 1")  # pages go to the file as they change
            with p.together():
                for _ in range(3):
                    act.use(p, "2A")
                places.add(p, "attic", "room")
                p.settle()
                files = self.path.read_bytes(), self.journal.read_bytes()
        return files

    def _restore(self, content: bytes, journal: bytes) -> None:
        self.path.write_bytes(content)
        damage.forget(self.path)
        if journal:
            self.journal.write_bytes(journal)
        else:
            self.journal.unlink(missing_ok=True)

    def _asked(self, name: str, content: bytes) -> str:
        self._restore(content, b"")
        return self._ask(name)

    def _ask(self, name: str) -> str:
        with open_pantry(self.path, TODAY) as p:
            return repr(QUESTIONS[name](p))

    def after_cut(self, length: int, *, written: bool) -> tuple[str, list[str]]:
        """What became of it: "as before", "said", and which questions were answered wrongly.
        `written`: whether the changed pages had come to the file."""
        wrong, said = [], False
        for name, right in self.right.items():
            self._restore(self.after if written else self.before, self.old_pages[:length])
            try:
                if self._ask(name) not in right:
                    wrong.append(name)
            except PantryError:
                said = True
        return "said" if said else "as before", wrong

    def cuts(self) -> Iterator[int]:
        """The length of the journal at each of its pages, and whole."""
        yield from range(0, len(self.old_pages), RECORD)
        yield HEADING
        yield len(self.old_pages)


def cut_journals(folder: Path, every: int = 1) -> tuple[int, dict[str, int], list[str]]:
    """(tried, how it ended, what is wrong)."""
    light = Blackout(folder)
    ended: dict[str, int] = {}
    wrong: list[str] = []
    cuts = sorted(set(light.cuts()))[::every]
    for length in [*cuts, len(light.old_pages)]:
        for written in (False, True):
            how, questions = light.after_cut(length, written=written)
            ended[how] = ended.get(how, 0) + 1
            whole = length == len(light.old_pages) or not written
            if questions or (whole and how != "as before"):
                what = "pages written" if written else "pages not written"
                wrong.append(f"journal cut at {length}, {what}: {how}, wrong {questions}")
    return 2 * (len(cuts) + 1), ended, wrong


def full_disks(folder: Path) -> tuple[int, list[str]]:
    """The file may grow by so few pages: each act is done or refused, and none by half."""
    path = folder / "full.db"
    build_demo(path, TODAY)
    wrong, tried = [], 0
    for more in range(8):
        with open_pantry(path, TODAY) as p:
            before = len(p.events)
            (pages,) = p.store.db.execute("PRAGMA page_count").fetchone()
            p.store.db.execute(f"PRAGMA max_page_count = {pages + more}")
            done = 0
            for number in range(40):
                tried += 1
                try:
                    places.add(p, f"place {more} {number} {'of a long name ' * 20}", "room")
                    done += 1
                except StoreError as error:
                    if "make room" not in error.message:
                        wrong.append(error.message)
            p.store.db.execute("PRAGMA max_page_count = 1000000000")
            if len(p.events) != before + done or done == 40:
                wrong.append(f"{done} of 40 done, {len(p.events) - before} in the log")
            places.add(p, f"place {more} after", "room")
        hurt = copies.wrong_with(path)
        if hurt:
            wrong.append(hurt)
    return tried, wrong


def main() -> int:
    parser = argparse.ArgumentParser(description="Power that fails, disks that are full.")
    parser.add_argument("--every", type=int, default=1, help="each so-many-th page")
    args = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pantry-tui-power-") as name:
        tried, ended, wrong = cut_journals(Path(name), args.every)
        print(f"journals cut off: {tried}, {ended}, {len(wrong)} wrong")
        full, more = full_disks(Path(name))
        print(f"full disk: {full} acts, {len(more)} wrong")
    print("\n".join([*wrong, *more]))
    return 1 if wrong or more else 0


if __name__ == "__main__":
    sys.exit(main())
