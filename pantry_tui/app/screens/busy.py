"""A list that is looked through or booked: at once where it is short, else beside the screen, with
how far it is; Esc stops it, and nothing of it is booked then."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from threading import Event
from time import monotonic
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from pantry_tui.errors import PantryError, Refused
from pantry_tui.services.batchwork.imported import Imported
from pantry_tui.services.batchwork.importing import import_beside, import_list
from pantry_tui.services.batchwork.mapped import Taken

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

#: A file of so many bytes is done while a key is waited for: some dozens of rows.
SHORT = 4_000
#: Seconds between two signs of how far it is.
SAYS_EVERY = 0.2
DOING = {True: "Looking through", False: "Booking"}


class Busy(ModalScreen[None]):
    """How far it is, and the key that stops it."""

    CSS_PATH = "page.tcss"
    BINDINGS = [Binding("escape", "stop", "stop")]

    def __init__(self, doing: str) -> None:
        super().__init__()
        self._doing, self.stopped, self._said = doing, Event(), 0.0

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(f"{self._doing} ..."), id="far")
            keys = "[@click=screen.stop][b]Esc[/b] stops it, and books nothing[/]"
            yield Static(Content.from_markup(keys), id="answers")

    def action_stop(self) -> None:
        self.stopped.set()

    def on_unmount(self) -> None:
        self.stopped.set()

    def say(self, line: int) -> None:
        """How far it is."""
        self.query_one("#far", Static).update(Content(f"{self._doing}: line {line:,} ..."))

    def passed(self, line: int) -> None:
        """Called from the thread, after every row. Raises Refused where it was stopped."""
        if self.stopped.is_set():
            raise Refused("Stopped: nothing is booked.")
        if monotonic() - self._said > SAYS_EVERY:
            self._said = monotonic()
            self.app.call_from_thread(self.say, line)


def run(
    host: Host, path: Path, taken: Taken, then: Callable[[Imported], None], *, dry_run: bool
) -> None:
    """Look the list through, or book it; `then` gets what came of it. What cannot be done is said
    in a sentence."""
    if _is_short(path):
        _short(host, path, taken, then, dry_run)
        return
    busy = Busy(f"{DOING[dry_run]} {path.name}")

    def over(found: Imported | None, error: PantryError | None) -> None:
        busy.dismiss()
        if error is not None:
            host.call_later(partial(host.tell, error.message, refused=True))
        elif found is not None:
            host.call_later(partial(then, found))

    def beside() -> None:
        found, wrong = None, None
        try:
            found = import_beside(host.pantry, taken, path, dry_run=dry_run, progress=busy.passed)
        except PantryError as error:
            wrong = error
        if busy.is_running:
            host.call_from_thread(over, found, wrong)

    def shown() -> None:
        host.run_worker(beside, thread=True, exit_on_error=False, group="import")

    host.push_screen(busy)
    host.call_after_refresh(shown)


def _is_short(path: Path) -> bool:
    """Also where it is not there any more: reading it says so."""
    try:
        return path.stat().st_size <= SHORT
    except OSError:
        return True


def _short(
    host: Host, path: Path, taken: Taken, then: Callable[[Imported], None], dry_run: bool
) -> None:
    try:
        # The screen shows what a look found and asks, before it books.
        found = import_list(host.pantry, path, taken=taken, dry_run=dry_run, again=True)
    except PantryError as error:
        host.tell(error.message, refused=True)
    else:
        then(found)
