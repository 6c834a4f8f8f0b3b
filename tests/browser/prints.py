"""Paper from a real browser, A4 and Letter: one page for a door, no label over its edge."""

from __future__ import annotations

import base64
import re
from collections.abc import Mapping
from pathlib import Path

from pantry_tui.services.output import labels, paper
from pantry_tui.services.output.fitting import read_size
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import view
from tests.app.web.serving import TODAY
from tests.browser.devtools import Browser, Session, written
from tests.browser.scenes import expect

#: Width and height in inches.
PAPERS = {"A4": (8.27, 11.69), "Letter": (8.5, 11.0)}
SIZES = ("60x40mm", "2.5x1.5in", "round 60mm", "90x60mm")
ROLL = "62x40mm"
#: The most pages that each may take; what is not named here may take any number.
MOST = {"door": 1, "week": 2, "place": 1}
#: Labels of which a line is wider or higher than they are.
_OVER = """
[...document.querySelectorAll('.cut')].filter((label) => {
  const box = label.getBoundingClientRect();
  return [...label.children].some((line) => {
    const range = document.createRange();
    range.selectNodeContents(line);
    const inner = range.getBoundingClientRect();
    return inner.left < box.left - 0.5 || inner.right > box.right + 0.5
      || inner.top < box.top - 0.5 || inner.bottom > box.bottom + 0.5;
  });
}).length
"""
#: Cells with a date that runs over several lines.
_BROKEN = r"""
[...document.querySelectorAll('td')].filter((cell) => {
  const range = document.createRange();
  range.selectNodeContents(cell);
  return /\d{4}$/.test(cell.innerText) && cell.innerText.length < 30
    && range.getClientRects().length > 1;
}).length
"""


def pages(p: Pantry) -> Mapping[str, str]:
    """Everything that is printed, by a name."""
    made = {
        name: paper.sheet_html(paper.sheet(p, what))
        for name, what in (
            ("door", "due"),
            ("week", "week"),
            ("opened", "opened"),
            ("place", "north wall"),
            ("count", "count"),
        )
    }
    fit = {row.code: None for row in view.due(p) if row.usable}
    every = labels.labels(p, list({row.code: None for row in view.due(p)}))
    gifts = labels.labels(p, list(fit)[:12], gift=True)
    made["labels"] = labels.html(every)
    for size in SIZES:
        made[f"labels {size}"] = labels.html(every, read_size(size))
    made["gifts"] = labels.html(gifts, gift=True)
    made["roll"] = labels.html(gifts, read_size(ROLL), roll=True)
    return made


async def paper_is_printed(browser: Browser, path: Path, album: Path | None) -> str:
    with open_pantry(path, TODAY) as p:
        made = pages(p)
    page = await browser.page()
    for name, html in made.items():
        await _show(page, html)
        expect(await page.script(_OVER) == 0, f"{name}: a label is written over its edge")
        expect(await page.script(_BROKEN) == 0, f"{name}: a date is broken over two lines")
        for kind, (wide, high) in PAPERS.items():
            printed = await page.do(
                "Page.printToPDF", paperWidth=wide, paperHeight=high, preferCSSPageSize=True
            )
            if album is not None:
                written(album / "paper" / f"{name} {kind}.pdf", printed["data"])
            number = len(re.findall(rb"/Type\s*/Page\b", base64.b64decode(printed["data"])))
            expect(number, f"{name}: nothing was printed")
            expect(number <= MOST.get(name, 1000), f"{name} takes {number} pages of {kind}")
            if name == "roll":
                cut = html.count('class="cut"')
                expect(number == cut, f"{cut} labels of a roll on {number} pages")
    return f"{len(made)} papers printed in A4 and Letter"


async def _show(page: Session, html: str) -> None:
    tree = await page.do("Page.getFrameTree")
    await page.do("Page.setDocumentContent", frameId=tree["frameTree"]["frame"]["id"], html=html)
