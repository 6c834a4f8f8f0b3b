"""What a key costs in the open app, beside the same in a bare app, in one process.

    python -m tests.benchmarks.keys STORE          u, z and a filter letter, several times
    python -m tests.benchmarks.keys STORE --first  S for the first time, once

prints {what: [seconds of CPU, ...]} as JSON. CPU and not the wall: a pilot waits in steps of 20 ms
for the app to be idle, far longer than a key may take, and nobody sees those waits. All threads of
the process count, from the key until every worker is done and the screen is drawn again.
"""

from __future__ import annotations

import argparse
import asyncio
import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from time import perf_counter, process_time
from typing import Any, ClassVar

from textual.app import App, ComposeResult
from textual.pilot import Pilot
from textual.screen import Screen
from textual.widgets import DataTable

from tests.benchmarks.history import TODAY
from tests.benchmarks.stores import length

#: As many lines as a tall terminal shows.
LINES = 60
SAMPLES = 9
#: After so many seconds, three samples of a slow key must do.
ENOUGH = 60.0
#: Seconds after which a key that changes nothing has failed.
PATIENCE = 120.0


@contextmanager
def our_app(path: Path) -> Iterator[App[None]]:
    """The app on a store. Whoever changes how the app is made changes this, and nothing else."""
    from pantry_tui.app.main import PantryApp
    from pantry_tui.services.pantry import open_pantry

    with open_pantry(path, TODAY) as pantry:
        yield PantryApp(pantry)


class Rows(DataTable[str]):
    """Sixty lines that can be cleared and filled again."""

    food = "runner beans"

    def on_mount(self) -> None:
        self.cursor_type = "row"
        self.add_columns("code", "food", "where", "until")
        self.fill(self.food)

    def fill(self, food: str) -> None:
        self.clear()
        for n in range(LINES):
            self.add_row(f"{n}A", food, "cellar", "30 Jul 2027")


class OtherRows(Rows):
    food = "strawberries"


class Another(Screen[None]):
    """A bare screen of sixty lines."""

    def compose(self) -> ComposeResult:
        yield OtherRows()


class Bare(App[None]):
    """`u` clears and fills its lines, `S` shows a new screen of them."""

    BINDINGS: ClassVar = [("u", "refill", "refill"), ("S", "another", "another")]
    turn = 0

    def compose(self) -> ComposeResult:
        yield Rows()

    def action_refill(self) -> None:
        self.turn += 1
        self.query_one(Rows).fill(f"peas {self.turn}")

    def action_another(self) -> None:
        self.push_screen(Another())


def text(pilot: Pilot[None]) -> str:
    """What stands on the screen."""
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in strip) for strip in strips)


async def settled(pilot: Pilot[None]) -> None:
    """Waits until all keys are done and all workers have ended."""
    await pilot.app.workers.wait_for_complete()
    await pilot.pause()
    while not getattr(pilot.app, "idle", True):
        await pilot.pause()


async def press(pilot: Pilot[None], key: str) -> float:
    """Seconds of CPU from a key until the screen shows another thing. Raises RuntimeError when it
    never does."""
    before, began = text(pilot), perf_counter()
    start = process_time()
    await pilot.press(key)
    await settled(pilot)
    spent = process_time() - start
    while text(pilot) == before:
        if perf_counter() - began > PATIENCE:
            raise RuntimeError(f"{key} showed nothing:\n{text(pilot)}")
        start = process_time()
        await settled(pilot)
        spent += process_time() - start
    return spent


async def bare(samples: int) -> list[float]:
    """Seconds for a bare table of sixty lines to be cleared and filled."""
    async with Bare().run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await press(pilot, "u")
        return [await press(pilot, "u") for _ in range(samples)]


async def ours(path: Path) -> dict[str, list[float]]:
    """Seconds for `u`, for the `z` that takes it back, and for the letter of a filter."""
    found: dict[str, list[float]] = {"u": [], "z": [], "letter": []}
    began = perf_counter()
    with our_app(path) as app:
        async with app.run_test(size=(80, 24)) as pilot:
            await settled(pilot)
            for n in range(SAMPLES + 1):
                booked = length(path)
                turn = {"u": await press(pilot, "u"), "z": await press(pilot, "z")}
                if length(path) < booked + 2:
                    raise RuntimeError(f"u and z booked nothing:\n{text(pilot)}")
                await press(pilot, "slash")
                turn["letter"] = await press(pilot, "b")
                await press(pilot, "escape")
                if n:  # the first one loads what the others find loaded
                    for key, spent in turn.items():
                        found[key].append(spent)
                if n >= 3 and perf_counter() - began > ENOUGH:
                    break
    return found


async def keys(path: Path) -> dict[str, list[float]]:
    """The floor is measured before and after, so that a busy hour strikes both."""
    before = await bare(SAMPLES)
    return {**await ours(path), "floor": before + await bare(SAMPLES)}


async def first(path: Path) -> dict[str, list[float]]:
    """`S` for the first time in this process, and a bare screen that is new too."""
    async with Bare().run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        floor = await press(pilot, "S")
    with our_app(path) as app:
        async with app.run_test(size=(80, 24)) as pilot:
            await settled(pilot)
            return {"floor": [floor], "S": [await press(pilot, "S")]}


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("store", type=Path)
    parser.add_argument("--first", action="store_true")
    args: Any = parser.parse_args()
    print(json.dumps(asyncio.run((first if args.first else keys)(args.store))))


if __name__ == "__main__":
    main()
