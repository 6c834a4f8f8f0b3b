"""Paper: what is to be printed, then where to."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.core.text import counted
from pantry_tui.errors import PantryError
from pantry_tui.paths import typed_path
from pantry_tui.services.output import labels, paper, printing
from pantry_tui.services.output.fitting import Size, read_size
from pantry_tui.services.rows import Done

if TYPE_CHECKING:
    from pantry_tui.app.host import Host
    from pantry_tui.services.pantry import Pantry

DOOR, OPENED, WEEK, OUTAGE, PLACE = (
    "the sheet for the door: what must go, what to eat",
    "what is open or thawed",
    "the week, with what to fetch",
    "the last power cut",
    "a place, to count it without a screen ...",
)
TODAY, OF_CODES, SIZED, GIFTS, CALENDAR = (
    "labels for what was put up today",
    "labels of some lid codes ...",
    "labels of a size of yours, or round ones ...",
    "gift labels ...",
    "all dates ahead as a calendar file ...",
)
PRINTER, BROWSER, FILE = "the printer", "the browser, to print there", "a file ..."

#: As `paper.sheet` calls them.
SHEETS = {DOOR: "due", OPENED: "opened", WEEK: "week", OUTAGE: "outage"}

#: A file of each is called so, where one names it no other way.
NAMES = {
    DOOR: "door",
    OPENED: "opened",
    WEEK: "week",
    OUTAGE: "power-cut",
    TODAY: "labels-today",
    OF_CODES: "labels",
    SIZED: "labels-sized",
    GIFTS: "gift-labels",
}

#: What is typed: the question, an example, whether it is for gifts.
ASKED = {
    OF_CODES: ("Labels of which lid codes?", "7C 9H", False),
    SIZED: ("Which lid codes, and of what size?", "7C 9H, round 50mm", False),
    GIFTS: ("Gift labels of which lid codes?", "7C 9H, 90x60mm", True),
}

#: What a page is made of: plain text, and a page for a browser.
Made = tuple[str, str]


def ask_paper(host: Host) -> None:
    """What is to be printed or written."""
    options = [*SHEETS, PLACE, TODAY, OF_CODES, SIZED, GIFTS, CALENDAR]
    host.push_screen(
        Choose("Print what? Esc: nothing.", options), given(lambda got: _what(host, got))
    )


def _what(host: Host, got: str) -> None:
    p = host.pantry
    if got in SHEETS:
        _where(host, got, lambda: sheet_of(p, SHEETS[got]))
    elif got == TODAY:
        _where(host, got, lambda: labels_of(p, ()))
    elif got == PLACE:
        paths = sorted(p.place_paths().values())
        then = given(lambda path: _where(host, path, lambda: sheet_of(p, f"count {path}")))
        host.push_screen(Choose("Which place?", paths), then)
    elif got in ASKED:
        title, example, gift = ASKED[got]
        question = TypeLine(title, example, accept=lambda typed: typed_labels(p, typed, gift=gift))
        host.push_screen(
            question,
            given(lambda typed: _where(host, got, lambda: typed_labels(p, typed, gift=gift))),
        )
    else:
        _file(
            host,
            "Which file shall hold the calendar?",
            "~/pantry.ics",
            lambda typed: _calendar(p, typed),
        )


def sheet_of(p: Pantry, what: str) -> Made:
    page = paper.sheet(p, what)
    return paper.sheet_text(page), paper.sheet_html(page)


def labels_of(
    p: Pantry, codes: Sequence[str], size: Size | None = None, *, gift: bool = False
) -> Made:
    found = labels.labels(p, codes, gift=gift)
    return labels.label_text(found), labels.html(found, size, gift=gift)


def typed_labels(p: Pantry, typed: str, *, gift: bool) -> Made:
    """ "7C 9H", "7C 9H, 60x40mm", "7C, round 50mm". Raises PantryError."""
    codes, comma, size = typed.partition(",")
    return labels_of(p, codes.split(), read_size(size.strip()) if comma else None, gift=gift)


def file_name(said: str) -> str:
    """("a place's path") -> "count-shelf-2"; for the kinds of sheet and label, their own."""
    words = re.findall(r"\w+", said.rsplit("›", 1)[-1].casefold())
    return NAMES.get(said) or "-".join(["count", *words])


def _where(host: Host, said: str, make: Callable[[], Made]) -> None:
    """Where it goes; what cannot be made says so first. `said`: what was chosen, or a place."""
    try:
        text, html = (host.units.text(one) for one in make())
    except PantryError as error:
        host.tell(error.message, refused=True)
        return
    name = said.partition(":")[0].removesuffix(" ...")
    ways = [PRINTER] if printing.printer() else []
    # Served to a phone, a browser opened here would be of no use there.
    ways += [] if host.is_web else [BROWSER]

    def go(way: str) -> None:
        if way == PRINTER:
            host.attempt(lambda: printing.to_printer(text, name))
        elif way == BROWSER:
            host.attempt(lambda: printing.to_browser(html, name))
        else:
            title = "Which file? .html is a page to print, .txt plain text."
            _file(
                host,
                title,
                f"~/{file_name(said)}.html",
                lambda typed: printing.to_file(text, html, typed_path(typed)),
            )

    host.push_screen(Choose(f"Where to? ({name})", [*ways, FILE]), given(go))


def _file(host: Host, title: str, example: str, do: Callable[[str], Done]) -> None:
    """A file that is typed; one that cannot be written stays to be mended."""
    told: list[Done] = []
    question = TypeLine(
        title, example, accept=lambda typed: told.append(host.doing(lambda: do(typed)))
    )
    host.push_screen(question, given(lambda _: host.report(told[-1])))


def _calendar(p: Pantry, typed: str) -> Done:
    from pantry_tui.services.output.calendar import calendar
    from pantry_tui.store.files import made_whole

    text, path = calendar(p), typed_path(typed)
    with made_whole(path) as making:
        making.write_bytes(text.encode("utf-8"))
    return Done(f"Wrote {counted(text.count('BEGIN:VEVENT'), 'dates')} to {path}.")
