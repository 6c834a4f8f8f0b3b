"""kill -9 while acts are booked: what was acknowledged stands, and the store is whole.

    python -m tests.faults.kills                 1,000 kills at acts, as many at keys of the app,
                                                 every statement of a migration and of `init`
    python -m tests.faults.kills --acts 100 --every 20

A child does one act after the other, some as commands, some in a store that stays open, or it lives
in the app and presses keys. It says each through a pipe when it was told that it is done, and is
killed a moment after a journal appears: while it commits. Needs `fork`.
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import io
import os
import random
import signal
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from pantry_tui.app.main import PantryApp
from pantry_tui.cli import main as command
from pantry_tui.errors import PantryError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, places, undo, view
from pantry_tui.store import copies, store
from pantry_tui.store.log import last_id

#: Lives on a store until it is killed: its path, a seed, where it says what is done.
Live = Callable[[Path, int, int], None]

TODAY = date(2026, 11, 25)
FIXTURES = Path(__file__).parents[1] / "fixtures"
#: Seconds after which a child that was not killed is.
PATIENCE_S = 20.0


@dataclass(frozen=True, slots=True)
class Found:
    """How many times something was killed, how many acts were acknowledged, and what is wrong."""

    tried: int
    acknowledged: int
    wrong: tuple[str, ...]


# -- acts ------------------------------------------------------------------------------------------


def furnish(path: Path) -> None:
    create(path)
    with open_pantry(path, TODAY) as p:
        places.add(p, "larder", "pantry")
        places.add(p, "fridge", "fridge")
        line = "900 pint jars peaches, boiling-water canned, larder, minutes=30"
        putup.put_up(p, putup.read(p, line))
        view.due(p)


def _command(path: Path, *words: str) -> None:
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        code = command(["--store", str(path), "--today", TODAY.isoformat(), *words])
    if code:
        raise RuntimeError(f"{words} ended with {code}")


def _acts(path: Path, p: Pantry) -> Sequence[Callable[[], object]]:
    line = "2 pint jars plums, boiling-water canned, larder, minutes=20"
    return (
        lambda: _command(path, "use", "2A"),
        lambda: _command(path, "putup", line),
        lambda: _command(path, "reading", "fridge", "38F"),
        lambda: act.use(p, "2A"),
        lambda: act.open_(p, "2A"),
        lambda: undo.undo(p),
        lambda: putup.put_up(p, putup.read(p, line)),
        lambda: p.store.keep_draft("count", {"place": "x"}),
    )


def _live(path: Path, seed: int, pipe: int) -> None:
    """One act after the other; after each the newest id is said."""
    chance = random.Random(seed)
    with open_pantry(path, TODAY) as p:
        acts = _acts(path, p)
        while True:
            with contextlib.suppress(PantryError):
                chance.choice(acts)()
            os.write(pipe, f"{last_id(p.store.db)}\n".encode())


#: What is pressed in the app: each books or takes back, or opens and leaves what only asks.
KEYS = (
    ("u",),
    ("o",),
    ("down", "u"),
    ("z",),
    ("ctrl+y",),
    ("d", "1"),
    ("d", "escape"),
    ("m", "1"),
    ("escape", "home"),
)


def _live_in_app(path: Path, seed: int, pipe: int) -> None:
    """The same in the app: after each of its keys the newest id that the app's own store knows."""
    chance = random.Random(seed)

    async def evening() -> None:
        with open_pantry(path, TODAY) as p:
            async with PantryApp(p).run_test(size=(80, 24)) as pilot:
                while True:
                    await pilot.press(*chance.choice(KEYS))
                    await pilot.pause()
                    os.write(pipe, f"{last_id(p.store.db)}\n".encode())

    asyncio.run(evening())


def at_commits(folder: Path, many: int, live: Live = _live, seed: int = 1) -> Found:
    """Kills so many times, on one store that goes on growing."""
    path = folder / "pantry.db"
    path.unlink(missing_ok=True)
    furnish(path)
    chance, acknowledged = random.Random(seed), 0
    wrong: list[str] = []
    for number in range(many):
        said = _killed(path, chance, number, live)
        acknowledged += len(set(said))
        with contextlib.closing(sqlite3.connect(path)) as db:
            db.execute("SELECT 1 FROM log LIMIT 1").fetchone()  # a journal that is left is played
        hurt = copies.wrong_with(path)
        if hurt:
            wrong.append(f"kill {number}: {hurt}")
        elif said and _newest(path) < said[-1]:
            wrong.append(f"kill {number}: an act that was acknowledged is lost ({said[-1]})")
        elif number % 50 == 49 and not verify(path, TODAY).ok:
            wrong.append(f"kill {number}: {verify(path, TODAY).hurt[0].what}")
    if not verify(path, TODAY).ok:
        wrong.append(f"at the end: {verify(path, TODAY).hurt[0].what}")
    return Found(many, acknowledged, tuple(wrong))


def _newest(path: Path) -> str:
    with contextlib.closing(sqlite3.connect(path)) as db:
        return last_id(db)


