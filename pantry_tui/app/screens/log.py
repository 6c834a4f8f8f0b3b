"""What was done, the last on top; undo takes back the last that stands."""

from __future__ import annotations

from collections.abc import Sequence

from rich.text import Text

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.widgets.rowtable import LIMIT, Line
from pantry_tui.services.books.logbook import log_lines


class LogScreen(StockScreen):
    """Nothing is ever deleted: what was taken back says so."""

    here = "log"
    holds_stock = False
    BINDINGS = bindings("log")
    empty = "Nothing was done yet: press p and put something up."

    def columns(self, width: int) -> tuple[Column, ...]:
        return (Column("what", "what was done", max(20, width - 2)),)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        words = self.sought.lower().split()
        found = [
            (number, code, text)
            for number, (code, text) in enumerate(log_lines(self.host.pantry))
            if all(word in text.lower() for word in words)
        ]
        width = columns[0].width - 1
        return [
            Line(f"log|{number}", (Text(clip(text, width)),), code, word=_word(text, code, width))
            for number, code, text in reversed(found[-LIMIT:])
        ]


def _word(text: str, code: str, width: int) -> str:
    """What is cut off above, and where Enter leads."""
    whole = "" if len(text) <= width else f"{text}. "
    return f"{whole}Enter shows {code} whole." if code else whole or "This is about no batch."
