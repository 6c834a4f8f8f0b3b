"""20,000 random keys in the app: it never falls over, nothing is hurt, and all that was booked can
be taken back."""

from __future__ import annotations

import asyncio
import random
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from pantry_tui.app.main import PantryApp
from pantry_tui.core.log.events import Did
from pantry_tui.errors import PantryError
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import undo, view
from tests.long import Outcome

KEYS = 20_000
TODAY = date(2026, 11, 25)
SIZES = ((80, 24), (120, 40), (40, 20))

_TAKING_BACK = frozenset({Did.UNDO, Did.REDO})

#: What a hand may press; quitting ends a run, and writing files is no part of it.
_LETTERS = "abcdefghijklmnoprstuvwxyzADLOSTWY0123456789"
_NAMED = (
    "enter", "escape", "up", "down", "left", "right", "pageup", "pagedown", "home", "end", "tab",
    "space", "backspace", "plus", "minus", "comma", "full_stop", "slash", "colon", "semicolon",
    "equals_sign", "question_mark", "ctrl+z", "ctrl+y", "ctrl+u", "f1", "f2", "f3", "f4", "f5",
    "f6", "f7", "f8", "f9", "f10", "f11",
)  # fmt: skip


def run(scale: float) -> Outcome:
    """A fifth of the keys for each seed; a failure names the seed."""
    keys, seeds, failed = max(100, round(KEYS * scale)), 5, 0
    for seed in range(seeds):
        wrong = hold(seed, keys // seeds)
        failed += bool(wrong)
        if wrong:
            print(f"seed {seed}: {wrong}", flush=True)
    return Outcome("keys", keys, failed, "keys, at three sizes of the screen")


def hold(seed: int, keys: int) -> str:
    """What went wrong with so many keys of that seed; "" for nothing."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "demo.db"
        build_demo(path, TODAY)
        with open_pantry(path, TODAY) as before:
            known = {event.id for event in before.events if before.stands(event.id)}
            stock = _stock(path)
        asyncio.run(_press(path, seed, keys))
        if not verify(path, TODAY).ok:
            return "verify finds something hurt"
        with open_pantry(path, TODAY) as p:
            for _ in range(keys * 2):
                newest = undo.newest(p)
                if newest is None or newest.id in known:
                    break
                try:
                    undo.undo(p)
                except PantryError as error:
                    return f"not taken back: {error.message}"
            standing = {event.id: event.did for event in p.events if p.stands(event.id)}
            left = {did for id_, did in standing.items() if id_ not in known} - _TAKING_BACK
            if left:
                return f"still stands: {', '.join(sorted(left))}"
        # A digit may have answered the question whether something older is to be taken back.
        older = known - standing.keys()
        if older or _stock(path) == stock:
            return ""
        return "the stock is another after all was taken back"


def _stock(path: Path) -> list[tuple[str, str, str, str]]:
    with open_pantry(path, TODAY) as p:
        return sorted(
            (name, row.place, row.state.value, row.amount)
            for row in view.everything(p)
            for name in row.container_ids
        )


async def _press(path: Path, seed: int, keys: int) -> None:
    draw = random.Random(seed)
    with open_pantry(path, TODAY) as p:
        async with PantryApp(p).run_test(size=SIZES[seed % len(SIZES)]) as pilot:
            for _ in range(keys):
                named = draw.random() < 0.4
                await pilot.press(draw.choice(_NAMED) if named else draw.choice(_LETTERS))