def _killed(path: Path, chance: random.Random, seed: int, live: Live) -> list[str]:
    """The ids that a child acknowledged before it was killed at a commit."""
    ours, theirs = os.pipe()
    child = os.fork()
    if not child:
        os.close(ours)
        with contextlib.suppress(BaseException):
            live(path, seed, theirs)
        os._exit(1)
    os.close(theirs)
    journal = path.with_name(f"{path.name}-journal")
    until, commits = time.monotonic() + PATIENCE_S, chance.randrange(4)
    while time.monotonic() < until:
        if journal.exists():
            if not commits:
                break
            commits -= 1
            while journal.exists() and time.monotonic() < until:
                pass
    time.sleep(chance.choice((0, 0, 0.0005, 0.002, 0.01)) * chance.random())
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    with open(ours, encoding="ascii") as pipe:
        return pipe.read().splitlines()


# -- every statement -------------------------------------------------------------------------------


def at_statements(do: Callable[[], object], check: Callable[[int], str], every: int) -> Found:
    """Does it in a child that is killed before its first statement to the store, then the second,
    and so on (each `every`-th) until one lives to the end; `check` says what is wrong then."""
    tried, number = 0, 0
    wrong: list[str] = []
    while True:
        child = os.fork()
        if not child:
            with contextlib.suppress(BaseException):
                _mortal(number)
                do()
            os._exit(0)
        _, status = os.waitpid(child, 0)
        if not os.WIFSIGNALED(status):
            return Found(tried, 0, tuple(wrong))
        tried += 1
        hurt = check(number)
        if hurt:
            wrong.append(f"killed before statement {number}: {hurt}")
        number += every


def _mortal(number: int) -> None:
    """From now on the statement of that number, over all connections, is the last."""
    left = [number]
    connect = store.connect

    def die(_: str) -> None:
        left[0] -= 1
        if left[0] < 0:
            os.kill(os.getpid(), signal.SIGKILL)

    def watched(path: Path) -> sqlite3.Connection:
        db = connect(path)
        db.set_trace_callback(die)
        return db

    store.connect = watched


def at_migration(folder: Path, fixture: str, every: int) -> Found:
    """An older store is brought over, and is either as it was or as it should be."""
    path = folder / "old.db"
    path.unlink(missing_ok=True)
    with contextlib.closing(sqlite3.connect(path)) as db:
        db.executescript((FIXTURES / f"{fixture}.sql").read_text(encoding="utf-8"))
    old = path.read_bytes()
    with open_pantry(path, TODAY) as p:
        right = repr((view.due(p), [event.id for event in p.events][-20:]))
    _clean(folder, path, old)

    def check(_: int) -> str:
        try:
            with open_pantry(path, TODAY) as p:
                found = repr((view.due(p), [event.id for event in p.events][-20:]))
            hurt = copies.wrong_with(path)
        except PantryError as error:
            return error.message
        finally:
            left = list(folder.glob("old-before-*.db"))
            _clean(folder, path, old)
        if not left:
            return "no copy was made before"
        return hurt or ("" if _alike(found, right) else "it is not as it should be")

    return at_statements(lambda: open_pantry(path, TODAY).close(), check, every)


def _alike(found: str, right: str) -> bool:
    """Ids that bringing over gives are new each time; all else is the same."""
    return found[: found.rindex("['")] == right[: right.rindex("['")]


def _clean(folder: Path, path: Path, content: bytes) -> None:
    for one in folder.glob("*old*"):
        if one != path:
            one.unlink()
    path.write_bytes(content)


def at_init(folder: Path, every: int) -> Found:
    """A new store is made: there or not, and `init` can be run again."""
    path = folder / "new.db"

    def check(_: int) -> str:
        try:
            if path.exists():
                with open_pantry(path, TODAY) as p:
                    if p.altitude_ft != 900:
                        return "half a store is there"
            else:
                create(path, altitude_ft=900)
            hurt = copies.wrong_with(path)
            rest = [one.name for one in folder.iterdir() if one != path and "new" in one.name]
            return hurt or (f"{rest} is left" if rest else "")
        except PantryError as error:
            return error.message
        finally:
            for one in folder.glob("*new*"):
                one.unlink()

    return at_statements(lambda: create(path, altitude_ft=900), check, every)


def trials(folder: Path, acts: int, every: int) -> dict[str, Found]:
    return {
        "acts": at_commits(folder, acts),
        "keys of the app": at_commits(folder, acts, _live_in_app),
        "migration from 3": at_migration(folder, "store_3", every),
        "migration from 0.1": at_migration(folder, "old_wishes", every * 5),
        "init": at_init(folder, every),
    }


def main() -> int:
    parser = argparse.ArgumentParser(description="Killed while it writes.")
    parser.add_argument("--acts", type=int, default=1000)
    parser.add_argument("--every", type=int, default=1, help="each so-many-th statement")
    args = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pantry-tui-kills-") as name:
        found = trials(Path(name), args.acts, args.every)
    for what, one in found.items():
        more = f", {one.acknowledged:,} acts acknowledged" if one.acknowledged else ""
        print(f"{what}: {one.tried:,} kills{more}, {len(one.wrong)} wrong")
        print("\n".join(f"  {line}" for line in one.wrong[:20]))
    return 1 if any(one.wrong for one in found.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
