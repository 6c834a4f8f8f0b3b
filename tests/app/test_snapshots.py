"""Every screen as text at two sizes, plus empty: a change of a screen is seen in review.

`PANTRY_SNAPSHOTS=write pytest tests/app/test_snapshots.py` writes them anew; look at the
difference before you keep it.
"""

from __future__ import annotations

import os
import re
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.services.clock import Clock
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import create, open_pantry

TODAY = date(2027, 1, 15)
FOLDER = Path(__file__).parent / "snapshots"
SCREENS: dict[str, tuple[str, ...]] = {
    "due": (),
    "shelves": ("S",),
    "week": ("W",),
    "putup": ("p",),
    "log": ("l",),
    "outlook": ("y",),
    "batch": ("enter",),
    "count": ("c", "1"),
    "months": ("y", "m"),
    "shelves-drawn": ("S", "v"),
    "week-grid": ("W", "v"),
    "year-ahead": ("y", "v"),
    "in-progress": ("j",),
    "sign": ("s",),
    "help": ("question_mark",),
}


@pytest.fixture(scope="module")
def demo_file(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("demo") / "demo.db"
    build_demo(path, TODAY)
    return path.read_bytes()


async def picture(path: Path, keys: tuple[str, ...], size: tuple[int, int]) -> str:
    with open_pantry(path, TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=size) as pilot:
            await pilot.pause()
            await pilot.press(*keys)
            await pilot.pause()
            strips = pilot.app.screen._compositor.render_strips()
            lines = ["".join(segment.text for segment in strip).rstrip() for strip in strips]
    # An id of the log is another one in every store.
    return re.sub(r"(?<=Its id: )[0-9a-f]{6}", "......", "\n".join(lines)) + "\n"


def check(name: str, text: str) -> None:
    kept = FOLDER / f"{name}.txt"
    if os.environ.get("PANTRY_SNAPSHOTS") == "write":
        FOLDER.mkdir(exist_ok=True)
        kept.write_text(text, encoding="utf-8")
    assert text == kept.read_text(encoding="utf-8")


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
@pytest.mark.parametrize("screen", list(SCREENS))
async def test_a_screen_looks_as_it_did(
    tmp_path: Path, demo_file: bytes, screen: str, size: tuple[int, int]
) -> None:
    path = tmp_path / "demo.db"
    path.write_bytes(demo_file)
    check(f"{screen}-{size[0]}x{size[1]}", await picture(path, SCREENS[screen], size))


@pytest.mark.parametrize("screen", ["due", "shelves", "week", "log"])
async def test_an_empty_screen_says_what_would_be_here(tmp_path: Path, screen: str) -> None:
    create(tmp_path / "empty.db", clock=Clock(TODAY))
    keys = ("escape", *SCREENS[screen])
    check(f"empty-{screen}-80x24", await picture(tmp_path / "empty.db", keys, (80, 24)))
