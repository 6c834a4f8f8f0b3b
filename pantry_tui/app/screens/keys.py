"""All keys of a screen, from the one command table."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from pantry_tui.app.commands import of
from pantry_tui.core.words import MARK

VERDICTS = "Verdicts: " + ", ".join(f"{mark} {verdict}" for verdict, mark in MARK.items()) + "."
LIMITS = (
    "Best by is quality: after it the food is past its best, and safe if sound. Discard after is "
    "safety: the last day on which published guidance still allows eating it."
)


class Keys(ModalScreen[None]):
    """Esc, F1, ? or q closes it."""

    CSS_PATH = "keys.tcss"
    BINDINGS = [
        Binding("escape,question_mark,f1,q,enter", "dismiss", "back"),
    ]

    def __init__(self, screen_id: str) -> None:
        super().__init__()
        self._screen_id = screen_id

    def compose(self) -> ComposeResult:
        lines = [f"{command.keys:<12} {command.tip}" for command in of(self._screen_id)]
        text = "\n".join(["Keys", "", *lines, "", VERDICTS, "", LIMITS, "", "Esc closes this."])
        with VerticalScroll(id="box"):
            yield Static(Content(text))
