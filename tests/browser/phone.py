"""A hand on the glass of a phone: it reads what stands there and taps, swipes or types into it."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path
from typing import Any

from tests.browser.devtools import PATIENCE_S, Browser, Failed, Session, written

#: CSS pixels of a usual phone, held upright, and its dots a pixel.
WIDTH, HEIGHT, DOTS = 390, 844, 2
#: Seconds between two looks at the glass.
LOOKS_EVERY = 0.03
_AGENT = (
    "Mozilla/5.0 (Linux; Android 14; Phone) AppleWebKit/537.36 (KHTML, like Gecko) "
    "Chrome/147.0.0.0 Mobile Safari/537.36"
)
#: Catches the terminal of the page as it is made, whose text a canvas alone would not tell.
_CATCH = """
Object.defineProperty(Object.prototype, '_core', {
  configurable: true,
  set(core) {
    Object.defineProperty(this, '_core', {value: core, writable: true, configurable: true});
    if ('loadAddon' in this) window.caught = this;
  },
});
"""
_LINES = """
(() => {
  if (!window.caught) return [];
  const shown = caught.buffer.active;
  return [...Array(caught.rows).keys()].map(
    (n) => (shown.getLine(shown.viewportY + n) || {translateToString: () => ''})
      .translateToString(true));
})()
"""
#: Left, top, and the size of a cell of the app, in CSS pixels.
BOX = """
(() => {
  const box = document.querySelector('.xterm-screen').getBoundingClientRect();
  return [box.left, box.top, box.width / caught.cols, box.height / caught.rows];
})()
"""


class Phone:
    """One page of one browser. `asked` is every address that it asked for, in order; `heard` what
    came through its web sockets, in Base64 where it is painted. Pictures go into `album`."""

    def __init__(self, page: Session, album: Path | None = None) -> None:
        self.page, self.album = page, album
        self.asked: list[str] = []
        self.heard: list[str] = []

    # -- what it shows -----------------------------------------------------------------------------

    async def lines(self) -> list[str]:
        """The lines of the app as they stand on the glass."""
        lines: list[str] = await self.page.script(_LINES)
        return [line.replace("\u00a0", " ") for line in lines]

    async def text(self) -> str:
        return "\n".join(await self.lines())

    async def until(self, *words: str, gone: bool = False) -> str:
        """Waits until all these words stand there, or none of them does; what stands there then.
        Raises Failed when that never comes."""
        return await self.until_true(
            lambda text: (
                not any(word in text for word in words)
                if gone
                else all(word in text for word in words)
            ),
            f"{', '.join(words)} {'is gone' if gone else 'stands there'}",
        )

    async def until_true(self, holds: Callable[[str], bool], said: str) -> str:
        """Waits until what stands there is so; `said` names it. Raises Failed."""
        text = ""
        try:
            async with asyncio.timeout(PATIENCE_S):
                while not holds(text := await self.text()):
                    await asyncio.sleep(LOOKS_EVERY)
                return text
        except TimeoutError:
            raise Failed(f"never: {said}; there stands\n{text}") from None

    async def page_until(self, source: str) -> Any:
        """Waits until a script in the page comes to something true; that. Raises Failed."""
        try:
            async with asyncio.timeout(PATIENCE_S):
                while not (found := await self.page.script(source)):
                    await asyncio.sleep(LOOKS_EVERY)
                return found
        except TimeoutError:
            raise Failed(f"never: {source}") from None

    async def shot_of(self, name: str) -> None:
        """A picture for the album, where there is one."""
        if self.album is not None:
            await self.shot(self.album / f"{name}.png")

    async def shot(self, path: Path) -> None:
        """A picture of the glass, PNG."""
        taken = await self.page.do("Page.captureScreenshot", format="png")
        written(path, taken["data"])

    # -- what a hand does --------------------------------------------------------------------------

    async def touch(self, x: float, y: float) -> None:
        """A tap, in CSS pixels."""
        point = {"x": x, "y": y}
        await self.page.do("Input.dispatchTouchEvent", type="touchStart", touchPoints=[point])
        await self.page.do("Input.dispatchTouchEvent", type="touchEnd", touchPoints=[])

    async def swipe(self, x: float, y: float, to_y: float, steps: int = 15) -> None:
        """A finger drawn over the glass in a quarter of a second."""
        await self._touching("touchStart", x, y)
        for n in range(1, steps + 1):
            await self._touching("touchMove", x, y + (to_y - y) * n / steps)
            await asyncio.sleep(1 / 60)
        await self.page.do("Input.dispatchTouchEvent", type="touchEnd", touchPoints=[])

    async def _touching(self, kind: str, x: float, y: float) -> None:
        await self.page.do("Input.dispatchTouchEvent", type=kind, touchPoints=[{"x": x, "y": y}])

    async def tap(self, words: str, nth: int = 0) -> None:
        """Taps those words in the app. Raises Failed where they do not stand there."""
        await self.until(words)
        found = [
            (row, column)
            for row, line in enumerate(await self.lines())
            for column in _places(line, words)
        ]
        row, column = found[nth]
        left, top, wide, high = await self.page.script(BOX)
        await self.touch(left + (column + len(words) / 2) * wide, top + (row + 0.5) * high)

    async def button(self, *labels: str) -> None:
        """Taps keys of the page by what is drawn on them, one after the other. Raises Failed where
        one is missing."""
        for label in labels:
            await self.touch(
                *await self._middle(
                    "[...document.querySelectorAll('#keys button')].find("
                    f"(one) => one.textContent === {label!r} && one.getClientRects().length)"
                )
            )

    async def _middle(self, element: str) -> tuple[float, float]:
        """Where an element lies, once it is shown. Raises Failed."""
        x, y = await self.page_until(
            f"(() => {{ const one = {element}; if (!one) return null;"
            " const box = one.getBoundingClientRect();"
            " return box.width ? [box.left + box.width / 2, box.top + box.height / 2] : null; })()"
        )
        return x, y

    async def press(self, selector: str) -> None:
        """Taps an element of the page."""
        await self.touch(*await self._middle(f"document.querySelector({selector!r})"))

    async def type(self, text: str) -> None:
        """What an on-screen keyboard puts into the field that has the focus."""
        for letter in text:
            await self.page.do("Input.insertText", text=letter)

    async def go(self, url: str) -> None:
        """Raises Failed where nothing answers."""
        gone = await self.page.do("Page.navigate", url=url)
        if "errorText" in gone:
            raise Failed(gone["errorText"])


def _places(line: str, words: str) -> list[int]:
    found, start = [], line.find(words)
    while start >= 0:
        found.append(start)
        start = line.find(words, start + 1)
    return found


async def phone(browser: Browser, person: str | None = None, album: Path | None = None) -> Phone:
    """A phone with an empty page: of that person's browser, else of a new one."""
    page = await browser.page(await browser.person() if person is None else person)
    await page.do(
        "Emulation.setDeviceMetricsOverride",
        width=WIDTH,
        height=HEIGHT,
        deviceScaleFactor=DOTS,
        mobile=True,
    )
    await page.do("Emulation.setTouchEmulationEnabled", enabled=True, maxTouchPoints=5)
    await page.do("Emulation.setUserAgentOverride", userAgent=_AGENT)
    await page.do("Page.addScriptToEvaluateOnNewDocument", source=_CATCH)
    made = Phone(page, album)
    page.on("Network.requestWillBeSent", lambda said: made.asked.append(said["request"]["url"]))
    page.on("Network.webSocketCreated", lambda said: made.asked.append(said["url"]))
    page.on(
        "Network.webSocketFrameReceived",
        lambda said: made.heard.append(said["response"]["payloadData"]),
    )
    return made
