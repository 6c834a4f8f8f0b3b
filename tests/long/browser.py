"""The served app in a real browser.

`PANTRY_BROWSER=/path/to/chromium python -m tests.long browser`

`PANTRY_ALBUM=folder` keeps pictures of what stood on the glass.
"""

from __future__ import annotations

import asyncio
import os
import traceback
from pathlib import Path
from tempfile import TemporaryDirectory

from pantry_tui.services.demo import build_demo
from tests.app.web.serving import TODAY, served
from tests.browser.devtools import Browser, browser
from tests.browser.guests import GUESTS, Guest, nothing_leaks, shown
from tests.browser.prints import paper_is_printed
from tests.browser.scenes import SCENES, Scene
from tests.long import Outcome


def run(_scale: float) -> Outcome:
    """Every scene once, whatever the scale: each takes seconds."""
    program = os.environ.get("PANTRY_BROWSER")
    if not program:
        return Outcome("browser", 0, 0, "not played: PANTRY_BROWSER names no browser")
    album = os.environ.get("PANTRY_ALBUM")
    return asyncio.run(_played(program, Path(album) if album else None))


async def _played(program: str, album: Path | None) -> Outcome:
    plays = {name: at_the_shelf(scene) for name, scene in SCENES.items()} | GUESTS
    plays["paper is printed"] = paper_is_printed
    failed, said = 0, []
    async with browser(program) as started:
        for name, play in plays.items():
            with TemporaryDirectory() as folder:
                path = Path(folder) / "pantry.db"
                build_demo(path, TODAY)
                try:
                    note = await play(started, path, album)
                except Exception:
                    failed += 1
                    print(f"{name}:\n{traceback.format_exc()}", flush=True)
                else:
                    said += [note] if note else []
    return Outcome("browser", len(plays), failed, "; ".join(["scenes", *said]))


def at_the_shelf(scene: Scene) -> Guest:
    """The scene on a phone that shows the app; its page must ask for nothing from elsewhere."""

    async def play(started: Browser, path: Path, album: Path | None) -> str:
        async with served(path) as url, shown(started, url, album) as at:
            await scene(at, path)
            await nothing_leaks(at, url, path)
        return ""

    return play
