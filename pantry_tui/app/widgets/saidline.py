"""The answer to the last act, above the keys and below everything else."""

from __future__ import annotations

from typing import Any

from textual.content import Content
from textual.screen import Screen
from textual.timer import Timer
from textual.widgets import Static

from pantry_tui.app.widgets.keyline import KeyLine

#: Seconds that an answer stands at least; the first key after that takes it away, no clock does.
STAYS = 12.0
#: Lines of a screen that are not the list's, and the least that an answer may take of the list.
_FRAME, _LEAST = 4, 2


class SaidLine(Static):
    """Not there before there is something to say, hidden when there is nothing any more."""

    DEFAULT_CSS = """
    SaidLine { height: auto; padding: 0 1; background: $success 25%; }
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
    _stood = False  # long enough

    def fits(self, text: str) -> bool:
        """Whether all of `text` has room: the list keeps at least half of its own."""
        size = self.app.size
        height = Content(text).get_height(self.styles.get_rules(), max(size.width - 2, 1))
        return height <= max((size.height - _FRAME) // 2, _LEAST)

    def say(self, text: str, refused: bool = False) -> None:
        """Show `text` until the next one, or until a key comes when it has stood a while; the
        same said again stays as long."""
        self.update(Content(text))
        self.set_class(refused, "refused")
        self.display = True
        if self._going is not None:
            self._going.stop()
        self._stood = False
        self._going = self.set_timer(STAYS, self.stands)

    def stands(self) -> None:
        """Long enough: the next key takes it away."""
        self._stood = True

    @classmethod
    def key_came(cls, screen: Screen[Any]) -> None:
        """What has stood long enough goes."""
        for line in screen.query(cls):
            if line._stood:
                line.hide()

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
