"""The answer to the last act, above the keys and below everything else."""

from __future__ import annotations

from typing import Any

from textual.content import Content
from textual.screen import Screen
from textual.timer import Timer
from textual.widgets import Static

from pantry_tui.app.widgets.keyline import KeyLine

STAYS = 12.0  # seconds; long enough to read it with a jar in each hand


class SaidLine(Static):
    """Not there before there is something to say, hidden when there is nothing any more."""

    DEFAULT_CSS = """
    SaidLine { height: auto; max-height: 4; padding: 0 1; background: $success 25%; }
    SaidLine.refused { background: $error 25%; }
    """

    @classmethod
    def of(cls, screen: Screen[Any]) -> SaidLine | None:
        """That of a screen that shows its keys; None for a box over one."""
        lines = screen.query(cls)
        if lines:
            return lines.first()
        keys = screen.query(KeyLine)
        if not keys:
            return None
        line = cls()
        screen.mount(line, before=keys.first())
        return line

    _going: Timer | None = None

    def say(self, text: str, refused: bool = False) -> None:
        """Show `text` until the next one, or for a while; the same said again stays as long."""
        self.update(Content(text))
        self.set_class(refused, "refused")
        self.display = True
        if self._going is not None:
            self._going.stop()
        self._going = self.set_timer(STAYS, self.hide)

    @classmethod
    def hush(cls, screen: Screen[Any], *, refused: bool = False) -> None:
        """What was said there no longer holds, or another screen goes on; `refused`: only what
        says that nothing was done."""
        for line in screen.query(cls):
            if not refused or line.has_class("refused"):
                line.hide()

    def hide(self) -> None:
        """Nothing to say any more."""
        self.display = False
