"""Pictures of the screens from the demo store.

    python -m pantry_tui.app.shots screenshots       the main ones
    python -m pantry_tui.app.shots FOLDER --every    all, at four sizes, light and dark

The day is fixed, so that a picture changes only when a screen does.
"""

from __future__ import annotations

import asyncio
import sys
import tempfile
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from textual.app import App

from pantry_tui.app.main import PantryApp
from pantry_tui.app.theme import THEMES
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry

DAY = date(2027, 1, 15)
LINE = "7 pint jars runner beans, pressure canned, larder, yesterday"
_NAMED = {" ": "space", ",": "comma", "/": "slash"}


def typed(words: str) -> tuple[str, ...]:
    """The keys that type these words."""
    return tuple(_NAMED.get(letter, letter) for letter in words)


SHOTS: dict[str, tuple[str, ...]] = {
    "due": (),
    "shelves": ("S", *["down"] * 8),
    "week": ("W", "down"),
    "putup": ("p", *typed(LINE)),
    "batch": ("enter",),
    "sign": ("s", "1"),
    "count": ("c", "1", "enter", "enter", "3", "down"),
    "months": ("y", "m"),
    "log": ("l",),
    "outlook": ("y", *["down"] * 6),
}
#: The others: pictures, questions, forms, pages.
MORE: dict[str, tuple[str, ...]] = {
    "add-place": ("S", "a"),
    "book": ("c", "1", "enter", "enter", "3", "f"),
    "code": typed("7"),
    "count-which": ("c",),
    "days": ("W", "b"),
    "discard": ("d",),
    "dish": ("W", "i"),
    "end-of-list": ("end",),
    "find": ("slash", *typed("beans place:north")),
    "give": ("g",),
    "guide": ("f1", "1"),
    "guides": ("f1",),
    "household": ("comma",),
    "in-progress": ("j",),
    "jobs": ("full_stop",),
    "keys": ("question_mark",),
    "methods": ("semicolon",),
    "missing": ("n",),
    "move": ("m",),
    "palette": ("ctrl+p",),
    "place-form": ("S", "w"),
    "power-cut": ("S", "x"),
    "print": ("f12",),
    "process": ("i",),
    "put-right": ("w",),
    "putup-empty": ("p",),
    "putup-odd": ("p", *typed("3 jars zorp, pickled")),
    "rate": ("h",),
    "reading": ("S", "r"),
    "reckon": ("equals_sign",),
    "refused": (*typed("5e"), "enter", "u"),
    "reserve": ("k",),
    "shelves-drawn": ("S", "v"),
    "signs": ("s",),
    "sort": ("v",),
    "swap": ("W", "down", "r"),
    "used": ("u",),
    "waste": ("y", "b"),
    "week-grid": ("W", "v"),
    "what-if": ("y", "i"),
    "year-ahead": ("y", "v"),
}
SIZES = ((80, 24), (120, 40), (200, 50), (40, 20))


async def shoot(
    folder: Path,
    shots: Mapping[str, Sequence[str]] = SHOTS,
    size: tuple[int, int] = (100, 30),
    theme: str = "",
    tail: str = "",
) -> None:
    """Each picture in a fresh app on the same demo store, as `NAME` and `tail`."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as temp:
        made = Path(temp) / "made.db"
        build_demo(made, DAY)
        for name, keys in shots.items():
            path = Path(temp) / "demo.db"
            path.write_bytes(made.read_bytes())
            with open_pantry(path, DAY) as pantry:
                app = PantryApp(pantry)
                if theme:
                    app.set_reactive(App.theme, THEMES[theme])
                    app.stylesheet.set_variables(app.get_css_variables())
                async with app.run_test(size=size) as pilot:
                    await pilot.press(*keys)
                    await pilot.pause()
                    svg = app.export_screenshot(title=f"pantry-tui: {name}")
            (folder / f"{name}{tail}.svg").write_text(svg, encoding="utf-8")


async def every(folder: Path) -> None:
    """All screens at all sizes, light and dark: `due-80x24-light.svg`."""
    for theme in ("dark", "light"):
        for wide, high in SIZES:
            tail = f"-{wide}x{high}-{theme}"
            await shoot(folder, SHOTS | MORE, (wide, high), theme, tail)


if __name__ == "__main__":
    words = [word for word in sys.argv[1:] if word != "--every"]
    folder = Path(words[0] if words else "screenshots")
    asyncio.run(every(folder) if "--every" in sys.argv else shoot(folder))
