"""Many pictures on few sheets, to be looked at.

    PANTRY_BROWSER=/path/to/chromium python -m tests.browser.contact FOLDER [PATTERN ...]

makes `contact-N.png` in the folder, of the SVGs there whose names fit (`*-80x24-light`), each with
its name over it.
"""

from __future__ import annotations

import asyncio
import os
import sys
from html import escape
from pathlib import Path

from tests.browser.devtools import Session, browser, written

#: Width and height of a sheet in pixels, and how many pictures stand beside each other.
WIDE, HIGH, ACROSS = 2400, 1200, 4
#: Comes to an end once that many pictures are there.
_LOADED = """
(async () => {
  while (document.readyState !== 'complete' || document.images.length !== %d
         || ![...document.images].every((one) => one.complete)) {
    await new Promise((done) => setTimeout(done, 50));
  }
})()
"""


async def sheets(program: str, folder: Path, found: list[Path], across: int = ACROSS) -> int:
    """How many sheets they made."""
    made = 0
    each = across * across
    async with browser(program) as started:
        page = await started.page()
        await page.do(
            "Emulation.setDeviceMetricsOverride",
            width=WIDE,
            height=HIGH,
            deviceScaleFactor=1,
            mobile=False,
        )
        for first in range(0, len(found), each):
            made += 1
            sheet = folder / f"contact-{made}.html"
            sheet.write_text(_sheet(found[first : first + each], across), encoding="utf-8")
            await page.do("Page.navigate", url=sheet.absolute().as_uri())
            await page.script(_LOADED % len(found[first : first + each]))
            asked = {"captureBeyondViewport": True, "clip": await _whole(page)}
            taken = await page.do("Page.captureScreenshot", format="png", **asked)
            written(sheet.with_suffix(".png"), taken["data"])
            sheet.unlink()
    return made


async def _whole(page: Session) -> dict[str, float]:
    """All of the page, also what is further down."""
    size = (await page.do("Page.getLayoutMetrics"))["cssContentSize"]
    return {"x": 0, "y": 0, "width": size["width"], "height": size["height"], "scale": 1}


def _sheet(shown: list[Path], across: int) -> str:
    cells = "".join(
        f"<figure><figcaption>{escape(one.stem)}</figcaption>"
        f'<img src="{escape(one.name)}"></figure>'
        for one in shown
    )
    return (
        "<!doctype html><meta charset=utf-8><style>body{margin:8px;background:#777;display:grid;"
        f"grid-template-columns:repeat({across},1fr);gap:8px;font:bold 18px sans-serif}}"
        f"figure{{margin:0}}img{{width:100%}}</style>{cells}"
    )


def main(words: list[str]) -> int:
    program = os.environ.get("PANTRY_BROWSER")
    if not program or not words:
        print(__doc__)
        return 2
    folder = Path(words[0])
    patterns = words[1:] or ["*"]
    found = sorted({one for each in patterns for one in folder.glob(f"{each}.svg")})
    print(f"{asyncio.run(sheets(program, folder, found))} sheets of {len(found)} pictures")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
