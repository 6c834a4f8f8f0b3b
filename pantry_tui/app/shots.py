"""Pictures of the main screens from the demo store: `python -m pantry_tui.app.shots screenshots`.

The day is fixed, so that a picture changes only when a screen does.
"""

from __future__ import annotations

import asyncio
import sys
import tempfile
from datetime import date
from pathlib import Path

from pantry_tui.app.main import PantryApp
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry

DAY = date(2027, 1, 15)
LINE = "7 pint jars runner beans, pressure canned, larder, yesterday"
SHOTS: dict[str, tuple[str, ...]] = {
    "due": (),
    "shelves": ("S", *["down"] * 8),
    "week": ("W", "down"),
    "putup": ("p", *[{" ": "space", ",": "comma"}.get(char, char) for char in LINE]),
    "batch": ("enter",),
    "sign": ("s", "1"),
    "count": ("c", "1", "enter", "enter", "3", "down"),
    "months": ("y", "m"),
    "log": ("l",),
    "outlook": ("y", *["down"] * 6),
}


async def shoot(folder: Path, size: tuple[int, int] = (100, 30)) -> None:
    """Every picture, each in a fresh app on the same demo store."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as temp:
        path = Path(temp) / "demo.db"
        build_demo(path, DAY)
        for name, keys in SHOTS.items():
            with open_pantry(path, DAY) as pantry:
                app = PantryApp(pantry)
                async with app.run_test(size=size) as pilot:
                    await pilot.press(*keys)
                    await pilot.pause()
                    svg = app.export_screenshot(title=f"pantry-tui: {name}")
            (folder / f"{name}.svg").write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    asyncio.run(shoot(Path(sys.argv[1] if len(sys.argv) > 1 else "screenshots")))
