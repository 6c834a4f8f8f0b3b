"""The answer to the last act, above the keys and below everything else."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Static

STAYS = 12.0  # seconds; long enough to read it with a jar in each hand


class SaidLine(Static):
    """Hidden while there is nothing to say."""

    DEFAULT_CSS = """
    SaidLine { height: auto; max-height: 4; padding: 0 1; display: none;
               background: $success 25%; }
    SaidLine.refused { background: $error 25%; }
    """

    def say(self, text: str, refused: bool = False) -> None:
        """Show `text` until the next one, or for a while."""
        self.update(Content(text))
        self.set_class(refused, "refused")
        self.display = True
        self.set_timer(STAYS, lambda: self._hide(text))

    def _hide(self, text: str) -> None:
        if str(self.content) == text:
            self.display = False
