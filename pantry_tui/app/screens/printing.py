"""Paper: what is to be printed, then where to."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.errors import PantryError
from pantry_tui.paths import typed_path
from pantry_tui.services.output import paper, printing
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
TODAY, OF_CODES, CALENDAR = (
    "labels for what was put up today",
    "labels of some lid codes ...",
    "all dates ahead as a calendar file ...",
)
PRINTER, BROWSER, FILE = "the printer", "the browser, to print there", "a file ..."

#: As `paper.sheet` calls them.
SHEETS = {DOOR: "due", OPENED: "opened", WEEK: "week", OUTAGE: "outage"}

#: What a page is made of: plain text, and a page for a browser.
Made = tuple[str, str]


def ask_paper(host: Host) -> None:
    """What is to be printed or written."""
    options = [*SHEETS, PLACE, TODAY, OF_CODES, CALENDAR]
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
        then = given(lambda path: _where(host, path, lambda: sheet_of(p, path)))
        host.push_screen(Choose("Which place?", paths), then)
    elif got == OF_CODES:
        question = TypeLine(
            "Labels of which lid codes?", "7C 9H", accept=lambda t: labels_of(p, t.split())
        )
        host.push_screen(
            question, given(lambda typed: _where(host, got, lambda: labels_of(p, typed.split())))
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


def labels_of(p: Pantry, codes: tuple[str, ...] | list[str]) -> Made:
    found = paper.labels(p, codes)
    return paper.label_text(found), paper.label_html(found)


def _where(host: Host, title: str, make: Callable[[], Made]) -> None:
    """Where it goes; what cannot be made says so first."""
    try:
        text, html = (host.units.text(one) for one in make())
    except PantryError as error:
        host.tell(error.message, refused=True)
        return
    name = title.partition(":")[0].removesuffix(" ...")
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
                "~/door.html",
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
    return Done(f"Wrote {text.count('BEGIN:VEVENT')} dates to {path}.")
