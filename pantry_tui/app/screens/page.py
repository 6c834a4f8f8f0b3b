"""A page of text to read and close: the keys of a screen, what a sign means."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from pantry_tui.app.commands import of
from pantry_tui.app.format import hang
from pantry_tui.app.widgets.inunits import in_units
from pantry_tui.core.words import MARK

VERDICTS = "Verdicts: " + ", ".join(f"{mark} {verdict}" for verdict, mark in MARK.items()) + "."
LIMITS = (
    "Best by is quality: after it the food is past its best, and safe if sound. Discard after is "
    "safety: the last day on which published guidance still allows eating it."
)


GUIDES = "F1: short guides, for a first evening, a power cut, a suspect jar ..."

#: Where a question follows the page.
GOES_ON = "Esc or Enter goes on."


class Page(ModalScreen[bool | None]):
    """Esc, Enter, F1, ? or q closes it."""

    CSS_PATH = "page.tcss"
    BINDINGS = [
        Binding("escape,question_mark,f1,q,enter", "dismiss", "back"),
    ]

    def __init__(self, text: str, leave: str = "Esc closes this.") -> None:
        super().__init__()
        self._text, self._leave = text, leave

    def compose(self) -> ComposeResult:
        with VerticalScroll(id="box"):
            width = min(76, self.app.size.width) - 7  # the box, its padding and a bar to scroll
            text = in_units(self, self._text)
            yield Static(Content(hang(f"{text}\n\n{self._leave}", width)))


class Decide(Page, inherit_bindings=False):
    """A page that says what would be booked: Enter books it, Esc does not."""

    BINDINGS = [
        Binding("enter", "dismiss(True)", "book it"),
        Binding("escape", "dismiss(False)", "leave it"),
    ]

    def __init__(
        self, text: str, leave: str = "Enter records this. Esc leaves it unrecorded."
    ) -> None:
        super().__init__(text, leave)


def keys_of(screen_id: str) -> str:
    """All keys of a screen, from the one command table."""
    lines = [f"{command.keys:<12} {command.tip}" for command in of(screen_id)]
    return "\n".join(["Keys", "", *lines, "", GUIDES, "", VERDICTS, "", LIMITS])
